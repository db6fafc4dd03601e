import type { Mode, ModeKind, ModeOrder, PositionMetres, RoomSize } from './types.js';
import * as maths from '../signal/maths.js';

/** The three sides along x, y and z, m. */
export const sidesOf = (size: RoomSize): readonly [number, number, number] => [
  size.lengthMetres,
  size.widthMetres,
  size.heightMetres,
];

export const volumeOf = (size: RoomSize): number => size.lengthMetres * size.widthMetres * size.heightMetres;

/** All six walls, m2. */
export const surfaceOf = ({ lengthMetres: l, widthMetres: w, heightMetres: h }: RoomSize): number =>
  2 * (l * w + w * h + h * l);

/** All twelve edges, m. */
export const edgesOf = (size: RoomSize): number =>
  4 * (size.lengthMetres + size.widthMetres + size.heightMetres);

/** Axial, tangential or oblique: one, two or three non-zero orders. */
export function kindOf([p, q, r]: ModeOrder): ModeKind {
  const axes = Number(p > 0) + Number(q > 0) + Number(r > 0);
  return axes === 3 ? 'oblique' : axes === 2 ? 'tangential' : 'axial';
}

/**
 * Frequency of one mode of a box with rigid walls, (c/2) sqrt((p/L)^2 + (q/W)^2 + (r/H)^2).
 * Rayleigh, Theory of Sound; Kuttruff, Room Acoustics, ch. 3.
 *
 * @returns Hz
 */
export function modeFrequency([p, q, r]: ModeOrder, size: RoomSize, speedMetresPerSecond: number): number {
  const [l, w, h] = sidesOf(size);
  return (speedMetresPerSecond / 2) * maths.hypot(p / l, q / w, r / h);
}

/**
 * Every mode of a box with rigid walls above 0 and up to `toHz`, by ascending frequency; equal modes one by one, in
 * the order of their numbers. Decay times are null: see `damping.ts`.
 */
export function boxModes(size: RoomSize, speedMetresPerSecond: number, toHz: number): Mode[] {
  const [l, w, h] = sidesOf(size);
  const reach = (2 * toHz) / speedMetresPerSecond;
  // A mode of exactly `toHz` belongs; rounding of the squares must not lose it.
  const limit = reach * reach * (1 + 1e-12);
  const modes: Mode[] = [];
  for (let p = 0; maths.square(p / l) <= limit; p++) {
    for (let q = 0; maths.square(p / l) + maths.square(q / w) <= limit; q++) {
      for (let r = 0; maths.square(p / l) + maths.square(q / w) + maths.square(r / h) <= limit; r++) {
        if (p + q + r === 0) continue;
        const order: ModeOrder = [p, q, r];
        const frequencyHz = modeFrequency(order, size, speedMetresPerSecond);
        modes.push({ order, kind: kindOf(order), frequencyHz, decayTimeSeconds: null });
      }
    }
  }
  return modes.sort((a, b) => a.frequencyHz - b.frequencyHz || compareOrders(a.order, b.order));
}

const compareOrders = (a: ModeOrder, b: ModeOrder): number => a[0] - b[0] || a[1] - b[1] || a[2] - b[2];

/**
 * Expected number of modes below a frequency, 4 pi V f^3 / 3c^3 + pi S f^2 / 4c^2 + E f / 8c (Weyl's count with the
 * terms of walls and edges; Bolt 1939; Kuttruff, Room Acoustics, ch. 3).
 */
export function modeCount(size: RoomSize, speedMetresPerSecond: number, frequencyHz: number): number {
  const x = frequencyHz / speedMetresPerSecond;
  return (
    (4 / 3) * Math.PI * volumeOf(size) * maths.cube(x) +
    (Math.PI / 4) * surfaceOf(size) * x * x +
    (edgesOf(size) / 8) * x
  );
}

/**
 * Expected number of modes per hertz: the derivative of `modeCount`.
 *
 * @returns 1/Hz
 */
export function modeDensity(size: RoomSize, speedMetresPerSecond: number, frequencyHz: number): number {
  const c = speedMetresPerSecond;
  const x = frequencyHz / c;
  return (4 * Math.PI * volumeOf(size) * x * x + (Math.PI / 2) * surfaceOf(size) * x + edgesOf(size) / 8) / c;
}

/** Mean modal overlap, modal density times the half-power bandwidth 2.1988 / T60. */
export function modalOverlap(
  size: RoomSize,
  speedMetresPerSecond: number,
  frequencyHz: number,
  decayTimeSeconds: number,
): number {
  return (modeDensity(size, speedMetresPerSecond, frequencyHz) * halfPowerConstant) / decayTimeSeconds;
}

/** Half-power bandwidth times 60 dB decay time: ln(1000) / pi. */
export const halfPowerConstant = maths.log(1000) / Math.PI;

/** 2000 sqrt(T / V), Hz (Schroeder 1996): a mean overlap of three modes by the leading term of the density. */
export const transitionFrequency = (decayTimeSeconds: number, volumeCubicMetres: number): number =>
  2000 * Math.sqrt(decayTimeSeconds / volumeCubicMetres);

/**
 * The transition as a band, since measured rooms show no sharp crossover: from a mean overlap of one mode, where they
 * begin to merge, to one of ten, Schroeder's first proposal of 1954 (value from memory). Overlap grows as f^2.
 */
export function transitionBand(transitionFrequencyHz: number): { fromHz: number; toHz: number } {
  return {
    fromHz: transitionFrequencyHz * Math.sqrt(1 / 3),
    toHz: transitionFrequencyHz * Math.sqrt(10 / 3),
  };
}

/**
 * Pressure of a mode at a place, re its largest: cos(p pi x / L) cos(q pi y / W) cos(r pi z / H), from -1 to 1.
 * The origin is the corner of walls x = 0, y = 0 and the floor.
 */
export function modeShape([p, q, r]: ModeOrder, size: RoomSize, { x, y, z }: PositionMetres): number {
  return (
    maths.cos((p * Math.PI * x) / size.lengthMetres) *
    maths.cos((q * Math.PI * y) / size.widthMetres) *
    maths.cos((r * Math.PI * z) / size.heightMetres)
  );
}

/** 1 over the mean of the squared shape over the room: 2, 4 or 8 for axial, tangential, oblique. */
export function modeNorm([p, q, r]: ModeOrder): number {
  return (p > 0 ? 2 : 1) * (q > 0 ? 2 : 1) * (r > 0 ? 2 : 1);
}
