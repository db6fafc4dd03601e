import { failureOf } from '../../study/failure.js';
import { createSpeaker } from '../../words/index.js';
import { Scope } from '../scope.js';
import { localeOf } from './locale.js';

/** Where an element would draw, the sentence that says why it cannot; what stands between its tags stays. */
function say(element: Element, thrown: unknown): void {
  const sentence = document.createElement('p');
  sentence.setAttribute('role', 'alert');
  sentence.textContent = createSpeaker(localeOf(element)).error(failureOf(thrown));
  const root = element.shadowRoot ?? element.attachShadow({ mode: 'open' });
  root.replaceChildren(sentence, document.createElement('slot'));
}

/**
 * Has a file fetched once an element that it defines is in the page: at once, or as soon as one is put there. Elements in
 * the shadow of another's are not seen.
 */
export function loadWhenUsed(
  tags: readonly string[],
  { wanted, load }: { readonly wanted: () => boolean; readonly load: () => Promise<unknown> },
): void {
  if (typeof document === 'undefined') return;
  // Live lists are cheap to ask on a page that changes all the time.
  const lists = tags.map((tag) => document.getElementsByTagName(tag));
  const scope = new Scope();
  const look = (): void => {
    if (!wanted()) scope.dispose();
    else if (lists.some(({ length }) => length > 0)) {
      scope.dispose();
      load().catch((thrown: unknown) => {
        for (const list of lists) for (const element of list) say(element, thrown);
      });
    }
  };
  scope.observeMutations(document, { childList: true, subtree: true }, look);
  look();
}
