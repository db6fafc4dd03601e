import { html } from 'lit';
import type { Meta, StoryObj } from '@storybook/web-components-vite';
import { roomSize, slowRoom } from './recordings.js';

const meta: Meta = { title: 'Recording', component: 'ringdown-recording' };
export default meta;

export const InAStudy: StoryObj = {
  render: () =>
    html`<ringdown-study room=${roomSize}>
      <ringdown-recording
        src=${slowRoom()}
        label="Studio 2"
        seat="2.7 1.4 1.2"
        source="0.3 0.3 0.3"
      ></ringdown-recording>
      <ringdown-ridges></ringdown-ridges>
    </ringdown-study>`,
};
