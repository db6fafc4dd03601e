import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  computeGrid,
  defaultGridParams,
  logFrequencies,
  type Grid,
  type GridParams,
} from '../../src/decay/index.js';
import { openRecording } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { describeWithScipy, runPython } from '../support/python.js';
import { hasRecordings, recordingBytes, recordingNames, recordingPath } from '../support/shared-data.js';
import { addMode, referenceSignal } from '../support/signals.js';

interface Reference {
  frequencies: number[];
  referenceDbFs: number;
  levels: number[][];
}

const committed = JSON.parse(
  readFileSync(new URL('../reference/grid_reference.json', import.meta.url), 'utf8'),
) as Reference;

const params = (change: Partial<GridParams> = {}): GridParams => ({ ...defaultGridParams, ...change });
const gridOf = (
  samples: Float64Array,
  change: Partial<GridParams> = {},
  onsetSeconds = 0.02,
  sampleRate = 48000,
) => drain(computeGrid({ samples, sampleRate, onsetSeconds }, params(change)));

/** Largest difference wherever the reference lies above -60 dB of its maximum. */
function worstAbove60(grid: Grid, reference: Reference): number {
  let worst = 0;
  reference.levels.forEach((row, t) =>
    row.forEach((level, f) => {
      if (level > -60) worst = Math.max(worst, Math.abs(level - grid.levelsDb[t * row.length + f]));
    }),
  );
  return worst;
}

const against = (samples: Float64Array, reference: Reference, onsetSeconds: number) =>
  gridOf(
    samples,
    { stepSeconds: 0.1, frequenciesHz: Float64Array.from(reference.frequencies) },
    onsetSeconds,
  );

describe('the grid against SciPy (scipy.fft.rfft of full-rate Hann slices)', () => {
  it('agrees within 0.1 dB wherever the level is above -60 dB of the maximum', () => {
    const grid = against(referenceSignal(), committed, 0.02);
    expect(worstAbove60(grid, committed)).toBeLessThan(0.1);
    expect(grid.referenceDbFs).toBeCloseTo(committed.referenceDbFs, 2);
  });
});

describeWithScipy('the SciPy numbers', () => {
  it('are made again by their script as they are kept', () => {
    const again = runPython('grid_reference.py') as Reference;
    expect(again.frequencies).toEqual(committed.frequencies);
    again.levels.flat().forEach((level, i) => {
      const kept = committed.levels.flat()[i];
      if (kept > -120) expect(Math.abs(level - kept)).toBeLessThan(1e-3);
    });
  });

  it.skipIf(!hasRecordings)('agree on a real recording within 0.1 dB above -60 dB', () => {
    for (const name of [recordingNames.corner1, recordingNames.frl]) {
      const { samples } = openRecording(recordingBytes(name));
      const reference = runPython('grid_reference.py', recordingPath(name), '1920') as Reference;
      expect(worstAbove60(against(samples, reference, 0.04), reference), name).toBeLessThan(0.1);
    }
  });
});

describe('what the window does (derived facts of the Hann window)', () => {
  const click = () => {
    const samples = new Float64Array(96000);
    samples[9600] = 1;
    return gridOf(samples, { stepSeconds: 0.001, spanSeconds: 0.2 }, 0.2);
  };

  it('lets a bare click fall 60 dB in 0.49 of the window, which the limits state', () => {
    const grid = click();
    const column = Array.from(grid.timesSeconds, (_, t) => grid.levelsDb[t * grid.frequenciesHz.length + 60]);
    const fall = column.findIndex((level) => level <= -60) / 1000;
    expect(fall).toBeCloseTo(0.147, 2);
    expect(grid.limits.windowDecaySeconds).toBeCloseTo(0.147, 3);
  });

  it('never gives a level that is no finite number, nor divides by a zero floor', () => {
    const grid = click();
    expect(grid.levelsDb.every(Number.isFinite)).toBe(true);
    expect(grid.limits.noiseFloorDb.every((level) => level === -Infinity || level < -200)).toBe(true);
  });

  it('shows two equal tones apart only where the window is at least 2 / df long', () => {
    const dips = [0.3, 1].map((windowSeconds) => {
      const samples = new Float64Array(192000);
      for (let i = 0; i < samples.length; i++)
        samples[i] = Math.cos((2 * Math.PI * 40 * i) / 48000) + Math.cos((2 * Math.PI * 43 * i) / 48000);
      const grid = gridOf(samples, { windowSeconds, frequenciesHz: Float64Array.of(20, 40, 41.5, 43) }, 1);
      return Math.max(grid.levelsDb[1], grid.levelsDb[3]) - grid.levelsDb[2];
    });
    // In phase at the centre: 1.5 spacings of a Hann lobe away each has fallen to 0.17, together -9.4 dB.
    expect(dips[0]).toBeLessThan(0);
    expect(dips[1]).toBeCloseTo(9.4, 0);
  });

  it('leaves the slope of one isolated mode as it is, once the window lies wholly after the onset', () => {
    const samples = addMode(new Float64Array(96000), 48000, 50, 0.6);
    const grid = gridOf(samples, { frequenciesHz: Float64Array.of(49, 50, 51) }, 0);
    const at = (t: number) => grid.levelsDb[Math.round(t / 0.01) * 3 + 1];
    expect(at(0.5) - at(0.2)).toBeCloseTo(-30, 1);
  });
});

describe('a cumulative grid', () => {
  it('is labelled by its left edge and says below which frequency it means nothing', () => {
    const samples = addMode(new Float64Array(96000), 48000, 50, 0.5, 1, 0.02);
    const grid = gridOf(samples, { method: 'cumulative', windowSeconds: 0.02 });
    expect(grid.limits.dataEndSeconds).toBeCloseTo(1.98, 9);
    expect(grid.limits.lowestHz[50]).toBeCloseTo(1 / 1.48, 5);
    const columns = grid.frequenciesHz.length;
    const f = grid.frequenciesHz.findIndex((frequency) => frequency >= 50);
    // What remains of one mode falls as the mode does.
    expect(grid.levelsDb[60 * columns + f] - grid.levelsDb[20 * columns + f]).toBeCloseTo(-48, 0);
  });
});

describe('a grid', () => {
  const samples = referenceSignal();

  it('does not change with the scale of the samples or with silence before them', () => {
    const plain = gridOf(samples);
    for (const scale of [1e-9, 1e9]) {
      const scaled = gridOf(samples.map((v) => v * scale));
      for (let i = 0; i < plain.levelsDb.length; i += 97)
        if (plain.levelsDb[i] > -80) expect(scaled.levelsDb[i]).toBeCloseTo(plain.levelsDb[i], 3);
      expect(scaled.referenceDbFs - plain.referenceDbFs).toBeCloseTo(20 * Math.log10(scale), 6);
    }
  });

  it('is the same at every sample rate', () => {
    const made = (rate: number) => {
      const x = new Float64Array(rate * 2);
      addMode(x, rate, 43, 0.6, 1, 0.1);
      addMode(x, rate, 97, 0.4, 0.5, 0.1);
      return gridOf(x, {}, 0.1, rate);
    };
    const reference = made(48000);
    for (const rate of [8000, 44100, 96000, 192000]) {
      const grid = made(rate);
      let worst = 0;
      grid.levelsDb.forEach((level, i) => {
        if (reference.levelsDb[i] > -60) worst = Math.max(worst, Math.abs(level - reference.levelsDb[i]));
      });
      expect(worst, `${rate} Hz`).toBeLessThan(0.05);
    }
  });

  it('refuses what it cannot do with one code', () => {
    const refused: [string, Partial<GridParams>][] = [
      ['grid-frequencies', { frequenciesHz: Float64Array.of(50) }],
      ['grid-top', { frequenciesHz: Float64Array.of(50, 30000) }],
      ['grid-window', { windowSeconds: 0 }],
      ['grid-step', { stepSeconds: 0 }],
      ['grid-silent', {}],
    ];
    for (const [code, change] of refused)
      expect(() => gridOf(code === 'grid-silent' ? new Float64Array(96000) : samples, change), code).toThrow(
        expect.objectContaining({ code }),
      );
  });

  it('has a default axis of 1/48 octave from 20 to 200 Hz', () => {
    const list = logFrequencies();
    expect(list[0]).toBe(20);
    expect(list[list.length - 1]).toBeCloseTo(200, 9);
    expect(list[48]).toBeCloseTo(40, 9);
  });
});
