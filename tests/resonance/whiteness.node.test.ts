import { describe, expect, it } from 'vitest';
import { fitResonances } from '../../src/resonance/index.js';
import { whitenessOf } from '../../src/resonance/spectrum.js';
import { Rng } from '../../src/signal/random.js';
import { makeCell, paramsOf, recordingsOf } from '../benchmark/cells.mjs';
import { drain } from './support.js';

/** Values of the periodogram of white noise: exponentially distributed. */
function exponential(count: number, seed: number): number[] {
  const rng = new Rng(seed);
  return Array.from({ length: count }, () => -Math.log(1 - rng.uniform()));
}

describe('the whiteness of what a fit leaves', () => {
  it('is 1 for white noise, within the scatter of its values, whatever its level', () => {
    for (const level of [1e-9, 1, 1e9]) {
      const powers = exponential(20000, 7).map((p) => level * p);
      expect(whitenessOf(powers)).toBeCloseTo(1, 1);
      expect(whitenessOf(powers)).toBeGreaterThan(0.98);
    }
  });

  it('goes to 0 with the share that one line holds', () => {
    const powers = exponential(400, 7);
    const withLine = (share: number) =>
      whitenessOf(powers.map((p, k) => (k === 200 ? (share / (1 - share)) * 400 : p)));
    expect(withLine(0.5)).toBeCloseTo(0.5 * whitenessOf(powers), 1);
    expect(withLine(0.99)).toBeLessThan(0.02);
  });

  it('is near 1 where the samples are what the model says, and lower where a chirp that no decay follows is in them', () => {
    const made = makeCell('S', 2, 55);
    const [recording] = recordingsOf(made);
    const fitted = drain(fitResonances([recording], paramsOf('S')));
    expect(fitted.residualWhiteness).toBeGreaterThan(0.9);
    expect(fitted.explainedEnergy).toBeGreaterThan(0.99);
    const { sampleRate, onsetSeconds } = recording;
    const peak = recording.samples.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
    const disturbed = recording.samples.map((value, n) => {
      const t = n / sampleRate - onsetSeconds;
      // From 60 to 90 Hz and back again, on and on, 20 dB below the peak.
      const phase = 2 * Math.PI * (75 * t - (15 / (2 * Math.PI * 3)) * Math.cos(2 * Math.PI * 3 * t));
      return t < 0 ? value : value + 0.1 * peak * Math.sin(phase);
    });
    const other = drain(fitResonances([{ ...recording, samples: disturbed }], paramsOf('S')));
    expect(other.residualWhiteness).toBeLessThan(fitted.residualWhiteness - 0.05);
  });
});
