import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { roomSize, slowRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Remedies', component: 'ringdown-remedy' };
export default meta;

/** One recording is enough to design a cut and to see the decay after it. */
const alone = () => html`<ringdown-remedy src=${slowRoom()} label="desk" room=${roomSize}></ringdown-remedy>`;

export const OneRecording: StoryObj = { render: alone };

export const OnADarkPage: StoryObj = {
  render: () => html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">${alone()}</div>`,
};

export const Narrow: StoryObj = { render: () => html`<div style="inline-size: 358px">${alone()}</div>` };

export const NothingYet: StoryObj = { render: () => html`<ringdown-remedy></ringdown-remedy>` };

export const WithControls = withControls('ringdown-remedy', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
