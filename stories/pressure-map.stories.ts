import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { roomSize } from './recordings.js';
import { withControls } from './controls.js';

const meta: Meta = { title: 'Pressure map', component: 'ringdown-pressure-map' };
export default meta;

const furnished = () =>
  html`<ringdown-study room=${roomSize} absorption="0.1" no-files>
    <ringdown-place kind="seat" name="console" at="3.7 1.4 1.2"></ringdown-place>
    <ringdown-place kind="seat" name="guests" at="2.7 3.1 1.2"></ringdown-place>
    <ringdown-place kind="source" name="left" at="0.4 0.5 0.9"></ringdown-place>
    <ringdown-pressure-map></ringdown-pressure-map>
  </ringdown-study>`;

export const WithSeatsAndSources: StoryObj = { render: furnished };

export const OfARoomAlone: StoryObj = {
  render: () => html`<ringdown-pressure-map room=${roomSize}></ringdown-pressure-map>`,
};

export const OfAnLShapedRoom: StoryObj = {
  render: () =>
    html`<ringdown-pressure-map plan="0,0 6,0 6,3.2 2.5,3.2 3.5,5 0,5" height="2.5"></ringdown-pressure-map>`,
};

export const BesideTheRoomAndItsModes: StoryObj = {
  render: () =>
    html`<ringdown-study room=${roomSize} no-files>
      <ringdown-place kind="seat" name="console" at="3.7 1.4 1.2"></ringdown-place>
      <ringdown-place kind="source" name="left" at="0.4 0.5 0.9"></ringdown-place>
      <ringdown-room></ringdown-room>
      <ringdown-modes></ringdown-modes>
      <ringdown-pressure-map></ringdown-pressure-map>
    </ringdown-study>`,
};

export const TheRoom: StoryObj = {
  render: () =>
    html`<ringdown-study plan="0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5" height="2.5" no-files>
      <ringdown-place kind="seat" name="console" at="3.2 2 1.2"></ringdown-place>
      <ringdown-place kind="source" name="left" at="0.4 0.5 0.9"></ringdown-place>
      <ringdown-pressure-map view="room"></ringdown-pressure-map>
    </ringdown-study>`,
};

export const OnADarkPage: StoryObj = {
  render: () => html`<div style="background: #15191c; color: #dde2e1; padding: 1.5rem">${furnished()}</div>`,
};

export const InAGermanPage: StoryObj = { render: () => html`<div lang="de">${furnished()}</div>` };

export const Narrow: StoryObj = {
  render: () => html`<div style="inline-size: 358px">${furnished()}</div>`,
};

export const ARoomThatIsNone: StoryObj = {
  render: () => html`<ringdown-pressure-map room="5.4 by 4.1"></ringdown-pressure-map>`,
};

export const WithControls = withControls('ringdown-pressure-map', {
  room: '5.4x4.1x2.7',
  walls: 'plasterboard-on-studs',
});
