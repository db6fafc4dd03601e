import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom, treatedRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Study', component: 'ringdown-study' };
export default meta;

const views = html`<ringdown-waterfall></ringdown-waterfall>
  <ringdown-ridges></ringdown-ridges>
  <ringdown-spectrogram></ringdown-spectrogram>`;

export const EverythingAtOnce: StoryObj = {
  render: () =>
    html`<ringdown-study src=${slowRoom()} label="Studio 2" room=${roomSize}>${views}</ringdown-study>`,
};

export const SeveralRecordings: StoryObj = {
  render: () =>
    html`<ringdown-study room=${roomSize}>
      <ringdown-recording src=${slowRoom()} label="Studio 2" stage="before"></ringdown-recording>
      <ringdown-recording src=${treatedRoom()} label="Studio 2" stage="after"></ringdown-recording>
      ${views}
    </ringdown-study>`,
};

export const ViewsElsewhereOnThePage: StoryObj = {
  render: () =>
    html`<ringdown-study
        id="elsewhere"
        no-files
        src=${slowRoom()}
        label="Studio 2"
        room=${roomSize}
      ></ringdown-study>
      <ringdown-ridges for="elsewhere"></ringdown-ridges>`,
};

export const ColoursForAnyColourVision: StoryObj = {
  render: () =>
    html`<ringdown-study src=${slowRoom()} label="Studio 2" room=${roomSize} scale="clear"
      >${views}</ringdown-study
    >`,
};

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-study src=${brokenFile()} label="A letter">${views}</ringdown-study>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-study>${views}</ringdown-study>` };

export const WithControls = withControls('ringdown-study', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
  scale: 'auto',
});
