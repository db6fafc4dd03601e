import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { roomSize } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Room', component: 'ringdown-room' };
export default meta;

const furnished = () =>
  html`<ringdown-study room=${roomSize} no-files>
    <ringdown-place kind="seat" name="console" at="3.7 1.4 1.2"></ringdown-place>
    <ringdown-place kind="seat" name="guests" at="2.2 2.9 1.2"></ringdown-place>
    <ringdown-place kind="source" name="left" at="0.4 0.5 0.9"></ringdown-place>
    <ringdown-room></ringdown-room>
  </ringdown-study>`;

const plan = '0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5';

export const WithSeatsAndSources: StoryObj = { render: furnished };

export const AnLShapedPlan: StoryObj = {
  render: () => html`<ringdown-room plan=${plan} height="2.5" walls="plasterboard-on-studs"></ringdown-room>`,
};

export const OnADarkPage: StoryObj = {
  render: () => html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">${furnished()}</div>`,
};

export const InAGermanPage: StoryObj = { render: () => html`<div lang="de">${furnished()}</div>` };

export const RightToLeft: StoryObj = { render: () => html`<div dir="rtl">${furnished()}</div>` };

export const Narrow: StoryObj = {
  render: () => html`<div style="inline-size: 358px">${furnished()}</div>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-room></ringdown-room>` };

export const WithControls = withControls('ringdown-room', {
  room: '5.4x4.1x2.7',
  walls: 'plasterboard-on-studs',
});
