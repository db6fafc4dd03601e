import { bandMedians, hannPower, tiltOf, type BandLevels } from './spectrum.js';

/** The noise that is left at the end of a recording. Lines such as hum do not move its medians. */
export interface TailFloor {
  /** White-equivalent variance per sample. */
  readonly variance: number;
  /** Level below 9 Hz over it, dB: rumble of traffic, ventilation or a drifting offset. */
  readonly rumbleDb: number;
  readonly bands: BandLevels;
  /** Highest over lowest smoothed level, dB. */
  readonly tiltDb: number;
}

const rumbleToHz = 9;

export function tailFloor(samples: Float64Array, sampleRate: number): TailFloor {
  const length = Math.min(
    samples.length,
    Math.max(Math.floor(0.25 * samples.length), Math.floor(0.3 * sampleRate)),
  );
  const spectrum = hannPower(samples.subarray(samples.length - length), sampleRate);
  const bands = bandMedians(spectrum);
  let rumble = 0;
  for (let k = 0; k * spectrum.spacingHz < rumbleToHz; k++) rumble = Math.max(rumble, spectrum.power[k]);
  const rumbleDb = 10 * Math.log10(Math.max(rumble, 1e-300) / Math.max(bands.variance, 1e-300));
  return { variance: bands.variance, rumbleDb, bands, tiltDb: tiltOf(bands) };
}

/** True where the end of the recording is noise: its two last eighths hold the same power within 3 dB. */
export function tailIsSteady(samples: Float64Array): boolean {
  const eighth = samples.length >> 3;
  if (eighth < 16) return false;
  let earlier = 0;
  let later = 0;
  for (let n = 0; n < eighth; n++) {
    later += samples[samples.length - 1 - n] ** 2;
    earlier += samples[samples.length - 1 - eighth - n] ** 2;
  }
  return later > 0 && earlier < 2 * later;
}
