import { describe, expect, it } from 'vitest';
import { movesOf, nodeDistance, secondSource } from '../../src/diagnosis/index.js';
import { modeShape, type RoomSize } from '../../src/room/index.js';

const size: RoomSize = { lengthMetres: 6, widthMetres: 4.5, heightMetres: 2.6 };

describe('moving a seat or a source', () => {
  it('finds the shortest way to half the pressure of the mode', () => {
    const at = { x: 5, y: 2, z: 1.2 };
    const [move] = movesOf([1, 0, 0], size, at, 'seat');
    expect(move.axis).toBe('x');
    expect(move.metres).toBeLessThan(0);
    const share = modeShape([1, 0, 0], size, move.to) / modeShape([1, 0, 0], size, at);
    expect(20 * Math.log10(Math.abs(share))).toBeCloseTo(move.changeDb, 9);
    expect(move.changeDb).toBeLessThanOrEqual(-6);
    expect(move.changeDb).toBeGreaterThan(-6.3);
  });

  it('offers both axes of a tangential mode, none at a node, and no place at a wall', () => {
    expect(movesOf([1, 1, 0], size, { x: 5, y: 3.8, z: 1.2 }, 'seat').map(({ axis }) => axis)).toEqual([
      'x',
      'y',
    ]);
    expect(movesOf([1, 0, 0], size, { x: 3, y: 2, z: 1.2 }, 'seat')).toEqual([]);
    for (const { to } of movesOf([2, 0, 0], size, { x: 0.7, y: 2, z: 1.2 }, 'seat'))
      expect(to.x).toBeGreaterThanOrEqual(0.6);
    // Nobody moves a seat up to escape a floor-to-ceiling mode.
    expect(movesOf([0, 0, 1], size, { x: 2, y: 2, z: 1 }, 'seat')).toEqual([]);
  });

  it('knows the distance to the nearest node', () => {
    expect(nodeDistance([1, 0, 0], size, { x: 5, y: 0, z: 0 }, 'x')).toBeCloseTo(-2, 12);
    expect(nodeDistance([2, 0, 0], size, { x: 5, y: 0, z: 0 }, 'x')).toBeCloseTo(-0.5, 12);
    expect(nodeDistance([1, 0, 0], size, { x: 5, y: 0, z: 0 }, 'y')).toBeNull();
  });
});

describe('a second source', () => {
  it('cancels a mode of odd order from the opposite place, one of even order half a wavelength on', () => {
    const odd = secondSource([1, 0, 0], size, { x: 0.3, y: 1, z: 0.3 })!;
    expect(odd).toMatchObject({ axis: 'x', at: { x: 5.7, y: 1, z: 0.3 } });
    expect(odd.share).toBeCloseTo(0, 12);
    const even = secondSource([2, 0, 0], size, { x: 0.3, y: 1, z: 0.3 })!;
    expect(even.at.x).toBeCloseTo(3.3, 12);
    expect(even.share).toBeCloseTo(0, 12);
    expect(secondSource([0, 0, 1], size, { x: 1, y: 1, z: 0.2 })).toBeNull();
  });
});
