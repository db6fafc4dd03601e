import { describe, expect, it } from 'vitest';
import { matchCandidates, candidateModes } from '../../src/diagnosis/index.js';
import { boxModes, createRoom, parseRoomSize, synthesise, type Room } from '../../src/room/index.js';
import { recordingFromSamples, Rng } from '../../src/signal/index.js';
import { diagnosed, rate } from '../support/telling.js';

/** The inputs that break a naive build, by their numbers in the trade's list: what is predicted, and what that is worth. */

const sized = (text: string): Room => createRoom({ size: parseRoomSize(text) });

describe('input 11: 48 kHz samples of a known room under a 44.1 kHz header', () => {
  it('raise the suspicion of the rate, with both rates and the ratio, and the right label does not', () => {
    const room = sized('5.6x3.9x2.7');
    const places = { seat: { x: 4.1, y: 3.3, z: 1.2 }, source: { x: 0.3, y: 0.3, z: 0.3 } };
    const { samples } = synthesise({ room, ...places, absorption: 0.12, noiseDb: -60 });
    const of = (label: number) =>
      diagnosed(recordingFromSamples(samples, label), { room, toHz: 120 }).files[0].notes.find(
        ({ code }) => code === 'rate-suspect',
      );
    expect(of(44100)!.params).toMatchObject({ labelledRate: 44100, likelyRate: 48000 });
    expect(of(44100)!.params.ratio).toBeCloseTo(0.919, 3);
    expect(of(48000)).toBeUndefined();
  });
});

describe('input 18: 6.0 x 4.5 x 2.6 m, the seat half-way along its length', () => {
  it('notes the modes of odd order along x as nodes, and names candidates as sets', () => {
    const room = sized('6.0x4.5x2.6');
    const places = { seat: { x: 3, y: 1.4, z: 1.2 }, source: { x: 0.3, y: 0.3, z: 0.3 } };
    const { samples } = synthesise({ room, ...places, absorption: 0.25, noiseDb: -55 });
    const result = diagnosed(recordingFromSamples(samples, rate, places), { room });
    const nodes = result.files[0].notes.filter(({ code }) => code === 'node');
    expect(nodes.length).toBeGreaterThan(3);
    const odd = nodes.filter(({ params }) => /^\([135],/.test(String(params.order)));
    expect(odd.map(({ params }) => params.order)).toEqual(
      expect.arrayContaining(['(1,0,0)', '(1,1,0)', '(3,0,0)']),
    );
    expect(result.resonances.some(({ frequencyHz }) => Math.abs(frequencyHz - 28.6) < 0.8)).toBe(false);
    for (const { candidates, frequencyHz: ridgeHz } of result.ridges) {
      expect(candidates.reduce((all, { weight }) => all + weight, 0)).toBeLessThan(1);
      // A candidate that is nearly sure is the mode that rings there.
      for (const { weight, order, frequencyHz } of candidates.filter((one) => one.weight > 0.9)) {
        expect(Math.abs(frequencyHz - ridgeHz), order.join()).toBeLessThan(0.5);
        expect(weight).toBeLessThan(0.99);
      }
    }
  });

  it('takes the pairs that cannot be told apart, 76.2/76.3, 81.4/81.5 and 95.3 Hz, as one group each', () => {
    const room = createRoom({ size: parseRoomSize('6.0x4.5x2.6'), speedOfSoundMetresPerSecond: 343.2 });
    const modes = candidateModes(room, 120);
    for (const f of [76.25, 81.45, 95.3]) {
      const candidates = matchCandidates(f, 0.05, { room, modes, resolvableSpacingHz: 1 });
      const [first, second] = candidates;
      expect(Math.abs(first.frequencyHz - second.frequencyHz), `${f} Hz`).toBeLessThan(0.2);
      expect(first.group).toBe(second.group);
      expect(first.weight / second.weight).toBeLessThan(1.1);
    }
  });
});

describe('input 19: every mode off by a common 2 % and its own 2.5 %', () => {
  it('gives weights that are honest: what is named with a weight is right about that often', () => {
    const room = sized('6.0x4.5x2.6');
    const { size, speedOfSoundMetresPerSecond: speed } = room;
    const rng = new Rng(19);
    const modes = candidateModes(room, 120);
    let [named, right, unmatched, all] = [0, 0, 0, 0];
    for (let round = 0; round < 40; round++) {
      const common = 1 + 0.02 * (round % 2 ? 1 : -1);
      for (const mode of boxModes(size, speed, 100)) {
        const f = mode.frequencyHz * common * (1 + 0.025 * rng.gaussian());
        const candidates = matchCandidates(f, 0.05, { room, modes, resolvableSpacingHz: 1 });
        const truth = candidates.find(({ order }) => order.join() === mode.order.join());
        all++;
        if (!truth) unmatched++;
        for (const { weight, order } of candidates) {
          named += weight;
          if (order.join() === mode.order.join()) right++;
        }
      }
    }
    // The sum of the weights is how often they claim to be right. A shift common to all is more than they allow for.
    expect(right / named).toBeGreaterThan(0.75);
    expect(right / named).toBeLessThan(1.35);
    // Some lie further off than is ever believed, and stay unmatched rather than be named wrongly.
    expect(unmatched).toBeGreaterThan(0);
    expect(unmatched / all).toBeLessThan(0.2);
  });
});

describe('input 20: rooms with equal sides, and a comma in a size', () => {
  it('groups the equal modes of a square room and of a cube', () => {
    for (const [text, equal] of [
      ['5x5x2.6', 2],
      ['4x4x4', 3],
    ] as const) {
      const room = sized(text);
      const modes = candidateModes(room, 120);
      const [{ frequencyHz }] = modes;
      const candidates = matchCandidates(frequencyHz, 0.02, { room, modes, resolvableSpacingHz: 0.5 });
      const best = candidates.filter(({ weight }) => weight > 0.9 * candidates[0].weight);
      expect(best, text).toHaveLength(equal);
      expect(new Set(best.map(({ group }) => group)).size).toBe(1);
      expect(best[0].weight).toBeLessThanOrEqual(1 / equal);
    }
  });

  it('reads "4,50" as 4.5 m, never as 450', () => {
    expect(parseRoomSize('5,30x4,50x2,70')).toEqual({
      lengthMetres: 5.3,
      widthMetres: 4.5,
      heightMetres: 2.7,
    });
  });
});
