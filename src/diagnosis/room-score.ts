import type { ModeOrder } from '../room/types.js';
import * as maths from '../signal/maths.js';

/** What is held against the modes of a box: a frequency and its standard deviation, as natural logarithms. */
export interface Heard {
  readonly log: number;
  readonly sd: number;
}

/**
 * How far one mode may lie from a box whose sides were fitted, as a fraction; one standard deviation. The fitted sides take
 * up what walls do to all modes along one axis; what is left is each mode's own.
 */
export const ownSpread = 0.01;
/** What a match at no distance is worth, in nats; a match is worth nothing at two standard deviations. */
const fullMatch = 2;

/** Changes of the three axes: natural logarithms of speed of sound over side, re the room as typed. */
export type Stretch = readonly [number, number, number];

/** One match: index into what was heard, index into the modes. */
export type Match = readonly [heard: number, mode: number];

/** Score of boxes of other sides against what was heard. Its arrays are kept between calls. */
export class RoomScore {
  private readonly squares: Float64Array;
  private readonly logs: Float64Array;
  private readonly order: number[];
  private readonly table: Float64Array;

  /**
   * @param heard By ascending frequency.
   * @param axial Frequency of the first mode along each axis of the room as typed, Hz.
   */
  constructor(
    readonly heard: readonly Heard[],
    readonly modes: readonly ModeOrder[],
    axial: readonly [number, number, number],
    /** Standard deviation of each stretch before anything is heard. */
    readonly expectedSd: number,
  ) {
    this.squares = Float64Array.from(
      modes.flatMap((order) => order.map((number, axis) => maths.square(number * axial[axis]))),
    );
    this.logs = new Float64Array(modes.length);
    this.order = [...modes.keys()];
    this.table = new Float64Array((heard.length + 1) * (modes.length + 1));
  }

  /** Share of an axis in the square of a mode's frequency: how its logarithm answers to that axis' stretch. */
  slope(mode: number, axis: number, stretch: Stretch): number {
    return (this.squares[3 * mode + axis] * maths.exp(2 * stretch[axis])) / maths.exp(2 * this.logs[mode]);
  }

  /** Logarithm of a mode's frequency at the last stretch that was scored. */
  logOf(mode: number): number {
    return this.logs[mode];
  }

  /**
   * Sum over matches, each mode at most once and in the order of frequency, less what the stretches are worth against; in nats.
   *
   * @param matches Where given, filled with the matches.
   */
  of(stretch: Stretch, matches?: Match[]): number {
    const { heard, squares, logs, order, table } = this;
    const scale = stretch.map((value) => maths.exp(2 * value));
    const count = logs.length;
    for (let k = 0; k < count; k++) {
      const square =
        scale[0] * squares[3 * k] + scale[1] * squares[3 * k + 1] + scale[2] * squares[3 * k + 2];
      logs[k] = 0.5 * maths.log(square);
    }
    // Nearly sorted from the call before.
    for (let i = 1; i < count; i++) {
      const mode = order[i];
      let j = i;
      for (; j > 0 && logs[order[j - 1]] > logs[mode]; j--) order[j] = order[j - 1];
      order[j] = mode;
    }
    const width = count + 1;
    for (let i = 1; i <= heard.length; i++) {
      const { log, sd } = heard[i - 1];
      for (let j = 1; j <= count; j++) {
        const z = (log - logs[order[j - 1]]) / sd;
        const gain = fullMatch - 0.5 * z * z;
        let best = Math.max(table[(i - 1) * width + j], table[i * width + j - 1]);
        if (gain > 0) best = Math.max(best, table[(i - 1) * width + j - 1] + gain);
        table[i * width + j] = best;
      }
    }
    if (matches) this.trace(matches);
    const against = stretch.reduce((sum, value) => sum + 0.5 * maths.square(value / this.expectedSd), 0);
    return table[heard.length * width + count] - against;
  }

  private trace(matches: Match[]): void {
    const { heard, order, table } = this;
    const width = order.length + 1;
    matches.length = 0;
    for (let i = heard.length, j = order.length; i > 0 && j > 0;) {
      const value = table[i * width + j];
      if (value === table[(i - 1) * width + j]) i--;
      else if (value === table[i * width + j - 1]) j--;
      else {
        matches.unshift([i - 1, order[j - 1]]);
        i--;
        j--;
      }
    }
  }
}
