import { bandMedians, hannPower, powersBetween } from './spectrum.js';

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
const rumbleRatio = 10 ** 1.5;
const rumbleFromHz = 9;
/** Higher up, what stands above the floor is more likely the room. */
const highestRumbleHz = 45;

/**
 * The frequency up to which rumble (of traffic, ventilation or a drifting offset) hides the bass in the last half of the
 * samples; 0 where there is none.
 */
export function rumbleTopHz(samples: Float64Array, sampleRate: number): number {
  const limit = rumbleRatio * tailFloor(samples, sampleRate);
  const half = samples.subarray(samples.length >> 1);
  const spectrum = hannPower(half, sampleRate, 4);
  if (!(Math.max(0, ...powersBetween(spectrum, 0, rumbleFromHz)) > limit)) return 0;
  const upwards = powersBetween(spectrum, rumbleFromHz, highestRumbleHz);
  const end = upwards.findIndex((power) => power <= limit);
  return end < 0 ? highestRumbleHz : rumbleFromHz + end * spectrum.spacingHz;
}
