import { expect, it } from 'vitest';
import { boundOf } from '../benchmark/bound.mjs';
import { readTruth } from '../benchmark/score.mjs';
import { makeSet } from '../benchmark/synth.mjs';

/** The published table was made with NumPy, by the same definition. */
it.each([
  ['S', 55, 1],
  ['P', 55, 3],
  ['R', 40, 1],
  ['R', 70, 1],
])('the Cramer-Rao bound of set %s at %d dB, seed %d, is that of the published table', (kind, snr, seed) => {
  const truth = readTruth().get(`${kind} ${snr} ${seed}`)!;
  const bound = boundOf(makeSet(kind, seed, snr));
  let compared = 0;
  for (const mode of truth) {
    const own = bound.find(({ f, T }) => Math.abs(f - mode.f) < 1e-3 && Math.abs(T - mode.T) < 1e-3)!;
    if (mode.rho > 5) expect(Math.abs(own.rho - mode.rho)).toBeLessThan(0.1);
    if (mode.sf > 0.167 || mode.sT > 0.05) continue;
    compared++;
    expect(Math.abs(own.sf / mode.sf - 1)).toBeLessThan(0.02);
    expect(Math.abs(own.sT / mode.sT - 1)).toBeLessThan(0.02);
  }
  expect(compared).toBeGreaterThan(0);
});
