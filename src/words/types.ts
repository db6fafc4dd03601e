/** What a sentence is made of: numbers and names, never text that is already in one language. */
export type WordValue = string | number | boolean | null | undefined;
export type WordParams = Readonly<Record<string, WordValue>>;

/** Numbers and units of one locale. What is no finite number gives a dash. */
export interface NumberWords {
  readonly locale: string;
  /** A fixed number of decimals. */
  number(value: WordValue, decimals?: number): string;
  /** At most so many significant digits, no trailing zeros. */
  significant(value: WordValue, digits?: number): string;
  hertz(value: WordValue, decimals?: number): string;
  /** Two decimals; milliseconds below 0.1 s. */
  seconds(value: WordValue, decimals?: number): string;
  decibels(value: WordValue, decimals?: number): string;
  metres(value: WordValue, decimals?: number): string;
  /** From a fraction: 0.25 is 25 %. */
  percent(fraction: WordValue, decimals?: number): string;
  /** `48.03 ± 0.05`, with the decimals that the uncertainty deserves (two significant digits of it). */
  plusMinus(value: WordValue, sd: WordValue, unit?: string): string;
  integer(value: WordValue): string;
  /** Names and counts as they are. */
  text(value: WordValue): string;
}

export type Sentence = (params: WordParams, n: NumberWords) => string;

/** One language: tables by code. A code without an entry is an error of ours, found by a test. */
export interface Words {
  /** BCP 47. */
  readonly language: string;
  readonly errors: Readonly<Record<string, Sentence>>;
  readonly notes: Readonly<Record<string, Sentence>>;
  readonly remedies: Readonly<Record<string, Sentence>>;
  readonly captions: Readonly<Record<string, Sentence>>;
  /** What elements say around their pictures and tables. */
  readonly views: Readonly<Record<string, Sentence>>;
  /** Short names: progress stages, kinds, causes, limits, methods. */
  readonly stages: Readonly<Record<string, string>>;
  readonly resonanceKinds: Readonly<Record<string, Term>>;
  readonly modeKinds: Readonly<Record<string, Term>>;
  readonly constructions: Readonly<Record<string, Term>>;
  readonly causes: Readonly<Record<string, Term>>;
  readonly axes: Readonly<Record<string, Term>>;
  readonly limits: Readonly<Record<string, Term>>;
  readonly audible: Readonly<Record<string, Term>>;
  readonly methods: Readonly<Record<string, Term>>;
  readonly cautions: Readonly<Record<string, string>>;
  /** Column heads, buttons, short labels. */
  readonly labels: Readonly<Record<string, string>>;
  /** Said where a code has no sentence: never blank, never a stack trace. */
  readonly unknown: Sentence;
}

/** A sentence of a page's own: made from its parameters, or always the same text. */
export type OwnSentence = Sentence | string;
type OwnSentences = Readonly<Record<string, OwnSentence>>;

/** Some words of a language, to be said in place of ringdown's: any tables, any codes of them. */
export type OwnWords = Partial<Omit<Words, 'language' | 'unknown' | SentenceTable>> & {
  /** BCP 47: a language ("de"), or one with its region ("de-AT"). */
  readonly language: string;
  readonly unknown?: OwnSentence;
} & { readonly [name in SentenceTable]?: OwnSentences };

type SentenceTable = 'errors' | 'notes' | 'remedies' | 'captions' | 'views';

/** A short name for a table cell and one sentence that says what it means. */
export interface Term {
  readonly name: string;
  readonly meaning: string;
}
