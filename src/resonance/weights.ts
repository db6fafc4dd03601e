import { ln1000 } from './poles.js';
import * as maths from '../signal/maths.js';

/**
 * Weights, 1 over the noise variance, per sample: exponential from knot to knot, so that all inner products of decaying
 * exponentials under them are geometric series.
 */
export interface Weights {
  /** Sample index of each knot, ascending from 0; the last is the number of samples. */
  readonly knots: readonly number[];
  /** Weight at each knot. */
  readonly levels: readonly number[];
  /** Per sample. */
  readonly squares: Float64Array;
}

export const flatWeights = (count: number): Weights => ({
  knots: [0, count],
  levels: [1, 1],
  squares: new Float64Array(count).fill(1),
});

/**
 * Where ln(1 + e^-s) is bent, s being the number of nepers that the floor stands above the diffuse decay: straight
 * lines between these stay within 6 % of it (2 % where it matters little).
 */
const bends = [-4.5, -2.6, -1, 0.4, 1.9, 4.5] as const;

/**
 * Weights for noise of variance floor (1 + diffuse exp(-2 ln1000 t / decaySeconds)).
 *
 * @param count Number of samples.
 */
export function noiseWeights(
  floor: number,
  diffuse: number,
  decaySeconds: number,
  count: number,
  sampleRate: number,
): Weights {
  const rate = (2 * ln1000) / (decaySeconds * sampleRate);
  const variance = (n: number): number => floor * (1 + diffuse * maths.exp(-rate * n));
  const inner = bends
    .map((s) => Math.round((s + maths.log(Math.max(diffuse, 1e-300))) / rate))
    .filter((n) => n > 0 && n < count);
  const knots = [...new Set([0, ...inner, count])];
  const levels = knots.map((n) => 1 / variance(n));
  const squares = new Float64Array(count);
  for (let q = 0; q + 1 < knots.length; q++) {
    const slope = maths.log(levels[q + 1] / levels[q]) / (knots[q + 1] - knots[q]);
    maths.powers(levels[q], slope, squares, knots[q], knots[q + 1]);
  }
  return { knots, levels, squares };
}
