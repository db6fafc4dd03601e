import { describe, expect, it } from 'vitest';
import {
  deconvolve,
  defaultSweep,
  makeSweep,
  Rng,
  sweepConstant,
  type SweepParams,
} from '../../src/signal/index.js';
import { addMode } from '../support/signals.js';

const params: SweepParams = { ...defaultSweep, sampleRate: 8000, seconds: 8, toHz: 800 };

function convolve(x: Float64Array, h: Float64Array): Float64Array {
  const y = new Float64Array(x.length + h.length);
  for (let k = 0; k < h.length; k++) {
    if (h[k] === 0) continue;
    for (let n = 0; n < x.length; n++) y[n + k] += h[k] * x[n];
  }
  return y;
}

/** Power of the samples in 20 to 200 Hz by direct sums on a 2 Hz raster. */
function bandSpectrum(samples: Float64Array, rate: number, from: number): { re: number; im: number }[] {
  return Array.from({ length: 91 }, (_, k) => {
    const w = (2 * Math.PI * (20 + 2 * k)) / rate;
    let re = 0;
    let im = 0;
    for (let n = 0; n < samples.length; n++) {
      re += samples[n] * Math.cos(w * (n - from));
      im -= samples[n] * Math.sin(w * (n - from));
    }
    return { re, im };
  });
}

describe('a sweep', () => {
  it('begins and ends at zero and keeps to its level', () => {
    const sweep = makeSweep(params);
    expect(sweep[0]).toBe(0);
    expect(Math.abs(sweep[sweep.length - 1])).toBeLessThan(1e-3);
    const peak = sweep.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
    expect(20 * Math.log10(peak)).toBeCloseTo(-12, 1);
  });

  it('is never made louder than 3 dB below full scale, nor past the rate', () => {
    for (const change of [{ levelDbFs: 0 }, { toHz: 7000 }, { fromHz: 900 }, { seconds: 0.1 }])
      expect(() => makeSweep({ ...params, ...change })).toThrow(
        expect.objectContaining({ code: 'sweep-bounds' }),
      );
  });

  it('gives back the response within -60 dB in band, through 3 % second and 1 % third harmonic and noise 70 dB down', () => {
    const { sampleRate: rate } = params;
    const sweep = makeSweep(params);
    const response = new Float64Array(rate);
    for (const [f, t, a] of [
      [31, 0.9, 0.5],
      [47, 0.6, 1],
      [72, 0.5, 0.7],
      [118, 0.35, 0.8],
    ])
      addMode(response, rate, f, t, a * 0.02);
    // Pure harmonics, by the sine's own phase, under the sweep's own fades; the fundamental stays as it is.
    const constant = sweepConstant(params);
    const pure = makeSweep({ ...params, fromHz: params.fromHz });
    const driven = pure.map((v, n) => {
      const phase = 2 * Math.PI * params.fromHz * constant * (Math.exp(n / rate / constant) - 1);
      // The sweep's own fades, 3 % and 1 % of its length.
      const rise = Math.min(1, n / pure.length / 0.03);
      const fall = Math.min(1, (1 - n / pure.length) / 0.01);
      const envelope =
        10 ** (params.levelDbFs / 20) *
        Math.sin((Math.PI / 2) * rise) ** 2 *
        Math.sin((Math.PI / 2) * fall) ** 2;
      return v + envelope * (0.03 * Math.sin(2 * phase) + 0.01 * Math.sin(3 * phase));
    });
    const heard = convolve(driven, response);
    const rng = new Rng(7);
    const loudest = heard.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
    const recorded = heard.map((v) => v + loudest * 10 ** (-70 / 20) * rng.gaussian());
    const found = deconvolve(recorded, sweep, params);
    const mine = bandSpectrum(found.samples.slice(0, found.zeroIndex + rate), rate, found.zeroIndex);
    const truth = bandSpectrum(response, rate, 0);
    let error = 0;
    let energy = 0;
    mine.forEach((bin, k) => {
      error += (bin.re - truth[k].re) ** 2 + (bin.im - truth[k].im) ** 2;
      energy += truth[k].re ** 2 + truth[k].im ** 2;
    });
    expect(10 * Math.log10(error / energy)).toBeLessThan(-60);
    const [second, third] = found.distortionDb;
    expect(second.levelDb).not.toBeNull();
    expect(second.levelDb!).toBeGreaterThan(third.levelDb!);
  }, 60_000);
});
