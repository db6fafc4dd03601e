import { createNumberWords } from './format.js';
import { wordsOf } from './merge.js';
import type { NumberWords, Sentence, Term, WordParams, Words, WordValue } from './types.js';

type Coded = { readonly code: string; readonly params: WordParams };

/** Says codes and numbers in one language, with the numbers of one locale. */
export interface Speaker {
  readonly words: Words;
  readonly n: NumberWords;
  error(error: Coded): string;
  note(note: Coded): string;
  remedy(remedy: { readonly kind: string; readonly params: WordParams }): string;
  caption(code: string, params: WordParams): string;
  view(code: string, params?: WordParams): string;
  stage(code: string): string;
  /** The name of a term, or its code where it has none. */
  term(table: TermTable, code: string): string;
  meaning(table: TermTable, code: string): string;
  label(code: string): string;
  caution(code: string): string;
}

export type TermTable =
  'resonanceKinds' | 'modeKinds' | 'constructions' | 'causes' | 'limits' | 'audible' | 'methods' | 'axes';

export interface SpeakerOptions {
  /** Between number and unit; a no-break space by default. */
  readonly space?: string;
}

/** A name or address in a sentence is no longer than this, characters. */
const mostQuoted = 160;
/** Control characters, and those that turn the direction of what follows: a file's name could rewrite its sentence. */
// eslint-disable-next-line no-control-regex
const unseen = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]+/g;

/** Parameters that are not quoted but said: sentences and lists of ours, and what the user wrote to be printed. */
const whole = new Set('sentence meaning note list parts bands names commands side change'.split(' '));

/** Texts from outside as a sentence may quote them. */
function quotable(params: WordParams): WordParams {
  const entries = Object.entries(params).map(([name, value]): [string, WordValue] => {
    if (typeof value !== 'string') return [name, value];
    if (whole.has(name)) return [name, value.replace(unseen, ' ')];
    const plain = value.slice(0, 4 * mostQuoted).replace(unseen, ' ');
    return [name, plain.length > mostQuoted ? `${plain.slice(0, mostQuoted)}…` : plain];
  });
  return Object.fromEntries(entries);
}

/**
 * @param locale BCP 47, of the page: numbers follow it; sentences do where the language is there, else they are English.
 *   Languages added later are spoken by speakers made later.
 */
export function createSpeaker(locale = 'en', options: SpeakerOptions = {}): Speaker {
  const words = wordsOf(locale);
  const n = createNumberWords(locale, options.space);
  const say = (sentences: Readonly<Record<string, Sentence>>, code: string, params: WordParams): string =>
    (Object.hasOwn(sentences, code) ? sentences[code] : words.unknown)({ code, ...quotable(params) }, n);
  const term = (table: TermTable, code: string): Term =>
    Object.hasOwn(words[table], code) ? words[table][code] : { name: code, meaning: '' };
  const short = (table: Readonly<Record<string, string>>, code: string): string =>
    Object.hasOwn(table, code) ? table[code] : code;
  return {
    words,
    n,
    error: ({ code, params }) => say(words.errors, code, params),
    note: ({ code, params }) => say(words.notes, code, params),
    remedy: ({ kind, params }) => say(words.remedies, kind, params),
    caption: (code, params) => say(words.captions, code, params),
    view: (code, params = {}) => say(words.views, code, params),
    stage: (code) => short(words.stages, code),
    term: (table, code) => term(table, code).name,
    meaning: (table, code) => term(table, code).meaning,
    label: (code) => short(words.labels, code),
    caution: (code) => short(words.cautions, code),
  };
}
