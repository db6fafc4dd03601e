import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { roomSize, slowRoom, treatedRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Comparison', component: 'ringdown-comparison' };
export default meta;

/** One seat, before and after. */
const measured = () =>
  html`<ringdown-study room=${roomSize} no-files>
    <ringdown-recording
      src=${slowRoom()}
      label="desk, before"
      seat="3.7 1.4 1.2"
      stage="before"
    ></ringdown-recording>
    <ringdown-recording
      src=${treatedRoom()}
      label="desk, after"
      seat="3.7 1.4 1.2"
      stage="after"
    ></ringdown-recording>
    <ringdown-comparison></ringdown-comparison>
  </ringdown-study>`;

export const BeforeAndAfter: StoryObj = { render: measured };

export const OnADarkPage: StoryObj = {
  render: () => html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">${measured()}</div>`,
};

export const Narrow: StoryObj = {
  render: () => html`<div style="inline-size: 358px">${measured()}</div>`,
};

export const OneRecordingAlone: StoryObj = {
  render: () =>
    html`<ringdown-comparison src=${slowRoom()} label="desk" room=${roomSize}></ringdown-comparison>`,
};

export const WithControls = withControls('ringdown-comparison', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
