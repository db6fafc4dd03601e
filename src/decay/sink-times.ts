import type { Grid } from './types.js';
import * as maths from '../signal/maths.js';

/** Decibels by which a cell must stand above the window's own decay to say anything of the room. */
const marginDb = 3;

/**
 * Level of a Hann window of this length at so many seconds from an impulse, dB relative to its middle; -Infinity beyond
 * its end. The window weights amplitudes by cos^2, so the level is 40 log10 of the cosine.
 */
export function windowLevelDb(windowSeconds: number, seconds: number): number {
  const phase = (Math.PI * Math.abs(seconds)) / windowSeconds;
  return phase < Math.PI / 2 ? 40 * maths.log10(maths.cos(phase)) : -Infinity;
}

/** Length of the window at each frequency, from its resolution (2 / window for Hann). */
const windowAt = (grid: Grid, column: number): number => 2 / grid.limits.resolutionHz[column];

/** Stands for "far above". */
const farDb = 200;

/**
 * How far each cell of a grid stands above what the window itself would show after an impulse at the onset, dB, with
 * 3 dB of margin; shaped like `levelsDb`. At zero and below, the cell has fallen no slower than the window and says
 * nothing of the room. A cumulative grid has no such cells: its slices begin after the onset.
 */
export function aboveWindowDb(grid: Grid): Float32Array {
  const columns = grid.frequenciesHz.length;
  const above = new Float32Array(grid.levelsDb.length).fill(farDb);
  if (grid.method === 'cumulative') return above;
  for (let f = 0; f < columns; f++) {
    const window = windowAt(grid, f);
    for (let t = 0; t < grid.timesSeconds.length; t++) {
      const own = windowLevelDb(window, grid.timesSeconds[t]);
      if (own < -farDb) break;
      above[t * columns + f] = Math.min(
        farDb,
        grid.levelsDb[t * columns + f] - grid.levelsDb[f] - own - marginDb,
      );
    }
  }
  return above;
}

/** Decibels above the floor that a frequency needs for its decay to be held against anything. */
const leastDb = 6;

/**
 * When each frequency would have sunk to `floorDb`, were it to fall 60 dB in `decaySeconds` from where it stands once
 * the window lies wholly past the onset: there an exponential decay of the room is a straight line in the grid. A decay
 * that still stands after that time is longer than `decaySeconds`. Neighbours closer than the grid resolves share the
 * later time. All lists are per frequency of the grid.
 *
 * @returns seconds from the onset; NaN where `decaySeconds` is NaN or nothing stands 6 dB above the floor
 */
export function sinkTimes(
  grid: Grid,
  decaySeconds: ArrayLike<number>,
  floorDb: ArrayLike<number>,
): Float32Array {
  const columns = grid.frequenciesHz.length;
  const last = grid.timesSeconds.length - 1;
  const own = Float32Array.from(grid.frequenciesHz, (_, f) => {
    const start = grid.method === 'cumulative' ? 0 : windowAt(grid, f) / 2;
    const row = Math.min(last, Math.ceil(start / grid.stepSeconds - 1e-9));
    const from = grid.timesSeconds[row];
    const above = grid.levelsDb[row * columns + f] - floorDb[f];
    return above >= leastDb ? from + (decaySeconds[f] * above) / 60 : NaN;
  });
  const reach = (f: number, share: number): readonly [number, number] => {
    const { frequenciesHz } = grid;
    const half = grid.limits.resolutionHz[f] * share;
    let [low, high] = [f, f];
    while (low > 0 && frequenciesHz[f] - frequenciesHz[low - 1] <= half) low--;
    while (high < columns - 1 && frequenciesHz[high + 1] - frequenciesHz[f] <= half) high++;
    return [low, high];
  };
  /** Over those near in frequency that have a time. */
  const among = (list: Float32Array, share: number, pick: (times: number[]) => number): Float32Array =>
    list.map((_, f) => {
      if (Number.isNaN(decaySeconds[f])) return NaN;
      const [low, high] = reach(f, share);
      const known = [...list.subarray(low, high + 1)].filter((time) => !Number.isNaN(time));
      return known.length > 0 ? pick(known) : NaN;
    });
  const latest = among(own, 0.5, (times) => Math.max(...times));
  // A mean over less than the reach of the maximum is never earlier than the frequency's own time: a curve, not stairs.
  return among(latest, 0.25, (times) => times.reduce((sum, time) => sum + time, 0) / times.length);
}
