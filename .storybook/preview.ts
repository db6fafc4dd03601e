import { setCustomElementsManifest } from '@storybook/web-components-vite';
import type { Preview } from '@storybook/web-components-vite';
import manifest from '../custom-elements.json' with { type: 'json' };
import '../src/define/index.js';

interface Typed {
  name?: string;
  type?: { text: string };
}
interface Declared {
  attributes?: Typed[];
  members?: (Typed & { attribute?: string })[];
}

/** Attributes are text to a page whatever their property may hold, and a field for text is what sets them. */
const typeOf = (text: string): string => (/boolean/.test(text) ? 'boolean' : 'string');
// Its type is known only where it has been made.
const made: unknown = manifest;
for (const { declarations = [] } of (made as { modules: { declarations?: Declared[] }[] }).modules)
  for (const declaration of declarations) {
    for (const attribute of declaration.attributes ?? [])
      if (attribute.type) attribute.type = { text: typeOf(attribute.type.text) };
    // The same again as a property would stand twice in the table.
    declaration.members = declaration.members?.filter(({ attribute }) => !attribute);
  }
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
