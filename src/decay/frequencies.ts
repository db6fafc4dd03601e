import * as maths from '../signal/maths.js';

/** Frequencies equally spaced on a logarithmic axis, from `fromHz` to at most `toHz` (and `toHz` itself). */
export function logFrequencies(fromHz = 20, toHz = 200, perOctave = 48): Float64Array {
  const steps = Math.floor(maths.log2(toHz / fromHz) * perOctave + 1e-9);
  const list = Array.from({ length: steps + 1 }, (_, i) => fromHz * maths.power(2, i / perOctave));
  if (list[steps] < toHz * (1 - 1e-9)) list.push(toHz);
  return Float64Array.from(list);
}

/** Octave ratio of IEC 61260-1:2014, base ten. */
const octaveRatio = maths.power(10, 0.3);

export interface ThirdOctave {
  readonly centreHz: number;
  readonly fromHz: number;
  readonly toHz: number;
}

/**
 * Third-octave bands of IEC 61260-1:2014: centres 1000 G^(k/3), edges a sixth of an octave to either side, G = 10^0.3.
 *
 * @returns bands whose centre lies from `fromHz` to `toHz`, taken to the nominal rounding (1 %)
 */
export function thirdOctaves(fromHz: number, toHz: number): ThirdOctave[] {
  const bands: ThirdOctave[] = [];
  for (let k = -18; k <= 12; k++) {
    const centreHz = 1000 * maths.power(octaveRatio, k / 3);
    if (centreHz < fromHz * 0.99 || centreHz > toHz * 1.01) continue;
    bands.push({
      centreHz,
      fromHz: centreHz * maths.power(octaveRatio, -1 / 6),
      toHz: centreHz * maths.power(octaveRatio, 1 / 6),
    });
  }
  return bands;
}
