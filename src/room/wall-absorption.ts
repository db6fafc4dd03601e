import { wallAbsorption } from './predict.js';
import type { WallAbsorption } from './types.js';

/** Absorption of the six walls at one frequency; between two it is interpolated on the logarithm of frequency. */
export interface AbsorptionAt {
  readonly frequencyHz: number;
  /** One coefficient for all walls, or six. */
  readonly absorption: number | readonly number[];
}

/** One coefficient, six, or a table over frequency (walls that take more of the treble than of the bass). */
export type AbsorptionGiven = number | readonly number[] | readonly AbsorptionAt[];

const isTable = (given: AbsorptionGiven): given is readonly AbsorptionAt[] =>
  Array.isArray(given) && given.length > 0 && typeof given[0] === 'object';

/**
 * Six coefficients at any frequency. Below the first and above the last row of a table its ends hold.
 *
 * @throws RingdownError `absorption-count`, `absorption-bounds`
 */
export function absorptionOverFrequency(given: AbsorptionGiven): (frequencyHz: number) => WallAbsorption {
  if (!isTable(given)) {
    const walls = wallAbsorption(given)!;
    return () => walls;
  }
  const rows = given
    .map(({ frequencyHz, absorption }) => ({ frequencyHz, walls: wallAbsorption(absorption)! }))
    .sort((a, b) => a.frequencyHz - b.frequencyHz);
  return (frequencyHz) => {
    const above = rows.findIndex((row) => row.frequencyHz >= frequencyHz);
    if (above <= 0) return rows[above === 0 ? 0 : rows.length - 1].walls;
    const [low, high] = [rows[above - 1], rows[above]];
    const share = Math.log(frequencyHz / low.frequencyHz) / Math.log(high.frequencyHz / low.frequencyHz);
    const at = (wall: number): number => low.walls[wall] + share * (high.walls[wall] - low.walls[wall]);
    return [at(0), at(1), at(2), at(3), at(4), at(5)];
  };
}
