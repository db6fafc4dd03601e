import { describe, expect, it } from 'vitest';
import {
  aboveWindowDb,
  computeGrid,
  defaultGridParams,
  sinkTimes,
  windowLevelDb,
  type Grid,
  type GridParams,
} from '../../src/decay/index.js';
import { drain } from '../support/drain.js';
import { addMode } from '../support/signals.js';

const sampleRate = 8000;
const onsetSeconds = 0.25;
const blank = (): Float64Array => new Float64Array(2.5 * sampleRate);
const gridOf = (samples: Float64Array, change: Partial<GridParams> = {}): Grid =>
  drain(computeGrid({ samples, sampleRate, onsetSeconds }, { ...defaultGridParams, ...change }));

function nearest(grid: Grid, frequencyHz: number): number {
  let best = 0;
  grid.frequenciesHz.forEach((f, k) => {
    if (Math.abs(f - frequencyHz) < Math.abs(grid.frequenciesHz[best] - frequencyHz)) best = k;
  });
  return best;
}

/** The last time at which a frequency stands above the floor. */
function stands(grid: Grid, column: number, floorDb: number): number {
  let last = 0;
  grid.timesSeconds.forEach((time, t) => {
    if (grid.levelsDb[t * grid.frequenciesHz.length + column] > floorDb) last = time;
  });
  return last;
}

describe("the window's own decay", () => {
  it('falls 60 dB in 147 ms for a Hann window of 300 ms, and to nothing at its end', () => {
    // Misreading 1 of the trade's practice, and the Hann window itself: cos^2 is 1/1000 at 0.49 of the length.
    expect(windowLevelDb(0.3, 0)).toBe(0);
    expect(windowLevelDb(0.3, 0.147)).toBeCloseTo(-60, 0);
    expect(windowLevelDb(0.3, 0.15)).toBe(-Infinity);
  });

  it('is all that a bare click shows: no cell above it until the window has left it', () => {
    const samples = blank();
    samples[onsetSeconds * sampleRate] = 1;
    const grid = gridOf(samples);
    const above = aboveWindowDb(grid);
    grid.timesSeconds.forEach((time, t) => {
      if (windowLevelDb(grid.windowSeconds, time) < -80) return;
      for (let f = 0; f < grid.frequenciesHz.length; f += 7)
        expect(above[t * grid.frequenciesHz.length + f]).toBeLessThanOrEqual(0);
    });
  });

  it('is left behind by a mode of half a second within a quarter of the window', () => {
    const grid = gridOf(addMode(blank(), sampleRate, 50, 0.5, 1, onsetSeconds));
    const above = aboveWindowDb(grid);
    const column = nearest(grid, 50);
    grid.timesSeconds.forEach((time, t) => {
      if (time >= 0.075) expect(above[t * grid.frequenciesHz.length + column]).toBeGreaterThan(0);
    });
  });

  it('is not seen in a cumulative grid, whose slices begin after the click', () => {
    const samples = blank();
    samples[onsetSeconds * sampleRate] = 1;
    addMode(samples, sampleRate, 50, 0.5, 1, onsetSeconds);
    expect(Math.min(...aboveWindowDb(gridOf(samples, { method: 'cumulative' })))).toBeGreaterThan(0);
  });
});

describe('the time by which a decay at the limit would have sunk', () => {
  const floor = -50;
  for (const method of ['sliding', 'cumulative'] as const)
    it(`tells modes just below the limit from modes just above it, level by level (${method})`, () => {
      for (const amplitude of [1, 0.1]) {
        const samples = blank();
        // One strong mode sets the reference; the one that is judged lies far from it.
        addMode(samples, sampleRate, 120, 0.3, 1, onsetSeconds);
        addMode(samples, sampleRate, 45, 0.6, amplitude, onsetSeconds);
        const grid = gridOf(samples, { method, spanSeconds: 1 });
        const column = nearest(grid, 45);
        const floors = new Float64Array(grid.frequenciesHz.length).fill(floor);
        const last = stands(grid, column, floor);
        for (const [limit, exceeds] of [
          [0.55, true],
          [0.66, false],
        ] as const) {
          const times = sinkTimes(grid, new Float64Array(floors.length).fill(limit), floors);
          expect(last > times[column], `${limit} s at ${amplitude}`).toBe(exceeds);
        }
      }
    });

  it('is known only where there is a limit and something to hold against it', () => {
    const grid = gridOf(addMode(blank(), sampleRate, 45, 0.6, 1, onsetSeconds));
    const limits = Float64Array.from(grid.frequenciesHz, (f) => (f < 40 ? NaN : 0.5));
    const times = sinkTimes(grid, limits, new Float64Array(limits.length).fill(-50));
    grid.frequenciesHz.forEach((f, k) => {
      if (f < 40) expect(times[k]).toBeNaN();
    });
    expect(times[nearest(grid, 45)]).toBeGreaterThan(0.3);
    const none = sinkTimes(grid, limits, new Float64Array(limits.length).fill(5));
    expect([...none].every(Number.isNaN)).toBe(true);
  });
});
