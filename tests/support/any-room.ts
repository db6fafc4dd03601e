import { diagnosisText } from '../../src/cli/diagnosis-text.js';
import { diagnosisDocument } from '../../src/cli/json.js';
import { computeGrid, computeResponse, defaultGridParams, examine } from '../../src/decay/index.js';
import { defaultDiagnosisParams, diagnose, ridgeFit } from '../../src/diagnosis/index.js';
import { createRoom, synthesise } from '../../src/room/index.js';
import { recordingFromSamples, RingdownError, Rng, type Recording } from '../../src/signal/index.js';
import { peakOf } from '../../src/signal/level.js';
import { combineAll, optimiseSources, ridgesOfSources, transferMatrix } from '../../src/seats/index.js';
import { defaultChoices, gridParamsOf, responseParamsOf } from '../../src/study/choices.js';
import { createCommandSpeaker } from '../../src/words/command.js';
import { drain } from './drain.js';
import { notFinite } from './finite.js';

/** One case of the property: any room, rate, length, noise and scale, from its number alone. */
export interface AnyCase {
  readonly seed: number;
  readonly sampleRate: number;
  readonly seconds: number;
  readonly scale: number;
  readonly recordings: readonly Recording[];
}

const rates = [1000, 2000, 4000, 8000, 11_025, 22_050, 44_100, 48_000, 96_000];

export function anyCase(seed: number): AnyCase {
  const rng = new Rng(9000 + seed);
  const between = (from: number, to: number): number => from + (to - from) * rng.uniform();
  const room = createRoom({
    size: { lengthMetres: between(2, 14), widthMetres: between(2, 9), heightMetres: between(2, 5) },
    absorption: 10 ** between(-2.5, -0.1),
  });
  const { size } = room;
  const place = () => ({
    x: between(0, size.lengthMetres),
    y: between(0, size.widthMetres),
    z: between(0, size.heightMetres),
  });
  const sampleRate = rates[Math.floor(rng.uniform() * rates.length)];
  const seconds = Math.min(10 ** between(-1.9, 0.5), 200_000 / sampleRate);
  const scale = 10 ** between(-12, 12);
  const noiseDb = rng.uniform() < 0.3 ? null : between(-90, -5);
  const [seat, source] = [place(), place()];
  const sampled = [seat, place()].map((at, k) => {
    const one = { room, seat: at, source, sampleRate, seconds, noiseDb, seed: seed + k };
    const leadSeconds = Math.min(0.02, seconds / 4);
    return synthesise({ ...one, leadSeconds, toHz: 150 }).samples.map((value) => value * scale);
  });
  // Some of what recordings are: cut, clipped, in steps, offset, one sample of a click, the largest numbers.
  const way = Math.floor(rng.uniform() * 8);
  const largest = peakOf(sampled[0]) || 1;
  const changed = sampled.map((samples) =>
    samples.map((value, n) => {
      if (way === 0) return Math.max(-largest / 3, Math.min(largest / 3, value));
      if (way === 1) return Math.round((value / largest) * 100) * (largest / 100);
      if (way === 2) return value + 3 * largest;
      if (way === 3) return n === samples.length >> 1 ? largest : 0;
      if (way === 4) return n > samples.length / 2 ? 0 : value;
      return value;
    }),
  );
  const timeReference = 'common' as const;
  const recordings = changed.map((samples, k) =>
    recordingFromSamples(samples, sampleRate, { label: `seat ${k}`, timeReference }),
  );
  return { seed, sampleRate, seconds, scale, recordings };
}

/** What came of one step: its result, or the code of the refusal; anything else is thrown. */
function tried<T>(make: () => T): T | string {
  try {
    return make();
  } catch (error) {
    if (error instanceof RingdownError) {
      const wrong = notFinite(error.params);
      if (wrong) throw new Error(`${error.code}: ${wrong}`, { cause: error });
      return error.code;
    }
    throw error;
  }
}

/** Everything that is computed of a case, by the name of the step; figures and texts. */
export function everythingOf({ recordings }: AnyCase): Record<string, unknown> {
  const [recording] = recordings;
  const speaker = createCommandSpeaker('en');
  const diagnosis = tried(() => drain(diagnose([recording], { ...defaultDiagnosisParams, toHz: 150 })));
  const found = typeof diagnosis === 'string' ? null : diagnosis;
  const choices = { ...defaultChoices, toHz: 150 };
  const grids = ['sliding', 'cumulative', 'constant-q'] as const;
  const pair = recordings.map((one) => [one, one]);
  const frequenciesHz = Float64Array.from({ length: 30 }, (_, k) => 20 + 4 * k);
  const matrix = tried(() => drain(transferMatrix(pair, frequenciesHz)));
  const setting = { gainDb: -2, delaySeconds: 0.003, inverted: true, muted: false, bands: [] };
  return {
    examination: tried(() => drain(examine(recording))),
    ...Object.fromEntries(
      grids.map((method) => [
        method,
        tried(() =>
          drain(computeGrid(recording, { ...defaultGridParams, ...gridParamsOf({ ...choices, method }) })),
        ),
      ]),
    ),
    response: tried(() =>
      drain(computeResponse(recording, responseParamsOf({ ...choices, smoothing: '1/6' }))),
    ),
    diagnosis,
    text: found && diagnosisText(found, speaker),
    document: found && JSON.stringify(diagnosisDocument(found, speaker)),
    ridge:
      found &&
      (found.ridges.length > 0 || null) &&
      tried(() => drain(ridgeFit(recording, found.fit, found.ridges[0]))),
    matrix,
    proposal:
      typeof matrix === 'string' ? matrix : tried(() => drain(optimiseSources(matrix, { starts: 1 }))),
    combined: tried(() => drain(combineAll(pair, [setting, setting]))),
    residues: found && tried(() => drain(ridgesOfSources(found.resonances, pair))),
  };
}

/** The first number that is none, or the first text with a hole; null where all is sound. */
export function complaintOf(everything: Record<string, unknown>): string | null {
  for (const [name, value] of Object.entries(everything)) {
    const wrong = notFinite(value, name);
    if (wrong) return wrong;
    if (typeof value === 'string' && /NaN|Infinity|undefined/.test(value))
      return `${name} says ${value.slice(0, 200)}`;
  }
  return null;
}
