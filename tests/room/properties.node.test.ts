import { describe, expect, it } from 'vitest';
import { boxModes, modeCount, type RoomSize } from '../../src/room/index.js';
import { Rng } from '../../src/signal/index.js';

/** Rooms of ordinary proportions. */
function* rooms(count: number): Generator<{ size: RoomSize; speed: number; rng: Rng }> {
  const rng = new Rng(11);
  for (let i = 0; i < count; i++) {
    const size = {
      lengthMetres: 3.5 + 6.5 * rng.uniform(),
      widthMetres: 2.5 + 4 * rng.uniform(),
      heightMetres: 2.2 + 1.8 * rng.uniform(),
    };
    yield { size, speed: 331 + 20 * rng.uniform(), rng };
  }
}

const scaled = (size: RoomSize, by: number): RoomSize => ({
  lengthMetres: size.lengthMetres * by,
  widthMetres: size.widthMetres * by,
  heightMetres: size.heightMetres * by,
});

describe('modes of any box', () => {
  it('have frequencies that scale with the speed of sound and against the size', () => {
    for (const { size, speed, rng } of rooms(40)) {
      const by = 0.5 + 1.5 * rng.uniform();
      const faster = 1 + 0.1 * rng.uniform();
      const plain = boxModes(size, speed, 150);
      const other = boxModes(scaled(size, by), speed * faster, (150 * faster) / by);
      expect(other.map(({ order }) => order.join())).toEqual(plain.map(({ order }) => order.join()));
      other.forEach(({ frequencyHz }, i) =>
        expect(frequencyHz).toBeCloseTo((plain[i].frequencyHz * faster) / by, 9),
      );
    }
  });

  it('are as many as the formula says within 12 %, from 50 modes up', () => {
    let worst = 0;
    for (const { size, speed } of rooms(200)) {
      const modes = boxModes(size, speed, 300);
      for (let n = 50; n < modes.length; n++) {
        // Between one mode and the next the count is n.
        const middle = (modes[n - 1].frequencyHz + modes[n].frequencyHz) / 2;
        worst = Math.max(worst, Math.abs(n / modeCount(size, speed, middle) - 1));
      }
    }
    expect(worst).toBeLessThan(0.12);
  });
});
