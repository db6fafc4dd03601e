import * as maths from '../signal/maths.js';

/**
 * Eigenvalues and leading eigenvectors of a Hermitian matrix: Householder reduction to a real tridiagonal matrix, then
 * the implicit QL method (Golub and Van Loan, Matrix Computations, ch. 8; the tridiagonal step follows EISPACK's tql2,
 * Bowdler, Martin, Reinsch and Wilkinson 1968). Only the vectors that are asked for are transformed back.
 */
export interface HermitianEigen {
  /** Descending. */
  readonly values: Float64Array;
  /** Row k: the unit eigenvector of values[k], real and imaginary parts. */
  readonly real: Float64Array;
  readonly imaginary: Float64Array;
  readonly count: number;
}

/**
 * @param re,im Row-major n x n; overwritten. The lower triangle is read.
 * @param wanted How many of the largest eigenvalues get their vectors; a function of the values, descending.
 */
export function hermitianEigen(
  re: Float64Array,
  im: Float64Array,
  n: number,
  wanted: (values: Float64Array) => number,
): HermitianEigen {
  const diagonal = new Float64Array(n);
  const offDiagonal = new Float64Array(n);
  const phaseReal = new Float64Array(n);
  const phaseImaginary = new Float64Array(n);
  const beta = new Float64Array(n);
  phaseReal[0] = 1;
  tridiagonalise(re, im, n, diagonal, offDiagonal, phaseReal, phaseImaginary, beta);
  const rotations = new Float64Array(n * n);
  for (let i = 0; i < n; i++) rotations[i * n + i] = 1;
  implicitQl(diagonal, offDiagonal, rotations, n);
  const order = Array.from(diagonal.keys()).sort((a, b) => diagonal[b] - diagonal[a]);
  const values = Float64Array.from(order, (k) => diagonal[k]);
  const count = Math.min(n, wanted(values));
  const real = new Float64Array(count * n);
  const imaginary = new Float64Array(count * n);
  for (let v = 0; v < count; v++) {
    const source = order[v] * n;
    const row = v * n;
    for (let i = 0; i < n; i++) {
      real[row + i] = phaseReal[i] * rotations[source + i];
      imaginary[row + i] = phaseImaginary[i] * rotations[source + i];
    }
    // The reflections, last first; their vectors lie in the columns of the lower triangle.
    for (let k = n - 2; k >= 0; k--) {
      if (beta[k] === 0) continue;
      let sr = 0;
      let si = 0;
      for (let i = k + 1; i < n; i++) {
        const vr = re[i * n + k];
        const vi = im[i * n + k];
        sr += vr * real[row + i] + vi * imaginary[row + i];
        si += vr * imaginary[row + i] - vi * real[row + i];
      }
      sr *= beta[k];
      si *= beta[k];
      for (let i = k + 1; i < n; i++) {
        const vr = re[i * n + k];
        const vi = im[i * n + k];
        real[row + i] -= vr * sr - vi * si;
        imaginary[row + i] -= vr * si + vi * sr;
      }
    }
  }
  return { values, real, imaginary, count };
}

/** Leaves the Householder vector of step k in column k below the diagonal; H = I - beta v v*. */
function tridiagonalise(
  re: Float64Array,
  im: Float64Array,
  n: number,
  diagonal: Float64Array,
  offDiagonal: Float64Array,
  phaseReal: Float64Array,
  phaseImaginary: Float64Array,
  beta: Float64Array,
): void {
  const vr = new Float64Array(n);
  const vi = new Float64Array(n);
  const pr = new Float64Array(n);
  const pi = new Float64Array(n);
  for (let k = 0; k < n - 1; k++) {
    let square = 0;
    for (let i = k + 1; i < n; i++) {
      vr[i] = re[i * n + k];
      vi[i] = im[i * n + k];
      square += vr[i] * vr[i] + vi[i] * vi[i];
    }
    const norm = Math.sqrt(square);
    const lead = maths.hypot(vr[k + 1], vi[k + 1]);
    const ur = lead > 0 ? vr[k + 1] / lead : 1;
    const ui = lead > 0 ? vi[k + 1] / lead : 0;
    offDiagonal[k] = norm;
    // The element left below the diagonal is -u norm; its phase goes into a diagonal unitary matrix.
    phaseReal[k + 1] = norm > 0 ? -(ur * phaseReal[k] - ui * phaseImaginary[k]) : phaseReal[k];
    phaseImaginary[k + 1] = norm > 0 ? -(ur * phaseImaginary[k] + ui * phaseReal[k]) : phaseImaginary[k];
    if (!(norm > 0)) continue;
    vr[k + 1] += ur * norm;
    vi[k + 1] += ui * norm;
    const b = 1 / (norm * (norm + lead));
    beta[k] = b;
    for (let i = k + 1; i < n; i++) {
      re[i * n + k] = vr[i];
      im[i * n + k] = vi[i];
      pr[i] = 0;
      pi[i] = 0;
    }
    // p = beta A v from the lower triangle alone.
    for (let i = k + 1; i < n; i++) {
      const row = i * n;
      const xr = vr[i];
      const xi = vi[i];
      let sr = re[row + i] * xr;
      let si = re[row + i] * xi;
      for (let j = k + 1; j < i; j++) {
        const ar = re[row + j];
        const ai = im[row + j];
        sr += ar * vr[j] - ai * vi[j];
        si += ar * vi[j] + ai * vr[j];
        pr[j] += ar * xr + ai * xi;
        pi[j] += ar * xi - ai * xr;
      }
      pr[i] += sr;
      pi[i] += si;
    }
    let inner = 0;
    for (let i = k + 1; i < n; i++) inner += vr[i] * pr[i] + vi[i] * pi[i];
    const half = 0.5 * b * b * inner;
    for (let i = k + 1; i < n; i++) {
      pr[i] = b * pr[i] - half * vr[i];
      pi[i] = b * pi[i] - half * vi[i];
    }
    for (let i = k + 1; i < n; i++) {
      const row = i * n;
      for (let j = k + 1; j <= i; j++) {
        re[row + j] -= vr[i] * pr[j] + vi[i] * pi[j] + pr[i] * vr[j] + pi[i] * vi[j];
        im[row + j] -= vi[i] * pr[j] - vr[i] * pi[j] + pi[i] * vr[j] - pr[i] * vi[j];
      }
    }
  }
  for (let i = 0; i < n; i++) diagonal[i] = re[i * n + i];
}

/** Diagonalises the real tridiagonal matrix; row i of `vectors` becomes the eigenvector of diagonal[i]. */
function implicitQl(
  diagonal: Float64Array,
  offDiagonal: Float64Array,
  vectors: Float64Array,
  n: number,
): void {
  for (let l = 0; l < n; l++) {
    for (let iteration = 0; iteration < 60; iteration++) {
      let m = l;
      for (; m < n - 1; m++) {
        const size = Math.abs(diagonal[m]) + Math.abs(diagonal[m + 1]);
        if (Math.abs(offDiagonal[m]) <= 2.3e-16 * size) break;
      }
      if (m === l) break;
      let g = (diagonal[l + 1] - diagonal[l]) / (2 * offDiagonal[l]);
      let r = maths.hypot(g, 1);
      g = diagonal[m] - diagonal[l] + offDiagonal[l] / (g + (g >= 0 ? r : -r));
      let s = 1;
      let c = 1;
      let p = 0;
      let i = m - 1;
      for (; i >= l; i--) {
        const f = s * offDiagonal[i];
        const b = c * offDiagonal[i];
        r = Math.sqrt(f * f + g * g);
        offDiagonal[i + 1] = r;
        if (r === 0) {
          diagonal[i + 1] -= p;
          offDiagonal[m] = 0;
          break;
        }
        s = f / r;
        c = g / r;
        g = diagonal[i + 1] - p;
        r = (diagonal[i] - g) * s + 2 * c * b;
        p = s * r;
        diagonal[i + 1] = g + p;
        g = c * r - b;
        const lower = i * n;
        const upper = lower + n;
        for (let k = 0; k < n; k++) {
          const u = vectors[upper + k];
          const v = vectors[lower + k];
          vectors[upper + k] = s * v + c * u;
          vectors[lower + k] = c * v - s * u;
        }
      }
      if (r === 0 && i >= l) continue;
      diagonal[l] -= p;
      offDiagonal[l] = g;
      offDiagonal[m] = 0;
    }
  }
}
