/**
 * The one place that imports fft.js (CommonJS, untyped): the build makes this file a plain ES module.
 * Only the methods used are declared.
 */
import FFT from 'fft.js';
import { cos, sin } from '../maths.js';

export interface FftPlan {
  readonly size: number;
  /** Fills the first size/2 + 1 bins of `out` (interleaved); what lies behind them is scratch. */
  realTransform(out: ArrayLike<number>, data: ArrayLike<number>): void;
  transform(out: ArrayLike<number>, data: ArrayLike<number>): void;
  inverseTransform(out: ArrayLike<number>, data: ArrayLike<number>): void;
}

/** Its own table of twiddles is made with `Math`, whose last bits differ from engine to engine: it is written anew. */
export function createPlan(size: number): FftPlan {
  const plan = new FFT(size);
  for (let k = 0; k < 2 * size; k += 2) {
    const angle = (Math.PI * k) / size;
    plan.table[k] = cos(angle);
    plan.table[k + 1] = -sin(angle);
  }
  return plan;
}
