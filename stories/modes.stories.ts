import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { brokenFile, roomSize, slowRoom } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Modes', component: 'ringdown-modes' };
export default meta;

const measured = () =>
  html`<ringdown-modes
    src=${slowRoom()}
    label="Studio 2"
    room=${roomSize}
    absorption="0.3"
  ></ringdown-modes>`;

export const AgainstARecording: StoryObj = { render: measured };

export const OfARoomAlone: StoryObj = {
  render: () => html`<ringdown-modes room=${roomSize}></ringdown-modes>`,
};

export const OfAnLShapedRoom: StoryObj = {
  render: () =>
    html`<ringdown-modes
      plan="0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5"
      height="2.5"
      walls="plasterboard-on-studs"
    ></ringdown-modes>`,
};

export const OnADarkPage: StoryObj = {
  render: () => html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">${measured()}</div>`,
};

export const InAGermanPage: StoryObj = { render: () => html`<div lang="de">${measured()}</div>` };

export const RightToLeft: StoryObj = { render: () => html`<div dir="rtl">${measured()}</div>` };

export const Narrow: StoryObj = {
  render: () => html`<div style="inline-size: 358px">${measured()}</div>`,
};

export const ARoomThatIsNone: StoryObj = {
  render: () => html`<ringdown-modes room="5.4 by 4.1"></ringdown-modes>`,
};

export const ABrokenFile: StoryObj = {
  render: () => html`<ringdown-modes src=${brokenFile()} label="A letter" room=${roomSize}></ringdown-modes>`,
};

export const NothingYet: StoryObj = { render: () => html`<ringdown-modes></ringdown-modes>` };

export const WithControls = withControls('ringdown-modes', {
  room: '5.4x4.1x2.7',
  walls: 'plasterboard-on-studs',
});
