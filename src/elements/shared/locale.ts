import { Scope } from '../scope.js';

/** The nearest `lang` above an element, through the shadow roots that it may stand in. */
function nearestLang(element: Element): string | null {
  const own = element.closest('[lang]')?.getAttribute('lang');
  if (own) return own;
  const root = element.getRootNode();
  return root instanceof ShadowRoot ? nearestLang(root.host) : null;
}

/** The locale in which an element speaks: of the page's markup, else of the browser. */
export const localeOf = (element: Element): string =>
  nearestLang(element) || document.documentElement.lang || navigator.language || 'en';

const listeners = new Set<() => void>();
let watching: Scope | null = null;

/** Calls back when any `lang` of the page changes, until the returned function is called; one observer for the page. */
export function onPageLanguage(listener: () => void): () => void {
  listeners.add(listener);
  if (!watching) {
    watching = new Scope();
    watching.observeMutations(
      document,
      { subtree: true, attributes: true, attributeFilter: ['lang'] },
      () => {
        for (const changed of [...listeners]) changed();
      },
    );
  }
  return () => {
    listeners.delete(listener);
    if (listeners.size > 0) return;
    watching?.dispose();
    watching = null;
  };
}
