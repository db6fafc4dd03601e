import { describe, expect, it } from 'vitest';
import { causeOf, evidenceOf, oneShape } from '../../src/diagnosis/index.js';
import type { Resonance } from '../../src/resonance/index.js';
import { boxModes, createRoom, modeShape } from '../../src/room/index.js';
import { Rng } from '../../src/signal/index.js';

const plain: Resonance = {
  frequencyHz: 50,
  frequencySdHz: 0.05,
  decayTimeSeconds: 0.6,
  decayTimeSdSeconds: 0.01,
  q: 13.6,
  decayTimeEarlySeconds: null,
  early: null,
  levelDb: 0,
  levelsDb: [0],
  amplitudes: [1],
  phasesRadians: [0],
  amplitudeSd: [0.01],
  phaseSdRadians: [0.01],
  rhoDb: 50,
  kind: 'resolved',
  fitFromSeconds: 0.01,
  fitToSeconds: 1,
};
const heard = (frequencyHz: number, amplitudes: number[], phasesRadians: number[]): Resonance => ({
  ...plain,
  ...{ frequencyHz, amplitudes, phasesRadians },
  levelsDb: amplitudes.map((a) => 20 * Math.log10(a)),
});

describe('what every seat hears alike', () => {
  const room = createRoom({ size: { lengthMetres: 5.4, widthMetres: 4.1, heightMetres: 2.7 } });
  const seatsOf = (rng: Rng) =>
    Array.from({ length: 5 }, () => ({
      x: 0.6 + 4.2 * rng.uniform(),
      y: 0.5 + 3.1 * rng.uniform(),
      z: 1 + 0.6 * rng.uniform(),
    }));
  /** Modes of the box at some seats, in phase or against it after the way from a source in a corner. */
  const modesAt = (rng: Rng): Resonance[] => {
    const seats = seatsOf(rng);
    return boxModes(room.size, 343.2, 100).map(({ order, frequencyHz }) => {
      const shapes = seats.map((seat) => modeShape(order, room.size, seat));
      const phases = shapes.map((shape, k) => {
        const metres = Math.hypot(seats[k].x, seats[k].y, seats[k].z);
        return (shape < 0 ? Math.PI : 0) + (2 * Math.PI * frequencyHz * metres) / 343.2;
      });
      return heard(
        frequencyHz,
        shapes.map((shape) => Math.abs(shape) + 0.01),
        phases,
      );
    });
  };
  /** A port: nearly one level, and one phase after the first arrival. */
  const port = (rng: Rng) =>
    heard(
      33,
      Array.from({ length: 5 }, () => 10 ** ((0.6 * rng.gaussian()) / 20)),
      Array.from({ length: 5 }, () => 0.7 + 0.08 * rng.gaussian()),
    );

  it('is a port’s tail in every of 20 rooms, with the numbers it rests on', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const rng = new Rng(seed);
      const tail = port(rng);
      const found = oneShape(tail, [tail, ...modesAt(rng)]);
      expect(found?.kind, `seed ${seed}`).toBe('one-shape');
      expect(found?.params.seats).toBe(5);
      expect(found?.params.spreadDb).toBeLessThan(1.5);
      expect(found?.params.othersDb).toBeGreaterThan(3);
    }
  });

  it('is hardly ever a mode of the room: at most 2 % of them', () => {
    let [told, all] = [0, 0];
    for (let seed = 1; seed <= 40; seed++) {
      const modes = modesAt(new Rng(seed));
      told += modes.filter((mode) => oneShape(mode, modes) !== null).length;
      all += modes.length;
    }
    expect(all).toBeGreaterThan(400);
    expect(told / all).toBeLessThan(0.02);
  });

  it('is not asked of three seats, nor of seats that hear all resonances alike', () => {
    const three = heard(33, [1, 1, 1], [0, 0, 0]);
    expect(oneShape(three, [three, heard(50, [1, 0.1, 3], [0, 1, 2])])).toBeNull();
    const same = heard(33, [1, 1, 1, 1], [0, 0, 0, 0]);
    expect(oneShape(same, [same, heard(50, [1, 1, 1, 1], [0, 0, 0, 0])])).toBeNull();
  });
});

describe('what a cause rests on', () => {
  const nothing = { candidates: [], shape: null, expectedModes: 20 };
  const shape = { kind: 'one-shape', params: { seats: 5, spreadDb: 0.5, degrees: 6, othersDb: 5 } } as const;

  it('is for hum its multiple of the mains, and how far off', () => {
    const hum: Resonance = { ...plain, kind: 'hum', frequencyHz: 100.03, decayTimeSeconds: null };
    const found = evidenceOf({ ...nothing, cause: 'hum', resonance: hum });
    expect(found?.params).toMatchObject({ mainsHz: 50, multiple: 2 });
    expect(found?.params.offHz).toBeCloseTo(0.03, 6);
  });

  it('is for a boost the number of modes that a room would have', () => {
    expect(evidenceOf({ ...nothing, cause: 'equaliser', resonance: plain, expectedModes: 41 })).toEqual({
      kind: 'alone',
      params: { expectedModes: 41, q: 13.6 },
    });
  });

  it('is for a panel or a coupled room its two decays, and how far the late one lies below', () => {
    const bent: Resonance = {
      ...plain,
      kind: 'two-slopes',
      decayTimeSeconds: 1.6,
      decayTimeEarlySeconds: 0.3,
      early: { frequencyHz: 50, amplitudes: [1], phasesRadians: [0] },
      amplitudes: [0.125893],
    };
    const found = evidenceOf({ ...nothing, cause: 'coupled', resonance: bent });
    expect(found?.params).toMatchObject({ earlySeconds: 0.3, lateSeconds: 1.6 });
    expect(found?.params.lateDb).toBeCloseTo(-18, 3);
  });

  it('makes the source the cause only in a room whose modes do not explain the ridge', () => {
    const mode = { order: [0, 0, 1], kind: 'axial', frequencyHz: 63.5, deviation: 0, weight: 0.8 } as const;
    const candidate = { ...mode, shapeMatch: null, group: 0, best: true };
    const known = { kind: 'resolved', alone: false, shape } as const;
    expect(causeOf({ ...known, candidates: [], hasRoom: true })).toBe('source');
    expect(causeOf({ ...known, candidates: [candidate], hasRoom: true })).toBe('room-mode');
    expect(causeOf({ ...known, candidates: [], hasRoom: false })).toBe('unknown');
    expect(causeOf({ ...known, shape: null, candidates: [], hasRoom: true })).toBe('unknown');
  });
});
