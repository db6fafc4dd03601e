import { describe, expect, it } from 'vitest';
import { addedDamping, decayWith } from '../../src/diagnosis/index.js';
import { boxModes, decayConstant, modeDamping, modeFrequency, type ModeOrder } from '../../src/room/index.js';
import { Rng } from '../../src/signal/index.js';
import { fdtdGrid, type FdtdParams } from '../support/fdtd.js';
import { measuredDecay } from '../support/measured-decay.js';

const speed = 343;
type Sides = [number, number, number];

/** Up and down, along and across, and along all three sides. */
const orders: ModeOrder[] = [
  [0, 0, 1],
  [1, 0, 1],
  [0, 1, 1],
  [1, 1, 1],
  [2, 1, 0],
  [0, 2, 0],
  [1, 2, 0],
  [2, 0, 1],
  [3, 0, 0],
  [1, 1, 0],
];

/** What is nearer than this merges with the mode, and neither has a decay of its own. */
const nearest = 0.03;

describe('an absorber on any wall', () => {
  it('shortens modes of every kind as predicted within 10 %, neighbours 3 % away and loud, in 20 seeded rooms', () => {
    const rng = new Rng(22);
    const between = (from: number, to: number): number => from + (to - from) * rng.uniform();
    const roomFor = (order: ModeOrder): Sides => {
      for (;;) {
        const sides: Sides = [between(4.4, 6.4), between(3.3, 4.6), between(2.3, 3)];
        const room = { lengthMetres: sides[0], widthMetres: sides[1], heightMetres: sides[2] };
        const f = modeFrequency(order, room, speed);
        const near = boxModes(room, speed, 130).filter(
          ({ frequencyHz }) => Math.abs(frequencyHz / f - 1) < nearest,
        );
        if (f < 110 && near.length === 1) return sides;
      }
    };
    const errors = Array.from({ length: 20 }, (_, k): number => {
      const order = orders[k % orders.length];
      const sides = roomFor(order);
      const room = { lengthMetres: sides[0], widthMetres: sides[1], heightMetres: sides[2] };
      // In opposite corners: every mode is driven and heard at its loudest.
      const common: FdtdParams = {
        ...{ size: sides, speed, cell: 0.3, seconds: 1.2, admittance: 0.1 / 8 },
        source: sides.map((side) => side * 0.03) as Sides,
        receiver: sides.map((side) => side * 0.97) as Sides,
      };
      const before = decayConstant / modeDamping(order, room, speed, Array<number>(6).fill(0.1));
      const { cells, steps } = fdtdGrid(common);
      // Edges on the model's own cells, so that both speak of the same area.
      const snap = (value: number, axis: number): number =>
        Math.min(cells[axis], Math.max(0, Math.round(value / steps[axis]))) * steps[axis];
      const axis = Math.min(2, Math.floor(3 * rng.uniform()));
      const wall = (2 * axis + (rng.uniform() < 0.5 ? 0 : 1)) as 0 | 1 | 2 | 3 | 4 | 5;
      const across = [0, 1, 2].filter((n) => n !== axis);
      const edges = across.map((n) => {
        const low = snap(between(0, 0.5) * sides[n], n);
        return [low, snap(low + between(0.3, 0.5) * sides[n], n)];
      });
      const coefficient = between(0.4, 0.9);
      const [place, reach]: [Sides, Sides] = [
        [0, 0, 0],
        [0, 0, 0],
      ];
      place[axis] = wall & 1 ? sides[axis] : 0;
      across.forEach((n, e) => {
        place[n] = (edges[e][0] + edges[e][1]) / 2;
        reach[n] = edges[e][1] - edges[e][0];
      });
      // The wall under it is gone: what counts is the difference.
      const added = addedDamping(order, room, speed, {
        kind: 'panel',
        areaSquareMetres: reach[across[0]] * reach[across[1]],
        coefficient: coefficient - 0.1,
        at: { x: place[0], y: place[1], z: place[2] },
        extentMetres: { x: reach[0], y: reach[1], z: reach[2] },
      });
      // A specific admittance b, small and real, has the random-incidence coefficient 8 b (Kuttruff, ch. 2).
      const patch = {
        ...{ wall, admittance: coefficient / 8 },
        from: [edges[0][0], edges[1][0]] as const,
        to: [edges[0][1], edges[1][1]] as const,
      };
      const after = measuredDecay({ ...common, patches: [patch] }, modeFrequency(order, room, speed));
      return decayWith(before, added) / after - 1;
    });
    for (const [k, error] of errors.entries())
      expect(Math.abs(error), `case ${k}, mode ${orders[k % orders.length].join()}`).toBeLessThan(0.1);
  }, 240_000);
});
