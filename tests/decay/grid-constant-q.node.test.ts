import { describe, expect, it } from 'vitest';
import { computeGrid, defaultGridParams, type GridParams } from '../../src/decay/index.js';
import { Rng } from '../../src/signal/random.js';
import { drain } from '../support/drain.js';
import { addMode, referenceSignal } from '../support/signals.js';

const rate = 48000;
const gridOf = (samples: Float64Array, onsetSeconds: number, change: Partial<GridParams> = {}) =>
  drain(
    computeGrid(
      { samples, sampleRate: rate, onsetSeconds },
      { ...defaultGridParams, method: 'constant-q', ...change },
    ),
  );

/** The definition, on the full-rate samples: the sum under a Hann window of `periods` periods about a place. */
function levelOf(samples: Float64Array, atSeconds: number, frequencyHz: number, periods: number): number {
  const length = (periods / frequencyHz) * rate;
  const centre = atSeconds * rate;
  let [re, im] = [0, 0];
  for (let i = Math.ceil(centre - length / 2); i <= centre + length / 2; i++) {
    const value = (samples[i] ?? 0) * Math.cos((Math.PI * (i - centre)) / length) ** 2;
    re += value * Math.cos((2 * Math.PI * frequencyHz * i) / rate);
    im += value * Math.sin((2 * Math.PI * frequencyHz * i) / rate);
  }
  return 10 * Math.log10(re * re + im * im);
}

describe('a constant-Q grid', () => {
  it('is the sum under a window of as many periods at every frequency, within 0.05 dB down to -60 dB', () => {
    const samples = referenceSignal();
    const frequenciesHz = Float64Array.of(31.7, 47.3, 63, 88.2, 143.6);
    const grid = gridOf(samples, 0.02, { frequenciesHz, stepSeconds: 0.05 });
    const direct = Array.from(grid.levelsDb, (_, i) => {
      const [t, f] = [Math.floor(i / 5), i % 5];
      return levelOf(samples, 0.02 + grid.timesSeconds[t], frequenciesHz[f], 0.3 * 63);
    });
    const reference = Math.max(...direct.slice(0, 5));
    let compared = 0;
    direct.forEach((level, i) => {
      if (level - reference < -60) return;
      compared++;
      expect(Math.abs(grid.levelsDb[i] - (level - reference))).toBeLessThan(0.05);
    });
    expect(compared).toBeGreaterThan(40);
  });

  it('reads a click alike at all frequencies, and lets it fall faster where the window is shorter', () => {
    const samples = new Float64Array(2 * rate);
    samples[rate / 2] = 1;
    const grid = gridOf(samples, 0.5, { stepSeconds: 0.001, spanSeconds: 0.5 });
    const columns = grid.frequenciesHz.length;
    for (let f = 0; f < columns; f++) {
      expect(Math.abs(grid.levelsDb[f])).toBeLessThan(0.05);
      const fall = grid.timesSeconds.findIndex((_, t) => grid.levelsDb[t * columns + f] <= -60) / 1000;
      expect(fall).toBeCloseTo((0.4899 * 0.3 * 63) / grid.frequenciesHz[f], 2);
    }
  });

  it('says its resolution, its own decay and where it reaches past the data, per frequency', () => {
    const samples = addMode(new Float64Array(rate), rate, 50, 0.5);
    const { limits, frequenciesHz, timesSeconds } = gridOf(samples, 0);
    expect(limits.windowDecaySeconds).toBeCloseTo(0.147, 3);
    frequenciesHz.forEach((f, i) => expect(limits.resolutionHz[i]).toBeCloseTo((2 * f) / 18.9, 4));
    expect(limits.dataEndSeconds).toBeCloseTo(1 - 18.9 / 200 / 2, 6);
    // At 0.8 s, half a window of 0.2 s still fits: 18.9 periods of 47.25 Hz take 0.4 s.
    expect(limits.lowestHz[timesSeconds.findIndex((t) => Math.abs(t - 0.8) < 1e-9)]).toBeCloseTo(47.25, 3);
  });

  it('leaves the slope of one mode as it is, once its window lies after the onset', () => {
    const samples = addMode(new Float64Array(2 * rate), rate, 50, 0.6);
    const grid = gridOf(samples, 0, { frequenciesHz: Float64Array.of(49, 50, 51) });
    const at = (t: number) => grid.levelsDb[Math.round(t / 0.01) * 3 + 1];
    expect(at(0.5) - at(0.2)).toBeCloseTo(-30, 1);
  });

  it('finds the floor of white noise where its power says it must be, within 1.5 dB', () => {
    const rng = new Rng(5);
    const samples = Float64Array.from({ length: 16 * rate }, () => 0.01 * rng.gaussian());
    addMode(samples, rate, 63, 0.3, 100, 0.1);
    const grid = gridOf(samples, 0.1);
    const reference = levelOf(samples, 0.1, 63, 18.9);
    // Of N samples under a Hann window, 3 N / 8 is the sum of its squares. Eight windows scatter; all frequencies do not.
    const off = Array.from(
      grid.frequenciesHz,
      (f, i) =>
        grid.limits.noiseFloorDb[i] - (10 * Math.log10(0.01 ** 2 * 0.375 * (18.9 / f) * rate) - reference),
    );
    expect(Math.abs(off.reduce((sum, value) => sum + value, 0) / off.length)).toBeLessThan(1.5);
    for (const value of off) expect(Math.abs(value)).toBeLessThan(5);
  });

  it('refuses silence with the code of every grid', () => {
    expect(() => gridOf(new Float64Array(rate), 0)).toThrow(expect.objectContaining({ code: 'grid-silent' }));
  });
});
