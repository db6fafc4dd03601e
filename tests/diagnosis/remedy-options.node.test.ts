import { describe, expect, it } from 'vitest';
import {
  diagnose,
  driveChangeDb,
  driveOf,
  optionKinds,
  remedyOptions,
  shortestSourceMove,
  type Diagnosis,
  type OptionPlaces,
} from '../../src/diagnosis/index.js';
import { createRoom, synthesise, type ModeOrder, type RoomSize } from '../../src/room/index.js';
import { recordingFromSamples } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';

const size: RoomSize = { lengthMetres: 5.6, widthMetres: 4.1, heightMetres: 2.6 };
const room = createRoom({ size, absorption: 0.07 });
const source = { x: 0.3, y: 0.3, z: 0.3 };
const seats = [
  { x: 3.6, y: 1.5, z: 1.2 },
  { x: 4.6, y: 1.2, z: 1.2 },
  { x: 3.9, y: 2.5, z: 1.2 },
];

function made(list = seats): Diagnosis {
  const recordings = list.map((seat, k) => {
    const { samples, onsetSeconds } = synthesise({
      ...{ room, source, seat, sampleRate: 2000, seconds: 2, noiseDb: -65, seed: k + 1 },
    });
    return { ...recordingFromSamples(samples, 2000, { seat, source, label: `seat ${k + 1}` }), onsetSeconds };
  });
  return drain(diagnose(recordings, { fromHz: 20, toHz: 120, limit: 'audibility', room }));
}

const places = (of: Diagnosis, more: Partial<OptionPlaces> = {}): OptionPlaces => ({
  seats: of.files.map((_, k) => seats[k]),
  sources: [source],
  levels: null,
  ...more,
});

const together = made();

describe('what can be done about a ridge', () => {
  it('is all six, each once, with one that fits first and a reason beside each that does not', () => {
    expect(together.ridges.length).toBeGreaterThan(1);
    together.ridges.forEach((ridge, index) => {
      const list = remedyOptions(together, index, places(together));
      expect(list.map(({ kind }) => kind).sort()).toEqual([...optionKinds].sort());
      const listed = ridge.remedies.filter(({ kind }) => optionKinds.includes(kind as never));
      expect(list.filter(({ standing }) => standing === 'first').length).toBe(listed.length > 0 ? 1 : 0);
      for (const { standing, against } of list) expect(against !== null).toBe(standing === 'unlikely');
    });
  });

  it('does not move a seat away from what hangs everywhere, nor promise another decay for a move', () => {
    const index = together.ridges.findIndex(
      (ridge) => ridge.seats.length === 3 && ridge.cause === 'room-mode',
    );
    const list = remedyOptions(together, index, places(together));
    const { against, expectedSeconds } = list.find(({ kind }) => kind === 'move-seat')!;
    expect(against).toBe('move-everywhere');
    expect(expectedSeconds).toBe(together.ridges[index].decayTimeSeconds);
  });

  it('tells the decay after an absorber, and which neighbours it shortens too', () => {
    const told = together.ridges.flatMap((ridge, index) =>
      remedyOptions(together, index, places(together))
        .filter(({ kind, expectedSeconds }) => kind === 'absorb' && expectedSeconds !== null)
        .map((option) => ({ ridge, option })),
    );
    expect(told.length).toBeGreaterThan(0);
    for (const { ridge, option } of told) {
      expect(option.expectedSeconds!).toBeLessThan(ridge.decayTimeSeconds!);
      expect(option.expectedDb!).toBeLessThan(0);
      for (const effect of option.sideEffects) {
        expect(effect.on).toBe('ridge');
        if (effect.on !== 'ridge') continue;
        const other = together.ridges.find(({ frequencyHz }) => frequencyHz === effect.frequencyHz)!;
        expect(effect.expectedSeconds!).toBeLessThan(other.decayTimeSeconds!);
        expect(Math.abs(Math.log2(other.frequencyHz / ridge.frequencyHz))).toBeLessThanOrEqual(0.5);
      }
    }
    expect(told.some(({ option }) => option.sideEffects.length > 0)).toBe(true);
  });

  it('tells how a cut leaves each seat', () => {
    const frequenciesHz = Float64Array.from({ length: 63 }, (_, k) => 20 * 2 ** (k / 24));
    const index = together.ridges.findIndex(({ remedies }) => remedies.some(({ kind }) => kind === 'cut'));
    expect(index).toBeGreaterThanOrEqual(0);
    const { frequencyHz } = together.ridges[index];
    const levelsDb = Float64Array.from(
      [0, -9, 4].flatMap((height) =>
        [...frequenciesHz].map((f) => (Math.abs(Math.log2(f / frequencyHz)) < 1 / 12 ? height : 0)),
      ),
    );
    const list = remedyOptions(together, index, places(together, { levels: { frequenciesHz, levelsDb } }));
    const cut = list.find(({ kind }) => kind === 'cut')!;
    const at = cut.sideEffects.flatMap((effect) => (effect.on === 'seat' ? [effect.standingDb] : []));
    expect(at.length).toBe(3);
    expect(at[1]).toBeLessThan(at[0] - 8);
    expect(at[2]).toBeGreaterThan(at[0] + 3);
    expect(at[0]).toBeLessThan(-1);
  });

  it('without a room names no distances, no neighbours and no place', () => {
    const bare = { ...together, room: null };
    for (const [index] of bare.ridges.entries())
      for (const option of remedyOptions(bare, index, places(bare))) {
        if (option.kind === 'cut') continue;
        expect(option.sideEffects).toEqual([]);
      }
  });
});

describe('several sources', () => {
  const order: ModeOrder = [1, 0, 0];
  it('drive a mode together: two opposite each other cancel one of odd order', () => {
    const pair = [source, { ...source, x: size.lengthMetres - source.x }];
    expect(driveOf(order, size, pair)).toBeCloseTo(0, 12);
    expect(driveOf([2, 0, 0], size, pair)).toBeCloseTo(2 * driveOf([2, 0, 0], size, [source]), 12);
    expect(driveChangeDb([2, 0, 0], size, [source], pair)).toBeCloseTo(6.02, 2);
    expect(driveChangeDb(order, size, [source], pair), 'no more than walls allow').toBe(-20);
  });

  it('need the shortest move of one of them', () => {
    const one = shortestSourceMove(order, size, [source])!;
    expect(one.changeDb).toBeLessThanOrEqual(-6);
    expect(one.changeDb).toBeGreaterThan(-6.3);
    expect(one).toMatchObject({ source: 0, axis: 'x' });
    const two = [source, { x: 1.2, y: 3.8, z: 0.3 }];
    const move = shortestSourceMove(order, size, two)!;
    const after = two.map((at, k) => (k === move.source ? move.to : at));
    expect(driveChangeDb(order, size, two, after)).toBeCloseTo(move.changeDb, 9);
    expect(move.changeDb).toBeLessThanOrEqual(-6);
    expect(shortestSourceMove([0, 0, 1], size, two)).toBeNull();
  });
});
