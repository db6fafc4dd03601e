/** One warning says it of all elements of a copy. */
let warned = false;

/**
 * Registers an element unless its name is taken. A second copy of the library on a page warns and leaves the first in
 * place: throwing would stop the page's other scripts. Without a registry, as in Node, nothing happens.
 */
export function defineElement(tag: string, element: CustomElementConstructor): void {
  if (typeof customElements === 'undefined') return;
  const there = customElements.get(tag);
  if (there === element) return;
  if (there) {
    if (!warned)
      console.warn(
        `ringdown: <${tag}> is already defined by another copy of the library, which stays; of this one only what is missing is used.`,
      );
    warned = true;
    return;
  }
  customElements.define(tag, element);
}
