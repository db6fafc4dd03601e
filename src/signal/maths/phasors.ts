import { cos, sin } from './circular.js';
import { exp } from './exponential.js';

/** Values after which a recurrence begins anew, so that its rounding stays below 1e-14. */
const afresh = 64;

/** Fills `re` and `im` with the cosines and sines of 0, 1, 2 … times an angle, rad. */
export function phasors(turn: number, re: Float64Array, im: Float64Array): void {
  const stepRe = cos(turn);
  const stepIm = sin(turn);
  for (let from = 0; from < re.length; from += afresh) {
    let a = cos(turn * from);
    let b = sin(turn * from);
    const to = Math.min(re.length, from + afresh);
    for (let n = from; n < to; n++) {
      re[n] = a;
      im[n] = b;
      const next = a * stepRe - b * stepIm;
      b = a * stepIm + b * stepRe;
      a = next;
    }
  }
}

/** Fills an array with e to the power of 0, 1, 2 … times `slope`, from `from` to before `to`, times `size`. */
export function powers(size: number, slope: number, out: Float64Array, from: number, to: number): void {
  const step = exp(slope);
  for (let begin = from; begin < to; begin += afresh) {
    let value = size * exp(slope * (begin - from));
    const end = Math.min(to, begin + afresh);
    for (let n = begin; n < end; n++) {
      out[n] = value;
      value *= step;
    }
  }
}
