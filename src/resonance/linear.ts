/** Small dense linear algebra on row-major typed arrays; everything works in place and on contiguous rows. */

/** Inner product of two stretches of `count` numbers. Four sums hide the latency of the additions. */
export function dot(a: Float64Array, ao: number, b: Float64Array, bo: number, count: number): number {
  let s0 = 0;
  let s1 = 0;
  let s2 = 0;
  let s3 = 0;
  let k = 0;
  for (; k + 3 < count; k += 4) {
    s0 += a[ao + k] * b[bo + k];
    s1 += a[ao + k + 1] * b[bo + k + 1];
    s2 += a[ao + k + 2] * b[bo + k + 2];
    s3 += a[ao + k + 3] * b[bo + k + 3];
  }
  for (; k < count; k++) s0 += a[ao + k] * b[bo + k];
  return s0 + s1 + (s2 + s3);
}

/** Cholesky factor L of the n x n matrix, written over its lower triangle. False where it is not positive definite. */
export function cholesky(matrix: Float64Array, n: number): boolean {
  for (let i = 0; i < n; i++) {
    const row = i * n;
    for (let j = 0; j < i; j++) {
      const s = matrix[row + j] - dot(matrix, row, matrix, j * n, j);
      matrix[row + j] = s / matrix[j * n + j];
    }
    const pivot = matrix[row + i] - dot(matrix, row, matrix, row, i);
    if (!(pivot > 0)) return false;
    matrix[row + i] = Math.sqrt(pivot);
  }
  return true;
}

/** Solves L x = b in place, from element `start` on where all before are zero. */
export function forwardSolve(
  factor: Float64Array,
  n: number,
  b: Float64Array,
  offset: number,
  start = 0,
): void {
  for (let i = start; i < n; i++) {
    const s = b[offset + i] - dot(factor, i * n + start, b, offset + start, i - start);
    b[offset + i] = s / factor[i * n + i];
  }
}

/** Solves transpose(L) x = b in place. */
export function backSolve(factor: Float64Array, n: number, b: Float64Array, offset: number): void {
  for (let i = n - 1; i >= 0; i--) {
    const row = i * n;
    const x = b[offset + i] / factor[row + i];
    b[offset + i] = x;
    for (let k = 0; k < i; k++) b[offset + k] -= factor[row + k] * x;
  }
}

/** Inverse of L, transposed: row i holds column i of the inverse. `inverse` (n x n) is overwritten. */
export function invertFactor(factor: Float64Array, n: number, inverse: Float64Array): void {
  inverse.fill(0, 0, n * n);
  for (let i = 0; i < n; i++) {
    inverse[i * n + i] = 1;
    forwardSolve(factor, n, inverse, i * n, i);
  }
}

/** Element (i, j) of the inverse of L transpose(L), from `invertFactor`. */
export function inverseElement(inverse: Float64Array, n: number, i: number, j: number): number {
  const from = Math.max(i, j);
  return dot(inverse, i * n + from, inverse, j * n + from, n - from);
}
