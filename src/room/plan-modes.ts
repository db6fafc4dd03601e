import type { Job } from '../signal/types.js';
import { RingdownError } from '../signal/errors.js';
import { planArea, planPerimeter, type Plan } from './plan.js';
import { planMatrices } from './plan-elements.js';
import { meshPlan, type PlanMesh } from './plan-mesh.js';
import { lowestEigen } from './sparse-eigen.js';
import * as maths from '../signal/maths.js';

/** A standing wave of the floor plan alone, the same at every height. */
export interface PlanShape {
  /** Wave number squared, 1/m2; 0 for the first, which is the same everywhere. */
  readonly waveNumberSquared: number;
  /** Pressure at every node of the mesh, re its largest: -1 to 1. */
  readonly values: Float64Array;
  /** Mean of its square over the floor. */
  readonly meanSquare: number;
  /** Mean of its square along each wall. */
  readonly wallMeanSquares: readonly number[];
}

/** The waves of a plan, from which those of the room follow with cosines in height. */
export interface PlanSolution {
  readonly plan: Plan;
  readonly mesh: PlanMesh;
  /** Ascending. */
  readonly shapes: readonly PlanShape[];
  /**
   * How far a frequency may be off for the fineness of the mesh, as a fraction: the largest change from a coarser mesh
   * to this one, taken on by the fourth power of the size.
   */
  readonly meshError: number;
}

/** Size of a triangle times wave number at the top frequency; at 1 frequencies err by 0.04 % at most, as measured. */
const fineness = 1;
/** The coarser mesh of the comparison. */
const coarser = 1.4;
/** At least so many triangles along the shorter side of a plan's square of the same area. */
const fewestAlong = 6;
/** More waves of a plan than this take minutes. */
const mostShapes = 400;

/** Expected number of waves of a plan up to a wave number: A k^2 / 4 pi + P k / 4 pi (Weyl). */
export const planShapeCount = (plan: Plan, waveNumber: number): number =>
  (planArea(plan) * maths.square(waveNumber) + planPerimeter(plan) * waveNumber) / (4 * Math.PI);

/**
 * The standing waves of a plan with rigid walls, up to a wave number, by finite elements.
 *
 * @param waveNumber 2 pi f / c of the highest frequency wanted, 1/m
 * @throws RingdownError `plan-modes` with `count`, `most` where the plan is too large for the frequency
 */
export function* solvePlan(plan: Plan, waveNumber: number): Job<PlanSolution> {
  const expected = Math.ceil(planShapeCount(plan, waveNumber)) + 1;
  if (expected > mostShapes) throw new RingdownError('plan-modes', { count: expected, most: mostShapes });
  const size = Math.min(fineness / waveNumber, Math.sqrt(planArea(plan)) / fewestAlong);
  const check = yield* solveOn(plan, size * coarser, waveNumber, [0, 0.3]);
  const { mesh, shapes } = yield* solveOn(plan, size, waveNumber, [0.3, 1]);
  const change = shapes.reduce((most, { waveNumberSquared: k2 }, i) => {
    const other = check.shapes[i]?.waveNumberSquared;
    return k2 > 0 && other ? Math.max(most, Math.abs(Math.sqrt(other / k2) - 1)) : most;
  }, 0);
  return { plan, mesh, shapes, meshError: change / (maths.power(coarser, 4) - 1) };
}

/** As `solvePlan`, on a mesh of one size. */
export function* solveOn(
  plan: Plan,
  sizeMetres: number,
  waveNumber: number,
  [from, to]: readonly [number, number] = [0, 1],
): Job<{ mesh: PlanMesh; shapes: PlanShape[] }> {
  const mesh = meshPlan(plan, sizeMetres);
  yield { stage: 'plan', fraction: from + 0.1 * (to - from) };
  const { stiffness, mass } = planMatrices(mesh);
  yield { stage: 'plan', fraction: from + 0.2 * (to - from) };
  const expected = Math.ceil(planShapeCount(plan, waveNumber)) + 1;
  const job = lowestEigen(stiffness, mass, maths.square(waveNumber), expected);
  for (;;) {
    const step = job.next();
    if (step.done) {
      const { values, vectors } = step.value;
      return {
        mesh,
        shapes: vectors.map((vector, i) => shapeOf(plan, mesh, i === 0 ? 0 : values[i], vector)),
      };
    }
    yield { stage: 'plan', fraction: from + (0.2 + 0.8 * step.value) * (to - from) };
  }
}

function shapeOf(plan: Plan, mesh: PlanMesh, waveNumberSquared: number, vector: Float64Array): PlanShape {
  const largest = vector.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0);
  const values = vector.map((value) => value / largest);
  const walls = plan.corners.map(() => ({ length: 0, sum: 0 }));
  for (const { wall, nodes } of mesh.edges) {
    const [a, b, m] = nodes.map((node) => values[node]);
    const [p, q] = nodes;
    const length = maths.hypot(
      mesh.nodes[2 * p] - mesh.nodes[2 * q],
      mesh.nodes[2 * p + 1] - mesh.nodes[2 * q + 1],
    );
    // The square of a parabola through a, m, b, integrated exactly.
    const square = (4 * (a * a + b * b) + 16 * m * m + 4 * m * (a + b) - 2 * a * b) / 30;
    walls[wall].length += length;
    walls[wall].sum += length * square;
  }
  return {
    waveNumberSquared,
    values,
    // The vector has unit mass.
    meanSquare: 1 / (largest * largest * planArea(plan)),
    wallMeanSquares: walls.map(({ length, sum }) => sum / length),
  };
}
