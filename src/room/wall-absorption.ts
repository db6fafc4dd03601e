import { RingdownError } from '../signal/errors.js';
import { constructions, wallsOf } from './constructions.js';
import type { AbsorptionBand, Room, WallAbsorption } from './types.js';

/** Absorption of the six walls at one frequency; between two it is interpolated on the logarithm of frequency. */
export interface AbsorptionAt {
  readonly frequencyHz: number;
  /** One coefficient for all walls, or six. */
  readonly absorption: number | readonly number[];
}

/** One coefficient, six, or a table over frequency (walls that take more of the treble than of the bass). */
export type AbsorptionGiven = number | readonly number[] | readonly AbsorptionAt[];

/** Where a room's walls change with frequency, its single figures are those of this third-octave. */
export const referenceBandHz = 10 ** 1.8;

const isTable = (given: AbsorptionGiven): given is readonly AbsorptionAt[] =>
  Array.isArray(given) && given.length > 0 && typeof given[0] === 'object';

/**
 * Six coefficients from one or six.
 *
 * @throws RingdownError `absorption-count`, `absorption-bounds`
 */
export function wallAbsorption(given: number | readonly number[] | null): WallAbsorption | null {
  if (given === null) return null;
  const list = typeof given === 'number' ? [given] : given;
  if (list.length !== 1 && list.length !== 6)
    throw new RingdownError('absorption-count', { count: list.length });
  for (const value of list) {
    if (!(value >= 0 && value <= 1)) throw new RingdownError('absorption-bounds', { value, from: 0, to: 1 });
  }
  const at = (wall: number): number => list[list.length === 1 ? 0 : wall];
  return [at(0), at(1), at(2), at(3), at(4), at(5)];
}

/** @returns null where the absorption does not change with frequency */
export function absorptionBands(given: AbsorptionGiven): AbsorptionBand[] | null {
  if (!isTable(given)) return null;
  return given
    .map(({ frequencyHz, absorption }) => ({ frequencyHz, absorption: wallAbsorption(absorption)! }))
    .sort((a, b) => a.frequencyHz - b.frequencyHz);
}

/**
 * Six coefficients at any frequency. Below the first and above the last row of a table its ends hold.
 *
 * @throws RingdownError `absorption-count`, `absorption-bounds`
 */
export function absorptionOverFrequency(given: AbsorptionGiven): (frequencyHz: number) => WallAbsorption {
  const bands = absorptionBands(given);
  if (bands) return (frequencyHz) => between(bands, frequencyHz);
  const walls = wallAbsorption(given as number | readonly number[])!;
  return () => walls;
}

function between(rows: readonly AbsorptionBand[], frequencyHz: number): WallAbsorption {
  const above = rows.findIndex((row) => row.frequencyHz >= frequencyHz);
  if (above <= 0) return rows[above === 0 ? 0 : rows.length - 1].absorption;
  const [low, high] = [rows[above - 1], rows[above]];
  const share = Math.log(frequencyHz / low.frequencyHz) / Math.log(high.frequencyHz / low.frequencyHz);
  const at = (wall: number): number =>
    low.absorption[wall] + share * (high.absorption[wall] - low.absorption[wall]);
  return [at(0), at(1), at(2), at(3), at(4), at(5)];
}

/** What is known of a room's walls at a frequency; null where nothing is. */
export const absorptionAt = (
  { absorption, absorptionBands: bands }: Room,
  frequencyHz: number,
): WallAbsorption | null => (bands ? between(bands, frequencyHz) : absorption);

/**
 * A table over frequency from the names of what the walls are made of: one for all, or six (x=0, x=L, y=0, y=W, floor,
 * ceiling).
 *
 * @throws RingdownError `wall-name` with `text`, `names`; `wall-count`
 */
export function wallsFromNames(names: readonly string[]): AbsorptionBand[] {
  if (names.length !== 1 && names.length !== 6)
    throw new RingdownError('wall-count', { count: names.length });
  return wallsOf(
    names.map((text) => {
      const found = constructions.find(({ name }) => name === text.trim().toLowerCase());
      if (!found)
        throw new RingdownError('wall-name', {
          text,
          names: constructions.map(({ name }) => name).join(', '),
        });
      return found;
    }),
  );
}
