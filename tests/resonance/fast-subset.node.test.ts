import { describe, expect, it } from 'vitest';
import { fitResonances } from '../../src/resonance/index.js';
import { makeSet } from '../benchmark/synth.mjs';
import { estimatesOf, readTruth, score, together } from '../benchmark/score.mjs';
import { drain } from './support.js';

/** Seeds 1 to 4 of three sets at 55 dB: the part of the modal benchmark that runs with every change. */
const truth = readTruth();

function cell(kind: string, volumeCubicMetres: number) {
  return together(
    [1, 2, 3, 4].map((seed) => {
      const { irs, arrivals, sampleRate } = makeSet(kind, seed, 55);
      const recordings = irs.map((samples, k) => ({
        samples,
        sampleRate,
        onsetSeconds: arrivals[k] / sampleRate,
      }));
      const { resonances } = drain(fitResonances(recordings, { fromHz: 15, toHz: 205, volumeCubicMetres }));
      return score(estimatesOf(resonances), truth.get(`${kind} 55 ${seed}`) ?? []);
    }),
  );
}

describe('the fast subset of the modal benchmark', () => {
  it.each([
    ['S', 0],
    ['P', 0],
    ['R', 58.7],
  ])('set %s at 55 dB: every identifiable mode, near the Cramer-Rao bound', (kind, volume) => {
    const { identifiable, recall, zf, zT, outliers, wrong } = cell(kind, volume);
    expect(identifiable).toBeGreaterThan(2);
    expect(recall).toBeGreaterThanOrEqual(0.98);
    expect(zf).toBeLessThanOrEqual(1.6);
    expect(zT).toBeLessThanOrEqual(1.6);
    expect(outliers).toBe(0);
    expect(wrong).toBeLessThanOrEqual(0.5);
  });
});
