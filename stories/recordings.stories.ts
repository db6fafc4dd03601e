import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom, treatedRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Recordings', component: 'ringdown-recordings' };
export default meta;

export const OneRecording: StoryObj = {
  render: () =>
    html`<ringdown-recordings src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-recordings>`,
};

export const SeveralRecordings: StoryObj = {
  render: () =>
    html`<ringdown-study no-files room=${roomSize}>
      <ringdown-recording src=${slowRoom()} label="Studio 2" stage="before"></ringdown-recording>
      <ringdown-recording src=${treatedRoom()} label="Studio 2" stage="after"></ringdown-recording>
      <ringdown-recordings></ringdown-recordings>
    </ringdown-study>`,
};

export const OnADarkPage: StoryObj = {
  render: () =>
    html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">
      <ringdown-recordings src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-recordings>
    </div>`,
};

export const InAGermanPage: StoryObj = {
  render: () =>
    html`<div lang="de">
      <ringdown-recordings src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-recordings>
    </div>`,
};

export const RightToLeft: StoryObj = {
  render: () =>
    html`<div dir="rtl">
      <ringdown-recordings src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-recordings>
    </div>`,
};

export const Narrow: StoryObj = {
  render: () =>
    html`<div style="inline-size: 358px">
      <ringdown-recordings src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-recordings>
    </div>`,
};

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-recordings src=${brokenFile()} label="A letter"></ringdown-recordings>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-recordings></ringdown-recordings>` };

export const WithControls = withControls('ringdown-recordings', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
