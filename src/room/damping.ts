import { sidesOf, volumeOf } from './box.js';
import type { ModeOrder, RoomSize, WallAbsorption } from './types.js';
import * as maths from '../signal/maths.js';

/** 60 dB decay time times damping: ln(1000), 6.9078. */
export const decayConstant = maths.log(1000);

/**
 * Damping of one mode of a box with small absorption, (c / 16V) times the sum over the walls of e a S: S the wall's
 * area, a its absorption coefficient, e = 2 where the order along its axis is above zero, else 1. P. M. Morse and
 * R. H. Bolt, Rev. Mod. Phys. 16 (1944); Kuttruff, Room Acoustics. All oblique it equals Sabine's formula.
 * Holds for small coefficients; from about 0.3 upwards it is a rough guide.
 *
 * @param order May be (0, 0, 0), the pressure of the whole room.
 * @returns 1/s, of the amplitude exp(-damping t)
 */
export function modeDamping(
  order: ModeOrder,
  size: RoomSize,
  speedMetresPerSecond: number,
  absorption: WallAbsorption,
): number {
  const sides = sidesOf(size);
  const volume = volumeOf(size);
  let sum = 0;
  for (let axis = 0; axis < 3; axis++) {
    const area = volume / sides[axis];
    const pair = absorption[2 * axis] + absorption[2 * axis + 1];
    sum += (order[axis] > 0 ? 2 : 1) * pair * area;
  }
  return (speedMetresPerSecond / (16 * volume)) * sum;
}

/**
 * 60 dB decay time of one mode from the absorption of the six walls.
 *
 * @returns s; null where nothing absorbs
 */
export function modeDecayTime(
  order: ModeOrder,
  size: RoomSize,
  speedMetresPerSecond: number,
  absorption: WallAbsorption,
): number | null {
  const damping = modeDamping(order, size, speedMetresPerSecond, absorption);
  return damping > 0 ? decayConstant / damping : null;
}

/** Sabine's decay time of the same walls: that of an oblique mode. Null where nothing absorbs. */
export const sabineDecayTime = (
  size: RoomSize,
  speedMetresPerSecond: number,
  absorption: WallAbsorption,
): number | null => modeDecayTime([1, 1, 1], size, speedMetresPerSecond, absorption);
