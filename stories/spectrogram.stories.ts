import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom, treatedRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Spectrogram', component: 'ringdown-spectrogram' };
export default meta;

export const AModeThatHangs: StoryObj = {
  render: () =>
    html`<ringdown-spectrogram src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-spectrogram>`,
};

export const WellTreated: StoryObj = {
  render: () =>
    html`<ringdown-spectrogram
      src=${treatedRoom()}
      label="Studio 1"
      room=${roomSize}
    ></ringdown-spectrogram>`,
};

export const WindowThatFollowsFrequency: StoryObj = {
  render: () =>
    html`<ringdown-spectrogram
      src=${slowRoom()}
      label="Studio 2"
      room=${roomSize}
      method="constant-q"
    ></ringdown-spectrogram>`,
};

export const OnADarkPage: StoryObj = {
  render: () =>
    html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">
      <ringdown-spectrogram src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-spectrogram>
    </div>`,
};

export const InAGermanPage: StoryObj = {
  render: () =>
    html`<div lang="de">
      <ringdown-spectrogram src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-spectrogram>
    </div>`,
};

export const Narrow: StoryObj = {
  render: () =>
    html`<div style="inline-size: 358px">
      <ringdown-spectrogram src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-spectrogram>
    </div>`,
};

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-spectrogram src=${brokenFile()} label="A letter"></ringdown-spectrogram>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-spectrogram></ringdown-spectrogram>` };

export const WithControls = withControls('ringdown-spectrogram', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
