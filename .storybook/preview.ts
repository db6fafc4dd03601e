import { setCustomElementsManifest } from '@storybook/web-components-vite';
import type { Preview } from '@storybook/web-components-vite';
import manifest from '../custom-elements.json' with { type: 'json' };
import '../src/define/index.js';

setCustomElementsManifest(manifest);

const preview: Preview = {
  tags: ['autodocs'],
  parameters: {
    layout: 'padded',
    a11y: { test: 'error' },
    controls: { expanded: true },
  },
};

export default preview;
