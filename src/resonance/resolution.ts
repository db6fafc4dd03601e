import * as maths from '../signal/maths.js';

/**
 * Resolution law of two equal modes (decay times to 10 % and frequencies to a quarter of the spacing, from the full
 * Fisher matrix): least spacing in half-power bandwidths at this many decibels of modal energy over noise variance.
 */
const law: readonly (readonly [number, number])[] = [
  [26, 2.4],
  [30, 1.33],
  [40, 0.5],
  [50, 0.26],
  [60, 0.16],
];

/** Least spacing in bandwidths; null below 26 dB, where no spacing suffices. Interpolated on log spacing. */
export function resolvableBandwidths(rhoDb: number): number | null {
  if (!(rhoDb >= law[0][0])) return null;
  for (let k = 1; k < law.length; k++) {
    const [from, wide] = law[k - 1];
    const [to, narrow] = law[k];
    if (rhoDb <= to) return wide * maths.power(narrow / wide, (rhoDb - from) / (to - from));
  }
  return law[law.length - 1][1] * maths.power(10, -(rhoDb - 60) / 50);
}
