import { expect } from 'vitest';
import { fitResonances } from '../../src/resonance/index.js';
import { Rng } from '../../src/signal/index.js';
import { drain } from './drain.js';
import { fdtd, type FdtdParams } from './fdtd.js';

/** Decay time of the mode nearest to a frequency, as the engine reads it from the samples of the model. */
export function measuredDecay(params: FdtdParams, nearHz: number): number {
  const { samples, sampleRate } = fdtd(params);
  const onsetSeconds = Math.hypot(...params.source.map((a, k) => a - params.receiver[k])) / params.speed;
  const rng = new Rng(3);
  const peak = Math.max(...samples.map(Math.abs));
  for (let n = 0; n < samples.length; n++) samples[n] += 1e-4 * peak * rng.gaussian();
  const { resonances } = drain(
    fitResonances([{ samples, sampleRate, onsetSeconds }], {
      fromHz: 20,
      toHz: 120,
      volumeCubicMetres: null,
    }),
  );
  // The loudest within 3 %: what is near it in frequency alone may be a remnant.
  const near = resonances
    .filter(({ frequencyHz, kind }) => kind !== 'hum' && Math.abs(frequencyHz / nearHz - 1) < 0.03)
    .sort((a, b) => b.levelDb - a.levelDb);
  expect(near.length).toBeGreaterThan(0);
  return near[0].decayTimeSeconds!;
}
