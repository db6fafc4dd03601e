import { resolvableBandwidths } from './resolution.js';
import * as maths from '../signal/maths.js';

/** Assumed where no room is given: an ordinary control or living room. m3. */
export const defaultVolumeCubicMetres = 60;

const speedOfSound = 343;

/**
 * Modes per hertz of a rectangular room: the derivative of the count N = 4 pi V f^3 / 3c^3 + pi S f^2 / 4c^2 + E f / 8c
 * (Bolt and Maa 1939; Kuttruff, Room Acoustics, ch. 3). Surface and edges are taken for proportions of 1 : 1.4 : 1.9,
 * which change the result little. A volume of zero stands for no room: no neighbours are expected.
 */
export function modalDensity(frequencyHz: number, volumeCubicMetres: number): number {
  if (!(volumeCubicMetres > 0)) return 0;
  const side = maths.cbrt(volumeCubicMetres / (1.4 * 1.9));
  const surface = 2 * side * side * (1.4 + 1.9 + 1.4 * 1.9);
  const edges = 4 * side * (1 + 1.4 + 1.9);
  const k = frequencyHz / speedOfSound;
  return (4 * Math.PI * volumeCubicMetres * k * k + 0.5 * Math.PI * surface * k + edges / 8) / speedOfSound;
}

export interface ModelError {
  /** Relative to the half-power bandwidth. */
  readonly frequency: number;
  /** Relative to the decay time. */
  readonly decay: number;
}

/** Energy over noise at which neighbours weigh as calibrated, and below which they weigh no more. dB. */
const calibratedDb = 40;

/**
 * What neighbours that no fit can part may do to one: it grows with the number of modes expected within the bandwidth.
 * Calibrated on synthetic rooms; half of it where three or more recordings are fitted together.
 *
 * @param rhoDb The stronger, the nearer are the neighbours that are parted still, by the resolution law: what is left of them
 *   shrinks in proportion. Without it, the whole share.
 */
export function modelError(
  frequencyHz: number,
  bandwidthHz: number,
  volumeCubicMetres: number,
  recordings: number,
  rhoDb = calibratedDb,
): ModelError {
  const overlap = modalDensity(frequencyHz, volumeCubicMetres) * bandwidthHz;
  const parted =
    rhoDb > calibratedDb ? (resolvableBandwidths(rhoDb) ?? 1) / (resolvableBandwidths(calibratedDb) ?? 1) : 1;
  const share = (recordings >= 3 ? 0.5 : 1) * parted;
  return {
    frequency: share * Math.min(0.0385 * overlap, 0.12),
    decay: share * Math.min(0.077 * overlap, 0.2),
  };
}

/**
 * The same for a cluster: one pole in place of several modes that no fit parts lies anywhere among them, by their strengths at
 * the place it was measured. Measured where four sources of one room were fitted one by one and together.
 */
export function clusterError(
  frequencyHz: number,
  bandwidthHz: number,
  volumeCubicMetres: number,
  recordings: number,
): ModelError {
  const overlap = modalDensity(frequencyHz, volumeCubicMetres) * bandwidthHz;
  const share = recordings >= 3 ? 0.5 : 1;
  return { frequency: share * Math.min(0.1 * overlap, 0.25), decay: share * Math.min(0.15 * overlap, 0.35) };
}
