import { bandMedians, hannPower, powersBetween } from './spectrum.js';

/** The noise that is left at the end of a recording. Lines such as hum do not move its median. */
export interface TailFloor {
  /** White-equivalent variance per sample. */
  readonly variance: number;
  /** Level below 9 Hz over it, dB: rumble of traffic, ventilation or a drifting offset. */
  readonly rumbleDb: number;
}

const fromHz = 18;
const toHz = 200;
const rumbleToHz = 9;

export function tailFloor(samples: Float64Array, sampleRate: number): TailFloor {
  const length = Math.min(
    samples.length,
    Math.max(Math.floor(0.25 * samples.length), Math.floor(0.3 * sampleRate)),
  );
  const spectrum = hannPower(samples.subarray(samples.length - length), sampleRate);
  const { variance } = bandMedians(spectrum, fromHz, toHz);
  const rumble = Math.max(0, ...powersBetween(spectrum, 0, rumbleToHz));
  return { variance, rumbleDb: 10 * Math.log10(Math.max(rumble, 1e-300) / Math.max(variance, 1e-300)) };
}
