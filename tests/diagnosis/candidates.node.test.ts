import { describe, expect, it } from 'vitest';
import { candidateModes, chanceOfAny, matchCandidates, wallCut } from '../../src/diagnosis/index.js';
import { createRoom, modeFrequency } from '../../src/room/index.js';
import { Rng } from '../../src/signal/index.js';

const roomOf = (lengthMetres: number, widthMetres: number, heightMetres: number, speed = 343.2) =>
  createRoom({ size: { lengthMetres, widthMetres, heightMetres }, speedOfSoundMetresPerSecond: speed });

const match = (room: ReturnType<typeof roomOf>, frequencyHz: number, sd = 0.1) =>
  matchCandidates(frequencyHz, sd, { room, modes: candidateModes(room, 200), resolvableSpacingHz: null });

describe('candidates of a ridge', () => {
  it('give a lonely mode most of the weight, and never all of it', () => {
    const [first, ...rest] = match(roomOf(5.6, 3.9, 2.7), 43.8);
    expect(first.order).toEqual([0, 1, 0]);
    expect(first.weight).toBeGreaterThan(0.7);
    expect(first.weight).toBeLessThan(0.95);
    expect(rest).toHaveLength(0);
    expect(first.deviation).toBeCloseTo(43.8 / 44 - 1, 3);
  });

  it('keep (0,2,0) and (0,0,1) of 9.7 x 5.5 x 2.7 m at 63 to 64 Hz, neither above 0.7', () => {
    const room = roomOf(9.7, 5.5, 2.7, 343);
    for (const f of [63, 63.3, 63.6, 64]) {
      const found = match(room, f, 0.2);
      const names = found.map(({ order }) => order.join());
      expect(names).toContain('0,2,0');
      expect(names).toContain('0,0,1');
      for (const { weight } of found) expect(weight).toBeLessThan(0.7);
    }
  });

  it('put near-equal modes of 6.0 x 4.5 x 2.6 m into one group: 76.2/76.3, 81.4/81.5, 95.3/95.3 Hz', () => {
    const room = roomOf(6, 4.5, 2.6);
    for (const f of [76.25, 81.45, 95.3]) {
      const near = match(room, f).filter((candidate) => Math.abs(candidate.frequencyHz - f) < 0.15);
      expect(near.length, `${f}`).toBe(2);
      expect(near[0].group).toBe(near[1].group);
      expect(Math.abs(near[0].weight - near[1].weight)).toBeLessThan(0.02);
      expect(near[0].weight).toBeLessThan(0.5);
    }
  });

  it('share the weight among the equal modes of a square room and of a cube', () => {
    const square = match(roomOf(4.5, 4.5, 2.5), modeFrequency([1, 0, 0], roomOf(4.5, 4.5, 2.5).size, 343.2));
    expect(square.map(({ order }) => order.join())).toEqual(['0,1,0', '1,0,0']);
    expect(square[0].weight).toBeCloseTo(square[1].weight, 9);
    const cube = match(roomOf(4, 4, 4), 42.9);
    expect(new Set(cube.map(({ group }) => group)).size).toBe(1);
    expect(cube).toHaveLength(3);
    for (const { weight } of cube) expect(weight).toBeLessThan(1 / 3);
  });

  it('are none further than 8 % from any predicted mode', () => {
    expect(match(roomOf(5.6, 3.9, 2.7), 36.5)).toHaveLength(0);
    const rng = new Rng(5);
    for (let i = 0; i < 200; i++) {
      const f = 25 + 175 * rng.uniform();
      const found = match(roomOf(5.6, 3.9, 2.7), f);
      for (const { deviation } of found) expect(Math.abs(deviation)).toBeLessThanOrEqual(wallCut);
      expect(chanceOfAny(found)).toBeLessThan(1);
    }
  });

  it('lose certainty with that of the frequency', () => {
    const room = roomOf(5.6, 3.9, 2.7);
    const none = (sd: number): number => 1 - chanceOfAny(match(room, 43.8, sd));
    expect(none(3)).toBeGreaterThan(1.5 * none(0.1));
    expect(match(room, 43.8, 3)[0].weight).toBeLessThan(match(room, 43.8, 0.1)[0].weight - 0.1);
  });
});
