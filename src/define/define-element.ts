/**
 * Registers an element unless its name is taken. A second copy of the library on a page warns and leaves the first in
 * place: throwing would stop the page's other scripts. Without a registry, as in Node, nothing happens.
 */
export function defineElement(tag: string, element: CustomElementConstructor): void {
  if (typeof customElements === 'undefined') return;
  const there = customElements.get(tag);
  if (there === element) return;
  if (there) {
    console.warn(`ringdown: <${tag}> is already defined by another copy; this one is not used.`);
    return;
  }
  customElements.define(tag, element);
}
