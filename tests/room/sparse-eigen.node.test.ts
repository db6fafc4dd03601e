import { describe, expect, it } from 'vitest';
import { EnvelopeFactor, multiply, SparseBuilder } from '../../src/room/sparse.js';
import { lowestEigen } from '../../src/room/sparse-eigen.js';
import { symmetricEigen } from '../../src/room/symmetric-eigen.js';
import { Rng } from '../../src/signal/index.js';

/** A string of `count` masses between free ends: eigenvalues 4 sin^2(pi k / 2n), known in closed form. */
function chain(count: number) {
  const stiffness = new SparseBuilder(count);
  const mass = new SparseBuilder(count);
  for (let i = 0; i < count; i++) {
    mass.add(i, i, 1);
    if (i + 1 === count) continue;
    mass.add(i, i + 1, 0);
    mass.add(i + 1, i, 0);
    stiffness.add(i, i, 1);
    stiffness.add(i + 1, i + 1, 1);
    stiffness.add(i, i + 1, -1);
    stiffness.add(i + 1, i, -1);
  }
  return { stiffness: stiffness.build(), mass: mass.build() };
}

describe('eigenvalues', () => {
  it('of a small symmetric matrix give it back: V^T D V, and V is orthogonal', () => {
    const rng = new Rng(2);
    for (const size of [1, 2, 3, 8, 31]) {
      const matrix = new Float64Array(size * size);
      for (let i = 0; i < size; i++)
        for (let j = 0; j <= i; j++) matrix[i * size + j] = matrix[j * size + i] = rng.gaussian();
      const { values, vectors } = symmetricEigen(matrix, size);
      for (let i = 0; i < size; i++) {
        if (i > 0) expect(values[i]).toBeGreaterThanOrEqual(values[i - 1]);
        for (let j = 0; j < size; j++) {
          let [product, sum] = [0, 0];
          for (let k = 0; k < size; k++) {
            product += values[k] * vectors[k * size + i] * vectors[k * size + j];
            sum += vectors[i * size + k] * vectors[j * size + k];
          }
          expect(Math.abs(product - matrix[i * size + j])).toBeLessThan(1e-12 * size);
          expect(Math.abs(sum - (i === j ? 1 : 0))).toBeLessThan(1e-12 * size);
        }
      }
    }
  });

  it('of a chain of masses are all found, and no other', () => {
    const count = 400;
    const exact = Array.from({ length: count }, (_, k) => 4 * Math.sin((Math.PI * k) / (2 * count)) ** 2);
    const { stiffness, mass } = chain(count);
    const job = lowestEigen(stiffness, mass, 0.02, 10);
    for (;;) {
      const step = job.next();
      if (!step.done) continue;
      const expected = exact.filter((value) => value <= 0.02);
      expect(step.value.values).toHaveLength(expected.length);
      step.value.values.forEach((value, k) => expect(Math.abs(value - expected[k])).toBeLessThan(1e-9));
      break;
    }
  });
});

describe('the envelope factor', () => {
  it('solves what the matrix makes', () => {
    const rng = new Rng(4);
    const size = 60;
    const builder = new SparseBuilder(size);
    for (let i = 0; i < size; i++) {
      builder.add(i, i, 10);
      const j = Math.floor(size * rng.uniform());
      if (j === i) continue;
      builder.add(i, j, 1);
      builder.add(j, i, 1);
    }
    const matrix = builder.build();
    const wanted = Float64Array.from({ length: size }, () => rng.gaussian());
    const vector = new Float64Array(size);
    multiply(matrix, wanted, vector);
    new EnvelopeFactor(matrix).solve(vector);
    vector.forEach((value, i) => expect(value).toBeCloseTo(wanted[i], 10));
  });
});
