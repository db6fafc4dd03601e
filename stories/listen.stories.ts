import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Listen', component: 'ringdown-listen' };
export default meta;

const heard = () =>
  html`<ringdown-listen src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-listen>`;

export const ARoomWithAModeThatHangs: StoryObj = { render: heard };

export const OfARoomAlone: StoryObj = {
  render: () =>
    html`<ringdown-study room=${roomSize} walls="plasterboard-on-studs" no-files>
      <ringdown-place kind="seat" name="console" at="3.7 1.4 1.2"></ringdown-place>
      <ringdown-place kind="source" name="left" at="0.4 0.5 0.9"></ringdown-place>
      <ringdown-listen material="tone-walk"></ringdown-listen>
    </ringdown-study>`,
};

export const OnADarkPage: StoryObj = {
  render: () => html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">${heard()}</div>`,
};

export const InAGermanPage: StoryObj = { render: () => html`<div lang="de">${heard()}</div>` };

export const RightToLeft: StoryObj = { render: () => html`<div dir="rtl">${heard()}</div>` };

export const Narrow: StoryObj = { render: () => html`<div style="inline-size: 320px">${heard()}</div>` };

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-listen src=${brokenFile()} label="A letter"></ringdown-listen>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-listen></ringdown-listen>` };

export const WithControls = withControls('ringdown-listen', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
