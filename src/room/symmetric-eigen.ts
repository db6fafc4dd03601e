import * as maths from '../signal/maths.js';

export interface SymmetricEigen {
  /** Ascending. */
  readonly values: Float64Array;
  /** Vector k in row k: entry j at k * size + j. */
  readonly vectors: Float64Array;
}

const mostRounds = 60;

/**
 * All eigenvalues and vectors of a small symmetric matrix: Householder's reduction to three diagonals, then implicit QL
 * (G. H. Golub and C. F. van Loan, Matrix Computations, ch. 8; J. H. Wilkinson and C. Reinsch 1971).
 *
 * @param matrix size * size; kept as it is
 */
export function symmetricEigen(matrix: Float64Array, size: number): SymmetricEigen {
  const { diagonal, beside, turns } = tridiagonal(matrix, size);
  implicitQl(diagonal, beside, turns, size);
  const order = Array.from({ length: size }, (_, i) => i).sort((a, b) => diagonal[a] - diagonal[b]);
  const vectors = new Float64Array(size * size);
  order.forEach((from, to) => vectors.set(turns.subarray(from * size, (from + 1) * size), to * size));
  return { values: Float64Array.from(order, (i) => diagonal[i]), vectors };
}

/** `turns` holds the transposed orthogonal matrix: its rows are turned along by QL, and end as eigenvectors. */
function tridiagonal(
  matrix: Float64Array,
  size: number,
): { diagonal: Float64Array; beside: Float64Array; turns: Float64Array } {
  const a = matrix.slice();
  const turns = new Float64Array(size * size);
  for (let i = 0; i < size; i++) turns[i * size + i] = 1;
  const beside = new Float64Array(size);
  const v = new Float64Array(size);
  const p = new Float64Array(size);
  for (let k = 0; k < size - 2; k++) {
    let norm = 0;
    for (let i = k + 1; i < size; i++) norm += maths.square(a[i * size + k]);
    norm = Math.sqrt(norm);
    const head = a[(k + 1) * size + k];
    beside[k] = head > 0 ? -norm : norm;
    if (norm === 0) continue;
    let square = 0;
    for (let i = k + 1; i < size; i++) {
      v[i] = a[i * size + k] - (i === k + 1 ? beside[k] : 0);
      square += v[i] * v[i];
    }
    if (square === 0) continue;
    const scale = 2 / square;
    // a = (1 - scale v v^T) a (1 - scale v v^T)
    let vp = 0;
    for (let i = k + 1; i < size; i++) {
      let sum = 0;
      for (let j = k + 1; j < size; j++) sum += a[i * size + j] * v[j];
      p[i] = scale * sum;
      vp += p[i] * v[i];
    }
    for (let i = k + 1; i < size; i++) p[i] -= (scale / 2) * vp * v[i];
    for (let i = k + 1; i < size; i++)
      for (let j = k + 1; j < size; j++) a[i * size + j] -= v[i] * p[j] + p[i] * v[j];
    for (let j = 0; j < size; j++) {
      let sum = 0;
      for (let i = k + 1; i < size; i++) sum += v[i] * turns[i * size + j];
      sum *= scale;
      for (let i = k + 1; i < size; i++) turns[i * size + j] -= sum * v[i];
    }
  }
  if (size > 1) beside[size - 2] = a[(size - 1) * size + size - 2];
  const diagonal = Float64Array.from({ length: size }, (_, i) => a[i * size + i]);
  return { diagonal, beside, turns };
}

function implicitQl(d: Float64Array, e: Float64Array, turns: Float64Array, size: number): void {
  for (let l = 0; l < size; l++) {
    for (let round = 0; round < mostRounds; round++) {
      let m = l;
      while (m < size - 1 && Math.abs(e[m]) > 1e-16 * (Math.abs(d[m]) + Math.abs(d[m + 1]))) m++;
      if (m === l) break;
      let g = (d[l + 1] - d[l]) / (2 * e[l]);
      g = d[m] - d[l] + e[l] / (g + (g < 0 ? -1 : 1) * maths.hypot(g, 1));
      let [s, c, p] = [1, 1, 0];
      let i = m - 1;
      for (; i >= l; i--) {
        const f = s * e[i];
        const b = c * e[i];
        const r = maths.hypot(f, g);
        e[i + 1] = r;
        if (r === 0) {
          d[i + 1] -= p;
          e[m] = 0;
          break;
        }
        s = f / r;
        c = g / r;
        g = d[i + 1] - p;
        const t = (d[i] - g) * s + 2 * c * b;
        p = s * t;
        d[i + 1] = g + p;
        g = c * t - b;
        for (let k = 0; k < size; k++) {
          const high = turns[(i + 1) * size + k];
          const low = turns[i * size + k];
          turns[(i + 1) * size + k] = s * low + c * high;
          turns[i * size + k] = c * low - s * high;
        }
      }
      if (i >= l) continue;
      d[l] -= p;
      e[l] = g;
      e[m] = 0;
    }
  }
}
