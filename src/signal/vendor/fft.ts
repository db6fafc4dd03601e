/**
 * The one place that imports fft.js (CommonJS, untyped): the build makes this file a plain ES module.
 * Only the methods used are declared.
 */
import FFT from 'fft.js';

export interface FftPlan {
  readonly size: number;
  /** Fills the first size/2 + 1 bins of `out` (interleaved); what lies behind them is scratch. */
  realTransform(out: ArrayLike<number>, data: ArrayLike<number>): void;
  transform(out: ArrayLike<number>, data: ArrayLike<number>): void;
  inverseTransform(out: ArrayLike<number>, data: ArrayLike<number>): void;
}

export const createPlan = (size: number): FftPlan => new FFT(size);
