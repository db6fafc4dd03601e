import * as maths from './maths.js';

/** Periodic-in-the-middle Hann window with zero ends outside: sin^2(pi (n + 1/2) / N), symmetric about its centre. */
export function hannWindow(length: number): Float64Array {
  return Float64Array.from({ length }, (_, n) => maths.square(maths.sin((Math.PI * (n + 0.5)) / length)));
}

/** Modified Bessel function of the first kind, order 0: its power series, to double precision. */
export function besselI0(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; term > sum * 1e-17; k++) {
    term *= maths.square(x / (2 * k));
    sum += term;
  }
  return sum;
}

/**
 * Kaiser window. Shape and length for a stop-band follow J. F. Kaiser, "Nonrecursive digital filter design using the
 * I0-sinh window function", 1974: beta = 0.1102 (A - 8.7) above 50 dB.
 */
export function kaiserWindow(length: number, beta: number): Float64Array {
  const scale = besselI0(beta);
  const half = (length - 1) / 2;
  return Float64Array.from({ length }, (_, n) => {
    const x = half === 0 ? 0 : (n - half) / half;
    return besselI0(beta * Math.sqrt(Math.max(0, 1 - x * x))) / scale;
  });
}
