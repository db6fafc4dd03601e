import { backSolve, cholesky, forwardSolve } from './linear.js';
import { decayRate } from './poles.js';
import type { BandLevels } from './spectrum.js';

/** Prediction-error filter, leading 1. Of length 1: no whitening. */
export type Whitener = Float64Array;

export const noWhitener: Whitener = Float64Array.of(1);

const order = 8;

/** The prediction-error filter of an autoregressive model of a smoothed spectrum, through its autocorrelation. */
export function whitenerOf({ centresHz, levels }: BandLevels, sampleRate: number): Whitener {
  const points = 256;
  const correlation = new Float64Array(order + 1);
  for (let k = 0; k < points; k++) {
    const f = ((k + 0.5) * sampleRate) / 2 / points;
    let i = 0;
    while (i < centresHz.length - 2 && centresHz[i + 1] < f) i++;
    const share = Math.min(1, Math.max(0, (f - centresHz[i]) / (centresHz[i + 1] - centresHz[i])));
    const level = Math.exp(levels[i] + share * (levels[i + 1] - levels[i]));
    for (let lag = 0; lag <= order; lag++)
      correlation[lag] += (level * Math.cos((Math.PI * lag * (k + 0.5)) / points)) / points;
  }
  correlation[0] *= 1.01;
  const matrix = new Float64Array(order * order);
  const solution = new Float64Array(order);
  for (let i = 0; i < order; i++) {
    solution[i] = -correlation[i + 1];
    for (let j = 0; j < order; j++) matrix[i * order + j] = correlation[Math.abs(i - j)];
  }
  if (!cholesky(matrix, order)) return noWhitener;
  forwardSolve(matrix, order, solution, 0);
  backSolve(matrix, order, solution, 0);
  return Float64Array.from([1, ...solution]);
}

/** Runs the filter backwards in time, so that exponentials stay exact: sum of a[k] y[n + k]. */
export function whitenBackwards(samples: Float64Array, whitener: Whitener): Float64Array {
  if (whitener.length === 1) return samples;
  const length = Math.max(0, samples.length - whitener.length + 1);
  return Float64Array.from({ length }, (_, n) => {
    let sum = 0;
    for (let k = 0; k < whitener.length; k++) sum += whitener[k] * samples[n + k];
    return sum;
  });
}

/** Takes the whitener's gain for one pole out of its amplitude. */
export function unwhiten(
  whitener: Whitener,
  sampleRate: number,
  frequencyHz: number,
  logDecay: number,
  a: number,
  b: number,
): [number, number] {
  let gr = 0;
  let gi = 0;
  for (let k = 0; k < whitener.length; k++) {
    const size = whitener[k] * Math.exp((-decayRate(logDecay) * k) / sampleRate);
    const angle = (2 * Math.PI * frequencyHz * k) / sampleRate;
    gr += size * Math.cos(angle);
    gi += size * Math.sin(angle);
  }
  const square = gr * gr + gi * gi;
  return [(a * gr + b * gi) / square, (b * gr - a * gi) / square];
}
