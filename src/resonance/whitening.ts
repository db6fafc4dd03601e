import { backComplex, choleskyHermitian, forwardComplex } from './complex-linear.js';
import type { BandLevels } from './spectrum.js';
import type { Signal } from './varpro.js';
import * as maths from '../signal/maths.js';

/** Complex prediction-error filter, leading 1, run backwards in time: sum of a[k] y[n + k]. */
export type Whitener = Signal;

export const noWhitener: Whitener = { re: Float64Array.of(1), im: Float64Array.of(0) };

const order = 5;

/** The prediction-error filter of an autoregressive model of a smoothed spectrum, through its autocorrelation. */
export function whitenerOf({ centresHz, levels }: BandLevels, sampleRate: number): Whitener {
  const points = 128;
  const rr = new Float64Array(order + 1);
  const ri = new Float64Array(order + 1);
  for (let k = 0; k < points; k++) {
    const f = ((k + 0.5) / points - 0.5) * sampleRate;
    let i = 0;
    while (i < centresHz.length - 2 && centresHz[i + 1] < f) i++;
    const share = Math.min(1, Math.max(0, (f - centresHz[i]) / (centresHz[i + 1] - centresHz[i])));
    const level = maths.exp(levels[i] + share * (levels[i + 1] - levels[i])) / points;
    for (let lag = 0; lag <= order; lag++) {
      rr[lag] += level * maths.cos((2 * Math.PI * f * lag) / sampleRate);
      ri[lag] += level * maths.sin((2 * Math.PI * f * lag) / sampleRate);
    }
  }
  rr[0] *= 1.01;
  const mr = new Float64Array(order * order);
  const mi = new Float64Array(order * order);
  const xr = new Float64Array(order);
  const xi = new Float64Array(order);
  for (let l = 0; l < order; l++) {
    xr[l] = -rr[l + 1];
    xi[l] = ri[l + 1];
    for (let k = 0; k < order; k++) {
      mr[l * order + k] = rr[Math.abs(k - l)];
      mi[l * order + k] = k >= l ? ri[k - l] : -ri[l - k];
    }
  }
  if (!choleskyHermitian(mr, mi, order)) return noWhitener;
  forwardComplex(mr, mi, order, xr, xi, 0);
  backComplex(mr, mi, order, xr, xi, 0);
  return { re: Float64Array.from([1, ...xr]), im: Float64Array.from([0, ...xi]) };
}

/** Runs the filter backwards in time, so that exponentials stay exact. */
export function whitenBackwards(signal: Signal, whitener: Whitener): Signal {
  if (whitener === noWhitener) return signal;
  const length = Math.max(0, signal.re.length - whitener.re.length + 1);
  const re = new Float64Array(length);
  const im = new Float64Array(length);
  for (let n = 0; n < length; n++)
    for (let k = 0; k < whitener.re.length; k++) {
      re[n] += whitener.re[k] * signal.re[n + k] - whitener.im[k] * signal.im[n + k];
      im[n] += whitener.re[k] * signal.im[n + k] + whitener.im[k] * signal.re[n + k];
    }
  return { re, im };
}

/** The filter's complex gain for exp((-decay + j turn) n). */
export function whitenerGain({ re, im }: Whitener, decay: number, turn: number): [number, number] {
  let gr = 0;
  let gi = 0;
  for (let k = 0; k < re.length; k++) {
    const size = maths.exp(-decay * k);
    const cosine = size * maths.cos(turn * k);
    const sine = size * maths.sin(turn * k);
    gr += re[k] * cosine - im[k] * sine;
    gi += re[k] * sine + im[k] * cosine;
  }
  return [gr, gi];
}
