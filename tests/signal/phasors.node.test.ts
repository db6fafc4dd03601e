import { describe, expect, it } from 'vitest';
import { phasors, powers } from '../../src/signal/maths.js';

describe('turns and powers by recurrence', () => {
  it.each([1e-4, 0.3, -2.9, 40])('turns by %d rad a sample stay with cosine and sine to 1e-13', (turn) => {
    const re = new Float64Array(5000);
    const im = new Float64Array(5000);
    phasors(turn, re, im);
    let worst = 0;
    re.forEach((value, n) => {
      // The angle of the reference is rounded itself, by up to half a unit of its last place.
      const slack = 2e-16 * Math.abs(turn * n);
      worst = Math.max(worst, Math.abs(value - Math.cos(turn * n)) - slack);
      worst = Math.max(worst, Math.abs(im[n] - Math.sin(turn * n)) - slack);
    });
    expect(worst).toBeLessThan(1e-13);
  });

  it.each([-0.2, -1e-5, 3e-4])(
    'powers of e^%d stay with the exponential to 1e-13 of it, and leave the rest alone',
    (slope) => {
      const out = new Float64Array(2000).fill(7);
      powers(3, slope, out, 100, 1900);
      for (let n = 100; n < 1900; n++)
        expect(Math.abs(out[n] / (3 * Math.exp(slope * (n - 100))) - 1)).toBeLessThan(1e-13);
      expect([...out.slice(0, 100), ...out.slice(1900)].every((value) => value === 7)).toBe(true);
    },
  );
});
