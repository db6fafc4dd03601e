import { describe, expect, it } from 'vitest';
import { createRoom, crowding, predictRoom } from '../../src/room/index.js';

const room = createRoom({ size: { lengthMetres: 5.4, widthMetres: 4.1, heightMetres: 2.7 } });
const { modes } = predictRoom(room, { toHz: 220 });
const bands = crowding(modes, room, { fromHz: 20, toHz: 200 });

describe('crowding of predicted modes', () => {
  it('counts every mode of the third-octaves of IEC 61260-1 once', () => {
    // Centres 10^(k/10): 25.1 Hz to 158.5 Hz lie wholly within 20 to 200 Hz.
    expect(bands.map(({ centreHz }) => Number(centreHz.toFixed(1)))).toEqual([
      25.1, 31.6, 39.8, 50.1, 63.1, 79.4, 100, 125.9, 158.5,
    ]);
    const [first, last] = [bands[0], bands[bands.length - 1]];
    const inside = modes.filter(({ frequencyHz: f }) => f >= first.fromHz && f < last.toHz);
    expect(bands.reduce((sum, { count }) => sum + count, 0)).toBe(inside.length);
    bands.slice(1).forEach(({ fromHz }, k) => expect(fromHz).toBeCloseTo(bands[k].toHz, 9));
  });

  it('comes near to the expected count where there are many', () => {
    const { count, expected } = bands[bands.length - 1];
    expect(count).toBeGreaterThan(15);
    expect(Math.abs(count / expected - 1)).toBeLessThan(0.2);
  });

  it('measures gaps to the neighbours beyond the band, and finds equal modes', () => {
    // (1,0,0) at 31.8 Hz alone: the next is (0,1,0) at 41.9 Hz (c/2L and c/2W at 343.2 m/s).
    const alone = bands[1];
    expect(alone.count).toBe(1);
    expect(alone.widestGapHz).toBeCloseTo(343.2 / 8.2 - 343.2 / 10.8, 1);
    // 5.4 m is twice 2.7 m: (2,0,0) and (0,0,1) are one frequency.
    expect(bands[4].closestHz).toBeCloseTo(0, 9);
    expect(bands[0]).toMatchObject({ count: 0, closestHz: null });
  });
});
