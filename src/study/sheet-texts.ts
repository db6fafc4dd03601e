/** What people write on the printed sheet: nothing of it is made up, and all of it is empty until somebody types. */

/** What was decided for a ridge; empty where nobody said. */
export const actions = [
  '',
  'move-seat',
  'move-source',
  'add-source',
  'absorb',
  'cut',
  'leave',
  'measure-again',
] as const;
export type Action = (typeof actions)[number];

export const papers = ['A4', 'Letter'] as const;
export type Paper = (typeof papers)[number];

/** What is done about one ridge, told by its frequency: numbers of ridges change with every fit. */
export interface Decision {
  readonly frequencyHz: number;
  readonly action: Action;
  /** In the writer's own words: what exactly, or why not. */
  readonly note: string;
}

export interface SheetTexts {
  readonly title: string;
  readonly client: string;
  readonly author: string;
  readonly date: string;
  readonly notes: string;
  readonly paper: Paper;
  readonly decisions: readonly Decision[];
}

export const emptyTexts: SheetTexts = {
  title: '',
  client: '',
  author: '',
  date: '',
  notes: '',
  paper: 'A4',
  decisions: [],
};

/** Two fits of one ridge lie no further apart than this, as a share of its frequency. */
const sameShare = 0.015;

const near = (a: number, b: number): boolean => Math.abs(a / b - 1) <= sameShare;

/** The decision that was noted for a ridge; null where there is none. */
export function decisionFor({ decisions }: SheetTexts, frequencyHz: number): Decision | null {
  let best: Decision | null = null;
  for (const one of decisions) {
    if (!near(one.frequencyHz, frequencyHz)) continue;
    if (!best || Math.abs(one.frequencyHz - frequencyHz) < Math.abs(best.frequencyHz - frequencyHz))
      best = one;
  }
  return best;
}

/** The texts with one decision changed; one that says nothing is dropped. */
export function withDecision(texts: SheetTexts, frequencyHz: number, change: Partial<Decision>): SheetTexts {
  const known = decisionFor(texts, frequencyHz);
  const next: Decision = { action: '', note: '', ...known, ...change, frequencyHz };
  const others = texts.decisions.filter((one) => one !== known);
  const says = next.action !== '' || next.note !== '';
  return {
    ...texts,
    decisions: says ? [...others, next].sort((a, b) => a.frequencyHz - b.frequencyHz) : others,
  };
}
