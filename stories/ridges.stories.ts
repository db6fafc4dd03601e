import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom, treatedRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Ridges', component: 'ringdown-ridges' };
export default meta;

export const AModeThatHangs: StoryObj = {
  render: () => html`<ringdown-ridges src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-ridges>`,
};

export const WellTreated: StoryObj = {
  render: () =>
    html`<ringdown-ridges src=${treatedRoom()} label="Studio 1" room=${roomSize}></ringdown-ridges>`,
};

export const OnADarkPage: StoryObj = {
  render: () =>
    html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">
      <ringdown-ridges src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-ridges>
    </div>`,
};

export const InAGermanPage: StoryObj = {
  render: () =>
    html`<div lang="de">
      <ringdown-ridges src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-ridges>
    </div>`,
};

export const Narrow: StoryObj = {
  render: () =>
    html`<div style="inline-size: 358px">
      <ringdown-ridges src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-ridges>
    </div>`,
};

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-ridges src=${brokenFile()} label="A letter"></ringdown-ridges>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-ridges></ringdown-ridges>` };

export const WithControls = withControls('ringdown-ridges', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
