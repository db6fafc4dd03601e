import { describe, expect, it } from 'vitest';
import { SCALE_ENTRIES, scaleColour, scaleEntry, scaleInOklab, scaleTable } from '../../src/draw/colours.js';
import { bytesOfOklab, deltaE, oklabOfBytes, oklabOfLch, linearOfOklab } from '../../src/draw/oklab.js';
import { cssBytes, mixBytes, tonesOf } from '../../src/draw/tones.js';
import { darkTheme, lightTheme } from './fields.js';

const names = ['dusk', 'dawn', 'clear'] as const;

describe('OKLab', () => {
  it('agrees with the values of CSS Color Module Level 4 for white and red', () => {
    const [L, a, b] = oklabOfBytes(255, 255, 255);
    expect([L, a, b].map((part) => Math.round(part * 1e3) / 1e3 + 0)).toEqual([1, 0, 0]);
    // The specification's examples give red as oklch(62.796% 0.25768 29.234) (value from memory).
    const red = oklabOfBytes(255, 0, 0);
    const named = oklabOfLch(0.62796, 0.25768, 29.234);
    red.forEach((part, k) => expect(part).toBeCloseTo(named[k], 3));
  });

  it('comes back to the same bytes', () => {
    const several: [number, number, number][] = [
      [0, 0, 0],
      [12, 200, 97],
      [255, 128, 3],
      [40, 41, 42],
    ];
    for (const bytes of several) expect(bytesOfOklab(oklabOfBytes(...bytes))).toEqual(bytes);
  });
});

describe.each(names)('the scale %s', (name) => {
  it('runs in equal steps of colour', () => {
    const steps = scaleInOklab(name);
    const differences = steps.slice(1).map((colour, k) => deltaE(steps[k], colour));
    const mean = differences.reduce((sum, value) => sum + value, 0) / differences.length;
    for (const difference of differences) expect(Math.abs(difference / mean - 1)).toBeLessThan(0.02);
  });

  it('changes lightness one way only, by at least two thirds of the whole', () => {
    const lightness = scaleInOklab(name).map(([L]) => L);
    const sign = Math.sign(lightness[SCALE_ENTRIES - 1] - lightness[0]);
    for (let k = 1; k < lightness.length; k += 1)
      expect(sign * (lightness[k] - lightness[k - 1])).toBeGreaterThan(0);
    expect(Math.abs(lightness[SCALE_ENTRIES - 1] - lightness[0])).toBeGreaterThan(0.66);
  });

  it('stays inside sRGB and passes less than the whole circle of hues', () => {
    let turned = 0;
    const steps = scaleInOklab(name);
    for (const colour of steps)
      for (const light of linearOfOklab(colour)) expect(light > -0.002 && light < 1.002).toBe(true);
    for (let k = 1; k < steps.length; k += 1) {
      const [before, now] = [steps[k - 1], steps[k]].map(([, a, b]) => Math.atan2(b, a));
      turned += Math.abs(Math.atan2(Math.sin(now - before), Math.cos(now - before)));
    }
    expect(turned).toBeLessThan(1.5 * Math.PI);
  });

  it('gives the ends of the range the ends of the table, and what is not a number the quietest', () => {
    expect(scaleEntry(-60, [-60, 0])).toBe(0);
    expect(scaleEntry(0, [-60, 0])).toBe(255);
    expect(scaleEntry(12, [-60, 0])).toBe(255);
    expect(scaleEntry(NaN, [-60, 0])).toBe(0);
    expect(scaleEntry(-Infinity, [-60, 0])).toBe(0);
    const [r, g, b] = scaleTable(name).subarray(255 * 4);
    expect(scaleColour(name, 0, [-60, 0])).toBe(`rgb(${r}, ${g}, ${b})`);
  });
});

describe('tones of a page', () => {
  it('are grey steps between its paper and its ink', () => {
    for (const theme of [lightTheme, darkTheme]) {
      const tones = tonesOf(theme);
      const paper = oklabOfBytes(...cssBytes(theme.background))[0];
      const ink = oklabOfBytes(...cssBytes(theme.text))[0];
      for (const tone of [tones.noise, tones.hatch]) {
        const part = (oklabOfBytes(...tone)[0] - paper) / (ink - paper);
        expect(part).toBeGreaterThan(0.1);
        expect(part).toBeLessThan(0.45);
      }
    }
    expect(mixBytes([10, 20, 30], [200, 100, 0], 0)).toEqual([10, 20, 30]);
  });

  it('say which colour is not understood where no browser can help', () => {
    expect(cssBytes('#abc')).toEqual([0xaa, 0xbb, 0xcc]);
    expect(cssBytes('rgb(1 2 3 / 50%)')).toEqual([1, 2, 3]);
    expect(() => cssBytes('chartreuse-ish')).toThrow(/'chartreuse-ish'/);
  });
});
