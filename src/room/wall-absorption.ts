import { RingdownError } from '../signal/errors.js';
import { parseDecimal } from './parse.js';
import { bassBandsHz, constructionAbsorption, constructions } from './constructions.js';
import type { AbsorptionBand, Room, WallAbsorption } from './types.js';
import * as maths from '../signal/maths.js';

/** Absorption of the six walls at one frequency; between two it is interpolated on the logarithm of frequency. */
export interface AbsorptionAt {
  readonly frequencyHz: number;
  /** One coefficient for all walls, or one each. */
  readonly absorption: number | readonly number[];
}

/** One coefficient, one per wall, or a table over frequency (walls that take more of the treble than of the bass). */
export type AbsorptionGiven = number | readonly number[] | readonly AbsorptionAt[];

/** Where a room's walls change with frequency, its single figures are those of this third-octave. */
export const referenceBandHz = maths.power(10, 1.8);

const isTable = (given: AbsorptionGiven): given is readonly AbsorptionAt[] =>
  Array.isArray(given) && given.length > 0 && typeof given[0] === 'object';

/** Walls of a box, floor and ceiling among them. */
export const boxWalls = 6;

/**
 * One coefficient per wall from one or from all.
 *
 * @param count Of the walls, floor and ceiling.
 * @throws RingdownError `absorption-count`, `absorption-bounds`
 */
export function wallAbsorption(
  given: number | readonly number[] | null,
  count = boxWalls,
): WallAbsorption | null {
  if (given === null) return null;
  const list = typeof given === 'number' ? [given] : given;
  if (list.length !== 1 && list.length !== count)
    throw new RingdownError('absorption-count', { count: list.length, walls: count });
  for (const value of list) {
    if (!(value >= 0 && value <= 1)) throw new RingdownError('absorption-bounds', { value, from: 0, to: 1 });
  }
  return Array.from({ length: count }, (_, wall) => list[list.length === 1 ? 0 : wall]);
}

/** @returns null where the absorption does not change with frequency */
export function absorptionBands(given: AbsorptionGiven, count = boxWalls): AbsorptionBand[] | null {
  if (!isTable(given)) return null;
  return given
    .map(({ frequencyHz, absorption }) => ({ frequencyHz, absorption: wallAbsorption(absorption, count)! }))
    .sort((a, b) => a.frequencyHz - b.frequencyHz);
}

/**
 * One coefficient per wall at any frequency. Below the first and above the last row of a table its ends hold.
 *
 * @throws RingdownError `absorption-count`, `absorption-bounds`
 */
export function absorptionOverFrequency(
  given: AbsorptionGiven,
  count = boxWalls,
): (frequencyHz: number) => WallAbsorption {
  const bands = absorptionBands(given, count);
  if (bands) return (frequencyHz) => between(bands, frequencyHz);
  const walls = wallAbsorption(given as number | readonly number[], count)!;
  return () => walls;
}

function between(rows: readonly AbsorptionBand[], frequencyHz: number): WallAbsorption {
  const above = rows.findIndex((row) => row.frequencyHz >= frequencyHz);
  if (above <= 0) return rows[above === 0 ? 0 : rows.length - 1].absorption;
  const [low, high] = [rows[above - 1], rows[above]];
  const share = maths.log(frequencyHz / low.frequencyHz) / maths.log(high.frequencyHz / low.frequencyHz);
  return low.absorption.map((value, wall) => value + share * (high.absorption[wall] - value));
}

/** What is known of a room's walls at a frequency; null where nothing is. */
export const absorptionAt = (
  { absorption, absorptionBands: bands }: Room,
  frequencyHz: number,
): WallAbsorption | null => (bands ? between(bands, frequencyHz) : absorption);

/**
 * A table over frequency from the names of what the walls are made of: one for all, or one each (in a box x=0, x=L, y=0,
 * y=W, floor, ceiling). A number in place of a name is a coefficient of one's own, at every frequency.
 *
 * @param count Of the walls, floor and ceiling.
 * @throws RingdownError `wall-name` with `text`, `names`; `wall-count`; `absorption-bounds`
 */
export function wallsFromNames(names: readonly string[], count = boxWalls): AbsorptionBand[] {
  if (names.length !== 1 && names.length !== count)
    throw new RingdownError('wall-count', { count: names.length, walls: count });
  const found = names.map((text) => {
    const one = constructions.find(({ name }) => name === text.trim().toLowerCase());
    if (one) return (frequencyHz: number) => constructionAbsorption(one, frequencyHz);
    const own = parseDecimal(text);
    if (own >= 0 && own <= 1) return () => own;
    if (!Number.isNaN(own)) throw new RingdownError('absorption-bounds', { value: own, from: 0, to: 1 });
    throw new RingdownError('wall-name', { text, names: constructions.map(({ name }) => name).join(', ') });
  });
  return bassBandsHz.map((frequencyHz) => ({
    frequencyHz,
    absorption: Array.from({ length: count }, (_, wall) => found[found.length === 1 ? 0 : wall](frequencyHz)),
  }));
}
