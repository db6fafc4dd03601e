import { describe, expect, it } from 'vitest';
import { SCALE_ENTRIES, scaleColour, scaleEntry, scaleInOklab, scaleTable } from '../../src/draw/colours.js';
import {
  bytesOfOklab,
  deltaE,
  linearOfOklab,
  oklabOfBytes,
  oklabOfLch,
  oklabOfLinear,
  toLinear,
  type Triple,
} from '../../src/draw/oklab.js';
import { signedTable } from '../../src/draw/signed-image.js';
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

/**
 * How a colour is seen with one kind of cone missing: matrices for linear sRGB at severity 1 of Machado, Oliveira and
 * Fernandes, A physiologically-based model for simulation of color vision deficiency, IEEE TVCG 2009 (values from memory).
 */
const deficiencies: Readonly<Record<string, readonly (readonly [number, number, number])[]>> = {
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
};

function seen(bytes: ArrayLike<number>, deficiency: string): Triple {
  const light = [0, 1, 2].map((k) => toLinear(bytes[k] / 255));
  const rows = deficiencies[deficiency].map((row) => row.reduce((sum, part, k) => sum + part * light[k], 0));
  return oklabOfLinear(rows.map((part) => Math.min(1, Math.max(0, part))) as unknown as Triple);
}

describe.each(Object.keys(deficiencies))('for a reader with %s vision', (deficiency) => {
  it.each(names)('%s keeps its order of lightness, and 10 dB of 50 always differ', (name) => {
    const table = scaleTable(name);
    const colours = Array.from({ length: SCALE_ENTRIES }, (_, k) =>
      seen(table.subarray(k * 4, k * 4 + 3), deficiency),
    );
    const sign = Math.sign(colours[SCALE_ENTRIES - 1][0] - colours[0][0]);
    // Over four entries, since one step may be less than a step of a byte.
    for (let k = 4; k < SCALE_ENTRIES; k += 1)
      expect(sign * (colours[k][0] - colours[k - 4][0]), `entry ${k}`).toBeGreaterThan(0);
    const tenDecibels = Math.round(SCALE_ENTRIES / 5);
    for (let k = tenDecibels; k < SCALE_ENTRIES; k += 1)
      expect(deltaE(colours[k], colours[k - tenDecibels])).toBeGreaterThan(0.08);
  });
});

it('the matrices leave grey as it is, to what their digits allow', () => {
  for (const rows of Object.values(deficiencies))
    for (const row of rows) expect(row.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 5);
});

describe.each(Object.keys(deficiencies))('the scale made for readers with %s vision', (deficiency) => {
  const table = scaleTable('clear');
  const wide = 16;
  const ends = Array.from({ length: SCALE_ENTRIES / wide }, (_, k) =>
    seen(table.subarray(4 * wide * k, 4 * wide * k + 3), deficiency),
  );

  /** The largest share by which any step is off the mean of all. */
  const worstShare = (length: (from: Triple, to: Triple) => number): number => {
    const steps = ends.slice(1).map((colour, k) => length(ends[k], colour));
    const mean = steps.reduce((sum, step) => sum + step, 0) / steps.length;
    return Math.max(...steps.map((step) => Math.abs(step / mean - 1)));
  };

  it('runs in steps no more than a fifth off their mean', () => {
    expect(worstShare(deltaE)).toBeLessThan(0.2);
  });

  it('is as even in lightness to a quarter, over two thirds of the whole', () => {
    expect(worstShare(([from], [to]) => to - from)).toBeLessThan(0.25);
    const last = seen(table.subarray(-4, -1), deficiency);
    expect(last[0] - ends[0][0]).toBeGreaterThan(0.66);
  });
});

describe.each(Object.keys(deficiencies))('the two hues of a signed picture, to %s vision', (deficiency) => {
  it.each([lightTheme, darkTheme])('are told apart from half of the strongest on: %#', (theme) => {
    const table = signedTable(theme);
    const middle = (table.length / 4 - 1) / 2;
    const at = (part: number): Triple => {
      const entry = 4 * (middle + Math.round(part * middle));
      return seen(table.subarray(entry, entry + 3), deficiency);
    };
    expect(deltaE(at(-1), at(1))).toBeGreaterThan(0.2);
    expect(deltaE(at(-0.5), at(0.5))).toBeGreaterThan(0.1);
  });
});
