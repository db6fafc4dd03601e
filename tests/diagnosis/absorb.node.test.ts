import { describe, expect, it } from 'vitest';
import {
  absorberWeight,
  addedDamping,
  areaNeeded,
  decayWith,
  panelDepth,
  panelFrequency,
  porousDepth,
  resonatorFrequency,
  resonatorVolume,
  type Absorber,
} from '../../src/diagnosis/index.js';
import {
  boxModes,
  decayConstant,
  modeDamping,
  modeFrequency,
  type ModeOrder,
  type RoomSize,
} from '../../src/room/index.js';
import { Rng } from '../../src/signal/index.js';
import { fdtdGrid, type FdtdParams } from '../support/fdtd.js';
import { measuredDecay } from '../support/measured-decay.js';

const size: RoomSize = { lengthMetres: 5, widthMetres: 4, heightMetres: 3 };
const speed = 343;

/** Sides of a room in which no other mode lies within 6 % of one: two that merge have no decay each. */
function roomWithout(
  order: ModeOrder,
  between: (from: number, to: number) => number,
): [number, number, number] {
  for (;;) {
    const sides: [number, number, number] = [between(4.6, 6), between(3.4, 4.2), between(2.4, 2.9)];
    const room = { lengthMetres: sides[0], widthMetres: sides[1], heightMetres: sides[2] };
    const f = modeFrequency(order, room, speed);
    const near = boxModes(room, speed, 120).filter(({ frequencyHz }) => Math.abs(frequencyHz / f - 1) < 0.06);
    if (near.length === 1) return sides;
  }
}

describe('an absorber in the room', () => {
  it('weighs by squared pressure: 2, 4 and 8 in a corner, and by squared velocity if porous: nothing there', () => {
    const corner = { x: 0, y: 0, z: 0 };
    const orders: [ModeOrder, number][] = [
      [[1, 0, 0], 2],
      [[1, 1, 0], 4],
      [[1, 1, 1], 8],
    ];
    for (const [order, weight] of orders) {
      const common = { areaSquareMetres: 1, coefficient: 0.5, at: corner };
      expect(absorberWeight(order, size, { kind: 'panel', ...common })).toBeCloseTo(weight, 12);
      expect(absorberWeight(order, size, { kind: 'porous', ...common })).toBeCloseTo(0, 12);
    }
    // Halfway between two walls the air of an axial mode moves most, and its pressure is nil.
    const middle = { areaSquareMetres: 1, coefficient: 0.5, at: { x: 2.5, y: 0, z: 0 } };
    expect(absorberWeight([1, 0, 0], size, { kind: 'panel', ...middle })).toBeCloseTo(0, 12);
    expect(absorberWeight([1, 0, 0], size, { kind: 'porous', ...middle })).toBeCloseTo(2, 12);
  });

  it.each(['panel', 'porous'] as const)('has the mean weight 1 over the whole room (%s)', (kind) => {
    const everywhere = { x: size.lengthMetres, y: size.widthMetres, z: size.heightMetres };
    const at = { x: 2.5, y: 2, z: 1.5 };
    for (const order of [
      [1, 0, 0],
      [2, 1, 0],
      [1, 2, 3],
    ] as ModeOrder[])
      expect(
        absorberWeight(order, size, {
          kind,
          areaSquareMetres: 1,
          coefficient: 1,
          at,
          extentMetres: everywhere,
        }),
      ).toBeCloseTo(1, 9);
  });

  it('adds what the damping sum has for a whole wall of that coefficient (Morse and Bolt; Kuttruff)', () => {
    const wall: Absorber = {
      ...{ kind: 'panel', areaSquareMetres: 12, coefficient: 0.3 },
      ...{ at: { x: 0, y: 2, z: 1.5 }, extentMetres: { x: 0, y: 4, z: 3 } },
    };
    for (const order of [
      [1, 0, 0],
      [0, 1, 0],
      [1, 1, 0],
      [2, 1, 1],
    ] as ModeOrder[])
      expect(addedDamping(order, size, speed, wall)).toBeCloseTo(
        modeDamping(order, size, speed, [0.3, 0, 0, 0, 0, 0]),
        12,
      );
  });

  it('tells the area that reaches a target, and none where the mode is not met', () => {
    const panel = { kind: 'panel' as const, coefficient: 0.5, at: { x: 0, y: 0.5, z: 0.5 } };
    const area = areaNeeded([1, 0, 0], size, speed, panel, 1.2, 0.6)!;
    const added = addedDamping([1, 0, 0], size, speed, { ...panel, areaSquareMetres: area });
    expect(decayWith(1.2, added)).toBeCloseTo(0.6, 12);
    expect(areaNeeded([1, 0, 0], size, speed, { ...panel, at: { x: 2.5, y: 0, z: 0 } }, 1.2, 0.6)).toBeNull();
  });

  it('shortens a decay as predicted within 10 %, in 20 seeded rooms of a finite-difference model', () => {
    const rng = new Rng(20);
    const between = (from: number, to: number) => from + (to - from) * rng.uniform();
    const errors: number[] = [];
    for (let k = 0; k < 20; k++) {
      const order = (
        [
          [1, 0, 0],
          [0, 1, 0],
          [1, 1, 0],
          [2, 0, 0],
        ] as ModeOrder[]
      )[k % 4];
      const sides = roomWithout(order, between);
      const room = { lengthMetres: sides[0], widthMetres: sides[1], heightMetres: sides[2] };
      const porous = k % 3 === 2;
      // Where the mode is loudest, and halfway along the axes it does not vary along, so that its neighbours are quiet.
      const corner = (share: number) =>
        sides.map((side, n) => (order[n] === 0 ? side / 2 : side * share)) as [number, number, number];
      // A specific admittance b, small and real, has the random-incidence coefficient 8 b (Kuttruff, ch. 2).
      const common: FdtdParams = {
        ...{ size: sides, speed, cell: 0.3, seconds: 1.2, admittance: 0.1 / 8 },
        source: corner(0.02),
        receiver: corner(0.98),
      };
      const f = modeFrequency(order, room, speed);
      const bare = modeDamping(order, room, speed, [0.1, 0.1, 0.1, 0.1, 0.1, 0.1]);
      const before = decayConstant / bare;
      const { cells, steps } = fdtdGrid(common);
      // Edges on the model's own cells, so that both speak of the same area.
      const snap = (value: number, axis: number) =>
        Math.min(cells[axis], Math.max(0, Math.round(value / steps[axis]))) * steps[axis];
      let added: number;
      let after: number;
      if (porous) {
        const axis = order.indexOf(Math.max(...order));
        const from = sides.map((side, n) =>
          snap((n === axis ? between(0.15, 0.3) : between(0, 0.2)) * side, n),
        ) as [number, number, number];
        const to = sides.map((side, n) =>
          snap((n === axis ? between(0.4, 0.55) : between(0.6, 1)) * side, n),
        ) as [number, number, number];
        const [dx, dy, dz] = to.map((value, n) => value - from[n]);
        // A thin layer of flow resistance r, in units of that of air, has the coefficient 8 r for what moves through it.
        const thickness = [dx, dy, dz][axis];
        const addedBy = (resistance: number): number =>
          addedDamping(order, room, speed, {
            kind: 'porous',
            areaSquareMetres: (dx * dy * dz) / thickness,
            coefficient: 8 * resistance * thickness,
            at: { x: from[0] + dx / 2, y: from[1] + dy / 2, z: from[2] + dz / 2 },
            extentMetres: { x: dx, y: dy, z: dz },
          });
        const resistance = (between(0.3, 1) * bare) / addedBy(1);
        added = addedBy(resistance);
        after = measuredDecay({ ...common, porous: [{ from, to, resistance }] }, f);
      } else {
        // On a wall that the mode leans on.
        const wall = (2 * order.indexOf(Math.max(...order)) + (k % 2)) as 0 | 1 | 2 | 3;
        const axis = wall >> 1;
        const [first, second] = [0, 1, 2].filter((n) => n !== axis);
        const edges = [first, second].map((n) => {
          const low = snap(between(0, 0.2) * sides[n], n);
          return [low, snap(low + between(0.5, 0.9) * sides[n], n)];
        });
        const coefficient = between(0.5, 0.9);
        const place = [0, 0, 0];
        const reach = [0, 0, 0];
        place[axis] = wall & 1 ? sides[axis] : 0;
        [first, second].forEach((n, e) => {
          place[n] = (edges[e][0] + edges[e][1]) / 2;
          reach[n] = edges[e][1] - edges[e][0];
        });
        // The wall under it is gone: what counts is the difference.
        added = addedDamping(order, room, speed, {
          kind: 'panel',
          areaSquareMetres: reach[first] * reach[second],
          coefficient: coefficient - 0.1,
          at: { x: place[0], y: place[1], z: place[2] },
          extentMetres: { x: reach[0], y: reach[1], z: reach[2] },
        });
        after = measuredDecay(
          {
            ...common,
            patches: [
              {
                wall,
                from: [edges[0][0], edges[1][0]],
                to: [edges[0][1], edges[1][1]],
                admittance: coefficient / 8,
              },
            ],
          },
          f,
        );
      }
      errors.push(decayWith(before, added) / after - 1);
      expect(after / before, `case ${k} is a case`).toBeLessThan(0.9);
    }
    for (const [k, error] of errors.entries()) expect(Math.abs(error), `case ${k}`).toBeLessThan(0.1);
  }, 120_000);
});

describe('how absorbers are tuned', () => {
  it('follows f = 60 / sqrt(m d), f = 55 sqrt(S / lV) and a quarter wave: 1.72 m at 50 Hz', () => {
    expect(panelFrequency(10, 0.1)).toBeCloseTo(60, 9);
    expect(panelFrequency(10, panelDepth(47, 10))).toBeCloseTo(47, 9);
    const volumeCubicMetres = resonatorVolume(42, 0.01, 0.1);
    expect(resonatorFrequency({ neckSquareMetres: 0.01, neckMetres: 0.1, volumeCubicMetres })).toBeCloseTo(
      42,
      9,
    );
    expect(porousDepth(50, 343.2)).toBeCloseTo(1.716, 3);
  });
});
