import { describe, expect, it } from 'vitest';
import { motionAt, motionOf } from '../../src/elements/pressure-map/motion.js';
import { createRoom, predictRoom, pressureMap } from '../../src/room/index.js';
import { drain } from '../../src/signal/drain.js';

const room = createRoom({ size: { lengthMetres: 5.4, widthMetres: 4.1, heightMetres: 2.7 } });

function mapOf(order: readonly number[]) {
  const { modes } = predictRoom(room, { toHz: 120 });
  const mode = modes.find((one) => one.order.every((n, axis) => n === order[axis]))!;
  return drain(pressureMap(room, { mode, toHz: 120, seats: [], sources: [] }));
}

describe('particle motion', () => {
  it('of a mode along x is the sine where its pressure is the cosine', () => {
    const map = mapOf([2, 0, 0]);
    const field = motionOf(map, 2.7);
    for (let column = 0; column < map.columns; column++) {
      const x = (5.4 * column) / (map.columns - 1);
      const expected = Math.abs(Math.sin((2 * Math.PI * x) / 5.4));
      expect(motionAt(field, field.along[column], map.floor[column], 1)).toBeCloseTo(expected, 2);
    }
  });

  it('of a mode in height is nothing at floor and ceiling, and whole half-way', () => {
    const map = mapOf([0, 0, 1]);
    const field = motionOf(map, 2.7);
    const at = (z: number): number => motionAt(field, field.along[500], map.floor[500], z);
    expect(at(0)).toBeCloseTo(0, 6);
    expect(at(1.35)).toBeCloseTo(1, 6);
    expect(at(2.7)).toBeCloseTo(0, 6);
  });

  it('keeps the sum of the squares of an oblique mode: the slopes of all three axes', () => {
    // (1,1,1): |grad p|^2 = (pi/L sin cos cos)^2 + ... at a quarter of every side.
    const map = mapOf([1, 1, 1]);
    const field = motionOf(map, 2.7);
    const [column, row] = [20, 15];
    const [x, y, z] = [(5.4 * column) / (map.columns - 1), (4.1 * row) / (map.rows - 1), 0.675];
    const k = row * map.columns + column;
    const waves = [
      [x, 5.4],
      [y, 4.1],
      [z, 2.7],
    ].map(([at, side]) => ({
      c: Math.cos((Math.PI * at) / side),
      g: (Math.PI / side) * Math.sin((Math.PI * at) / side),
    }));
    const [a, b, c] = waves;
    const expected = Math.hypot(a.g * b.c * c.c, a.c * b.g * c.c, a.c * b.c * c.g) / (Math.PI / 2.7);
    expect(motionAt(field, field.along[k], map.floor[k], z)).toBeCloseTo(expected, 2);
  });
});
