import { describe, expect, it } from 'vitest';
import { fit, mode, noise, sumOf } from './support.js';

describe('what the fit makes itself', () => {
  it.each([
    [44, 1.4],
    [30, 1],
    [57, 0.9],
    [70, 1.2],
  ])('no image of a strong mode at %d Hz of %d s stands elsewhere in the bass', (f, T) => {
    const found = fit(sumOf(mode(f, T), noise(10 ** (-100 / 20), 15, 205)));
    expect(found.resonances.filter(({ frequencyHz }) => Math.abs(frequencyHz - f) > 3)).toEqual([]);
    expect(found.resonances).toHaveLength(1);
  });

  it.each([330, 380, 440, 760, 1100])('nothing of %d Hz folds into the bass', (f) => {
    const found = fit(sumOf(mode(f, 0.6), mode(60, 0.5, 0.001), noise(10 ** (-105 / 20), 15, 205)));
    const others = found.resonances.filter(({ frequencyHz }) => Math.abs(frequencyHz - 60) > 1);
    expect(others.filter(({ kind }) => kind !== 'source')).toEqual([]);
  });
});
