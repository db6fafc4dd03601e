import type { Weights } from './gram.js';
import { backSolve, cholesky, forwardSolve } from './linear.js';
import { ln1000 } from './poles.js';

export const flatWeights = (count: number): Weights => ({
  scales: Float64Array.of(1),
  rates: Float64Array.of(0),
  squares: new Float64Array(count).fill(1),
});

/** Number of exponentials less one, and their spacing in units of the diffuse decay's amplitude rate; tried in turn. */
const trials: readonly (readonly [number, number])[] = [
  [3, 1],
  [4, 1],
  [5, 1],
  [4, 0.6],
  [5, 0.6],
  [6, 0.6],
  [6, 1],
  [7, 0.6],
  [7, 1],
  [3, 0.6],
  [2, 0.6],
  [6, 0.4],
  [7, 0.4],
  [5, 1.5],
  [8, 0.5],
  [8, 0.8],
];

/**
 * Weights 1 / variance(t) as a sum of exponentials, by relative least squares. Accepted where they stay within a factor
 * of 0.25 to 2.5 of the wanted ones: weights need not be exact for the fit to be unbiased. Flat weights at the mean
 * level where no trial is good enough.
 *
 * @param variance Per sample.
 * @param decaySeconds 60 dB decay time of the diffuse part.
 */
export function exponentialWeights(
  variance: Float64Array,
  sampleRate: number,
  decaySeconds: number,
): Weights {
  for (const [degree, spacing] of trials) {
    const weights = fitted(variance, sampleRate, (spacing * ln1000) / decaySeconds, degree + 1);
    if (weights) return weights;
  }
  const mean = variance.reduce((sum, v) => sum + v, 0) / variance.length;
  const flat = flatWeights(variance.length);
  return { scales: Float64Array.of(1 / mean), rates: flat.rates, squares: flat.squares.fill(1 / mean) };
}

function fitted(variance: Float64Array, sampleRate: number, rate: number, terms: number): Weights | null {
  const matrix = new Float64Array(terms * terms);
  const scales = new Float64Array(terms);
  const row = new Float64Array(terms);
  for (let n = 0; n < variance.length; n++) {
    const x = Math.exp((-rate * n) / sampleRate);
    let value = variance[n];
    for (let q = 0; q < terms; q++) {
      row[q] = value;
      value *= x;
    }
    for (let i = 0; i < terms; i++) {
      scales[i] += row[i];
      for (let j = 0; j <= i; j++) matrix[i * terms + j] += row[i] * row[j];
    }
  }
  for (let i = 0; i < terms; i++) matrix[i * terms + i] *= 1 + 1e-10;
  if (!cholesky(matrix, terms)) return null;
  forwardSolve(matrix, terms, scales, 0);
  backSolve(matrix, terms, scales, 0);
  const squares = new Float64Array(variance.length);
  for (let n = 0; n < variance.length; n++) {
    const x = Math.exp((-rate * n) / sampleRate);
    let value = 0;
    for (let q = terms - 1; q >= 0; q--) value = value * x + scales[q];
    const share = value * variance[n];
    if (!(share > 0.25 && share < 2.5)) return null;
    squares[n] = value;
  }
  return { scales, rates: Float64Array.from({ length: terms }, (_, q) => q * rate), squares };
}
