import { Rng } from '../signal/random.js';
import { EnvelopeFactor, multiply, type SparseMatrix } from './sparse.js';
import { symmetricEigen } from './symmetric-eigen.js';
import * as maths from '../signal/maths.js';

export interface LowestEigen {
  /** Ascending. */
  readonly values: Float64Array;
  /** One vector per value, of unit mass: x^T M x = 1. */
  readonly vectors: readonly Float64Array[];
}

/** Vectors that are iterated together: equal eigenvalues of up to this number are found as surely as single ones. */
const block = 6;
/** Residual re the value at which a pair is taken; its eigenvalue is then right to the square of it. */
const tolerance = 1e-5;

/**
 * The lowest eigenvalues of K x = v M x up to a bound, and their vectors: block Lanczos on the inverse of K + s M with
 * full orthogonalisation in the product of M (Golub and van Loan, Matrix Computations, ch. 10), and Rayleigh and Ritz.
 * K may be singular. Yields the share of the expected values that is found.
 *
 * @param mass Positive definite, of the same entries as `stiffness`.
 * @param to Every value up to this is found.
 * @param expected How many that may be, for the first size of the search.
 */
export function* lowestEigen(
  stiffness: SparseMatrix,
  mass: SparseMatrix,
  to: number,
  expected: number,
): Generator<number, LowestEigen, void> {
  const { size } = stiffness;
  const shift = to * 0.05;
  const shifted = {
    ...stiffness,
    values: stiffness.values.map((value, k) => value + shift * mass.values[k]),
  };
  const factor = new EnvelopeFactor(shifted);
  const rng = new Rng(1);
  const basis: Float64Array[] = [];
  /** M times each vector of the basis. */
  const heavy: Float64Array[] = [];
  /** The operator on each vector of the basis, as long as it was made. */
  const images: Float64Array[] = [];
  const random = (): Float64Array => Float64Array.from({ length: size }, () => rng.gaussian());
  const extend = (vector: Float64Array): void => {
    const weighed = new Float64Array(size);
    for (let round = 0; round < 2; round++)
      for (let j = 0; j < basis.length; j++) addTo(vector, basis[j], -dot(heavy[j], vector));
    multiply(mass, vector, weighed);
    const norm = Math.sqrt(dot(vector, weighed));
    // What lies in the basis already leaves rounding noise: a fresh direction takes its place.
    if (!(norm > 1e-10)) return extend(random());
    basis.push(vector.map((value) => value / norm));
    heavy.push(weighed.map((value) => value / norm));
  };
  const apply = (j: number): Float64Array => {
    const image = heavy[j].slice();
    factor.solve(image);
    return image;
  };
  while (basis.length < Math.min(block, size)) extend(random());
  let goal = Math.min(size, 2 * expected + 4 * block);
  for (;;) {
    while (images.length < Math.min(goal, size)) {
      const end = basis.length;
      for (let j = images.length; j < end; j++) images.push(apply(j));
      for (let j = end - block; j < end && basis.length < size; j++) extend(images[j].slice());
      yield Math.min(0.9, images.length / goal);
    }
    const found = ritz(basis, heavy, images, to, shift);
    if (found) return found;
    if (images.length >= size) throw new Error('the search for eigenvalues ended without them');
    goal = Math.min(size, Math.ceil(goal * 1.35) + block);
  }
}

/** Pairs up to `to`, or null where one of them, or what lies just above, is not there yet. */
function ritz(
  basis: readonly Float64Array[],
  heavy: readonly Float64Array[],
  images: readonly Float64Array[],
  to: number,
  shift: number,
): LowestEigen | null {
  const count = images.length;
  const small = new Float64Array(count * count);
  for (let i = 0; i < count; i++)
    for (let j = i; j < count; j++) {
      const value = dot(heavy[i], images[j]);
      small[i * count + j] = value;
      small[j * count + i] = value;
    }
  const { values, vectors } = symmetricEigen(small, count);
  const kept: number[] = [];
  const shapes: Float64Array[] = [];
  // The largest of the inverse are the lowest of the room.
  for (let k = count - 1; k >= 0; k--) {
    const weights = vectors.subarray(k * count, (k + 1) * count);
    const vector = combine(basis, weights);
    const image = combine(images, weights);
    let residual = 0;
    for (let i = 0; i < vector.length; i++) residual += maths.square(image[i] - values[k] * vector[i]);
    let length = 0;
    for (const entry of vector) length += entry * entry;
    if (!(Math.sqrt(residual / length) < tolerance * values[k])) return null;
    const value = 1 / values[k] - shift;
    // The first beyond the bound is sure too, so that none below it is missing.
    if (value > to) return { values: Float64Array.from(kept), vectors: shapes };
    kept.push(Math.max(0, value));
    shapes.push(vector);
  }
  return count === basis[0].length ? { values: Float64Array.from(kept), vectors: shapes } : null;
}

function combine(vectors: readonly Float64Array[], weights: Float64Array): Float64Array {
  const sum = new Float64Array(vectors[0].length);
  for (let j = 0; j < weights.length; j++) addTo(sum, vectors[j], weights[j]);
  return sum;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i] * b[i];
  return sum;
}

function addTo(target: Float64Array, vector: Float64Array, factor: number): void {
  for (let i = 0; i < target.length; i++) target[i] += factor * vector[i];
}
