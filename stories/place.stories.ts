import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { roomSize, slowRoom } from './recordings.js';

const meta: Meta = { title: 'Place', component: 'ringdown-place' };
export default meta;

export const SeatAndSourceByName: StoryObj = {
  render: () =>
    html`<ringdown-study room=${roomSize}>
      <ringdown-place kind="seat" name="console" at="2.7 1.4 1.2"></ringdown-place>
      <ringdown-place kind="source" name="corner" at="0.3 0.3 0.3"></ringdown-place>
      <ringdown-recording
        src=${slowRoom()}
        label="Studio 2"
        seat="console"
        source="corner"
      ></ringdown-recording>
      <ringdown-ridges></ringdown-ridges>
    </ringdown-study>`,
};
