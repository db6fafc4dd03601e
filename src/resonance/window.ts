import type { Signal } from './varpro.js';
import * as maths from '../signal/maths.js';

/** Shortest and longest span of decay that is looked at. s. */
const shortestSeconds = 0.35;
const longestSeconds = 1.6;

/** Last time at which the energy of 50 ms stands above two and a half times the floor's. s. */
function lastAboveFloor({ re, im }: Signal, sampleRate: number, floorPower: number): number {
  const width = Math.max(1, Math.round(0.05 * sampleRate));
  let sum = 0;
  let last = 0;
  for (let n = 0; n < re.length; n++) {
    sum += re[n] * re[n] + im[n] * im[n];
    if (n >= width) sum -= maths.square(re[n - width]) + maths.square(im[n - width]);
    if (sum / width > 2.5 * floorPower) last = n - width / 2;
  }
  return Math.max(0, last) / sampleRate;
}

export interface FitWindow {
  /** The decay of interest ends here; the start values rest on it. s. */
  readonly decaySeconds: number;
  /** Samples in the fit: a quarter more and 0.1 s, so that the fit sees the floor. */
  readonly count: number;
}

/**
 * @param signals All of one rate; the shortest decides what there is.
 * @param floorPowers Per signal: mean square of its noise.
 */
export function fitWindow(
  signals: readonly Signal[],
  sampleRate: number,
  floorPowers: readonly number[],
): FitWindow {
  const available = Math.min(...signals.map(({ re }) => re.length));
  let decay = 0;
  signals.forEach((signal, c) => {
    decay = Math.max(decay, lastAboveFloor(signal, sampleRate, floorPowers[c]));
  });
  const decaySeconds = Math.min(Math.max(decay, shortestSeconds), available / sampleRate, longestSeconds);
  const wanted = Math.min(1.25 * decaySeconds + 0.1, longestSeconds + 0.2);
  return { decaySeconds, count: Math.min(available, Math.floor(wanted * sampleRate)) };
}
