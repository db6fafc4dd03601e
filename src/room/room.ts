import type { Job, PositionMetres } from '../signal/types.js';
import { boxModes, modeCount, modeDensity, modeNorm, modeShape, surfaceOf, volumeOf } from './box.js';
import { decayConstant, modeDamping } from './damping.js';
import { checkedPosition } from './parse.js';
import {
  checkedPlanPosition,
  planModeCount,
  planModeDamping,
  planModeDensity,
  planModeNorm,
  planModeShape,
  planRoomModes,
  planSurface,
  preparePlan,
} from './plan-room.js';
import { planVolume } from './plan.js';
import type { Mode, ModeOrder, Room } from './types.js';
import { absorptionAt, boxWalls } from './wall-absorption.js';
import * as maths from '../signal/maths.js';

/**
 * A place must lie in its room, or every shape at it would be a wrong number.
 *
 * @throws RingdownError `place-outside`, `plan-place`
 */
export function roomPosition(position: PositionMetres, { plan, size }: Room): PositionMetres {
  checkedPosition(position, size);
  if (plan) checkedPlanPosition(position, plan);
  return position;
}

/** What holds for every room, a box or a plan times its height. */

export const roomVolume = ({ plan, size }: Room): number => (plan ? planVolume(plan) : volumeOf(size));
export const roomSurface = ({ plan, size }: Room): number => (plan ? planSurface(plan) : surfaceOf(size));

/** Walls, floor and ceiling, as absorption counts them. */
export const wallCount = ({ plan }: Pick<Room, 'plan'>): number =>
  plan ? plan.corners.length + 2 : boxWalls;

/**
 * Computes what a room given by a plan needs before its modes can be named, up to a frequency; nothing for a box. After
 * it, modes and shapes up to there take no time.
 *
 * @throws RingdownError `plan-modes`
 */
export function* prepareRoom({ plan, speedOfSoundMetresPerSecond }: Room, toHz: number): Job<void> {
  if (plan) yield* preparePlan(plan, (2 * Math.PI * toHz) / speedOfSoundMetresPerSecond);
}

/** Every mode above 0 and up to `toHz`, by ascending frequency, without decay times. */
export const roomModes = ({ plan, size, speedOfSoundMetresPerSecond: speed }: Room, toHz: number): Mode[] =>
  plan ? planRoomModes(plan, speed, toHz) : boxModes(size, speed, toHz);

/** Pressure of a mode at a place, re its largest, -1 to 1. */
export const roomModeShape = (order: ModeOrder, { plan, size }: Room, position: PositionMetres): number =>
  plan ? planModeShape(order, plan, position) : modeShape(order, size, position);

/** 1 over the mean of the squared shape over the room. */
export const roomModeNorm = (order: ModeOrder, { plan }: Room): number =>
  plan ? planModeNorm(order, plan) : modeNorm(order);

export const roomModeCount = (
  { plan, size, speedOfSoundMetresPerSecond: speed }: Room,
  frequencyHz: number,
): number => (plan ? planModeCount(plan, speed, frequencyHz) : modeCount(size, speed, frequencyHz));

/** @returns 1/Hz */
export const roomModeDensity = (
  { plan, size, speedOfSoundMetresPerSecond: speed }: Room,
  frequencyHz: number,
): number => (plan ? planModeDensity(plan, speed, frequencyHz) : modeDensity(size, speed, frequencyHz));

/** @returns 1/s; null where nothing is known of the walls */
export function roomModeDamping(order: ModeOrder, room: Room, frequencyHz: number): number | null {
  const walls = absorptionAt(room, frequencyHz);
  if (!walls) return null;
  const { plan, size, speedOfSoundMetresPerSecond: speed } = room;
  return plan ? planModeDamping(order, plan, speed, walls) : modeDamping(order, size, speed, walls);
}

/** A mode with the decay time that the walls let expect at its frequency. */
export function withDecay(mode: Mode, room: Room): Mode {
  const damping = roomModeDamping(mode.order, room, mode.frequencyHz);
  return damping === null
    ? mode
    : { ...mode, decayTimeSeconds: damping > 0 ? decayConstant / damping : null };
}

/** Sabine's decay time at a frequency, 24 ln 10 V / (c A), as an oblique mode of a box has it; null where unknown. */
export function sabineTime(room: Room, frequencyHz: number): number | null {
  const walls = absorptionAt(room, frequencyHz);
  if (!walls) return null;
  const area = wallAreas(room).reduce((sum, square, wall) => sum + square * walls[wall], 0);
  return area > 0 ? (8 * decayConstant * roomVolume(room)) / (room.speedOfSoundMetresPerSecond * area) : null;
}

/** In the order of the absorption coefficients, m2. */
export function wallAreas({ plan, size }: Room): number[] {
  if (!plan) {
    const { lengthMetres: l, widthMetres: w, heightMetres: h } = size;
    return [w * h, w * h, l * h, l * h, l * w, l * w];
  }
  const { corners, heightMetres } = plan;
  const floor = planVolume(plan) / heightMetres;
  const walls = corners.map(({ x, y }, i) => {
    const next = corners[(i + 1) % corners.length];
    return maths.hypot(next.x - x, next.y - y) * heightMetres;
  });
  return [...walls, floor, floor];
}
