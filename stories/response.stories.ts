import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom, treatedRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Response', component: 'ringdown-response' };
export default meta;

export const AModeThatHangs: StoryObj = {
  render: () =>
    html`<ringdown-response src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-response>`,
};

export const SmoothedToTheEar: StoryObj = {
  render: () =>
    html`<ringdown-response
      src=${slowRoom()}
      label="Studio 2"
      room=${roomSize}
      smoothing="erb"
      tolerance="1"
    ></ringdown-response>`,
};

const microphone = `data:text/plain,${encodeURIComponent('20 -6\n50 -2\n200 0')}`;

export const CalibratedWithItsMicrophone: StoryObj = {
  render: () =>
    html`<ringdown-study no-files room=${roomSize}>
      <ringdown-recording
        src=${slowRoom()}
        label="Studio 2"
        microphone=${microphone}
        calibration="114.5"
      ></ringdown-recording>
      <ringdown-response></ringdown-response>
    </ringdown-study>`,
};

export const TwoSeats: StoryObj = {
  render: () =>
    html`<ringdown-study no-files room=${roomSize}>
      <ringdown-recording src=${slowRoom()} label="Console"></ringdown-recording>
      <ringdown-recording src=${treatedRoom()} label="Sofa"></ringdown-recording>
      <ringdown-response></ringdown-response>
    </ringdown-study>`,
};

export const OnADarkPage: StoryObj = {
  render: () =>
    html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">
      <ringdown-response src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-response>
    </div>`,
};

export const InAGermanPage: StoryObj = {
  render: () =>
    html`<div lang="de">
      <ringdown-response src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-response>
    </div>`,
};

export const RightToLeft: StoryObj = {
  render: () =>
    html`<div dir="rtl">
      <ringdown-response src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-response>
    </div>`,
};

export const Narrow: StoryObj = {
  render: () =>
    html`<div style="inline-size: 358px">
      <ringdown-response src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-response>
    </div>`,
};

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-response src=${brokenFile()} label="A letter"></ringdown-response>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-response></ringdown-response>` };

export const WithControls = withControls('ringdown-response', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
