import { drain } from '../signal/drain.js';
import type { Job, PositionMetres } from '../signal/types.js';
import { RingdownError } from '../signal/errors.js';
import { locate, valueAt, type MeshPlace } from './plan-field.js';
import { solvePlan, type PlanSolution } from './plan-modes.js';
import { cornerAngles, isInside, planArea, planPerimeter, type Plan } from './plan.js';
import type { Mode, ModeOrder, WallAbsorption } from './types.js';
import * as maths from '../signal/maths.js';

/** Solutions of the last few plans: a study asks for the same one again and again. */
const kept = new Map<
  string,
  { readonly waveNumber: number; readonly solution: PlanSolution; readonly places: Map<string, MeshPlace> }
>();
const mostKept = 4;
const mostPlaces = 2000;

const keyOf = ({ corners }: Plan): string => corners.map(({ x, y }) => `${x},${y}`).join(' ');

/**
 * The waves of a plan up to a wave number at least, computed once. As a job, so that what follows finds them there.
 *
 * @throws RingdownError `plan-modes`
 */
export function* preparePlan(plan: Plan, waveNumber: number): Job<PlanSolution> {
  const key = keyOf(plan);
  const known = kept.get(key);
  if (known && known.waveNumber >= waveNumber * (1 - 1e-9)) return known.solution;
  const solution = yield* solvePlan(plan, waveNumber);
  kept.delete(key);
  kept.set(key, { waveNumber, solution, places: new Map() });
  for (const old of [...kept.keys()].slice(0, -mostKept)) kept.delete(old);
  return solution;
}

/** `preparePlan` at once. */
export function planSolution(plan: Plan, waveNumber: number): PlanSolution {
  return drain(preparePlan(plan, waveNumber));
}

/** How far frequencies may be off for the fineness of the mesh, as a fraction. */
export const planMeshError = (plan: Plan, speedMetresPerSecond: number, toHz: number): number =>
  planSolution(plan, waveNumberOf(toHz, speedMetresPerSecond)).meshError;

const waveNumberOf = (frequencyHz: number, speed: number): number => (2 * Math.PI * frequencyHz) / speed;

/** Modes of a plan times its height with rigid walls, above 0 and up to `toHz`, by ascending frequency. */
export function planRoomModes(plan: Plan, speedMetresPerSecond: number, toHz: number): Mode[] {
  const top = waveNumberOf(toHz, speedMetresPerSecond);
  const { shapes } = planSolution(plan, top);
  const modes: Mode[] = [];
  shapes.forEach(({ waveNumberSquared }, wave) => {
    for (let r = 0; ; r++) {
      const square = waveNumberSquared + maths.square((r * Math.PI) / plan.heightMetres);
      if (square > top * top * (1 + 1e-12)) break;
      if (wave + r === 0) continue;
      const order: ModeOrder = [wave, 0, r];
      const kind = wave === 0 ? 'axial' : r === 0 ? 'plan' : 'mixed';
      const frequencyHz = (Math.sqrt(square) * speedMetresPerSecond) / (2 * Math.PI);
      modes.push({ order, kind, frequencyHz, decayTimeSeconds: null });
    }
  });
  return modes.sort((a, b) => a.frequencyHz - b.frequencyHz);
}

/** The shape of a wave that was computed before; the room's modes name no other. */
function shapeOf(plan: Plan, wave: number): { solution: PlanSolution; places: Map<string, MeshPlace> } {
  const known = kept.get(keyOf(plan));
  if (known && wave < known.solution.shapes.length) return known;
  // Named by its number alone: widen the search until it is there.
  const waveNumber = Math.sqrt((4 * Math.PI * (wave + 4)) / planArea(plan));
  planSolution(plan, waveNumber);
  return shapeOf(plan, wave);
}

/** Pressure of a mode at a place, re its largest, -1 to 1. */
export function planModeShape([wave, , r]: ModeOrder, plan: Plan, { x, y, z }: PositionMetres): number {
  const { solution, places } = shapeOf(plan, wave);
  const key = `${x} ${y}`;
  let place = places.get(key);
  if (!place) {
    if (places.size >= mostPlaces) places.clear();
    place = locate(solution.mesh, { x, y });
    places.set(key, place);
  }
  return (
    valueAt(solution.mesh, solution.shapes[wave], place) * maths.cos((r * Math.PI * z) / plan.heightMetres)
  );
}

/** 1 over the mean of the squared shape over the room. */
export function planModeNorm([wave, , r]: ModeOrder, plan: Plan): number {
  const { meanSquare } = shapeOf(plan, wave).solution.shapes[wave];
  return (r > 0 ? 2 : 1) / meanSquare;
}

/**
 * Damping of one mode by small absorption: c / 16V times the sum over the walls of a S e, e the mean of the squared
 * shape on the wall over that in the room. In a box e is 2 or 1, and this is the formula of Morse and Bolt (1944).
 *
 * @param absorption Walls in turn, floor, ceiling.
 * @returns 1/s
 */
export function planModeDamping(
  [wave, , r]: ModeOrder,
  plan: Plan,
  speedMetresPerSecond: number,
  absorption: WallAbsorption,
): number {
  const { corners, heightMetres } = plan;
  const { wallMeanSquares, meanSquare } = shapeOf(plan, wave).solution.shapes[wave];
  const area = planArea(plan);
  let sum = 0;
  corners.forEach(({ x, y }, wall) => {
    const next = corners[(wall + 1) % corners.length];
    const length = maths.hypot(next.x - x, next.y - y);
    sum += absorption[wall] * length * heightMetres * (wallMeanSquares[wall] / meanSquare);
  });
  sum += (absorption[corners.length] + absorption[corners.length + 1]) * area * (r > 0 ? 2 : 1);
  return (speedMetresPerSecond / (16 * area * heightMetres)) * sum;
}

/** Floor, ceiling and walls, m2. */
export const planSurface = (plan: Plan): number =>
  2 * planArea(plan) + planPerimeter(plan) * plan.heightMetres;

/**
 * Weyl's count with the terms of walls and edges, 4 pi V x^3 / 3 + pi S x^2 / 4 + E x / 8, x = f / c, E the sum of the
 * edges, each with (pi^2 - a^2) / (3 pi a / 2) of its length for its inner angle a: 1 at right angles (derived from the
 * constant of a corner in two dimensions; M. Kac 1966).
 */
export function planModeCount(plan: Plan, speedMetresPerSecond: number, frequencyHz: number): number {
  const x = frequencyHz / speedMetresPerSecond;
  const { volume, surface, edges } = measures(plan);
  return (4 / 3) * Math.PI * volume * maths.cube(x) + (Math.PI / 4) * surface * x * x + (edges / 8) * x;
}

/** @returns 1/Hz, the derivative of `planModeCount` */
export function planModeDensity(plan: Plan, speedMetresPerSecond: number, frequencyHz: number): number {
  const x = frequencyHz / speedMetresPerSecond;
  const { volume, surface, edges } = measures(plan);
  return (4 * Math.PI * volume * x * x + (Math.PI / 2) * surface * x + edges / 8) / speedMetresPerSecond;
}

function measures(plan: Plan): { volume: number; surface: number; edges: number } {
  const upright = cornerAngles(plan).reduce(
    (sum, a) => sum + (plan.heightMetres * (maths.square(Math.PI) - a * a)) / (1.5 * Math.PI * a),
    0,
  );
  return {
    volume: planArea(plan) * plan.heightMetres,
    surface: planSurface(plan),
    edges: 2 * planPerimeter(plan) + upright,
  };
}

/** @throws RingdownError `plan-place` with `x`, `y` */
export function checkedPlanPosition(position: PositionMetres, plan: Plan): void {
  const { x, y } = position;
  if (!isInside(plan, position)) throw new RingdownError('plan-place', { x, y });
}
