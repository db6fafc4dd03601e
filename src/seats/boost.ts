import type { Band } from './biquad.js';
import * as maths from '../signal/maths.js';

/** Broad boosts of at most 3 dB, 4 dB at the natural roll-off (common practice). */
export const highestBoostDb = 3;
export const highestRollOffBoostDb = 4;
/** A boost narrower than this (Q) is no broad one: it would ring, and follows what a place does to a frequency. */
export const narrowestBoostQ = 1.5;
/** So far below its surroundings a seat has a null, dB. */
const nullDb = 6;

export type BoostCode = 'boost-high' | 'boost-narrow' | 'boost-null';

export interface BoostVerdict {
  /** Why the boost is refused; null where it may stand. */
  readonly refused: BoostCode | null;
  /** Highest gain that would be let pass there, dB. */
  readonly mostDb: number;
  /** Times the power, and times the cone's excursion, at its centre. */
  readonly powerTimes: number;
  readonly excursionTimes: number;
  /** Seats (index) that have a null there. */
  readonly nullSeats: readonly number[];
}

/** Levels of the seats with the frequencies they stand at: entry (seat, frequency) at `seat * columns + frequency`. */
export interface SeatLevels {
  readonly frequenciesHz: Float64Array;
  readonly levelsDb: Float64Array;
}

function meanWithin(
  { frequenciesHz, levelsDb }: SeatLevels,
  seat: number,
  fromHz: number,
  toHz: number,
): number {
  const at = seat * frequenciesHz.length;
  let [sum, count] = [0, 0];
  frequenciesHz.forEach((f, k) => {
    if (f < fromHz || f > toHz) return;
    sum += levelsDb[at + k];
    count++;
  });
  return count > 0 ? sum / count : NaN;
}

/**
 * Frequency below which the seats' mean level has fallen 6 dB below that of the rest of the band: the natural roll-off of
 * source and room; null where it does not fall within the band.
 */
export function rollOffHz(levels: SeatLevels): number | null {
  const { frequenciesHz, levelsDb } = levels;
  const columns = frequenciesHz.length;
  const seats = levelsDb.length / columns;
  const mean = (from: number, to: number): number => {
    let sum = 0;
    for (let seat = 0; seat < seats; seat++) sum += meanWithin(levels, seat, from, to) / seats;
    return sum;
  };
  const whole = mean(frequenciesHz[0] * 1.5, frequenciesHz[columns - 1]);
  const third = maths.power(2, 1 / 6);
  for (let k = columns - 1; k >= 0; k--) {
    const f = frequenciesHz[k];
    if (f > 2.5 * frequenciesHz[0]) continue;
    if (mean(f / third, f * third) < whole - 6) return f;
  }
  return null;
}

/** Seats whose level at a frequency lies 6 dB and more below the octave about it. */
export function nullSeatsAt(levels: SeatLevels, frequencyHz: number): number[] {
  const columns = levels.frequenciesHz.length;
  const seats = levels.levelsDb.length / columns;
  const near = maths.power(2, 1 / 12);
  return Array.from({ length: seats }, (_, seat) => seat).filter((seat) => {
    const here = meanWithin(levels, seat, frequencyHz / near, frequencyHz * near);
    const about = meanWithin(levels, seat, frequencyHz / Math.SQRT2, frequencyHz * Math.SQRT2);
    return here < about - nullDb;
  });
}

/** Whether a band may boost, and what it costs. Cuts are always let pass. */
export function judgeBoost({ kind, gainDb, frequencyHz, q }: Band, levels: SeatLevels | null): BoostVerdict {
  const boosts = kind !== 'all-pass' && gainDb > 0;
  const roll = levels && rollOffHz(levels);
  const atRollOff = roll !== null && frequencyHz <= 1.25 * roll;
  const mostDb = atRollOff ? highestRollOffBoostDb : highestBoostDb;
  const nullSeats = boosts && levels ? nullSeatsAt(levels, frequencyHz) : [];
  const refused: BoostCode | null = !boosts
    ? null
    : nullSeats.length > 0 && kind === 'peaking'
      ? 'boost-null'
      : gainDb > mostDb + 1e-9
        ? 'boost-high'
        : kind === 'peaking' && q > narrowestBoostQ
          ? 'boost-narrow'
          : null;
  return {
    refused,
    mostDb,
    powerTimes: boosts ? maths.power(10, gainDb / 10) : 1,
    excursionTimes: boosts ? maths.power(10, gainDb / 20) : 1,
    nullSeats,
  };
}
