import { kaiserWindow } from './windows.js';
import * as maths from './maths.js';

/**
 * Band-limited samples at another rate, by a windowed sinc: what lies up to `passHz` stays as it is, from `stopHz` on it
 * lies 80 dB below. Index 0 stays where it is in time.
 *
 * @param passHz Below half of either rate.
 * @param stopHz Where the images begin, unless said: the rate less `passHz`.
 */
export function interpolate(
  samples: Float64Array,
  fromRate: number,
  toRate: number,
  passHz: number,
  stopHz = fromRate - passHz,
): Float64Array {
  // Kaiser 1974: reach in samples of the given rate for that transition at 80 dB.
  const transition = (2 * Math.PI * (stopHz - passHz)) / fromRate;
  const reach = Math.ceil((80 - 7.95) / (2.285 * transition) / 2) + 1;
  const cutoff = (passHz + stopHz) / fromRate;
  const steps = 512;
  const window = kaiserWindow(2 * reach * steps + 1, 0.1102 * (80 - 8.7));
  const kernel = window.map((value, k) => {
    const x = cutoff * (k / steps - reach);
    return value * cutoff * (x === 0 ? 1 : maths.sin(Math.PI * x) / (Math.PI * x));
  });
  const output = new Float64Array(Math.floor((samples.length * toRate) / fromRate));
  for (let m = 0; m < output.length; m++) {
    const place = (m * fromRate) / toRate;
    const from = Math.max(0, Math.ceil(place - reach));
    const to = Math.min(samples.length - 1, Math.floor(place + reach));
    let sum = 0;
    for (let n = from; n <= to; n++) {
      const at = (place - n + reach) * steps;
      const below = Math.min(kernel.length - 2, Math.max(0, Math.floor(at)));
      sum += samples[n] * (kernel[below] + (at - below) * (kernel[below + 1] - kernel[below]));
    }
    output[m] = sum;
  }
  return output;
}
