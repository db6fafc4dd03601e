/** Moving or adding one of several sources that play alike: what it does to a mode by its shape in a box. */
import { modeShape, sidesOf } from '../room/box.js';
import type { ModeOrder, RoomSize } from '../room/types.js';
import type { PositionMetres } from '../signal/types.js';
import { believedDb, type Axis } from './placement.js';
import * as maths from '../signal/maths.js';

/** No box stands nearer to a wall than this. m. */
const nearestWallMetres = 0.2;
const wantedDb = -6;
const stepMetres = 0.01;

/** What several sources in level and time give a mode, re one at a place of full pressure. */
export const driveOf = (order: ModeOrder, size: RoomSize, sources: readonly PositionMetres[]): number =>
  sources.reduce((sum, at) => sum + modeShape(order, size, at), 0);

/** Change of a mode's level between two sets of places, dB; not promised beyond what real walls allow. */
export function driveChangeDb(
  order: ModeOrder,
  size: RoomSize,
  before: readonly PositionMetres[],
  after: readonly PositionMetres[],
): number {
  const [was, is] = [driveOf(order, size, before), driveOf(order, size, after)].map(Math.abs);
  return Math.max(
    believedDb,
    Math.min(-believedDb, 20 * maths.log10(Math.max(1e-9, is) / Math.max(1e-9, was))),
  );
}

export interface SourceMove {
  /** Which of them. */
  readonly source: number;
  readonly axis: Axis;
  readonly metres: number;
  readonly to: PositionMetres;
  readonly changeDb: number;
}

/**
 * The shortest move of one source, along one horizontal axis, after which all of them together give a mode 6 dB less; null
 * where no single move does, or where they give it next to nothing already.
 */
export function shortestSourceMove(
  order: ModeOrder,
  size: RoomSize,
  sources: readonly PositionMetres[],
): SourceMove | null {
  if (Math.abs(driveOf(order, size, sources)) < 0.1) return null;
  const sides = sidesOf(size);
  let best: SourceMove | null = null;
  sources.forEach((at, source) => {
    (['x', 'y'] as const).forEach((axis, n) => {
      if (order[n] === 0) return;
      for (let away = stepMetres; away < (best ? Math.abs(best.metres) : sides[n]); away += stepMetres) {
        const found = [at[axis] - away, at[axis] + away]
          .filter((to) => to >= nearestWallMetres && to <= sides[n] - nearestWallMetres)
          .map((value) => {
            const to = { ...at, [axis]: value };
            const moved = sources.map((one, k) => (k === source ? to : one));
            return {
              source,
              axis,
              metres: value - at[axis],
              to,
              changeDb: driveChangeDb(order, size, sources, moved),
            };
          })
          .find(({ changeDb }) => changeDb <= wantedDb);
        if (!found) continue;
        best = found;
        return;
      }
    });
  });
  return best;
}
