import { bandMedians, hannPower, powersBetween } from './spectrum.js';
import * as maths from '../signal/maths.js';

const fromHz = 18;
const toHz = 200;

/** White-equivalent variance per sample of the noise that is left at the end. Lines such as hum do not move its median. */
export function tailFloor(samples: Float64Array, sampleRate: number): number {
  const length = Math.min(
    samples.length,
    Math.max(Math.floor(0.25 * samples.length), Math.floor(0.3 * sampleRate)),
  );
  const spectrum = hannPower(samples.subarray(samples.length - length), sampleRate);
  return bandMedians(spectrum, fromHz, toHz).variance;
}

/** Rumble stands this far above the floor from below 9 Hz up to its top without a gap. Ratio of powers: 15 dB. */
const rumbleRatio = maths.power(10, 1.5);
const rumbleFromHz = 9;
/** Higher up, what stands above the floor is more likely the room. */
const highestRumbleHz = 45;
/** It goes on: below 9 Hz the last two quarters differ by less than this; what decays differs by more. Ratio: 15 dB. */
const steadyRatio = maths.power(10, 1.5);
/** In a shorter half, lower frequencies are not told from the bass. s. */
const shortestHalfSeconds = 0.35;

/**
 * The frequency up to which rumble (of traffic, ventilation or a drifting offset) hides the bass in the last half of the
 * samples; 0 where there is none.
 */
export function rumbleTopHz(samples: Float64Array, sampleRate: number): number {
  const half = samples.subarray(samples.length >> 1);
  if (half.length < shortestHalfSeconds * sampleRate) return 0;
  const limit = rumbleRatio * tailFloor(samples, sampleRate);
  const lowest = (part: Float64Array): number =>
    Math.max(0, ...powersBetween(hannPower(part, sampleRate, 4), 0, rumbleFromHz));
  if (!(lowest(half) > limit)) return 0;
  const middle = half.length >> 1;
  if (lowest(half.subarray(0, middle)) > steadyRatio * lowest(half.subarray(middle))) return 0;
  const spectrum = hannPower(half, sampleRate, 4);
  const upwards = powersBetween(spectrum, rumbleFromHz, highestRumbleHz);
  const end = upwards.findIndex((power) => power <= limit);
  return end < 0 ? highestRumbleHz : rumbleFromHz + end * spectrum.spacingHz;
}
