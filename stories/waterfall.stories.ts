import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom, treatedRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Waterfall', component: 'ringdown-waterfall' };
export default meta;

export const AModeThatHangs: StoryObj = {
  render: () =>
    html`<ringdown-waterfall src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-waterfall>`,
};

export const WellTreated: StoryObj = {
  render: () =>
    html`<ringdown-waterfall src=${treatedRoom()} label="Studio 1" room=${roomSize}></ringdown-waterfall>`,
};

export const OnADarkPage: StoryObj = {
  render: () =>
    html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">
      <ringdown-waterfall src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-waterfall>
    </div>`,
};

export const InAGermanPage: StoryObj = {
  render: () =>
    html`<div lang="de">
      <ringdown-waterfall src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-waterfall>
    </div>`,
};

export const Narrow: StoryObj = {
  render: () =>
    html`<div style="inline-size: 358px">
      <ringdown-waterfall src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-waterfall>
    </div>`,
};

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-waterfall src=${brokenFile()} label="A letter"></ringdown-waterfall>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-waterfall></ringdown-waterfall>` };

export const WithControls = withControls('ringdown-waterfall', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
