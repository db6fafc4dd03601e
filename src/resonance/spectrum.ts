import { complexFft, nextPowerOfTwo } from '../signal/fft.js';
import type { Signal } from './varpro.js';
import * as maths from '../signal/maths.js';

/** Power per bin of Hann-weighted samples, scaled so that white noise reads its variance per sample. */
export interface PowerSpectrum {
  /** From minus half the sample rate upwards. */
  readonly power: Float64Array;
  readonly spacingHz: number;
}

/** Medians of a power spectrum over narrow bands: a smooth spectrum that lines and lone modes do not move. */
export interface BandLevels {
  readonly centresHz: readonly number[];
  /** Natural logarithm of the white-equivalent variance. */
  readonly levels: readonly number[];
  /** White-equivalent variance over all of it. */
  readonly variance: number;
}

const bandHz = 14;
/** The median of exponentially distributed values lies at ln 2 of their mean. */
const medianShare = Math.LN2;

/** @param padding The transform is at least this many times as long as the samples: a finer grid, not a finer sight. */
export function complexHannPower({ re, im }: Signal, sampleRate: number, padding = 1): PowerSpectrum {
  const size = nextPowerOfTwo(Math.max(64, padding * re.length));
  const input = new Float64Array(2 * size);
  const output = new Float64Array(2 * size);
  let energy = 0;
  for (let n = 0; n < re.length; n++) {
    const w = maths.square(maths.sin((Math.PI * (n + 0.5)) / re.length));
    energy += w * w;
    input[2 * n] = w * re[n];
    input[2 * n + 1] = w * im[n];
  }
  complexFft(input, output);
  const power = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    const at = 2 * ((k + size / 2) % size);
    power[k] = (maths.square(output[at]) + maths.square(output[at + 1])) / (energy || 1);
  }
  return { power, spacingHz: sampleRate / size };
}

/** Of real samples: both halves of the spectrum are alike. */
export const hannPower = (samples: Float64Array, sampleRate: number, padding = 1): PowerSpectrum =>
  complexHannPower({ re: samples, im: new Float64Array(samples.length) }, sampleRate, padding);

export const medianOf = (values: number[]): number => {
  if (values.length === 0) return 0;
  values.sort((a, b) => a - b);
  const half = values.length >> 1;
  return values.length % 2 ? values[half] : 0.5 * (values[half - 1] + values[half]);
};

/** Values of a spectrum between two frequencies. */
export function powersBetween({ power, spacingHz }: PowerSpectrum, fromHz: number, toHz: number): number[] {
  const half = power.length / 2;
  const from = Math.max(0, Math.ceil(fromHz / spacingHz) + half);
  const to = Math.min(power.length - 1, Math.floor(toHz / spacingHz) + half);
  return from <= to ? Array.from(power.subarray(from, to + 1)) : [];
}

export function bandMedians(spectrum: PowerSpectrum, fromHz: number, toHz: number): BandLevels {
  const variance = medianOf(powersBetween(spectrum, fromHz, toHz)) / medianShare;
  const count = Math.max(1, Math.floor((toHz - fromHz) / bandHz));
  const width = (toHz - fromHz) / count;
  const centresHz = Array.from({ length: count }, (_, k) => fromHz + (k + 0.5) * width);
  const levels = centresHz.map((centre) => {
    const level = medianOf(powersBetween(spectrum, centre - width / 2, centre + width / 2)) / medianShare;
    return maths.log(Math.max(level, variance * 1e-6, 1e-300));
  });
  return { centresHz, levels, variance };
}

/** Highest over lowest band, dB. */
export const tiltOf = ({ levels }: BandLevels): number =>
  ((Math.max(...levels) - Math.min(...levels)) * 10) / Math.LN10;

/** Euler's constant: the mean of ln p over the values p of the periodogram of white noise lies so far below ln of their mean. */
const eulerGamma = 0.5772156649;

/**
 * Spectral flatness: geometric over arithmetic mean of a spectrum, in units of that of white noise, so that 1 is white and
 * what a single line holds goes to 0. Of few values it scatters by 1 / sqrt(their number).
 */
export function whitenessOf(powers: readonly number[]): number {
  const mean = powers.reduce((sum, p) => sum + p, 0) / powers.length;
  if (!(mean > 0)) return 1;
  const log = powers.reduce((sum, p) => sum + maths.log(Math.max(p / mean, 1e-30)), 0) / powers.length;
  return Math.min(1, maths.exp(log + eulerGamma));
}
