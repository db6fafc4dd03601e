import { levelsOf } from './sum.js';
import type { SeatSpectra } from './types.js';

/**
 * How alike the seats are. Definitions after Welti and Devantier, J. Audio Eng. Soc. 54:347 (2006), formula from memory; the
 * divisor is ours: the sum of the weights (N for equal ones).
 */
export interface SeatSpread {
  /** dB, entry (seat, frequency) at `seat * frequencies + frequency`. */
  readonly levelsDb: Float64Array;
  /** Weighted mean of the levels in dB over the seats, per frequency. */
  readonly meanDb: Float64Array;
  /** Lowest and highest seat per frequency; seats of weight 0 are left out. */
  readonly lowestDb: Float64Array;
  readonly highestDb: Float64Array;
  /** Weighted standard deviation over the seats per frequency, dB. */
  readonly deviationDb: Float64Array;
  /** Mean over frequency of the variance over seats of the level in dB, dB^2. */
  readonly meanSpatialVariance: number;
  /** Mean level over frequency and seats, dB. */
  readonly meanOutputLevelDb: number;
  /** Per seat: root mean square over frequency of its difference from the mean of the seats, dB. */
  readonly seatDeviationDb: readonly number[];
  /** Per seat: its mean level over frequency, dB. */
  readonly seatLevelDb: readonly number[];
  /** Share of all points within +/-3 and +/-5 dB of the mean of the seats: good, and workable (common practice). */
  readonly within3Db: number;
  readonly within5Db: number;
}

/** Equal weights for so many seats. */
export const equalWeights = (seatCount: number): Float64Array => new Float64Array(seatCount).fill(1);

/** @param weights One per seat, at least 0, not all 0. */
export function seatSpread(spectra: SeatSpectra, weights = equalWeights(spectra.seatCount)): SeatSpread {
  return spreadOfLevels(levelsOf(spectra), spectra.frequenciesHz.length, weights);
}

/** The same from levels in dB, entry (seat, frequency) at `seat * columns + frequency`. */
export function spreadOfLevels(levelsDb: Float64Array, columns: number, weights: Float64Array): SeatSpread {
  const seatCount = weights.length;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const meanDb = new Float64Array(columns);
  const lowestDb = new Float64Array(columns).fill(Infinity);
  const highestDb = new Float64Array(columns).fill(-Infinity);
  const deviationDb = new Float64Array(columns);
  const square = new Float64Array(seatCount);
  const level = new Float64Array(seatCount);
  let [variance, within3, within5] = [0, 0, 0];
  for (let f = 0; f < columns; f++) {
    let sum = 0;
    for (let seat = 0; seat < seatCount; seat++) sum += weights[seat] * levelsDb[seat * columns + f];
    meanDb[f] = sum / total;
    let spread = 0;
    for (let seat = 0; seat < seatCount; seat++) {
      const value = levelsDb[seat * columns + f];
      const away = value - meanDb[f];
      const weight = weights[seat] / total;
      spread += weight * away * away;
      square[seat] += (away * away) / columns;
      level[seat] += value / columns;
      if (Math.abs(away) <= 3) within3 += weight / columns;
      if (Math.abs(away) <= 5) within5 += weight / columns;
      if (weights[seat] === 0) continue;
      lowestDb[f] = Math.min(lowestDb[f], value);
      highestDb[f] = Math.max(highestDb[f], value);
    }
    deviationDb[f] = Math.sqrt(spread);
    variance += spread / columns;
  }
  return {
    levelsDb,
    meanDb,
    lowestDb,
    highestDb,
    deviationDb,
    meanSpatialVariance: variance,
    meanOutputLevelDb: meanDb.reduce((sum, value) => sum + value / columns, 0),
    seatDeviationDb: Array.from(square, Math.sqrt),
    seatLevelDb: Array.from(level),
    within3Db: within3,
    within5Db: within5,
  };
}
