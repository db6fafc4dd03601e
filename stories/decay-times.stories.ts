import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Decay times', component: 'ringdown-decay-times' };
export default meta;

export const AModeThatHangs: StoryObj = {
  render: () =>
    html`<ringdown-decay-times src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-decay-times>`,
};

export const OnADarkPage: StoryObj = {
  render: () =>
    html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">
      <ringdown-decay-times src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-decay-times>
    </div>`,
};

export const InAGermanPage: StoryObj = {
  render: () =>
    html`<div lang="de">
      <ringdown-decay-times src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-decay-times>
    </div>`,
};

export const RightToLeft: StoryObj = {
  render: () =>
    html`<div dir="rtl">
      <ringdown-decay-times src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-decay-times>
    </div>`,
};

export const Narrow: StoryObj = {
  render: () =>
    html`<div style="inline-size: 358px">
      <ringdown-decay-times src=${slowRoom()} label="Studio 2" room=${roomSize}></ringdown-decay-times>
    </div>`,
};

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-decay-times src=${brokenFile()} label="A letter"></ringdown-decay-times>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-decay-times></ringdown-decay-times>` };

export const WithControls = withControls('ringdown-decay-times', {
  src: slowRoom(),
  label: 'Studio 2',
  room: '5.4x4.1x2.7',
});
