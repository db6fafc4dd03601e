import type { StoryObj } from '@storybook/web-components-vite';

/**
 * A story whose table of controls is the element's own: every attribute can be set there, and the element follows.
 * @param tag of the element
 * @param args what it starts from, by the names of attributes
 */
export const withControls = (tag: string, args: Record<string, unknown>): StoryObj => ({
  args,
  render: (given) => {
    const element = document.createElement(tag);
    const attributes =
      (customElements.get(tag) as { observedAttributes?: readonly string[] } | undefined)
        ?.observedAttributes ?? [];
    for (const [name, value] of Object.entries(given))
      if (
        attributes.includes(name) &&
        value !== undefined &&
        value !== null &&
        value !== false &&
        value !== ''
      )
        element.setAttribute(name, value === true ? '' : String(value));
    return element;
  },
});
