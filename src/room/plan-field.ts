import { shapesAt } from './plan-elements.js';
import type { PlanMesh } from './plan-mesh.js';
import type { PlanShape } from './plan-modes.js';
import type { PointMetres } from './plan.js';

/** Where a point lies in a mesh: its triangle's first entry, and the weights of its six nodes. */
export interface MeshPlace {
  readonly triangle: number;
  readonly weights: readonly number[];
}

/** The triangle that a point lies in, or that it misses least where it stands on or just beyond a wall. */
export function locate({ nodes, triangles }: PlanMesh, { x, y }: PointMetres): MeshPlace {
  let best = -Infinity;
  let triangle = 0;
  let [a, b] = [1, 0];
  for (let t = 0; t < triangles.length; t += 6) {
    const [i, j, k] = [2 * triangles[t], 2 * triangles[t + 1], 2 * triangles[t + 2]];
    const [x0, y0] = [nodes[k], nodes[k + 1]];
    const [ux, uy, vx, vy] = [nodes[i] - x0, nodes[i + 1] - y0, nodes[j] - x0, nodes[j + 1] - y0];
    const twice = ux * vy - uy * vx;
    const first = ((x - x0) * vy - (y - y0) * vx) / twice;
    const second = ((y - y0) * ux - (x - x0) * uy) / twice;
    const least = Math.min(first, second, 1 - first - second);
    if (least <= best) continue;
    [best, triangle, a, b] = [least, t, first, second];
    if (least >= 0) break;
  }
  // Beyond the wall the nearest point of the triangle counts: parabolas must not be drawn on.
  const clamp = (value: number): number => Math.min(1, Math.max(0, value));
  const [p, q, r] = [clamp(a), clamp(b), clamp(1 - a - b)];
  const sum = p + q + r;
  return { triangle, weights: shapesAt(p / sum, q / sum, r / sum) };
}

/** Pressure of a shape at a place of its mesh, re its largest. */
export const valueAt = (
  { triangles }: PlanMesh,
  { values }: PlanShape,
  { triangle, weights }: MeshPlace,
): number => weights.reduce((sum, weight, i) => sum + weight * values[triangles[triangle + i]], 0);
