import * as maths from '../signal/maths.js';

/**
 * Eigenvalues of a general complex matrix: Gaussian reduction to Hessenberg form with pivots, then the shifted QR
 * method with Givens rotations (Golub and Van Loan, Matrix Computations, ch. 7; Wilkinson's shift).
 *
 * @param re,im Row-major n x n; overwritten.
 * @returns n pairs of real and imaginary part. A value that has not converged after 60 steps is left as it stands.
 */
export function complexEigenvalues(re: Float64Array, im: Float64Array, n: number): Float64Array {
  toHessenberg(re, im, n);
  const values = new Float64Array(2 * n);
  const cosines = new Float64Array(n);
  const sinReal = new Float64Array(n);
  const sinImaginary = new Float64Array(n);
  let high = n - 1;
  let steps = 0;
  while (high >= 0) {
    let low = high;
    for (; low > 0; low--) {
      const at = low * n + low;
      const size = abs1(re, im, at) + abs1(re, im, at - n - 1);
      if (abs1(re, im, at - 1) <= 2.3e-16 * size) break;
    }
    if (low === high || steps > 60) {
      values[2 * high] = re[high * n + high];
      values[2 * high + 1] = im[high * n + high];
      high--;
      steps = 0;
      continue;
    }
    steps++;
    const [sr, si] = steps % 10 === 0 ? exceptionalShift(re, im, n, high) : wilkinsonShift(re, im, n, high);
    for (let i = low; i <= high; i++) {
      re[i * n + i] -= sr;
      im[i * n + i] -= si;
    }
    for (let k = low; k < high; k++) rotateRows(re, im, n, k, high, cosines, sinReal, sinImaginary);
    for (let k = low; k < high; k++) rotateColumns(re, im, n, k, low, cosines, sinReal, sinImaginary);
    for (let i = low; i <= high; i++) {
      re[i * n + i] += sr;
      im[i * n + i] += si;
    }
  }
  return values;
}

const abs1 = (re: Float64Array, im: Float64Array, at: number): number => Math.abs(re[at]) + Math.abs(im[at]);

function toHessenberg(re: Float64Array, im: Float64Array, n: number): void {
  for (let m = 1; m < n - 1; m++) {
    let pivot = m;
    for (let i = m + 1; i < n; i++)
      if (abs1(re, im, i * n + m - 1) > abs1(re, im, pivot * n + m - 1)) pivot = i;
    if (abs1(re, im, pivot * n + m - 1) === 0) continue;
    if (pivot !== m) {
      for (let j = m - 1; j < n; j++) swap(re, im, pivot * n + j, m * n + j);
      for (let i = 0; i < n; i++) swap(re, im, i * n + pivot, i * n + m);
    }
    const xr = re[m * n + m - 1];
    const xi = im[m * n + m - 1];
    const square = xr * xr + xi * xi;
    for (let i = m + 1; i < n; i++) {
      const yr = re[i * n + m - 1];
      const yi = im[i * n + m - 1];
      if (yr === 0 && yi === 0) continue;
      const fr = (yr * xr + yi * xi) / square;
      const fi = (yi * xr - yr * xi) / square;
      re[i * n + m - 1] = 0;
      im[i * n + m - 1] = 0;
      for (let j = m; j < n; j++) {
        re[i * n + j] -= fr * re[m * n + j] - fi * im[m * n + j];
        im[i * n + j] -= fr * im[m * n + j] + fi * re[m * n + j];
      }
      for (let k = 0; k < n; k++) {
        re[k * n + m] += fr * re[k * n + i] - fi * im[k * n + i];
        im[k * n + m] += fr * im[k * n + i] + fi * re[k * n + i];
      }
    }
  }
}

function swap(re: Float64Array, im: Float64Array, a: number, b: number): void {
  [re[a], re[b]] = [re[b], re[a]];
  [im[a], im[b]] = [im[b], im[a]];
}

/** The eigenvalue of the last 2 x 2 block that lies nearer its last element. */
function wilkinsonShift(re: Float64Array, im: Float64Array, n: number, high: number): [number, number] {
  const d = high * n + high;
  const a = d - n - 1;
  const hr = 0.5 * (re[a] - re[d]);
  const hi = 0.5 * (im[a] - im[d]);
  const br = re[a + 1] * re[d - 1] - im[a + 1] * im[d - 1];
  const bi = re[a + 1] * im[d - 1] + im[a + 1] * re[d - 1];
  const qr = hr * hr - hi * hi + br;
  const qi = 2 * hr * hi + bi;
  const size = maths.hypot(qr, qi);
  let rr = Math.sqrt(Math.max(0, 0.5 * (size + qr)));
  let ri = Math.sqrt(Math.max(0, 0.5 * (size - qr)));
  if (qi < 0) ri = -ri;
  if (rr * hr + ri * hi < 0) {
    rr = -rr;
    ri = -ri;
  }
  const er = hr + rr;
  const ei = hi + ri;
  const square = er * er + ei * ei;
  if (square === 0) return [re[d], im[d]];
  return [re[d] - (br * er + bi * ei) / square, im[d] - (bi * er - br * ei) / square];
}

function exceptionalShift(re: Float64Array, im: Float64Array, n: number, high: number): [number, number] {
  const below = abs1(re, im, high * n + high - 1);
  return [re[high * n + high] + below, im[high * n + high]];
}

/** Zeroes element (k + 1, k) by a rotation of two rows and keeps the rotation. */
function rotateRows(
  re: Float64Array,
  im: Float64Array,
  n: number,
  k: number,
  high: number,
  cosines: Float64Array,
  sinReal: Float64Array,
  sinImaginary: Float64Array,
): void {
  const upper = k * n;
  const lower = upper + n;
  const xr = re[upper + k];
  const xi = im[upper + k];
  const yr = re[lower + k];
  const yi = im[lower + k];
  const x = maths.hypot(xr, xi);
  const r = maths.hypot(x, yr, yi);
  let c = 1;
  let sr = 0;
  let si = 0;
  if (r > 0) {
    const ur = x > 0 ? xr / x : 1;
    const ui = x > 0 ? xi / x : 0;
    c = x / r;
    // s = u conj(y) / r, so that [c, s; -conj(s), c] maps (x, y) to (u r, 0).
    sr = (ur * yr + ui * yi) / r;
    si = (ui * yr - ur * yi) / r;
  }
  cosines[k] = c;
  sinReal[k] = sr;
  sinImaginary[k] = si;
  for (let j = k; j <= high; j++) {
    const ar = re[upper + j];
    const ai = im[upper + j];
    const br = re[lower + j];
    const bi = im[lower + j];
    re[upper + j] = c * ar + sr * br - si * bi;
    im[upper + j] = c * ai + sr * bi + si * br;
    re[lower + j] = c * br - (sr * ar + si * ai);
    im[lower + j] = c * bi - (sr * ai - si * ar);
  }
}

/** The same rotation, conjugate, from the right. */
function rotateColumns(
  re: Float64Array,
  im: Float64Array,
  n: number,
  k: number,
  low: number,
  cosines: Float64Array,
  sinReal: Float64Array,
  sinImaginary: Float64Array,
): void {
  const c = cosines[k];
  const sr = sinReal[k];
  const si = sinImaginary[k];
  for (let i = low; i <= k + 1; i++) {
    const left = i * n + k;
    const ar = re[left];
    const ai = im[left];
    const br = re[left + 1];
    const bi = im[left + 1];
    re[left] = c * ar + sr * br + si * bi;
    im[left] = c * ai + sr * bi - si * br;
    re[left + 1] = c * br - (sr * ar - si * ai);
    im[left + 1] = c * bi - (sr * ai + si * ar);
  }
}
