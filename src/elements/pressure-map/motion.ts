import type { PressureMap } from './chart.js';

/**
 * Particle motion of a mode: the slope of its pressure, since the air moves where pressure differs. Re its largest in the
 * room, 0 to 1, without direction.
 */
export interface MotionField {
  /** Slope along the floor at each point of the map, 1/m; NaN outside the walls. */
  readonly along: Float32Array;
  /** Slope in height per unit of pressure at the floor, 1/m. */
  readonly upright: number;
  readonly largest: number;
}

const fields = new WeakMap<PressureMap, MotionField>();

/** Between neighbours on both sides, or on the one that lies within the walls. */
function slope(
  values: Float32Array,
  at: number,
  step: number,
  first: boolean,
  last: boolean,
  metres: number,
): number {
  const here = values[at];
  const before = first || Number.isNaN(values[at - step]) ? null : values[at - step];
  const after = last || Number.isNaN(values[at + step]) ? null : values[at + step];
  // At a wall the air cannot move across it: the mirrored neighbour makes the slope nothing.
  if (before === null || after === null) return 0;
  return Number.isNaN(here) ? NaN : (after - before) / (2 * metres);
}

export function motionOf(map: PressureMap, heightMetres: number): MotionField {
  const known = fields.get(map);
  if (known) return known;
  const { columns, rows, floor, lengthMetres, widthMetres, mode } = map;
  const [dx, dy] = [lengthMetres / (columns - 1), widthMetres / (rows - 1)];
  const upright = (mode.order[2] * Math.PI) / heightMetres;
  let largest = 0;
  const along = floor.map((value, k) => {
    if (Number.isNaN(value)) return NaN;
    const column = k % columns;
    const row = Math.floor(k / columns);
    const gx = slope(floor, k, 1, column === 0, column === columns - 1, dx);
    const gy = slope(floor, k, columns, row === 0, row === rows - 1, dy);
    const all = Math.hypot(gx, gy);
    largest = Math.max(largest, all, Math.abs(value) * upright);
    return all;
  });
  const made = { along, upright, largest: largest || 1 };
  fields.set(map, made);
  return made;
}

/** Motion at a height over one point of the floor, from the slope and the pressure there; 0 to 1. */
export function motionAt(
  { upright, largest }: MotionField,
  along: number,
  pressure: number,
  zMetres: number,
): number {
  const [c, s] = [Math.cos(upright * zMetres), Math.sin(upright * zMetres)];
  return Math.min(1, Math.hypot(along * c, pressure * upright * s) / largest);
}
