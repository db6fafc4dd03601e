import { recordingFromSamples } from '../../src/signal/index.js';
import { anyCase, everythingOf } from './any-room.js';

/** Everything that came of one case, laid out one after the other: numbers and texts with where they stood. */
export interface FlatNumbers {
  readonly numbers: Float64Array;
  readonly texts: readonly string[];
  /** Path of each run of numbers and how many it holds; the numbers of one array are one run. */
  readonly runs: readonly (readonly [path: string, count: number])[];
}

/** Lays out any result; a string that is a JSON document counts as what it says. */
export function flatten(value: unknown): FlatNumbers {
  const numbers: number[] = [];
  const texts: string[] = [];
  const runs: [string, number][] = [];
  const walk = (one: unknown, path: string): void => {
    if (typeof one === 'number') {
      runs.push([path, 1]);
      numbers.push(one);
    } else if (ArrayBuffer.isView(one)) {
      const list = one as Float64Array;
      runs.push([path, list.length]);
      for (let k = 0; k < list.length; k++) numbers.push(list[k]);
    } else if (Array.isArray(one)) {
      texts.push(`${path}: ${one.length} of them`);
      one.forEach((part, k) => walk(part, `${path}/${k}`));
    } else if (typeof one === 'object' && one !== null) {
      for (const [name, part] of Object.entries(one)) walk(part, `${path}/${name}`);
    } else texts.push(`${path}: ${String(one)}`);
  };
  walk(value, '');
  return { numbers: Float64Array.from(numbers), texts, runs };
}

/** The sound of one file, as it is given to an engine: the same samples to each. */
export interface GivenSound {
  readonly label: string;
  readonly sampleRate: number;
  readonly samples: Float64Array;
}

/** What a case of any room is made of; null where it is silence, which is refused. */
export function soundsOf(seed: number): readonly GivenSound[] | null {
  try {
    return anyCase(seed).recordings.map(({ label, sampleRate, samples }) => ({ label, sampleRate, samples }));
  } catch (error) {
    if ((error as { code?: string }).code === 'silent') return null;
    throw error;
  }
}

/** Everything that is computed of them, with its document read as numbers. */
export function numbersOf(sounds: readonly GivenSound[]): FlatNumbers {
  const recordings = sounds.map(({ label, sampleRate, samples }) =>
    recordingFromSamples(samples, sampleRate, { label, timeReference: 'common' }),
  );
  const made = everythingOf({ seed: 0, sampleRate: 0, seconds: 0, scale: 1, recordings });
  const { document } = made;
  return flatten({
    ...made,
    ...(typeof document === 'string' && { document: JSON.parse(document) as unknown }),
  });
}
