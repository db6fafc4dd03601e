import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fitResonances, type Resonance } from '../../src/resonance/index.js';
import { makeCell, paramsOf, recordingsOf } from '../benchmark/cells.mjs';
import { drain } from './support.js';

/** As tests/reference/numpy_prototype.py writes it: frequency (Hz), its sd, decay time (s), its relative sd. */
type Told = readonly [frequencyHz: number, frequencySd: number, seconds: number, logSd: number];
interface Kept {
  readonly recordings: readonly {
    readonly set: string;
    readonly seed: number;
    readonly confident: readonly Told[];
    readonly others: readonly Told[];
  }[];
}

const kept = JSON.parse(
  readFileSync(new URL('../reference/numpy_prototype.json', import.meta.url), 'utf8'),
) as Kept;

/** Differences in standard deviations of the difference. */
function differences(one: Resonance, [f, sf, seconds, logSd]: Told): [zf: number, zT: number] {
  const { frequencyHz, frequencySdHz, decayTimeSeconds: T, decayTimeSdSeconds: sd } = one;
  if (T === null || sd === null) return [Infinity, Infinity];
  return [
    (frequencyHz - f) / Math.hypot(sf, frequencySdHz),
    Math.log(T / seconds) / Math.hypot(logSd, sd / T),
  ];
}

const size = ([zf, zT]: readonly [number, number]): number => Math.max(Math.abs(zf), Math.abs(zT));
const least = (all: readonly (readonly [number, number])[]): readonly [number, number] =>
  [...all].sort((a, b) => size(a) - size(b))[0];

describe('the engine and the NumPy prototype of the benchmark, on the same twelve recordings', () => {
  const pairs = kept.recordings.map((recording) => {
    const { set, seed } = recording;
    const { resonances } = drain(fitResonances(recordingsOf(makeCell(set, seed, 55)), paramsOf(set)));
    return { ...recording, resonances };
  });

  it('what the prototype is confident of, the engine finds within two standard deviations of the difference', () => {
    const found = pairs.flatMap(({ confident, resonances }) =>
      confident.map((told) => least(resonances.map((one) => differences(one, told)))),
    );
    expect(found.length).toBeGreaterThan(100);
    expect(Math.max(...found.map(size))).toBeLessThan(2);
    // Both read the same samples, so that they share most of their errors.
    for (const k of [0, 1] as const)
      expect(Math.sqrt(found.reduce((sum, z) => sum + z[k] ** 2, 0) / found.length)).toBeLessThan(0.6);
  });

  it('what the engine calls resolved, the prototype has too', () => {
    const found = pairs.flatMap(({ confident, others, resonances }) =>
      resonances
        .filter(({ kind, frequencyHz: f }) => kind === 'resolved' && f > 18 && f < 200)
        .map((one) => least([...confident, ...others].map((told) => differences(one, told)))),
    );
    expect(found.length).toBeGreaterThan(80);
    expect(Math.max(...found.map(size))).toBeLessThan(2.5);
  });
});
