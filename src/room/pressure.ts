import type { Job } from '../signal/types.js';
import { modeLevels, nodeAt, type ModeLevel } from './levels.js';
import { isInside } from './plan.js';
import { prepareRoom, roomModeShape } from './room.js';
import type { Mode, PositionMetres, Room } from './types.js';

export interface PressureParams {
  readonly mode: Mode;
  /** As far as the modes were named. */
  readonly toHz: number;
  readonly sources: readonly PositionMetres[];
  readonly seats: readonly PositionMetres[];
}

/** The shape of one mode, and how it reaches the seats. */
export interface PressureMap {
  readonly mode: Mode;
  /** Points along x and y, evenly from wall to wall. */
  readonly columns: number;
  readonly rows: number;
  readonly lengthMetres: number;
  readonly widthMetres: number;
  /**
   * Signed pressure re its largest at the floor, -1 to 1, row by row of x; NaN outside the walls. At a height z it is
   * this times cos(r pi z / H).
   */
  readonly floor: Float32Array;
  /** Of each source at each seat, sources in turn. */
  readonly levels: readonly ModeLevel[];
  /** Signed pressure at each seat and source. */
  readonly atSeats: readonly number[];
  readonly atSources: readonly number[];
  /** Whether each seat and source sits on or near a nodal plane. */
  readonly seatNodes: readonly boolean[];
  readonly sourceNodes: readonly boolean[];
}

/** Points along the longer side: eight to a wave that has ten half-waves there. */
const longest = 81;

/**
 * Computes the map; of a room given by a plan its waves too, which are then kept.
 *
 * @throws RingdownError `plan-modes`, `place-outside`, `plan-place`
 */
export function* pressureMap(room: Room, { mode, toHz, sources, seats }: PressureParams): Job<PressureMap> {
  yield { stage: 'plan', fraction: 0 };
  yield* prepareRoom(room, toHz);
  const { lengthMetres, widthMetres } = room.size;
  const step = Math.max(lengthMetres, widthMetres) / (longest - 1);
  const columns = Math.max(2, Math.round(lengthMetres / step) + 1);
  const rows = Math.max(2, Math.round(widthMetres / step) + 1);
  const floor = new Float32Array(columns * rows);
  for (let row = 0; row < rows; row++) {
    const y = (widthMetres * row) / (rows - 1);
    for (let column = 0; column < columns; column++) {
      const at = { x: (lengthMetres * column) / (columns - 1), y, z: 0 };
      floor[row * columns + column] =
        room.plan && !isInside(room.plan, at) ? NaN : roomModeShape(mode.order, room, at);
    }
    if (room.plan && row % 8 === 7) yield { stage: 'plan', fraction: (row + 1) / rows };
  }
  const at = (places: readonly PositionMetres[]): number[] =>
    places.map((place) => roomModeShape(mode.order, room, place));
  const nodes = (places: readonly PositionMetres[]): boolean[] =>
    places.map((place) => nodeAt(mode, room, place) !== null);
  return {
    ...{ mode, columns, rows, lengthMetres, widthMetres, floor },
    levels: modeLevels(mode, room, sources, seats),
    atSeats: at(seats),
    atSources: at(sources),
    seatNodes: nodes(seats),
    sourceNodes: nodes(sources),
  };
}
