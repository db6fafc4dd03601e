import { hannPower, medianOf, powersBetween } from './spectrum.js';
import * as maths from '../signal/maths.js';

/** Mains frequencies of the world, Hz; their multiples are looked for up to this one. */
export const mainsHz = [50, 60] as const;
const highestHz = 210;
/** Mains wander by less than this. */
export const mainsWander = 0.006;
/** A line of hum stands this far above the spectrum within this distance of it, and is equally strong early and late. */
const leastDb = 11;
const surroundHz = 8;
const steadyDb = 2.5;

/** The mains frequency whose multiple this is, within the tolerance or `slackHz`; null if none. */
export function mainsOf(frequencyHz: number, slackHz = 0): number | null {
  for (const mains of mainsHz) {
    const multiple = Math.round(frequencyHz / mains) * mains;
    if (multiple > 0 && Math.abs(frequencyHz - multiple) < Math.max(mainsWander * frequencyHz, slackHz))
      return mains;
  }
  return null;
}

/** Strength of the line at `frequencyHz` in a Hann-weighted stretch. */
function strength(samples: Float64Array, from: number, length: number, turn: number): number {
  let re = 0;
  let im = 0;
  for (let n = 0; n < length; n++) {
    const value = samples[from + n] * maths.square(maths.sin((Math.PI * (n + 0.5)) / length));
    re += value * maths.cos(turn * (from + n));
    im += value * maths.sin(turn * (from + n));
  }
  return maths.hypot(re, im);
}

/**
 * Steady lines at multiples of the mains in the last half of a recording: above what surrounds them, and of one level in
 * its two quarters, which no decaying mode is.
 *
 * @returns Frequencies, Hz.
 */
export function humLines(samples: Float64Array, sampleRate: number): number[] {
  const length = samples.length >> 1;
  const from = samples.length - length;
  if (length < 0.4 * sampleRate) return [];
  const spectrum = hannPower(samples.subarray(from), sampleRate, 8);
  const { power, spacingHz } = spectrum;
  const half = power.length / 2;
  const level = (k: number): number => 10 * maths.log10(power[half + k] + 1e-300);
  const lines: number[] = [];
  for (const mains of mainsHz) {
    for (let multiple = mains; multiple <= highestHz; multiple += mains) {
      const first = Math.floor((multiple * (1 - mainsWander)) / spacingHz);
      const last = Math.floor((multiple * (1 + mainsWander)) / spacingHz) + 1;
      let top = first;
      for (let k = first; k <= last; k++) if (level(k) > level(top)) top = k;
      const floor =
        medianOf(powersBetween(spectrum, multiple - surroundHz, multiple + surroundHz)) / Math.LN2;
      const above = level(top) - 10 * maths.log10(floor + 1e-300);
      if (top === first || top === last || above < leastDb) continue;
      const [a, b, c] = [level(top - 1), level(top), level(top + 1)];
      const frequencyHz = (top + (0.5 * (a - c)) / (a - 2 * b + c)) * spacingHz;
      const turn = (2 * Math.PI * frequencyHz) / sampleRate;
      const quarter = length >> 1;
      const early = strength(samples, from, quarter, turn);
      const late = strength(samples, samples.length - quarter, quarter, turn);
      const steady = Math.abs(20 * maths.log10(early / late)) < steadyDb;
      if (steady && !lines.some((f) => Math.abs(f - frequencyHz) < 0.2)) lines.push(frequencyHz);
    }
  }
  return lines;
}
