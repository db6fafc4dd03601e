import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Fitted decay', component: 'ringdown-fit' };
export default meta;

export const AModeThatHangs: StoryObj = {
  render: () => html`<ringdown-fit src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-fit>`,
};

export const OnADarkPage: StoryObj = {
  render: () =>
    html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">
      <ringdown-fit src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-fit>
    </div>`,
};

export const InAGermanPage: StoryObj = {
  render: () =>
    html`<div lang="de">
      <ringdown-fit src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-fit>
    </div>`,
};

export const RightToLeft: StoryObj = {
  render: () =>
    html`<div dir="rtl">
      <ringdown-fit src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-fit>
    </div>`,
};

export const Narrow: StoryObj = {
  render: () =>
    html`<div style="inline-size: 358px">
      <ringdown-fit src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-fit>
    </div>`,
};

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-fit src=${brokenFile()} label="A letter"></ringdown-fit>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-fit></ringdown-fit>` };

export const WithControls = withControls('ringdown-fit', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
