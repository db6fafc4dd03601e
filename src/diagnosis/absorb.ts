import { modeNorm, sidesOf, volumeOf } from '../room/box.js';
import { decayConstant } from '../room/damping.js';
import type { ModeOrder, RoomSize } from '../room/types.js';
import type { PositionMetres } from '../signal/types.js';
import * as maths from '../signal/maths.js';

/**
 * Panels and resonators work by pressure and belong where it is greatest, at walls and corners; porous material works by
 * the motion of the air and does little at a wall unless it reaches out a quarter of a wavelength.
 */
export type AbsorberKind = 'panel' | 'resonator' | 'porous';

export interface Absorber {
  readonly kind: AbsorberKind;
  readonly areaSquareMetres: number;
  /** Absorption coefficient at the frequency in question, as for Sabine's formula; 0 to 1. */
  readonly coefficient: number;
  /** Its middle. */
  readonly at: PositionMetres;
  /** How far it reaches along each axis, m; a point where not given. */
  readonly extentMetres?: PositionMetres;
}

/** Mean of cos^2(k x), or of sin^2, from `a` to `b`. */
function meanSquare(wave: 'cos' | 'sin', k: number, a: number, b: number): number {
  const sign = wave === 'cos' ? 1 : -1;
  if (k === 0) return wave === 'cos' ? 1 : 0;
  if (b - a < 1e-6) return 0.5 + (sign * maths.cos(k * (a + b))) / 2;
  return 0.5 + (sign * (maths.sin(2 * k * b) - maths.sin(2 * k * a))) / (4 * k * (b - a));
}

/**
 * How much more (or less) of a mode's energy an absorber meets than one of the same area spread evenly through the room:
 * squared pressure at its place over that of the room's mean, squared velocity if it is porous. 2, 4 or 8 at a corner for
 * axial, tangential, oblique modes and pressure; the mean over the room is 1 for both.
 */
export function absorberWeight(order: ModeOrder, size: RoomSize, absorber: Absorber): number {
  const sides = sidesOf(size);
  const { at, extentMetres = { x: 0, y: 0, z: 0 } } = absorber;
  const axes = (['x', 'y', 'z'] as const).map((axis, n) => {
    const half = extentMetres[axis] / 2;
    const from = Math.max(0, at[axis] - half);
    const to = Math.min(sides[n], at[axis] + half);
    const k = (order[n] * Math.PI) / sides[n];
    return { k, cos: meanSquare('cos', k, from, to), sin: meanSquare('sin', k, from, to) };
  });
  const [x, y, z] = axes;
  const norm = modeNorm(order);
  if (absorber.kind !== 'porous') return norm * x.cos * y.cos * z.cos;
  const square = maths.square(x.k) + maths.square(y.k) + maths.square(z.k);
  const motion =
    maths.square(x.k) * x.sin * y.cos * z.cos +
    maths.square(y.k) * x.cos * y.sin * z.cos +
    maths.square(z.k) * x.cos * y.cos * z.sin;
  return (norm * motion) / square;
}

/**
 * What an absorber adds to the damping of a mode: (c / 16V) coefficient area weight, the term that one wall of the same
 * coefficient has in the sum of Morse and Bolt (1944; Kuttruff, Room Acoustics), weighted by the mode at its place.
 *
 * @returns 1/s, of the amplitude
 */
export function addedDamping(
  order: ModeOrder,
  size: RoomSize,
  speedMetresPerSecond: number,
  absorber: Absorber,
): number {
  const { areaSquareMetres, coefficient } = absorber;
  return (
    (speedMetresPerSecond / (16 * volumeOf(size))) *
    coefficient *
    areaSquareMetres *
    absorberWeight(order, size, absorber)
  );
}

/** Decay time of a mode with more damping: dampings add up. s. */
export const decayWith = (decayTimeSeconds: number, added: number): number =>
  decayConstant / (decayConstant / decayTimeSeconds + added);

/**
 * Area that brings a mode from one decay time to another, m2; null where the absorber's place does not meet the mode at all.
 */
export function areaNeeded(
  order: ModeOrder,
  size: RoomSize,
  speedMetresPerSecond: number,
  absorber: Omit<Absorber, 'areaSquareMetres'>,
  decayTimeSeconds: number,
  targetSeconds: number,
): number | null {
  const each = addedDamping(order, size, speedMetresPerSecond, { ...absorber, areaSquareMetres: 1 });
  const wanted = decayConstant / targetSeconds - decayConstant / decayTimeSeconds;
  return each > 1e-9 ? Math.max(0, wanted / each) : null;
}

/**
 * Level of a mode, driven steadily at its frequency, after its decay time changed: it goes with the decay time. dB.
 */
export const levelChangeDb = (decayTimeSeconds: number, afterSeconds: number): number =>
  20 * maths.log10(afterSeconds / decayTimeSeconds);

/** One square metre low in a corner, on the wall that the mode leans on most: pressure of every mode is greatest there. */
export function pressurePlace(
  order: ModeOrder,
  size: RoomSize,
): { at: PositionMetres; extentMetres: PositionMetres } {
  const strongest = order.indexOf(Math.max(...order));
  const sides = sidesOf(size);
  const place = (n: number): number => (n === strongest ? 0 : Math.min(0.5, sides[n] / 2));
  const reach = (n: number): number => (n === strongest ? 0 : Math.min(1, sides[n]));
  return {
    at: { x: place(0), y: place(1), z: place(2) },
    extentMetres: { x: reach(0), y: reach(1), z: reach(2) },
  };
}
