import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { withControls } from './controls.js';
import { roomSize, slowRoom, treatedRoom } from './recordings.js';

const meta: Meta = { title: 'Report', component: 'ringdown-report' };
export default meta;

/** One seat before and after a treatment. */
const measured = () =>
  html`<ringdown-study room=${roomSize} no-files>
    <ringdown-recording
      src=${slowRoom()}
      label="console, before"
      seat="3.7 1.4 1.2"
      source="0.4 0.5 0.4"
      stage="before"
    ></ringdown-recording>
    <ringdown-recording
      src=${treatedRoom()}
      label="console, after"
      seat="3.7 1.4 1.2"
      source="0.4 0.5 0.4"
      stage="after"
    ></ringdown-recording>
    <ringdown-report></ringdown-report>
  </ringdown-study>`;

export const BeforeAndAfter: StoryObj = { render: measured };

export const OneRecording: StoryObj = {
  render: () =>
    html`<ringdown-study room=${roomSize} src=${slowRoom()} label="Live room, console" no-files>
      <ringdown-report></ringdown-report>
    </ringdown-study>`,
};

export const OnADarkPage: StoryObj = {
  render: () => html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">${measured()}</div>`,
};

export const InAGermanPage: StoryObj = { render: () => html`<div lang="de">${measured()}</div>` };

export const Narrow: StoryObj = {
  render: () => html`<div style="inline-size: 358px">${measured()}</div>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-report></ringdown-report>` };

export const WithControls = withControls('ringdown-report', {
  src: slowRoom(),
  label: 'Studio 2',
  room: roomSize,
});
