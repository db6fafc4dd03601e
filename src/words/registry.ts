import type { OwnWords, Words } from './types.js';

/**
 * The languages of a page beyond English: those of ringdown that were loaded, and tables of the page's own.
 *
 * They lie on the page and not in a module, because a page may take its parts from several files: what a second script
 * adds must reach the copy that runs the elements, whichever comes first. Nothing here knows any language, so that a file
 * with one language holds no other.
 */
interface Registry {
  /** Whole languages of ringdown, by their tag in small letters. */
  readonly languages: Map<string, Words>;
  /** In the order in which they were added; a later one wins. */
  readonly own: OwnWords[];
  readonly listeners: Set<() => void>;
  /** Counts changes. */
  revision: number;
}

/** Changes when the form of the tables does, so that copies of ringdown that cannot share words keep apart. */
const formVersion = 'v1';
const place = Symbol.for('ringdown.words');

type Page = typeof globalThis & { [place]?: Record<string, Registry | undefined> };

let warned = false;

function registry(): Registry {
  const forms = ((globalThis as Page)[place] ??= {});
  return (forms[formVersion] ??= { languages: new Map(), own: [], listeners: new Set(), revision: 0 });
}

function changed(): void {
  const { listeners } = registry();
  registry().revision += 1;
  for (const listener of [...listeners]) listener();
  if (warned || Object.keys((globalThis as Page)[place] ?? {}).length < 2) return;
  warned = true;
  console.warn('ringdown: files of different versions are on this page; each keeps its own words.');
}

/** Adds one whole language of ringdown. */
export function addLanguage(words: Words): void {
  registry().languages.set(words.language.toLowerCase(), words);
  changed();
}

/** Adds a table that was checked before. */
export function addOwn(words: OwnWords): void {
  registry().own.push(words);
  changed();
}

/** Says that tables which lie elsewhere have grown. */
export const wordsGrew = (): void => changed();

export const hasLanguage = (tag: string): boolean => registry().languages.has(tag.toLowerCase());

/** Another number after each change. */
export const wordsRevision = (): number => registry().revision;

/** Calls back after each change, until the returned function is called. */
export function onWordsChange(listener: () => void): () => void {
  const { listeners } = registry();
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** `de`, `de-at` for `de-AT`: what a locale may be spoken in, the most general first. */
export function tagsOf(locale: string): string[] {
  const parts = locale.toLowerCase().split(/[-_]/);
  return parts.map((_, k) => parts.slice(0, k + 1).join('-'));
}

/** What speaks a locale, each winning over those before it: whole languages, then the page's own tables. */
export function layersOf(locale: string): { languages: readonly Words[]; own: readonly OwnWords[] } {
  const { languages, own } = registry();
  const tags = tagsOf(locale);
  return {
    languages: tags.flatMap((tag) => languages.get(tag) ?? []),
    own: tags.flatMap((tag) => own.filter(({ language }) => language.toLowerCase() === tag)),
  };
}
