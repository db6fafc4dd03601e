import { describe, expect, it } from 'vitest';
import {
  createPlan,
  createRoom,
  modeLevels,
  parseCorners,
  predictRoom,
  pressureMap,
  roomModeShape,
  type Room,
} from '../../src/room/index.js';
import { drain } from '../../src/signal/drain.js';

const seats = [
  { x: 2.7, y: 1, z: 1.2 },
  { x: 0.5, y: 0.6, z: 1.2 },
];
const sources = [{ x: 0.1, y: 0.1, z: 0.1 }];

function mapped(room: Room, at: number) {
  const { modes } = predictRoom(room, { toHz: 100 });
  const mode = modes[at];
  return drain(pressureMap(room, { mode, toHz: 100, seats, sources }));
}

describe('the pressure map of a mode', () => {
  it('of a box is the product of cosines, signed, from wall to wall', () => {
    const room = createRoom({
      size: { lengthMetres: 5.4, widthMetres: 4.1, heightMetres: 2.7 },
      absorption: 0.1,
    });
    const map = mapped(room, 0);
    expect(map.mode.order).toEqual([1, 0, 0]);
    expect(map.columns).toBe(81);
    map.floor.forEach((value, k) => {
      const x = (5.4 * (k % map.columns)) / (map.columns - 1);
      expect(value).toBeCloseTo(Math.cos((Math.PI * x) / 5.4), 5);
    });
    // Half the length is the node of (1,0,0).
    expect(map.seatNodes).toEqual([true, false]);
    expect(map.atSeats[0]).toBeCloseTo(0, 9);
    expect(map.levels).toEqual(modeLevels(map.mode, room, sources, seats));
    expect(map.levels[1].levelDb).toBeGreaterThan(map.levels[0].levelDb! + 40);
  });

  it('of a plan is nothing outside its walls, and the shape of the waves within', () => {
    const room = createRoom({ plan: createPlan(parseCorners('0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5'), 2.5) });
    const map = mapped(room, 1);
    const at = (column: number, row: number): number => map.floor[row * map.columns + column];
    expect(at(map.columns - 1, map.rows - 1)).toBeNaN();
    const x = (map.lengthMetres * 10) / (map.columns - 1);
    const y = (map.widthMetres * 20) / (map.rows - 1);
    expect(at(10, 20)).toBeCloseTo(roomModeShape(map.mode.order, room, { x, y, z: 0 }), 6);
    const largest = map.floor.reduce(
      (most, value) => Math.max(most, Number.isNaN(value) ? 0 : Math.abs(value)),
      0,
    );
    expect(largest).toBeGreaterThan(0.97);
    expect(largest).toBeLessThanOrEqual(1.0001);
  });
});
