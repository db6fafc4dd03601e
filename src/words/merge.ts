import { english } from './en/index.js';
import { layersOf } from './registry.js';
import { sentenceTables } from './tables.js';
import type { OwnWords, Sentence, Words } from './types.js';

type Table = Readonly<Record<string, unknown>>;

const told = new Set<string>();

/** A page's own sentence; where it throws or gives no text, what would be said without it. */
function guarded(own: unknown, below: unknown, where: string): Sentence {
  if (typeof own === 'string') return () => own;
  return (params, n) => {
    try {
      const said: unknown = (own as Sentence)(params, n);
      if (typeof said === 'string') return said;
    } catch {
      // Told below; a page must not lose its picture to a sentence.
    }
    if (!told.has(where)) console.warn(`ringdown: the page's own words for ${where} gave no text.`);
    told.add(where);
    return (typeof below === 'function' ? (below as Sentence) : english.unknown)(params, n);
  };
}

function withOwn(words: Words, own: OwnWords): Words {
  const merged: Record<string, unknown> = { ...words, language: own.language };
  for (const [name, table] of Object.entries(own)) {
    if (name === 'language') continue;
    if (name === 'unknown') {
      merged.unknown = guarded(table, words.unknown, name);
      continue;
    }
    const below = merged[name] as Table;
    const entries = Object.entries(table as Table).map(([code, value]) => [
      code,
      sentenceTables.has(name)
        ? guarded(value, Object.hasOwn(below, code) ? below[code] : undefined, `${name}.${code}`)
        : value,
    ]);
    merged[name] = { ...below, ...Object.fromEntries(entries) };
  }
  return merged as unknown as Words;
}

/**
 * The words of a locale: its language where it is there, else English; over it the page's own tables, those of the whole
 * tag over those of the language alone. What a table leaves out is said by what lies below it.
 */
export function wordsOf(locale: string): Words {
  const { languages, own } = layersOf(locale);
  const fromEnglish = layersOf('en').own;
  const base = languages.at(-1) ?? fromEnglish.reduce(withOwn, english);
  return own.filter((one) => languages.length > 0 || !fromEnglish.includes(one)).reduce(withOwn, base);
}
