import { describe, expect, it } from 'vitest';
import * as engine from '../../src/engine.js';
import { calibrate, matched, unidealRoom } from '../benchmark/rooms.mjs';

/** A part of `npm run bench -- matching`, large enough that chance does not decide: see there for the whole table. */
const table = (params: Parameters<typeof calibrate>[1]) => calibrate(engine, params);

describe('weights of candidates over rooms that are not ideal', () => {
  it('mean what they say: five bins, each right as often as its weight, within 0.07', () => {
    const bins = [0, 1, 2, 3, 4].map(() => ({ count: 0, weight: 0, right: 0 }));
    for (const params of [{ seeds: 30, seats: 8 }, { seeds: 70, seats: 8, apartHz: 1.5 }, { seeds: 40 }])
      table(params).bins.forEach(({ count, weight, right }, i) => {
        if (count === 0) return;
        bins[i].count += count;
        bins[i].weight += count * weight;
        bins[i].right += count * right;
      });
    for (const { count, weight, right } of bins) {
      expect(count).toBeGreaterThanOrEqual(200);
      expect(Math.abs(weight - right) / count).toBeLessThan(0.07);
    }
  });

  it('reach 0.7 for at least 60 % of ridges with eight seats in known places, and are then right', () => {
    for (const apartHz of [0, 1.5]) {
      const { sure, sureAndRight } = table({ seeds: 25, seats: 8, apartHz });
      expect(sure).toBeGreaterThanOrEqual(0.6);
      expect(sureAndRight).toBeGreaterThan(0.9);
    }
  });

  it('let none win at least 80 % of ridges where the sides are wrong', () => {
    for (const params of [{ seats: 8 }, { seats: 1 }, { seats: 1, placesKnown: false }])
      expect(table({ seeds: 25, wrong: true, ...params }).none).toBeGreaterThanOrEqual(0.8);
  });

  it('name one mode for one resonance in the best assignment', () => {
    const made = unidealRoom(engine, { seed: 3, seats: 8 });
    const candidates = matched(engine, made) as engine.Candidate[][];
    const named = candidates.flatMap((list) => list.filter(({ best }) => best));
    expect(named.length).toBeGreaterThan(20);
    expect(new Set(named.map(({ order }) => order.join())).size).toBe(named.length);
    for (const list of candidates) expect(list.filter(({ best }) => best).length).toBeLessThanOrEqual(1);
  });
});

describe('evidence of places', () => {
  const size = { lengthMetres: 6, widthMetres: 4.5, heightMetres: 2.6 };
  const room = engine.createRoom({ size, speedOfSoundMetresPerSecond: 343.2 });
  const modes = engine.candidateModes(room, 200);
  const source = { x: 0.3, y: 0.3, z: 0.3 };
  const placeAt = (x: number, y: number, z: number): engine.Place => ({
    seat: { x, y, z },
    source,
    onsetSeconds: 0,
    timeReference: 'common',
  });

  it('expects a mode least where its node is, and most in corners', () => {
    const first = modes[0];
    expect(first.order).toEqual([1, 0, 0]);
    expect(engine.excitation(first, room, [placeAt(3, 1.4, 1.2)])).toBeLessThan(0.01);
    // The mean square of an axial shape over the room is a half, at the seat and at the source.
    expect(engine.excitation(first, room, [placeAt(0, 0, 0)])).toBeCloseTo(2 * Math.cos(0.05 * Math.PI), 9);
    expect(engine.excitation(first, room, [])).toBe(1);
  });

  it('parts two modes of equal frequency by their shape across four seats', () => {
    const places = [
      [0.5, 0.6, 1.2],
      [2.9, 0.8, 1.2],
      [5.2, 2.1, 1.2],
      [1.4, 3.6, 1.2],
    ].map(([x, y, z]) => placeAt(x, y, z));
    const pair = modes.filter(({ frequencyHz }) => Math.abs(frequencyHz - 76.25) < 0.2);
    expect(pair.length).toBe(2);
    for (const meant of pair) {
      const amplitudes = places.map(
        ({ seat }) =>
          engine.modeShape(meant.order, size, seat!) * engine.modeShape(meant.order, size, source),
      );
      const flights = places.map(
        ({ seat }) => Math.hypot(seat!.x - 0.3, seat!.y - 0.3, seat!.z - 0.3) / 343.2,
      );
      const shape = engine.measuredShape(
        {
          frequencyHz: 76.25,
          decayTimeSeconds: 0.5,
          amplitudes: amplitudes.map((a, k) => Math.abs(a) * Math.exp((-6.9078 / 0.5) * flights[k])),
          amplitudeSd: [0.001, 0.001, 0.001, 0.001],
          phasesRadians: amplitudes.map(
            (a, k) => (a < 0 ? Math.PI : 0) + 2 * Math.PI * 76.25 * flights[k] + 0.4,
          ),
        },
        room,
        places,
      );
      const [[first, ...others]] = engine.matchObservations(
        [{ frequencyHz: 76.25, frequencySdHz: 0.1, shape }],
        {
          room,
          modes,
          resolvableSpacingHz: null,
          places,
        },
      );
      expect(first.order).toEqual(meant.order);
      expect(first.shapeMatch).toBeGreaterThan(0.99);
      const other = others.find(({ order }) => pair.some((mode) => mode.order === order));
      expect(first.weight).toBeGreaterThan(10 * (other?.weight ?? 0));
    }
  });
});
