import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  boxModes,
  constructionAbsorption,
  constructions,
  createRoom,
  modeLevels,
  nodeAt,
  predictRoom,
  synthesise,
  wallsFromNames,
  type PositionMetres,
} from '../../src/room/index.js';

const size = { lengthMetres: 5.3, widthMetres: 4.1, heightMetres: 2.7 };
const room = createRoom({ size, speedOfSoundMetresPerSecond: 343.2, absorption: 0.1 });
const modes = boxModes(size, 343.2, 120);
const at = ([x, y, z]: readonly number[]): PositionMetres => ({ x, y, z });

interface FiniteDifferences {
  source: number[];
  seats: number[][];
  peaks: { order: number[]; seat: number; peakHz: number; levelDb: number }[];
}
/** From tests/reference/fd_room.py: the same box by finite differences in time. */
const reference = JSON.parse(
  readFileSync(new URL('../reference/fd_room.json', import.meta.url), 'utf8'),
) as FiniteDifferences;
/** No other mode lies within four half-power bandwidths of these. */
const isolated = ['1,0,0', '0,1,0', '1,1,0'];

describe('level of a mode at a seat', () => {
  it('agrees with a finite-difference room within 1 dB at isolated modes, and so does the synthesised response', () => {
    const source = at(reference.source);
    const seats = reference.seats.map(at);
    const peaks = reference.peaks.filter(({ order }) => isolated.includes(order.join()));
    expect(peaks).toHaveLength(6);
    const responses = seats.map((seat) =>
      synthesise({
        room,
        seat,
        source,
        sampleRate: 8000,
        leadSeconds: 0,
        rollOff: { highPassHz: null },
      }),
    );
    for (const { order, seat, peakHz, levelDb } of peaks) {
      const mode = modes.find((one) => one.order.join() === order.join())!;
      const alone = modeLevels(mode, room, [source], seats)[seat];
      // The mode alone, though its neighbours add to what the other room shows.
      expect(Math.abs(alone.levelDb! - levelDb), order.join()).toBeLessThan(1);
      const { samples, sampleRate } = responses[seat];
      const around = [-0.4, -0.2, 0, 0.2, 0.4].map((off) => magnitude(samples, sampleRate, peakHz + off));
      expect(Math.abs(20 * Math.log10(Math.max(...around)) - levelDb), order.join()).toBeLessThan(1);
    }
  });

  it('is the same with seat and source exchanged, and largest with both in corners', () => {
    const places = [at([0, 0, 0]), at([1.1, 3.2, 1.2]), at([4.4, 0.7, 2.1])];
    for (const mode of modes) {
      const levels = modeLevels(mode, room, places, places);
      for (const { source, seat, levelDb, shape } of levels) {
        const back = levels.find((one) => one.source === seat && one.seat === source)!;
        expect(back.levelDb).toBe(levelDb);
        expect(Math.abs(shape)).toBeLessThanOrEqual(1);
        expect(levelDb!).toBeLessThanOrEqual(levels[0].levelDb! + 1e-9);
      }
    }
  });

  it('is unknown where the walls are, though the shape is not', () => {
    const bare = createRoom({ size, speedOfSoundMetresPerSecond: 343.2 });
    const [{ levelDb, shapeDb, shape }] = modeLevels(modes[0], bare, [at([0, 0, 0])], [at([5.3 / 3, 1, 1])]);
    expect(levelDb).toBeNull();
    expect(shape).toBeCloseTo(0.5, 9);
    expect(shapeDb).toBeCloseTo(-6.02, 2);
  });
});

describe('a node', () => {
  it('is named with its axis and the distance to it', () => {
    const first = modes[0];
    expect(first.order).toEqual([1, 0, 0]);
    expect(nodeAt(first, room, at([2.65, 1, 1]))).toMatchObject({ axis: 'x', distanceMetres: 0 });
    expect(nodeAt(first, room, at([2.75, 1, 1]))?.distanceMetres).toBeCloseTo(0.1, 9);
    expect(nodeAt(first, room, at([3.2, 1, 1]))).toBeNull();
    const third = modes.find(({ order }) => order.join() === '3,0,0')!;
    expect(nodeAt(third, room, at([5.3 / 6 + 0.02, 1, 1]))?.distanceMetres).toBeCloseTo(0.02, 9);
  });
});

describe('walls by what they are made of', () => {
  it('change with frequency: held below 125 Hz, straight on log frequency between', () => {
    const board = constructions.find(({ name }) => name === 'plasterboard-on-studs')!;
    expect([40, 125, 250, 500, 2000].map((f) => constructionAbsorption(board, f))).toEqual([
      0.29, 0.29, 0.1, 0.05, 0.05,
    ]);
    expect(constructionAbsorption(board, 125 * Math.SQRT2)).toBeCloseTo(0.195, 9);
  });

  it('may be coefficients of one’s own, beside names; none beyond 1', () => {
    const walls = wallsFromNames(['0.2', 'carpet', '0,35', '1', '0', '.05']);
    expect(walls[3].absorption).toEqual([0.2, 0.02, 0.35, 1, 0, 0.05]);
    expect(walls.every(({ absorption }) => absorption[0] === 0.2)).toBe(true);
    expect(() => wallsFromNames(['1.5'])).toThrowError(/absorption-bounds/);
    expect(() => wallsFromNames(['velvet'])).toThrowError(/wall-name/);
  });

  it('give each mode the decay of its own third-octave', () => {
    const walls = wallsFromNames([
      'painted-brick',
      'plasterboard-on-studs',
      'concrete',
      'window',
      'carpet',
      'concrete',
    ]);
    const built = createRoom({ size, speedOfSoundMetresPerSecond: 343.2, absorption: walls });
    const { modes: predicted } = predictRoom(built, { toHz: 300 });
    // One end absorbs much and one side much; up and down next to nothing.
    const time = (order: string): number =>
      predicted.find((mode) => mode.order.join() === order)!.decayTimeSeconds!;
    expect(time('0,0,1')).toBeGreaterThan(time('1,0,0'));
    // The same kind of mode where the board absorbs less.
    expect(time('8,0,0')).toBeGreaterThan(1.5 * time('1,0,0'));
    expect(built.absorption![1]).toBe(0.29);
    expect(() => wallsFromNames(['straw'])).toThrow(expect.objectContaining({ code: 'wall-name' }));
    expect(() => wallsFromNames(['concrete', 'carpet'])).toThrow(
      expect.objectContaining({ code: 'wall-count' }),
    );
  });
});

function magnitude(samples: Float64Array, sampleRate: number, frequencyHz: number): number {
  const w = (2 * Math.PI * frequencyHz) / sampleRate;
  let [re, im] = [0, 0];
  samples.forEach((value, n) => {
    re += value * Math.cos(w * n);
    im -= value * Math.sin(w * n);
  });
  return Math.hypot(re, im);
}
