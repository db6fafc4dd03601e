/** What lies under the pointer: the ray from the eye against the very triangles that are drawn. */
import { indexAt, positionAt, sampleField } from './field.js';
import type { Pick } from './picture.js';
import { rayAt, type Ray, type Space } from './projection.js';
import { vertexIndices, type Relief } from './relief.js';

type Vector = readonly [number, number, number];

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Parameter of the ray on a triangle (Möller and Trumbore 1997), both sides; Infinity without a hit. */
function hitTriangle(ray: Ray, a: Vector, b: Vector, c: Vector): number {
  const ab = minus(b, a);
  const ac = minus(c, a);
  const p = cross(ray.direction, ac);
  const determinant = dot(ab, p);
  if (Math.abs(determinant) < 1e-14) return Infinity;
  const from = minus(ray.origin, a);
  const u = dot(from, p) / determinant;
  const q = cross(from, ab);
  const v = dot(ray.direction, q) / determinant;
  const grace = 1e-9;
  if (u < -grace || v < -grace || u + v > 1 + grace) return Infinity;
  return dot(ac, q) / determinant;
}

/** Parameters at which the ray is between two planes across one axis; null if never. */
function slab(origin: number, direction: number, low: number, high: number): [number, number] | null {
  if (Math.abs(direction) < 1e-12) return origin >= low && origin <= high ? [-Infinity, Infinity] : null;
  const a = (low - origin) / direction;
  const b = (high - origin) / direction;
  return a < b ? [a, b] : [b, a];
}

/** Cell of `edges` (ascending) that holds `at`. */
function cellAt(edges: Float64Array, at: number): number {
  return Math.min(edges.length - 2, Math.max(0, Math.floor(indexAt(edges, at))));
}

/**
 * The point of the field under a CSS pixel, or null where the ray meets the walls, the frame or nothing. The value is
 * the field's own, even where the drawing is flattened to the noise floor.
 */
export function pickRelief(space: Space, relief: Relief, xCss: number, yCss: number): Pick | null {
  const { field } = relief.view;
  const columnIndices = vertexIndices(relief.columns);
  const rowIndices = vertexIndices(relief.rows);
  if (columnIndices.length < 2 || rowIndices.length < 2) return null;
  const xs = Float64Array.from(columnIndices, (k) => relief.x(positionAt(field.columnPositions, k)));
  const zs = Float64Array.from(rowIndices, (k) => relief.z(positionAt(field.rowPositions, k)));
  const ray = rayAt(space, xCss, yCss);
  const [ox, oy, oz] = ray.origin;
  const [dx, dy, dz] = ray.direction;
  const [lastX, lastZ] = [xs[xs.length - 1], zs[zs.length - 1]];
  const spans = [
    slab(ox, dx, xs[0], lastX),
    slab(oy, dy, -relief.half[1] - 1e-9, relief.half[1] + 1e-9),
    slab(oz, dz, zs[0], lastZ),
  ];
  if (spans.some((span) => span === null)) return null;
  const enter = Math.max(...spans.map((span) => span![0]));
  const leave = Math.min(...spans.map((span) => span![1]));
  if (!(enter <= leave)) return null;

  const corner = (c: number, r: number): Vector => relief.point(columnIndices[c], rowIndices[r]);
  let c = cellAt(xs, ox + dx * enter);
  let r = cellAt(zs, oz + dz * enter);
  // Through a side and below the surface there: the cut wall stands in the way.
  if (enter > spans[1]![0]) {
    const [x, y, z] = [ox + dx * enter, oy + dy * enter, oz + dz * enter];
    const fx = (x - xs[c]) / (xs[c + 1] - xs[c]);
    const fz = (z - zs[r]) / (zs[r + 1] - zs[r]);
    const level = (at: number): number => corner(c, at)[1] * (1 - fx) + corner(c + 1, at)[1] * fx;
    if (y < level(r) * (1 - fz) + level(r + 1) * fz - 1e-9) return null;
  }
  const steps = xs.length + zs.length + 4;
  for (let step = 0; step < steps; step += 1) {
    const [a, b, d, e] = [corner(c, r), corner(c + 1, r), corner(c, r + 1), corner(c + 1, r + 1)];
    const t = Math.min(hitTriangle(ray, a, d, b), hitTriangle(ray, b, d, e));
    if (t < Infinity) {
      const column = relief.column(ox + dx * t);
      const row = relief.row(oz + dz * t);
      return { column, row, value: sampleField(field, column, row) };
    }
    const nextX = dx > 0 ? (xs[c + 1] - ox) / dx : dx < 0 ? (xs[c] - ox) / dx : Infinity;
    const nextZ = dz > 0 ? (zs[r + 1] - oz) / dz : dz < 0 ? (zs[r] - oz) / dz : Infinity;
    if (Math.min(nextX, nextZ) > leave + 1e-9) return null;
    if (nextX < nextZ) c += dx > 0 ? 1 : -1;
    else r += dz > 0 ? 1 : -1;
    if (c < 0 || c > xs.length - 2 || r < 0 || r > zs.length - 2) return null;
  }
  return null;
}
