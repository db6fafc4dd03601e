import { RingdownError } from '../signal/errors.js';
import type { Recording } from '../signal/types.js';
import type { StageGrid } from '../seats/index.js';
import { failureOf, type Failure } from './failure.js';
import type { Follower } from './follower.js';
import type { SystemSnapshot } from './system-types.js';

/** Recordings by source and seat. */
export type Grid = readonly (readonly Recording[])[];

/** Low-frequency copies of a grid; null while one of them is still made. */
export function copiesOf(
  grid: StageGrid,
  list: readonly Recording[],
  made: readonly (Recording | null)[],
): Grid | null {
  if (grid.seats.length === 0) return null;
  const rows = grid.recordings.map((row) =>
    row.map((index) => {
      const copy = made[index];
      const { seat, source, seatName, sourceName, label, timeReference } = list[index];
      // Names may have been given after the copy was made.
      return (
        copy && {
          ...copy,
          seat,
          source,
          ...(seatName && { seatName }),
          ...(sourceName && { sourceName }),
          label,
          timeReference,
        }
      );
    }),
  );
  return rows.every((row) => row.every((copy) => copy !== null)) ? rows : null;
}

/** Failures that say nothing of a proposal. */
export const withoutProposal = (failures: readonly Failure[]): readonly Failure[] =>
  failures.filter(({ code }) => !code.startsWith('optimise-') && code !== 'weights-empty');

/** What keeps the results of a system from being there, each told once. */
export function failuresOf(snapshot: SystemSnapshot, followers: readonly Follower<unknown>[]): Failure[] {
  const { grid } = snapshot;
  const list = followers.flatMap(({ failure }) => failure ?? []);
  // A grid of which no seat has every source: nothing can be summed.
  if (grid.sources.length > 1 && grid.seats.length === 0) {
    const points = grid.sources.length * grid.incomplete.length;
    list.push(failureOf(new RingdownError('points-missing', { missing: missingPoints(snapshot), points })));
  }
  const told = new Set<string>();
  return list.filter((failure) => {
    const text = JSON.stringify(failure);
    return !told.has(text) && !!told.add(text);
  });
}

function missingPoints({ arrangement, grid, stage }: SystemSnapshot): number {
  const rows = arrangement.cells[stage] ?? [];
  return grid.sources.reduce(
    (sum, source) => sum + grid.incomplete.filter((seat) => rows[source][seat].length === 0).length,
    0,
  );
}

/** Points of the stage that were recorded twice, as a grid of points by their two recordings. */
export function repeatedPairs(
  { arrangement, stage }: SystemSnapshot,
  made: readonly (Recording | null)[],
): Grid | null {
  const rows = arrangement.cells[stage] ?? [];
  const pairs = rows.flat().filter((indices) => indices.length > 1);
  if (pairs.length === 0) return null;
  const grid = pairs.map((indices) => indices.slice(0, 2).map((index) => made[index]));
  if (!grid.every((row) => row.every((copy) => copy !== null))) return null;
  // Levels alone are compared, for which a common clock is not needed.
  return grid.map((row) => row.map((copy) => ({ ...copy, timeReference: 'common' as const })));
}
