/** Small dense linear algebra on complex row-major matrices, real and imaginary parts in arrays of their own. */

/** Result of the inner products below. */
let sumReal = 0;
let sumImaginary = 0;

/** Sum of a[k] conj(b[k]). */
function dotConjugate(
  ar: Float64Array,
  ai: Float64Array,
  ao: number,
  br: Float64Array,
  bi: Float64Array,
  bo: number,
  count: number,
): void {
  let re = 0;
  let im = 0;
  for (let k = 0; k < count; k++) {
    const xr = ar[ao + k];
    const xi = ai[ao + k];
    const yr = br[bo + k];
    const yi = bi[bo + k];
    re += xr * yr + xi * yi;
    im += xi * yr - xr * yi;
  }
  sumReal = re;
  sumImaginary = im;
}

/** Cholesky factor L of a Hermitian matrix, over its lower triangle. False where it is not positive definite. */
export function choleskyHermitian(re: Float64Array, im: Float64Array, n: number): boolean {
  for (let i = 0; i < n; i++) {
    const row = i * n;
    for (let j = 0; j < i; j++) {
      dotConjugate(re, im, row, re, im, j * n, j);
      const inverse = 1 / re[j * n + j];
      re[row + j] = (re[row + j] - sumReal) * inverse;
      im[row + j] = (im[row + j] - sumImaginary) * inverse;
    }
    dotConjugate(re, im, row, re, im, row, i);
    const pivot = re[row + i] - sumReal;
    if (!(pivot > 0)) return false;
    re[row + i] = Math.sqrt(pivot);
    im[row + i] = 0;
  }
  return true;
}

/** Solves L x = b in place, from element `start` on where all before are zero. */
export function forwardComplex(
  fr: Float64Array,
  fi: Float64Array,
  n: number,
  xr: Float64Array,
  xi: Float64Array,
  offset: number,
  start = 0,
): void {
  for (let i = start; i < n; i++) {
    const row = i * n;
    let re = xr[offset + i];
    let im = xi[offset + i];
    for (let k = start; k < i; k++) {
      const ar = fr[row + k];
      const ai = fi[row + k];
      const br = xr[offset + k];
      const bi = xi[offset + k];
      re -= ar * br - ai * bi;
      im -= ar * bi + ai * br;
    }
    const inverse = 1 / fr[row + i];
    xr[offset + i] = re * inverse;
    xi[offset + i] = im * inverse;
  }
}

/** Solves L* x = b in place (L*: conjugate transpose). */
export function backComplex(
  fr: Float64Array,
  fi: Float64Array,
  n: number,
  xr: Float64Array,
  xi: Float64Array,
  offset: number,
): void {
  for (let i = n - 1; i >= 0; i--) {
    const row = i * n;
    const inverse = 1 / fr[row + i];
    const re = xr[offset + i] * inverse;
    const im = xi[offset + i] * inverse;
    xr[offset + i] = re;
    xi[offset + i] = im;
    for (let k = 0; k < i; k++) {
      const ar = fr[row + k];
      const ai = fi[row + k];
      xr[offset + k] -= ar * re + ai * im;
      xi[offset + k] -= ar * im - ai * re;
    }
  }
}

/** Diagonal of the inverse of L L*: the squared norms of the columns of inverse(L). `xr`, `xi`: scratch of n. */
export function inverseDiagonal(
  fr: Float64Array,
  fi: Float64Array,
  n: number,
  xr: Float64Array,
  xi: Float64Array,
): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => {
    xr.fill(0, 0, n);
    xi.fill(0, 0, n);
    xr[i] = 1;
    forwardComplex(fr, fi, n, xr, xi, 0, i);
    let sum = 0;
    for (let k = i; k < n; k++) sum += xr[k] * xr[k] + xi[k] * xi[k];
    return sum;
  });
}
