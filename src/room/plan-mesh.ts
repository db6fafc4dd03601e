import Constrainautor from '@kninnug/constrainautor';
import Delaunator from 'delaunator';
import { RingdownError } from '../signal/errors.js';
import { cornerAngles, distanceToWall, isInside, type Plan, type PointMetres } from './plan.js';
import * as maths from '../signal/maths.js';

/** Quadratic triangles: three corners and the middle of each side. */
export interface PlanMesh {
  /** x and y of every node in turn. */
  readonly nodes: Float64Array;
  /** Six nodes a triangle: corners 0, 1, 2 counter-clockwise, then the middles of 0-1, 1-2, 2-0. */
  readonly triangles: Uint32Array;
  /** Sides on the walls: wall, and the three nodes (end, end, middle) of each. */
  readonly edges: readonly { readonly wall: number; readonly nodes: readonly [number, number, number] }[];
}

/** Towards a corner that points into the room the triangles shrink to this share of their size. */
const finest = 0.06;
/** How fast they grow again with the distance from it. */
const growth = 0.35;
/** Points this much nearer to a wall than the size there would make flat triangles. */
const clearance = 0.55;

/** Of 6000 random plans 2 % needed a second size, and five of them a third. */
const mostSizes = 9;
const nextSize = 0.97;

/**
 * A mesh of a plan with triangles of about `sizeMetres`, finer towards corners that point into the room, where the slope
 * of the pressure has no bound. Points on the walls and on a hexagonal grid, joined by a Delaunay triangulation that is
 * held to the walls (delaunator and constrainautor). Points of one wall lie on a line but for rounding, and now and then
 * constrainautor finds no way along it; a slightly smaller size moves them all.
 *
 * @throws RingdownError `plan-mesh` where no size leads to a mesh
 */
export function meshPlan(plan: Plan, sizeMetres: number): PlanMesh {
  for (let k = 0; k < mostSizes; k++) {
    const mesh = meshOfSize(plan, sizeMetres * maths.power(nextSize, k));
    if (mesh) return mesh;
  }
  throw new RingdownError('plan-mesh', {});
}

/** Null where the triangles cannot be held to the walls. */
function meshOfSize(plan: Plan, sizeMetres: number): PlanMesh | null {
  const { corners } = plan;
  const sharp = corners.filter((_, i) => cornerAngles(plan)[i] > Math.PI * 1.001);
  const sizeAt = (p: PointMetres): number =>
    sharp.reduce(
      (size, corner) =>
        Math.min(size, finest * sizeMetres + growth * maths.hypot(p.x - corner.x, p.y - corner.y)),
      sizeMetres,
    );
  const points: PointMetres[] = [];
  const walls: number[] = [];
  const constraints: [number, number][] = [];
  corners.forEach((corner, wall) => {
    for (const place of placesAlong(corner, corners[(wall + 1) % corners.length], sizeAt)) {
      points.push(place);
      walls.push(wall);
    }
  });
  const onWalls = points.length;
  for (let i = 0; i < onWalls; i++) constraints.push([i, (i + 1) % onWalls]);
  for (const level of levels(sizeMetres, sharp.length > 0)) {
    for (const point of hexagonal(corners, level)) {
      const size = sizeAt(point);
      // Each level of the grid fills the region where it has the size that is asked for.
      if (size > level * 1.41 && level < sizeMetres) continue;
      if (size <= level * 0.705) continue;
      if (!isInside(plan, point)) continue;
      const near = corners.some(
        (corner, i) => distanceToWall(corner, corners[(i + 1) % corners.length], point) < clearance * size,
      );
      if (!near && !crowded(points, onWalls, point, clearance * Math.min(size, level))) points.push(point);
    }
  }
  const delaunay = new Delaunator(Float64Array.from(points.flatMap(({ x, y }) => [x, y])));
  try {
    new Constrainautor(delaunay, constraints);
  } catch {
    return null;
  }
  return quadratic(plan, points, delaunay.triangles, constraints, walls);
}

/** Grid sizes by halves, from the coarsest to the finest that is wanted. */
function levels(sizeMetres: number, graded: boolean): number[] {
  if (!graded) return [sizeMetres];
  const list: number[] = [];
  for (let size = sizeMetres; size >= finest * sizeMetres; size /= 2) list.push(size);
  return list;
}

/** Places from one corner towards the next, the latter left out, each as far from the last as the size asks. */
function placesAlong(a: PointMetres, b: PointMetres, sizeAt: (p: PointMetres) => number): PointMetres[] {
  const length = maths.hypot(b.x - a.x, b.y - a.y);
  const at = (s: number): PointMetres => ({
    x: a.x + (s / length) * (b.x - a.x),
    y: a.y + (s / length) * (b.y - a.y),
  });
  // The number of steps is the integral of 1 / size; places lie at equal shares of it.
  const samples = 400;
  const total = new Float64Array(samples + 1);
  for (let i = 0; i < samples; i++)
    total[i + 1] = total[i] + length / samples / sizeAt(at(((i + 0.5) / samples) * length));
  const steps = Math.max(2, Math.ceil(total[samples]));
  const places = [a];
  let i = 0;
  for (let step = 1; step < steps; step++) {
    const wanted = (step / steps) * total[samples];
    while (total[i + 1] < wanted) i++;
    const share = (wanted - total[i]) / (total[i + 1] - total[i]);
    places.push(at(((i + share) / samples) * length));
  }
  return places;
}

function* hexagonal(corners: readonly PointMetres[], size: number): Generator<PointMetres> {
  const right = Math.max(...corners.map(({ x }) => x));
  const top = Math.max(...corners.map(({ y }) => y));
  const step = size * (Math.sqrt(3) / 2);
  // Rows and columns are spread so that they fill the plan evenly from wall to wall.
  const rows = Math.max(1, Math.round(top / step));
  const columns = Math.max(1, Math.round(right / size));
  for (let row = 0; row <= rows; row++)
    for (let column = 0; column <= columns; column++)
      yield { x: ((column + (row % 2 ? 0.5 : 0)) / columns) * right, y: (row / rows) * top };
}

/** Whether a point lies too near to one that a finer or coarser grid, or a wall, has set. */
const crowded = (
  points: readonly PointMetres[],
  from: number,
  { x, y }: PointMetres,
  apart: number,
): boolean => {
  for (let i = from; i < points.length; i++)
    if (Math.abs(points[i].x - x) < apart && maths.hypot(points[i].x - x, points[i].y - y) < apart)
      return true;
  return false;
};

function quadratic(
  plan: Plan,
  points: readonly PointMetres[],
  corners: ArrayLike<number>,
  constraints: readonly [number, number][],
  walls: readonly number[],
): PlanMesh {
  const nodes = points.flatMap(({ x, y }) => [x, y]);
  const middles = new Map<string, number>();
  const middle = (a: number, b: number): number => {
    const key = a < b ? `${a} ${b}` : `${b} ${a}`;
    const known = middles.get(key);
    if (known !== undefined) return known;
    const index = nodes.length / 2;
    nodes.push((points[a].x + points[b].x) / 2, (points[a].y + points[b].y) / 2);
    middles.set(key, index);
    return index;
  };
  const triangles: number[] = [];
  for (let t = 0; t < corners.length; t += 3) {
    const [a, c, b] = [corners[t], corners[t + 1], corners[t + 2]];
    const centre = {
      x: (points[a].x + points[b].x + points[c].x) / 3,
      y: (points[a].y + points[b].y + points[c].y) / 3,
    };
    const twice =
      (points[b].x - points[a].x) * (points[c].y - points[a].y) -
      (points[c].x - points[a].x) * (points[b].y - points[a].y);
    // A sliver between three points of one wall has no area, and belongs to no room.
    if (Math.abs(twice) < 1e-9 || !isInside(plan, centre)) continue;
    const [first, second] = twice > 0 ? [b, c] : [c, b];
    triangles.push(a, first, second, middle(a, first), middle(first, second), middle(second, a));
  }
  const edges = constraints.map(([a, b], i) => ({
    wall: walls[i],
    nodes: [a, b, middle(a, b)] as const,
  }));
  return { nodes: Float64Array.from(nodes), triangles: Uint32Array.from(triangles), edges };
}
