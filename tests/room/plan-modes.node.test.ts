import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  boxModes,
  boxPlan,
  createPlan,
  createRoom,
  modeDamping,
  modeLevels,
  modeShape,
  nodeAt,
  parseCorners,
  predictRoom,
  roomModeCount,
  roomModeDamping,
  roomModeNorm,
  roomModes,
  roomModeShape,
  solveOn,
  synthesise,
  type Room,
} from '../../src/room/index.js';
import { Rng } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';

const speed = 343.2;
const size = { lengthMetres: 5, widthMetres: 4, heightMetres: 2.5 };
const asPlan = createRoom({ plan: boxPlan(5, 4, 2.5), speedOfSoundMetresPerSecond: speed, absorption: 0.1 });
const cornersOfL = '0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5';
const roomOfL: Room = createRoom({
  plan: createPlan(parseCorners(cornersOfL), 2.4),
  speedOfSoundMetresPerSecond: speed,
  absorption: 0.1,
});
const waveNumber = (frequencyHz: number): number => (2 * Math.PI * frequencyHz) / speed;

/** From tests/reference/plans.edp by FreeFEM. */
const reference = JSON.parse(readFileSync(new URL('../reference/plans.json', import.meta.url), 'utf8')) as {
  plans: Record<string, { corners: string; waveNumbersSquared: number[] }>;
};

describe('modes of a room given by a plan', () => {
  it('are those of the formula within 0.1 % where the plan is a rectangle, every one of them', () => {
    const exact = boxModes(size, speed, 200);
    const modes = roomModes(asPlan, 200);
    expect(modes).toHaveLength(exact.length);
    modes.forEach(({ frequencyHz }, i) =>
      expect(Math.abs(frequencyHz / exact[i].frequencyHz - 1)).toBeLessThan(0.001),
    );
    expect(predictRoom(asPlan, { toHz: 200 }).meshError).toBeLessThan(0.001);
  });

  it('are those of FreeFEM within 0.1 % for an L and a trapezium', () => {
    for (const [name, { corners, waveNumbersSquared }] of Object.entries(reference.plans)) {
      const plan = createPlan(parseCorners(corners), 2.4);
      const { shapes } = drain(solveOn(plan, 1 / waveNumber(200), waveNumber(200)));
      expect(shapes.length, name).toBeGreaterThan(25);
      shapes.forEach(({ waveNumberSquared }, i) => {
        if (i > 0)
          expect(Math.abs(Math.sqrt(waveNumberSquared / waveNumbersSquared[i]) - 1), name).toBeLessThan(
            0.001,
          );
      });
      expect(waveNumbersSquared[shapes.length]).toBeGreaterThan(waveNumber(200) ** 2 * 0.999);
    }
  });

  it('come nearer as the mesh grows finer, by the fourth power of its size where no corner points inwards', () => {
    const plan = boxPlan(5, 4, 3);
    const worst = [1.4, 1, 0.7].map((fine) => {
      const { shapes } = drain(solveOn(plan, fine / waveNumber(160), waveNumber(160)));
      const exact = boxModes({ ...size, heightMetres: 0.1 }, speed, 165);
      return Math.max(
        ...shapes
          .slice(1)
          .map(
            ({ waveNumberSquared }, i) => Math.sqrt(waveNumberSquared) / waveNumber(exact[i].frequencyHz) - 1,
          ),
      );
    });
    expect(worst[0] / worst[1]).toBeGreaterThan(2.5);
    expect(worst[1] / worst[2]).toBeGreaterThan(2.5);
    for (const value of worst) expect(value).toBeGreaterThan(0);
  });

  it('find equal modes as often as they are there: a square', () => {
    const square = createRoom({ plan: boxPlan(4, 4, 2.5), speedOfSoundMetresPerSecond: speed });
    const exact = boxModes({ lengthMetres: 4, widthMetres: 4, heightMetres: 2.5 }, speed, 215);
    expect(roomModes(square, 215)).toHaveLength(exact.length);
  });

  it('are as many as the formula says within 12 %, from 50 modes up', () => {
    const modes = roomModes(roomOfL, 230);
    expect(modes.length).toBeGreaterThan(90);
    for (let n = 50; n < modes.length; n++) {
      const middle = (modes[n - 1].frequencyHz + modes[n].frequencyHz) / 2;
      expect(Math.abs(n / roomModeCount(roomOfL, middle) - 1)).toBeLessThan(0.12);
    }
  });

  it('have frequencies that scale with the speed of sound and against the size', () => {
    const double = createRoom({
      plan: createPlan(
        parseCorners(cornersOfL).map(({ x, y }) => ({ x: 2 * x, y: 2 * y })),
        4.8,
      ),
      speedOfSoundMetresPerSecond: speed * 1.02,
    });
    const plain = roomModes(roomOfL, 120);
    roomModes(double, 61.2).forEach(({ frequencyHz }, i) =>
      // Two meshes, each as fine as its frequencies ask.
      expect(Math.abs(frequencyHz / ((plain[i].frequencyHz * 1.02) / 2) - 1)).toBeLessThan(0.0005),
    );
  });
});

describe('shapes of a room given by a plan', () => {
  const exact = boxModes(size, speed, 110);
  const modes = roomModes(asPlan, 110);
  // Those whose neighbours lie apart: equal ones may mix.
  const lonely = [...modes.keys()].filter((i) =>
    [i - 1, i + 1].every(
      (j) => j < 0 || j >= modes.length || Math.abs(modes[j].frequencyHz / modes[i].frequencyHz - 1) > 0.004,
    ),
  );

  it('are the cosines of a box, but for their sign', () => {
    const rng = new Rng(3);
    expect(lonely.length).toBeGreaterThan(8);
    for (const i of lonely) {
      const corner = roomModeShape(modes[i].order, asPlan, { x: 0, y: 0, z: 0 });
      for (let k = 0; k < 20; k++) {
        const at = { x: 5 * rng.uniform(), y: 4 * rng.uniform(), z: 2.5 * rng.uniform() };
        const expected = modeShape(exact[i].order, size, at) * Math.sign(corner);
        expect(Math.abs(roomModeShape(modes[i].order, asPlan, at) - expected)).toBeLessThan(0.01);
      }
      expect(roomModeNorm(modes[i].order, asPlan)).toBeCloseTo(
        2 ** exact[i].order.filter((n) => n > 0).length,
        1,
      );
    }
  });

  it('are damped as the formula of Morse and Bolt (1944) says where the plan is a rectangle', () => {
    const uneven = createRoom({
      plan: boxPlan(5, 4, 2.5),
      speedOfSoundMetresPerSecond: speed,
      // Walls in turn: y = 0, x = 5, y = 4, x = 0, floor, ceiling.
      absorption: [0.02, 0.3, 0.05, 0.1, 0.15, 0.2],
    });
    for (const i of lonely) {
      const expected = modeDamping(exact[i].order, size, speed, [0.1, 0.3, 0.02, 0.05, 0.15, 0.2]);
      expect(roomModeDamping(modes[i].order, uneven, 50)! / expected).toBeCloseTo(1, 2);
    }
  });

  it('give the same level with seat and source exchanged', () => {
    const places = [
      { x: 1, y: 4.4, z: 1.2 },
      { x: 5.5, y: 0.5, z: 0.3 },
    ];
    for (const mode of roomModes(roomOfL, 120)) {
      const [, there, back] = modeLevels(mode, roomOfL, places, places);
      expect(back.levelDb).toBeCloseTo(there.levelDb!, 9);
    }
  });

  it('have nodes, in height and in the plan', () => {
    const middle = { x: 2, y: 2, z: 1.2 };
    const upright = roomModes(roomOfL, 120).find(({ order }) => order.join() === '0,0,1')!;
    expect(upright.kind).toBe('axial');
    expect(nodeAt(upright, roomOfL, middle)).toMatchObject({ axis: 'z', distanceMetres: 0 });
    const [first] = roomModes(roomOfL, 120);
    // Somewhere between the two ends of the L its lowest wave changes sign.
    const ends = [
      { x: 6, y: 0, z: 0 },
      { x: 0, y: 5, z: 0 },
    ].map((at) => roomModeShape(first.order, roomOfL, at));
    expect(ends[0] * ends[1]).toBeLessThan(0);
    const along = Array.from({ length: 200 }, (_, i) => ({ x: 6 - 0.03 * i, y: 0.025 * i, z: 0 }));
    const node = along.find((at) => nodeAt(first, roomOfL, at));
    expect(nodeAt(first, roomOfL, node!)).toMatchObject({ axis: 'plan', distanceMetres: null });
  });

  it('make an impulse response that begins at the time of flight and holds the modes it reports', () => {
    const seat = { x: 1, y: 4.4, z: 1.1 };
    const source = { x: 0.3, y: 0.4, z: 0.3 };
    const { onsetSeconds, modes: sounding } = synthesise({
      room: roomOfL,
      seat,
      source,
      sampleRate: 8000,
      toHz: 160,
    });
    expect(onsetSeconds).toBeCloseTo(0.02 + Math.hypot(0.7, 4, 0.8) / speed, 6);
    const predicted = roomModes(roomOfL, 160);
    expect(sounding.map(({ order }) => order.join())).toEqual(predicted.map(({ order }) => order.join()));
  });
});
