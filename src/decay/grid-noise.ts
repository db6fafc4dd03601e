import type { SliceSpectrum } from './spectrum.js';
import * as maths from '../signal/maths.js';

export interface TailParams {
  readonly window: (centre: number, window: Float64Array) => { from: number; count: number };
  /** Samples of the window. */
  readonly length: number;
  /** Onset and end of the data, in samples. */
  readonly fromPlace: number;
  readonly toPlace: number;
  readonly frequenciesHz: Float64Array;
}

/** The last quarter of the response is taken for noise, judged per frequency. */
const tailShare = 0.25;
/**
 * Powers of neighbours within a sixth of an octave are averaged: one window of noise alone scatters by 5.6 dB. A little
 * more, since columns lie on just this border and the last bit of a frequency should not decide.
 */
const smoothing = maths.power(2, 1 / 6) * (1 + 1e-9);

/** Centres of up to eight windows of this length, overlapping by half at most, over the end of the response. */
export function tailPlaces(length: number, fromPlace: number, toPlace: number): number[] {
  const first = Math.max(fromPlace + (toPlace - fromPlace) * (1 - tailShare), fromPlace) + length / 2;
  const last = toPlace - length / 2;
  const count = Math.max(1, Math.min(8, Math.floor((last - first) / (length / 2)) + 1));
  return Array.from(
    { length: count },
    (_, i) => last - (count > 1 ? (i * Math.max(0, last - first)) / (count - 1) : 0),
  );
}

/**
 * Mean power that windows of noise at the end of the response show at each frequency. Where the response is still
 * decaying there, it is what is left of it: an upper bound of the noise. Zero where the end is digitally silent.
 */
export function tailPower(samples: Float64Array, spectrum: SliceSpectrum, params: TailParams): Float64Array {
  const { length, fromPlace, toPlace, frequenciesHz } = params;
  const window = new Float64Array(Math.ceil(length) + 4);
  const mean = new Float64Array(frequenciesHz.length);
  const places = tailPlaces(length, fromPlace, toPlace);
  for (const centre of places) {
    const { from, count } = params.window(centre, window);
    spectrum.slice(samples, from, window, count);
    for (let f = 0; f < mean.length; f++) mean[f] += spectrum.power[f] / places.length;
  }
  return smoothedOverFrequency(mean, frequenciesHz);
}

/** Each power becomes the mean of those within a sixth of an octave. */
export function smoothedOverFrequency(power: Float64Array, frequenciesHz: Float64Array): Float64Array {
  const sums = new Float64Array(power.length + 1);
  for (let f = 0; f < power.length; f++) sums[f + 1] = sums[f] + power[f];
  let low = 0;
  let high = 0;
  return power.map((_, f) => {
    while (frequenciesHz[low] < frequenciesHz[f] / smoothing) low++;
    while (high < power.length && frequenciesHz[high] <= frequenciesHz[f] * smoothing) high++;
    return Math.max(0, (sums[high] - sums[low]) / (high - low));
  });
}
