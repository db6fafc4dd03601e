import { describe, expect, it } from 'vitest';
import { axisTicks, labelsThatFit, logTicks, makeAxis, placeLabels } from '../../src/draw/axes.js';
import { Rng } from '../../src/signal/random.js';

describe('an axis', () => {
  it('goes from value to pixel and back on both scales', () => {
    for (const scale of ['linear', 'log'] as const) {
      const axis = makeAxis(scale, [20, 200], 40, 940);
      for (const value of [20, 48.2, 63, 199, 200])
        expect(axis.atPixel(axis.pixel(value))).toBeCloseTo(value, 9);
    }
  });

  it('puts an octave at the same distance everywhere on a logarithmic scale', () => {
    const { pixel } = makeAxis('log', [20, 200], 0, 1000);
    expect(pixel(80) - pixel(40)).toBeCloseTo(pixel(160) - pixel(80), 9);
    expect(pixel(40) - pixel(20)).toBeCloseTo(1000 * Math.log10(2), 9);
  });

  it('refuses a range that cannot be drawn', () => {
    expect(() => makeAxis('log', [0, 200])).toThrow(RangeError);
    expect(() => makeAxis('linear', [5, 5])).toThrow(RangeError);
    expect(() => makeAxis('linear', [NaN, 5])).toThrow(RangeError);
  });
});

describe('ticks', () => {
  it('name the nominal third-octave frequencies of ISO 266 where there is room', () => {
    const named = logTicks([20, 200], 12).filter(({ major }) => major);
    // ISO 266:1997, table 1, preferred frequencies (values from memory of the standard's table).
    expect(named.map(({ value }) => value)).toEqual([20, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200]);
    expect(named.find(({ value }) => value === 31.5)!.digits).toBe(1);
    expect(named.find(({ value }) => value === 100)!.digits).toBe(0);
  });

  it('grow fewer with less room and stay inside the range', () => {
    for (const most of [2, 3, 5, 9, 14]) {
      const ticks = axisTicks('log', [18, 330], most);
      expect(ticks.filter(({ major }) => major).length).toBeLessThanOrEqual(most + 2);
      for (const { value } of ticks) expect(value >= 18 && value <= 330).toBe(true);
    }
  });

  it('carry as many digits as tell them apart', () => {
    const ticks = axisTicks('linear', [0, 1.2], 6);
    const words = ticks.map(({ value, digits }) => value.toFixed(digits));
    expect(new Set(words).size).toBe(ticks.length);
    words.forEach((word, k) => expect(Number(word)).toBeCloseTo(ticks[k].value, 9));
  });
});

describe('labels along an edge', () => {
  it('never touch each other, and the heaviest always stands', () => {
    const random = new Rng(11);
    for (let round = 0; round < 200; round += 1) {
      const spans = Array.from({ length: 12 }, () => ({
        at: random.uniform() * 600,
        width: 30 + random.uniform() * 90,
        weight: random.uniform(),
      }));
      const fit = labelsThatFit(spans, 4);
      const heaviest = spans.reduce((best, span, k) => (span.weight > spans[best].weight ? k : best), 0);
      expect(fit[heaviest]).toBe(true);
      const placed = placeLabels(spans, [0, 600], 3, 4);
      for (let a = 0; a < spans.length; a += 1) {
        const place = placed[a];
        if (place) {
          expect(place.at - spans[a].width / 2).toBeGreaterThanOrEqual(-1e-9);
          expect(place.at + spans[a].width / 2).toBeLessThanOrEqual(600 + 1e-9);
        }
        for (let b = 0; b < a; b += 1) {
          const apart = (spans[a].width + spans[b].width) / 2;
          if (fit[a] && fit[b])
            expect(Math.abs(spans[a].at - spans[b].at)).toBeGreaterThanOrEqual(apart + 4 - 1e-9);
          const other = placed[b];
          if (place && other && place.row === other.row)
            expect(Math.abs(place.at - other.at)).toBeGreaterThanOrEqual(apart + 4 - 1e-9);
        }
      }
    }
  });
});
