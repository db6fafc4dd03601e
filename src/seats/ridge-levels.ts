import { ln1000 } from '../resonance/poles.js';
import { responseAt } from '../signal/filters.js';
import type { Recording } from '../signal/types.js';
import type { Resonance } from '../resonance/types.js';
import { sectionsOf } from './biquad.js';
import { filterSampleRate } from './sum.js';
import type { SourceSetting } from './types.js';
import * as maths from '../signal/maths.js';

/**
 * One ridge as every source drives it at every seat: complex amplitudes at time zero of the common clock, in units of the
 * response (an amplitude A with damping d is A times rate / 2d, its level at its own frequency). Entry (source, seat) at
 * `source * seatCount + seat`.
 */
export interface SharedRidge {
  readonly frequencyHz: number;
  readonly decayTimeSeconds: number;
  readonly sourceCount: number;
  readonly seatCount: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/**
 * Ridges of a joint fit on the recordings' common clock. Each recording's amplitude and phase stand at its own onset; here
 * they are carried back to the clock's zero.
 *
 * @param grid `grid[source][seat]`: index of the recording of that point in the fit.
 */
export function sharedRidges(
  resonances: readonly Resonance[],
  recordings: readonly Pick<Recording, 'onsetSeconds' | 'sampleRate' | 'reduced'>[],
  grid: readonly (readonly number[])[],
): SharedRidge[] {
  const seatCount = grid[0]?.length ?? 0;
  return resonances.flatMap((resonance): SharedRidge[] => {
    const { frequencyHz, decayTimeSeconds, kind } = resonance;
    if (decayTimeSeconds === null || kind === 'hum' || kind === 'source') return [];
    const damping = ln1000 / decayTimeSeconds;
    const re = new Float64Array(grid.length * seatCount);
    const im = new Float64Array(grid.length * seatCount);
    grid.forEach((seats, source) =>
      seats.forEach((index, seat) => {
        const { onsetSeconds, sampleRate, reduced } = recordings[index];
        const at = onsetSeconds + (reduced?.startSeconds ?? 0);
        const rate = reduced?.sampleRate ?? sampleRate;
        const size = (resonance.amplitudes[index] * maths.exp(damping * at) * rate) / (2 * damping);
        const phase = resonance.phasesRadians[index] - 2 * Math.PI * frequencyHz * at;
        re[source * seatCount + seat] = size * maths.cos(phase);
        im[source * seatCount + seat] = size * maths.sin(phase);
      }),
    );
    return [{ frequencyHz, decayTimeSeconds, sourceCount: grid.length, seatCount, re, im }];
  });
}

/**
 * Complex factor that a setting puts on a decaying sine exp((-damping + j 2 pi f) t): a delay holds back the decay too, and
 * a filter whose zero lies on the pole takes it away altogether.
 */
export function factorOnDecay(
  setting: SourceSetting,
  frequencyHz: number,
  damping: number,
  sampleRate = filterSampleRate,
): [number, number] {
  if (setting.muted) return [0, 0];
  const grown = maths.exp(damping / sampleRate);
  const w = (2 * Math.PI * frequencyHz) / sampleRate;
  const [hr, hi] = responseAt(
    sectionsOf(setting.bands, sampleRate),
    grown * maths.cos(w),
    -grown * maths.sin(w),
  );
  const { gainDb, inverted, delaySeconds } = setting;
  const size = (inverted ? -1 : 1) * maths.power(10, gainDb / 20) * maths.exp(damping * delaySeconds);
  const angle = -2 * Math.PI * frequencyHz * delaySeconds;
  const [c, s] = [size * maths.cos(angle), size * maths.sin(angle)];
  return [hr * c - hi * s, hr * s + hi * c];
}

/** Level of a ridge at each seat with all sources playing through their settings, dB in units of the response. */
export function ridgeLevels(ridge: SharedRidge, settings: readonly SourceSetting[]): Float64Array {
  const { frequencyHz, decayTimeSeconds, seatCount } = ridge;
  const re = new Float64Array(seatCount);
  const im = new Float64Array(seatCount);
  settings.forEach((setting, source) => {
    const [fr, fi] = factorOnDecay(setting, frequencyHz, ln1000 / decayTimeSeconds);
    for (let seat = 0; seat < seatCount; seat++) {
      const k = source * seatCount + seat;
      re[seat] += ridge.re[k] * fr - ridge.im[k] * fi;
      im[seat] += ridge.re[k] * fi + ridge.im[k] * fr;
    }
  });
  return Float64Array.from(
    re,
    (value, seat) => 20 * maths.log10(Math.max(1e-15, maths.hypot(value, im[seat]))),
  );
}

/** What has fallen so far below the mean level of a seat is taken as gone, dB: a choice of ours. */
export const goneDb = 30;

/**
 * How long a ridge hangs at a seat: from time zero until it lies 30 dB below the seat's mean level. The pole keeps its
 * decay time whatever the sources do; what they change is from how high it falls.
 */
export const hangSeconds = (decayTimeSeconds: number, levelDb: number, meanLevelDb: number): number =>
  Math.max(0, ((levelDb - meanLevelDb + goneDb) / 60) * decayTimeSeconds);
