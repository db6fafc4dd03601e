import { inDb } from './grid-levels.js';
import type { Truncation } from './lundeby.js';
import * as maths from '../signal/maths.js';

/** Backward-integrated decay (Schroeder 1965), dB re its value at the onset. */
export interface DecayCurve {
  readonly levelsDb: Float64Array;
  readonly sampleRate: number;
  /** Of the energy added for what lies beyond the truncation, dB re the whole: nothing near it is measured. */
  readonly addedDb: number;
}

/**
 * Integrates from the truncation back to the onset. The energy beyond the truncation is added as that of the late slope
 * (Lundeby et al. 1995), or a cut file would bend down at its end; the mean power of the noise is taken off (Chu, J. Acoust.
 * Soc. Am. 63:1444, 1978, from memory), which halves what noise 35 dB down adds to T20.
 */
export function decayCurve(
  power: Float64Array,
  from: number,
  cut: Truncation,
  sampleRate: number,
): DecayCurve {
  const length = Math.max(0, cut.endIndex - from);
  const levelsDb = new Float64Array(length);
  const added = cut.lateRate > 0 ? cut.endPower / cut.lateRate : 0;
  let sum = added;
  for (let i = length - 1; i >= 0; i--) {
    sum += power[from + i] - cut.noisePower;
    levelsDb[i] = Math.max(sum, 0);
  }
  const total = sum;
  for (let i = 0; i < length; i++) levelsDb[i] = inDb(levelsDb[i] / total);
  return { levelsDb, sampleRate, addedDb: inDb(added / total) };
}

export interface DecayFit {
  /** 60 dB decay time by linear regression. */
  readonly seconds: number;
  /** Root mean square of what the line leaves, dB. */
  readonly residualDb: number;
  /** Level of the line at the onset. */
  readonly interceptDb: number;
}

/** Regression between two levels (dB, `fromDb` the higher); null where the curve does not reach down to `toDb`. */
export function regression(curve: DecayCurve, fromDb: number, toDb: number): DecayFit | null {
  const { levelsDb, sampleRate } = curve;
  let first = 0;
  while (first < levelsDb.length && levelsDb[first] > fromDb) first++;
  let last = first;
  while (last < levelsDb.length && levelsDb[last] >= toDb) last++;
  if (last >= levelsDb.length || last - first < 3) return null;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let sxy = 0;
  const n = last - first;
  for (let i = first; i < last; i++) {
    const x = i / sampleRate;
    sx += x;
    sy += levelsDb[i];
    sxx += x * x;
    sxy += x * levelsDb[i];
  }
  const slope = (n * sxy - sx * sy) / (n * sxx - sx * sx);
  if (!(slope < 0)) return null;
  const intercept = (sy - slope * sx) / n;
  let squares = 0;
  for (let i = first; i < last; i++)
    squares += maths.square(levelsDb[i] - intercept - (slope * i) / sampleRate);
  return { seconds: -60 / slope, residualDb: Math.sqrt(squares / n), interceptDb: intercept };
}

export interface TwoSlopes {
  readonly earlySeconds: number;
  readonly lateSeconds: number;
  /** Where they meet, dB below the start; the early one is read from 0 to it, the late one from it to `toDb`. */
  readonly kneeDb: number;
  readonly toDb: number;
}

/** A bend is told where the later decay is this much longer: less is what close modes do by beating. */
const leastRatio = 1.5;
/** The early slope must rest on at least this much decay, and the late one, which lies nearer to the noise, on this. */
const leastEarlyDb = 8;
const leastLateDb = 10;

/**
 * Looks for a bend upwards: the knee that two regression lines explain best. Null where one line serves.
 *
 * @param lowestDb The lowest level that still stands clear of the noise.
 */
export function twoSlopes(curve: DecayCurve, lowestDb: number): TwoSlopes | null {
  const whole = regression(curve, -1, lowestDb);
  if (!whole) return null;
  let best: { residual: number; found: TwoSlopes } | null = null;
  for (let kneeDb = -1 - leastEarlyDb; kneeDb >= lowestDb + leastLateDb; kneeDb -= 1) {
    // The sum bends over some 6 dB about the knee; each line is read clear of it.
    const early = regression(curve, -1, Math.min(kneeDb + 3, -6));
    const late = regression(curve, kneeDb - 3, lowestDb);
    if (!early || !late) continue;
    const residual = maths.square(early.residualDb) + maths.square(late.residualDb);
    if (best && residual >= best.residual) continue;
    const earlySeconds = withoutLate(curve, late)?.seconds ?? early.seconds;
    best = { residual, found: { earlySeconds, lateSeconds: late.seconds, kneeDb, toDb: lowestDb } };
  }
  if (!best || best.found.lateSeconds < leastRatio * best.found.earlySeconds) return null;
  // One line must serve clearly worse than two.
  return Math.sqrt(best.residual) < 0.5 * whole.residualDb ? best.found : null;
}

/** The early decay alone: what is left when the late line's energy is taken from the curve, read over 10 dB. */
function withoutLate(curve: DecayCurve, late: DecayFit): DecayFit | null {
  const levelsDb = curve.levelsDb.map((level, i) => {
    const lateDb = late.interceptDb - (60 * i) / curve.sampleRate / late.seconds;
    const left = maths.power(10, level / 10) - maths.power(10, lateDb / 10);
    return left > 0 ? 10 * maths.log10(left) : -200;
  });
  const top = levelsDb[0];
  return regression({ ...curve, levelsDb: levelsDb.map((level) => level - top) }, -1, -10);
}
