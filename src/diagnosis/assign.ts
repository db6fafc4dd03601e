import { munkres } from 'munkres';
import * as maths from '../signal/maths.js';

/** One possible pair of an observation and a mode, with its odds against "neither has to do with the other". */
export interface Pair {
  readonly observation: number;
  readonly mode: number;
  readonly odds: number;
}

export interface Marginals {
  /** Per pair; those of one observation, and those of one mode, add up to at most 1. */
  readonly chances: Float64Array;
  /** Natural logarithm of the sum over all one-to-one assignments of the product of their odds. */
  readonly logTotal: number;
}

const mostRounds = 60;
const settled = 1e-4;

/**
 * Chance of each pair where every mode makes at most one observation and every observation is of at most one mode:
 * the marginals of all one-to-one assignments, by belief propagation (J. L. Williams and R. A. Lau, IEEE Trans. Aerosp.
 * Electron. Syst. 50:2942, 2014; from memory), and the sum over all of them in Bethe's approximation. A best single
 * assignment would name one winner; the marginals keep what speaks for the others.
 */
export function assignmentMarginals(pairs: readonly Pair[]): Marginals {
  const observations = 1 + pairs.reduce((most, { observation }) => Math.max(most, observation), -1);
  const modes = 1 + pairs.reduce((most, { mode }) => Math.max(most, mode), -1);
  /** From a mode to an observation, and back. */
  const toObservation = new Float64Array(pairs.length);
  const toMode = new Float64Array(pairs.length).fill(1);
  const ofMode = new Float64Array(modes);
  const ofObservation = new Float64Array(observations);
  for (let round = 0; round < mostRounds; round++) {
    ofMode.fill(1);
    pairs.forEach(({ mode, odds }, k) => (ofMode[mode] += odds * toMode[k]));
    pairs.forEach(
      ({ mode, odds }, k) => (toObservation[k] = odds / Math.max(1, ofMode[mode] - odds * toMode[k])),
    );
    ofObservation.fill(1);
    pairs.forEach(({ observation }, k) => (ofObservation[observation] += toObservation[k]));
    let change = 0;
    pairs.forEach(({ observation }, k) => {
      const next = 1 / Math.max(1, ofObservation[observation] - toObservation[k]);
      change = Math.max(change, Math.abs(next - toMode[k]));
      toMode[k] = next;
    });
    if (change < settled) break;
  }
  ofMode.fill(1);
  pairs.forEach(({ mode, odds }, k) => (ofMode[mode] += odds * toMode[k]));
  const logs = (values: ArrayLike<number>): number =>
    Array.from(values).reduce((sum, v) => sum + maths.log(v), 0);
  return {
    chances: toObservation.map((message, k) => message / ofObservation[pairs[k].observation]),
    logTotal:
      logs(ofObservation) + logs(ofMode) - logs(toObservation.map((message, k) => 1 + message * toMode[k])),
  };
}

/**
 * The best one-to-one assignment of the same pairs, "none" included: that of the largest product of odds.
 *
 * @returns whether each pair is in it
 */
export function bestAssignment(pairs: readonly Pair[]): boolean[] {
  const observations = [...new Set(pairs.map(({ observation }) => observation))];
  const modes = [...new Set(pairs.map(({ mode }) => mode))];
  if (pairs.length === 0) return [];
  const row = new Map(observations.map((observation, i) => [observation, i]));
  const column = new Map(modes.map((mode, i) => [mode, i]));
  // One column of cost 0 for each observation, so that none need be paired.
  const costs = observations.map(() => new Array<number>(modes.length + observations.length).fill(0));
  for (const { observation, mode, odds } of pairs)
    costs[row.get(observation)!][column.get(mode)!] = -maths.log(Math.max(odds, 1e-12));
  const paired = new Map(munkres(costs));
  return pairs.map(
    ({ observation, mode, odds }) => odds > 1 && paired.get(row.get(observation)!) === column.get(mode),
  );
}
