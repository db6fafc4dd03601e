import { english } from './en/index.js';
import { createNumberWords } from './format.js';
import { addOwn } from './registry.js';
import { sentenceTables, termTables, textTables } from './tables.js';
import type { OwnWords, WordParams } from './types.js';

/** A table of words that cannot be taken; `message` is the sentence. */
export class WordsError extends Error {
  readonly code: string;
  readonly params: WordParams;

  constructor(code: string, params: WordParams) {
    super(english.errors[code](params, createNumberWords('en')));
    this.name = 'WordsError';
    this.code = code;
    this.params = params;
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const isTerm = (value: unknown): boolean =>
  isRecord(value) && typeof value.name === 'string' && typeof value.meaning === 'string';

/** What is wanted of an entry of a table, or null where it is that. */
function objection(table: string, value: unknown): string | null {
  if (sentenceTables.has(table))
    return typeof value === 'function' || typeof value === 'string' ? null : 'words-sentence';
  if (termTables.has(table)) return isTerm(value) ? null : 'words-term';
  return typeof value === 'string' ? null : 'words-text';
}

function languageOf(given: unknown): string {
  try {
    const [tag] = typeof given === 'string' ? Intl.getCanonicalLocales(given) : [];
    if (tag) return tag;
  } catch {
    // No tag at all, as the sentence says.
  }
  throw new WordsError('words-language', { text: typeof given === 'string' ? given : typeof given });
}

function copyOf(name: string, table: unknown): Record<string, unknown> {
  if (!isRecord(table)) throw new WordsError('words-table', { name });
  for (const [code, value] of Object.entries(table)) {
    const wrong = objection(name, value);
    if (wrong) throw new WordsError(wrong, { name, code });
  }
  return Object.fromEntries(
    Object.entries(table).map(([code, value]) => [code, isRecord(value) ? { ...value } : value]),
  );
}

/** Codes that nothing is ever said by: kept, since a table may be made for another version, but told on the console. */
function strangers(name: string, table: Record<string, unknown>): string[] {
  const known = english[name as keyof typeof english];
  return Object.keys(table)
    .filter((code) => !Object.hasOwn(known as object, code))
    .map((code) => `${name}.${code}`);
}

/**
 * Adds a language to the page, or puts a page's own words in the place of some of ringdown's: whole tables or single
 * entries by code, as in the English tables of `src/words/en`. Elements that are on the page speak anew. A table of
 * `de-AT` wins over one of `de`; what neither has is said in German where it is loaded, else in English. A sentence is a
 * function of its parameters and the numbers of the locale, or plain text; it is always shown as text, never as HTML.
 *
 * @throws WordsError `words-language`, `words-table`, `words-unknown`, `words-sentence`, `words-term`, `words-text`;
 *   nothing of the table is then taken.
 */
export function addWords(words: OwnWords): void {
  if (!isRecord(words)) throw new WordsError('words-table', { name: 'words' });
  const { language, unknown, ...tables } = words;
  const checked: Record<string, unknown> = { language: languageOf(language) };
  if (unknown !== undefined) {
    if (objection('errors', unknown))
      throw new WordsError('words-sentence', { name: 'words', code: 'unknown' });
    checked.unknown = unknown;
  }
  const strange: string[] = [];
  for (const [name, table] of Object.entries(tables)) {
    if (table === undefined) continue;
    if (!sentenceTables.has(name) && !termTables.has(name) && !textTables.has(name))
      throw new WordsError('words-unknown', {
        name,
        names: [...sentenceTables, ...termTables, ...textTables].join(', '),
      });
    const copy = copyOf(name, table);
    strange.push(...strangers(name, copy));
    checked[name] = copy;
  }
  if (strange.length > 0)
    console.warn(`ringdown: these codes of the page's own words say nothing here: ${strange.join(', ')}.`);
  addOwn(checked as unknown as OwnWords);
}
