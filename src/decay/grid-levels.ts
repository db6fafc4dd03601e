import * as maths from '../signal/maths.js';

/** Levels end here, dB below the reference: a quiet number, so that no logarithm of zero leaves the engine. */
export const lowestDb = -300;

/** Of no power at all, the lowest level. */
export const inDb = (power: number): number => (power > 0 ? 10 * maths.log10(power) : lowestDb);

/** cos^2 falls to 1/1000, 60 dB, at 0.49 of its full length. */
export const windowDecayShare = maths.acos(Math.sqrt(1e-3)) / Math.PI;
