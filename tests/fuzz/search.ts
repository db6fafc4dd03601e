import { Session } from 'node:inspector';
import { Rng } from '../../src/signal/index.js';
import { mutated, oneOf, pick } from './mutate.js';
import { outcomeOf, type Outcome } from './outcome.js';
import type { Reader } from './readers.js';

interface Coverage {
  readonly result: readonly {
    readonly url: string;
    readonly functions: readonly {
      readonly ranges: readonly {
        readonly startOffset: number;
        readonly endOffset: number;
        readonly count: number;
      }[];
    }[];
  }[];
}

/** Which stretches of one script have ever run, by the coverage that V8 itself keeps. */
export function coverageOf(script: string): () => number {
  const session = new Session();
  session.connect();
  const ask = (method: string, params: object = {}): unknown => {
    let answer: unknown;
    session.post(method, params, (error, value) => {
      if (error) throw error;
      answer = value;
    });
    return answer;
  };
  ask('Profiler.enable');
  ask('Profiler.startPreciseCoverage', { callCount: false, detailed: true });
  const known = new Set<string>();
  /** How many stretches ran since the last call that had never run. */
  return () => {
    let fresh = 0;
    for (const { url, functions } of (ask('Profiler.takePreciseCoverage') as Coverage).result) {
      if (!url.endsWith(script)) continue;
      for (const { ranges } of functions)
        for (const { startOffset, endOffset, count } of ranges) {
          const key = `${startOffset} ${endOffset}`;
          if (count === 0 || known.has(key)) continue;
          known.add(key);
          fresh++;
        }
    }
    return fresh;
  };
}

export interface Figures {
  inputs: number;
  results: number;
  refusals: number;
  readonly codes: Set<string>;
  corpus: number;
  stretches: number;
  slowestMilliseconds: number;
  /** Bytes of arrays per byte of input, inputs of a kilobyte and more. */
  mostTimesInput: number;
}

/** Inputs are kept as parents where they reach code that none before them reached, or a refusal that is new. */
export function* search(
  reader: Reader,
  inputs: number,
  seed: number,
  fresh: () => number,
  kept: readonly Uint8Array[],
  before: (bytes: Uint8Array) => void,
): Generator<{ readonly input: Uint8Array; readonly outcome: Outcome }, Figures> {
  const rng = new Rng(seed);
  const corpus: Uint8Array[] = [...reader.seeds, ...kept];
  const figures: Figures = {
    ...{ inputs: 0, results: 0, refusals: 0, codes: new Set<string>(), corpus: 0, stretches: 0 },
    ...{ slowestMilliseconds: 0, mostTimesInput: 0 },
  };
  fresh();
  for (let k = 0; k < inputs; k++) {
    let input: Uint8Array;
    if (k < corpus.length && k < reader.seeds.length + kept.length) input = corpus[k];
    else if (reader.make && rng.uniform() < 0.5) {
      input = reader.make(rng);
      if (rng.uniform() < 0.5) input = mutated(input, rng, corpus, reader.words);
    } else {
      // What was found last lies deepest.
      const late = rng.uniform() < 0.5 && corpus.length > 40;
      const parent = late ? corpus[corpus.length - 1 - pick(rng, 40)] : oneOf(rng, corpus);
      input = mutated(parent, rng, corpus, reader.words);
    }
    before(input);
    const outcome = outcomeOf(reader, input);
    figures.inputs++;
    if (outcome.what === 'read') figures.results++;
    else figures.refusals++;
    const stretches = fresh();
    if (stretches > 0 || !figures.codes.has(outcome.what)) corpus.push(input.slice());
    figures.stretches += stretches;
    figures.codes.add(outcome.what);
    figures.slowestMilliseconds = Math.max(figures.slowestMilliseconds, outcome.milliseconds);
    if (input.length >= 1024)
      figures.mostTimesInput = Math.max(figures.mostTimesInput, outcome.bytes / input.length);
    yield { input, outcome };
  }
  figures.corpus = corpus.length;
  return figures;
}
