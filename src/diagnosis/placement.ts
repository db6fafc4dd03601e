import { modeShape, sidesOf } from '../room/box.js';
import type { ModeOrder, RoomSize } from '../room/types.js';
import type { PositionMetres } from '../signal/types.js';
import * as maths from '../signal/maths.js';

export type Axis = 'x' | 'y' | 'z';
const axes = ['x', 'y', 'z'] as const;

/** A move along one axis, and what it would do to one mode by its pressure map. */
export interface Move {
  readonly axis: Axis;
  /** From where it stands, m; negative towards the origin. */
  readonly metres: number;
  readonly to: PositionMetres;
  /** Of the mode's level at the seat, or of what the source gives it, dB; no less than `believedDb`. */
  readonly changeDb: number;
}

/** Nobody sits, and no box stands, nearer to a wall than this. m. */
const nearestWallMetres = { seat: 0.6, source: 0.2 } as const;
/** What a move is looked for: half the pressure. */
const wantedDb = -6;
/** Real walls shift nodes; a change is not promised beyond this. dB. */
export const believedDb = -20;

/**
 * The shortest move along each horizontal axis that lowers a mode by 6 dB by its pressure map, and the one to its nearest
 * node; nothing where the place is at a node of that axis already, or where no such place is free.
 *
 * @param at Must lie in the room.
 */
export function movesOf(
  order: ModeOrder,
  size: RoomSize,
  at: PositionMetres,
  what: 'seat' | 'source',
): Move[] {
  const now = Math.abs(modeShape(order, size, at));
  if (now < 0.1) return [];
  const sides = sidesOf(size);
  const margin = nearestWallMetres[what];
  return (['x', 'y'] as const).flatMap((axis): Move[] => {
    const n = axes.indexOf(axis);
    if (order[n] === 0) return [];
    const changeAt = (to: number): number =>
      20 * maths.log10(Math.max(1e-9, Math.abs(modeShape(order, size, { ...at, [axis]: to }))) / now);
    let best: number | null = null;
    const step = 0.01;
    for (let away = step; away < sides[n]; away += step) {
      for (const to of [at[axis] - away, at[axis] + away]) {
        if (to < margin || to > sides[n] - margin || best !== null) continue;
        if (changeAt(to) <= wantedDb) best = to;
      }
    }
    if (best === null) return [];
    const to = { ...at, [axis]: best };
    return [{ axis, metres: best - at[axis], to, changeDb: Math.max(believedDb, changeAt(best)) }];
  });
}

/** Distance along an axis to the nearest plane where the mode has no pressure, m; null where the order is 0. */
export function nodeDistance(
  order: ModeOrder,
  size: RoomSize,
  at: PositionMetres,
  axis: Axis,
): number | null {
  const n = axes.indexOf(axis);
  if (order[n] === 0) return null;
  const side = sidesOf(size)[n];
  const distances = Array.from({ length: order[n] }, (_, k) => (side * (k + 0.5)) / order[n] - at[axis]);
  return distances.reduce((least, d) => (Math.abs(d) < Math.abs(least) ? d : least));
}

/** A second source, in level and time with the first, that drives a mode in the opposite sense. */
export interface SecondSource {
  readonly axis: Axis;
  readonly at: PositionMetres;
  /** Pressure of the mode at both together re the first alone; 0 cancels it. */
  readonly share: number;
}

/**
 * Where a second source would cancel one mode: mirrored along an axis of odd order, half a wavelength on along one of even
 * order. What it does to the modes of the other parity is the reverse: they gain up to 6 dB.
 */
export function secondSource(order: ModeOrder, size: RoomSize, source: PositionMetres): SecondSource | null {
  const first = modeShape(order, size, source);
  if (Math.abs(first) < 0.1) return null;
  const sides = sidesOf(size);
  const options = (['x', 'y'] as const).flatMap((axis) => {
    const n = axes.indexOf(axis);
    if (order[n] === 0) return [];
    const mirrored = sides[n] - source[axis];
    const shifted = [source[axis] + sides[n] / order[n], source[axis] - sides[n] / order[n]];
    const places = order[n] % 2 === 1 ? [mirrored] : shifted;
    return places
      .filter((place) => place >= 0 && place <= sides[n])
      .map((place) => {
        const at = { ...source, [axis]: place };
        return { axis, at, share: (first + modeShape(order, size, at)) / first, order: order[n] };
      });
  });
  const [best] = options.sort((a, b) => b.order - a.order);
  return best ? { axis: best.axis, at: best.at, share: best.share } : null;
}
