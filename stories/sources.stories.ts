import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { roomSize, slowRoom, treatedRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Sources', component: 'ringdown-sources' };
export default meta;

/** Two sources at one seat. */
const measured = () =>
  html`<ringdown-study room=${roomSize} no-files>
    <ringdown-recording
      clock="common"
      src=${slowRoom()}
      label="left"
      seat="3.7 1.4 1.2"
      source="0.4 0.5 0.4"
    ></ringdown-recording>
    <ringdown-recording
      clock="common"
      src=${treatedRoom()}
      label="right"
      seat="3.7 1.4 1.2"
      source="0.4 3.6 0.4"
    ></ringdown-recording>
    <ringdown-sources></ringdown-sources>
  </ringdown-study>`;

export const TwoSources: StoryObj = { render: measured };

export const OnADarkPage: StoryObj = {
  render: () => html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">${measured()}</div>`,
};

export const InAGermanPage: StoryObj = { render: () => html`<div lang="de">${measured()}</div>` };

export const Narrow: StoryObj = {
  render: () => html`<div style="inline-size: 358px">${measured()}</div>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-sources></ringdown-sources>` };

export const WithControls = withControls('ringdown-sources', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
