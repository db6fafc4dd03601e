import type { TransferMatrix } from './types.js';
import * as maths from '../signal/maths.js';

/** How alike two recordings of the same point are: what no setting can be told from. */
export interface Repeatability {
  /** Root mean square over frequency of their difference in level, dB. */
  readonly levelDb: number;
  /** The largest. */
  readonly worstDb: number;
  /** Mean spatial variance that a difference of this size makes by itself, dB^2. */
  readonly varianceDb2: number;
  /** Pairs compared. */
  readonly pairs: number;
}

/**
 * Repeatability from a matrix whose sources are the points and whose seats are their repeats (two columns). The variance of
 * one level is half that of the difference of two.
 *
 * @returns null where there is no pair
 */
export function repeatability(matrix: TransferMatrix): Repeatability | null {
  const { re, im, frequenciesHz, sourceCount, seatCount } = matrix;
  if (seatCount < 2 || sourceCount === 0) return null;
  const columns = frequenciesHz.length;
  let [sum, worst, count] = [0, 0, 0];
  for (let point = 0; point < sourceCount; point++) {
    const at = point * seatCount * columns;
    for (let f = 0; f < columns; f++) {
      const level = (seat: number): number => {
        const k = at + seat * columns + f;
        return 10 * maths.log10(Math.max(1e-30, maths.square(re[k]) + maths.square(im[k])));
      };
      const difference = level(1) - level(0);
      sum += maths.square(difference);
      worst = Math.max(worst, Math.abs(difference));
      count++;
    }
  }
  return {
    levelDb: Math.sqrt(sum / count),
    worstDb: worst,
    varianceDb2: sum / count / 2,
    pairs: sourceCount,
  };
}

/** Whether a fall of the spread is larger than what repeats of a point differ by (two standard deviations). */
export const beyondRepeats = (
  before: number,
  after: number,
  repeats: Repeatability | null,
): boolean | null => (repeats === null ? null : before - after > 2 * repeats.varianceDb2);
