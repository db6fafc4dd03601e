import { sidesOf } from './box.js';
import { roomModeDamping, roomModeNorm, roomModeShape, roomVolume } from './room.js';
import type { Mode, PositionMetres, Room } from './types.js';
import * as maths from '../signal/maths.js';

/** A mode from a source to a seat. Nothing at a node is minus infinity; it is given as this. */
export const silentDb = -120;

export interface ModeLevel {
  readonly source: number;
  readonly seat: number;
  /** Shape at the source times shape at the seat, signed, re both in corners: -1 to 1. */
  readonly shape: number;
  /** The same in dB. */
  readonly shapeDb: number;
  /**
   * A steady tone at the mode's own frequency, of this mode alone, re the same source in free field at 1 m:
   * 4 pi c^2 / V norm |shape| / (2 damping w). Null where the damping is not known.
   */
  readonly levelDb: number | null;
}

const decibels = (value: number): number => (value > 1e-6 ? 20 * maths.log10(value) : silentDb);

/**
 * How loud a mode is at each seat from each source (P. M. Morse and K. U. Ingard, Theoretical Acoustics, ch. 9; Kuttruff,
 * Room Acoustics, ch. 3). Exchanging seat and source changes nothing.
 *
 * @returns sources in turn, the seats of each
 */
export function modeLevels(
  mode: Mode,
  room: Room,
  sources: readonly PositionMetres[],
  seats: readonly PositionMetres[],
): ModeLevel[] {
  const { speedOfSoundMetresPerSecond: speed } = room;
  const damping = roomModeDamping(mode.order, room, mode.frequencyHz);
  const gain = damping
    ? (4 * Math.PI * maths.square(speed) * roomModeNorm(mode.order, room)) /
      (roomVolume(room) * 2 * damping * 2 * Math.PI * mode.frequencyHz)
    : null;
  return sources.flatMap((from, source) =>
    seats.map((to, seat): ModeLevel => {
      const shape = roomModeShape(mode.order, room, from) * roomModeShape(mode.order, room, to);
      const shapeDb = decibels(Math.abs(shape));
      const levelDb = gain === null ? null : Math.max(silentDb, 20 * maths.log10(gain) + shapeDb);
      return { source, seat, shape, shapeDb, levelDb };
    }),
  );
}

/** A factor of the shape below this, 20 dB under its largest, is a pressure node for what is heard. */
export const nodeShape = 0.1;

export interface NodeAt {
  readonly mode: Mode;
  /** `plan`: the nodal surface of a wave of the plan, which is no plane. */
  readonly axis: 'x' | 'y' | 'z' | 'plan';
  /** Distance from the place to the nodal plane, m; null where the surface is none. */
  readonly distanceMetres: number | null;
}

/** The nodal plane of a mode that a place sits on or near; null where it hears the mode. */
export function nodeAt(mode: Mode, room: Room, position: PositionMetres): NodeAt | null {
  const { x, y, z } = position;
  const [wave] = mode.order;
  if (room.plan && wave > 0 && Math.abs(roomModeShape([wave, 0, 0], room, position)) < nodeShape)
    return { mode, axis: 'plan', distanceMetres: null };
  const sides = sidesOf(room.size);
  const values = [x, y, z];
  for (let axis = 0; axis < 3; axis++) {
    const order = mode.order[axis];
    // Of a plan only the nodes in height are planes.
    if (order === 0 || (room.plan && axis < 2)) continue;
    const phase = (order * values[axis]) / sides[axis];
    if (Math.abs(maths.cos(Math.PI * phase)) >= nodeShape) continue;
    // Nodes lie where the phase is a half, one and a half, ...
    const nearest = Math.round(phase - 0.5) + 0.5;
    return {
      mode,
      axis: (['x', 'y', 'z'] as const)[axis],
      distanceMetres: (Math.abs(phase - nearest) * sides[axis]) / order,
    };
  }
  return null;
}
