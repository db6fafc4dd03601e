import type { PlanMesh } from './plan-mesh.js';
import { SparseBuilder, type SparseMatrix } from './sparse.js';

/** Quadrature of degree 4 on a triangle, six points (G. R. Cowper 1973; from memory, held to exact integrals by a test). */
const near = 0.091576213509771;
const far = 0.445948490915965;
const nearWeight = 0.109951743655322;
const farWeight = 0.223381589678011;
const points: readonly (readonly [number, number, number])[] = [near, far].flatMap((a) => [
  [1 - 2 * a, a, a],
  [a, 1 - 2 * a, a],
  [a, a, 1 - 2 * a],
]);
const weights = [nearWeight, nearWeight, nearWeight, farWeight, farWeight, farWeight];

/** The six quadratic shape functions at barycentric coordinates. */
export const shapesAt = (a: number, b: number, c: number): readonly number[] => [
  a * (2 * a - 1),
  b * (2 * b - 1),
  c * (2 * c - 1),
  4 * a * b,
  4 * b * c,
  4 * c * a,
];

/** Their derivatives by each barycentric coordinate. */
const slopesAt = (a: number, b: number, c: number): readonly (readonly [number, number, number])[] => [
  [4 * a - 1, 0, 0],
  [0, 4 * b - 1, 0],
  [0, 0, 4 * c - 1],
  [4 * b, 4 * a, 0],
  [0, 4 * c, 4 * b],
  [4 * c, 0, 4 * a],
];

/**
 * Stiffness and mass of the two-dimensional wave equation with rigid walls on quadratic triangles: K x = k^2 M x
 * (O. C. Zienkiewicz and R. L. Taylor, The Finite Element Method).
 */
export function planMatrices({ nodes, triangles }: PlanMesh): {
  stiffness: SparseMatrix;
  mass: SparseMatrix;
} {
  const size = nodes.length / 2;
  const stiffness = new SparseBuilder(size);
  const mass = new SparseBuilder(size);
  for (let t = 0; t < triangles.length; t += 6) {
    const at = triangles.subarray(t, t + 6);
    const [x, y] = [0, 1].map((k) => [0, 1, 2].map((i) => nodes[2 * at[i] + k]));
    const twice = (x[1] - x[0]) * (y[2] - y[0]) - (x[2] - x[0]) * (y[1] - y[0]);
    // Gradients of the barycentric coordinates.
    const gx = [y[1] - y[2], y[2] - y[0], y[0] - y[1]].map((value) => value / twice);
    const gy = [x[2] - x[1], x[0] - x[2], x[1] - x[0]].map((value) => value / twice);
    points.forEach(([a, b, c], p) => {
      const weight = (weights[p] * twice) / 2;
      const shapes = shapesAt(a, b, c);
      const slopes = slopesAt(a, b, c).map(([u, v, w]) => [
        u * gx[0] + v * gx[1] + w * gx[2],
        u * gy[0] + v * gy[1] + w * gy[2],
      ]);
      for (let i = 0; i < 6; i++)
        for (let j = 0; j < 6; j++) {
          stiffness.add(at[i], at[j], weight * (slopes[i][0] * slopes[j][0] + slopes[i][1] * slopes[j][1]));
          mass.add(at[i], at[j], weight * shapes[i] * shapes[j]);
        }
    });
  }
  return { stiffness: stiffness.build(), mass: mass.build() };
}
