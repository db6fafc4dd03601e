import { createPlan, type FftPlan } from './vendor/fft.js';

const plans = new Map<number, FftPlan>();

/** The plan of a power of two, made once: twiddles cost more than a transform. Not re-entrant, as no plan yields. */
function planOf(size: number): FftPlan {
  let plan = plans.get(size);
  if (!plan) {
    plan = createPlan(size);
    plans.set(size, plan);
  }
  return plan;
}

/** The smallest power of two that is at least `count`, and at least 2. */
export function nextPowerOfTwo(count: number): number {
  let size = 2;
  while (size < count) size *= 2;
  return size;
}

/**
 * Forward transform of real samples, unscaled, exp(-j 2 pi k n / N).
 *
 * @param input N samples, a power of two.
 * @param output 2N numbers; the first N + 2 are the bins 0 to N/2, interleaved. The rest is scratch.
 */
export function realFft(input: Float64Array, output: Float64Array): void {
  planOf(input.length).realTransform(output, input);
}

/** Forward transform of interleaved complex samples, unscaled. `output` must not be `input`. */
export function complexFft(input: Float64Array, output: Float64Array): void {
  planOf(input.length / 2).transform(output, input);
}

/** Inverse transform of interleaved complex bins, divided by their number. `output` must not be `input`. */
export function inverseFft(input: Float64Array, output: Float64Array): void {
  planOf(input.length / 2).inverseTransform(output, input);
}
