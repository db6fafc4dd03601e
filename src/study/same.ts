/** Two fits of one recording place a resonance within this; ridges of one fit lie further apart. Hz. */
const sameFrequencyHz = 0.2;

interface AtFrequency {
  readonly frequencyHz: number;
}

/** The index of what lies in `now` at the frequency of `old[index]`, or null. */
export function sameFrequency(
  old: readonly AtFrequency[] | undefined,
  index: number | null,
  now: readonly AtFrequency[] | undefined,
): number | null {
  if (index === null || !old || !now || now.length === 0) return null;
  const apart = now.map(({ frequencyHz }) => Math.abs(frequencyHz - old[index].frequencyHz));
  const least = Math.min(...apart);
  return least <= sameFrequencyHz ? apart.indexOf(least) : null;
}

/** The old list where the new one says the same, so that who compares by identity sees no change. */
export function sameList<T>(old: readonly T[], list: readonly T[]): readonly T[] {
  return old.length === list.length && JSON.stringify(old.map(mark)) === JSON.stringify(list.map(mark))
    ? old
    : list;
}

export const sameElements = <T>(old: readonly T[], list: readonly T[]): readonly T[] =>
  old.length === list.length && old.every((value, i) => value === list[i]) ? old : list;

const marks = new WeakMap<object, number>();
let lastMark = 0;

/** Recordings are compared by identity, since their samples are long; failures by what they say. */
function mark(value: unknown): unknown {
  if (typeof value !== 'object' || value === null || !('samples' in value)) return value;
  if (!marks.has(value)) marks.set(value, ++lastMark);
  return marks.get(value);
}
