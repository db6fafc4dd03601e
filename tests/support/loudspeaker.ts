import {
  complexFft,
  inverseFft,
  nextPowerOfTwo,
  sweepConstant,
  type SweepParams,
} from '../../src/signal/index.js';

/**
 * A sweep as a loudspeaker with distortion plays it: pure harmonics of the sweep's own phase under its own fades, and the
 * fundamental as it is. The formula of the sweep is written out again, since harmonics need its phase.
 *
 * @param shares amplitude of the second, third ... harmonic re the fundamental
 */
export function distorted(params: SweepParams, shares: readonly number[]): Float64Array {
  const { fromHz, seconds, sampleRate, levelDbFs } = params;
  const constant = sweepConstant(params);
  const length = Math.round(seconds * sampleRate);
  return Float64Array.from({ length }, (_, n) => {
    const phase = 2 * Math.PI * fromHz * constant * (Math.exp(n / sampleRate / constant) - 1);
    // The sweep's own fades, 3 % and 1 % of its length.
    const rise = Math.min(1, n / length / 0.03);
    const fall = Math.min(1, (1 - n / length) / 0.01);
    const envelope =
      10 ** (levelDbFs / 20) * Math.sin((Math.PI / 2) * rise) ** 2 * Math.sin((Math.PI / 2) * fall) ** 2;
    return (
      envelope * shares.reduce((sum, share, i) => sum + share * Math.sin((i + 2) * phase), Math.sin(phase))
    );
  });
}

/** Linear convolution. */
export function convolved(x: Float64Array, h: Float64Array): Float64Array {
  const size = nextPowerOfTwo(x.length + h.length);
  const bins = (samples: Float64Array): Float64Array => {
    const signal = new Float64Array(2 * size);
    samples.forEach((value, i) => (signal[2 * i] = value));
    const out = new Float64Array(2 * size);
    complexFft(signal, out);
    return out;
  };
  const [a, b] = [bins(x), bins(h)];
  for (let k = 0; k < size; k++) {
    const [ar, ai, br, bi] = [a[2 * k], a[2 * k + 1], b[2 * k], b[2 * k + 1]];
    a[2 * k] = ar * br - ai * bi;
    a[2 * k + 1] = ar * bi + ai * br;
  }
  inverseFft(a, b);
  return Float64Array.from({ length: x.length + h.length - 1 }, (_, n) => b[2 * n]);
}

export const peakOf = (samples: Float64Array): number =>
  samples.reduce((most, v) => Math.max(most, Math.abs(v)), 0);

/** Energy of the difference of two signals from 20 to 200 Hz re that of the second, dB, by direct sums every 2 Hz. */
export function bandErrorDb(
  found: Float64Array,
  zeroIndex: number,
  truth: Float64Array,
  rate: number,
): number {
  let error = 0;
  let energy = 0;
  for (let f = 20; f <= 200; f += 2) {
    const w = (2 * Math.PI * f) / rate;
    const sum = (samples: Float64Array, from: number): [number, number] => {
      let re = 0;
      let im = 0;
      samples.forEach((value, n) => {
        re += value * Math.cos(w * (n - from));
        im -= value * Math.sin(w * (n - from));
      });
      return [re, im];
    };
    const [fr, fi] = sum(found, zeroIndex);
    const [tr, ti] = sum(truth, 0);
    error += (fr - tr) ** 2 + (fi - ti) ** 2;
    energy += tr ** 2 + ti ** 2;
  }
  return 10 * Math.log10(error / energy);
}
