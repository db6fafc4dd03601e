import { kaiserWindow } from '../signal/windows.js';
import type { Decimated } from './reverse-decimation.js';
import * as maths from '../signal/maths.js';

/** Samples on either side that an interpolated one rests on. */
const reach = 24;
const beta = 9;
const steps = 512;

let table: Float64Array | null = null;
/** Kaiser-weighted sinc, by distance in steps of 1 / 512 sample. */
function kernel(): Float64Array {
  if (table) return table;
  const window = kaiserWindow(2 * reach * steps + 1, beta);
  table = Float64Array.from({ length: reach * steps + 1 }, (_, k) => {
    const x = (Math.PI * k) / steps;
    return window[reach * steps + k] * (k === 0 ? 1 : maths.sin(x) / x);
  });
  return table;
}

/** Samples at every `ratio`-th place from the first on. Exact to -80 dB below 0.4 times the sample rate. */
function resampled(samples: Float64Array, ratio: number): Float64Array {
  const weights = kernel();
  const out = new Float64Array(samples.length === 0 ? 0 : Math.floor((samples.length - 1) / ratio) + 1);
  for (let m = 0; m < out.length; m++) {
    const place = m * ratio;
    const from = Math.max(0, Math.ceil(place - reach));
    const to = Math.min(samples.length - 1, Math.floor(place + reach));
    let sum = 0;
    for (let n = from; n <= to; n++) {
      const distance = Math.abs(place - n) * steps;
      const k = Math.min(weights.length - 2, Math.floor(distance));
      sum += samples[n] * (weights[k] + (distance - k) * (weights[k + 1] - weights[k]));
    }
    out[m] = sum;
  }
  return out;
}

/** The same at another rate, near its own: files of 44.1 and 48 kHz come down to slightly different ones. */
export const atRate = (decimated: Decimated, sampleRate: number): Decimated =>
  Math.abs(sampleRate / decimated.sampleRate - 1) < 1e-12
    ? decimated
    : {
        ...decimated,
        samples: resampled(decimated.samples, decimated.sampleRate / sampleRate),
        sampleRate,
        step: (decimated.step * decimated.sampleRate) / sampleRate,
      };

/** As it would have been in the air of another recording: what rings at f (1 + stretch) rings at f. */
export const withoutStretch = (decimated: Decimated, stretch: number): Decimated =>
  stretch === 0
    ? decimated
    : {
        ...decimated,
        samples: resampled(decimated.samples, 1 / (1 + stretch)),
        leadSeconds: decimated.leadSeconds * (1 + stretch),
      };
