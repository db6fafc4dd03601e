import { describe, expect, it } from 'vitest';
import { computeGrid, logFrequencies, type Grid } from '../../src/decay/index.js';
import { signedTable } from '../../src/draw/signed-image.js';
import { differencePixels } from '../../src/draw/difference.js';
import { makeAxis } from '../../src/draw/axes.js';
import { drawPair, pairRows } from '../../src/draw/pair-picture.js';
import { svgPen } from '../../src/draw/svg.js';
import { looks } from '../../src/sheet/looks.js';
import {
  differenceField,
  differenceReachDb,
  differenceTable,
  differenceValue,
  levelOffsetDb,
  pairPicture,
  pairReadout,
  pairViews,
} from '../../src/sheet/pair-view.js';
import { recordingFromSamples } from '../../src/signal/index.js';
import { Rng } from '../../src/signal/random.js';
import type { PairSnapshot, PairStage } from '../../src/study/pair.js';
import { createStudy } from '../../src/study/study.js';
import { createSpeaker } from '../../src/words/index.js';
import { drain } from '../support/drain.js';
import { addMode } from '../support/signals.js';

const sampleRate = 4000;
const speaker = createSpeaker('en');
const study = createStudy().snapshot;

/** One mode over noise. */
function stage(decaySeconds: number, gain = 1, fullScaleDb?: number): PairStage {
  const random = new Rng(5);
  const samples = Float64Array.from({ length: 2 * sampleRate }, () => 1e-5 * (2 * random.uniform() - 1));
  addMode(samples, sampleRate, 50, decaySeconds, 0.3, 0);
  const recording = {
    ...recordingFromSamples(
      samples.map((value) => gain * value),
      sampleRate,
      {},
    ),
    onsetSeconds: 0,
    ...(fullScaleDb !== undefined && { fullScaleDb }),
  };
  const grid: Grid = drain(
    computeGrid(recording, {
      ...{ method: 'sliding', windowSeconds: 0.3, stepSeconds: 0.01, spanSeconds: 1 },
      frequenciesHz: logFrequencies(20, 200),
    }),
  );
  return { side: { of: 'recording', index: 0 }, recording, grid, diagnosis: null, hashes: ['a'] };
}

const pairOf = (
  first: PairStage,
  second: PairStage,
  levels: PairSnapshot['levels'] = 'relative',
): PairSnapshot => ({
  choice: { first: first.side, second: second.side },
  ...{ seat: null, seats: [], first, second, levels, progress: null, failures: [] },
});

describe('the difference of two stages', () => {
  it('falls at the difference of the two decays: 1.2 s and 0.6 s part by 50 dB in a second', () => {
    const views = pairViews(study, pairOf(stage(1.2), stage(0.6)), speaker)!;
    const field = differenceField(views);
    // From a window's length after the onset on, each falls by its own 60 dB per decay time.
    const at = (seconds: number): number => differenceValue(field, 50, seconds).decibels!;
    expect(at(0.4) - at(0.2)).toBeCloseTo(-50 * 0.2, 0);
    expect(Math.abs(at(0.4) - at(0.2) + 10)).toBeLessThan(0.2);
    expect(views[0].valueRange).toEqual(views[1].valueRange);
  });

  it('is nothing where neither stands above its noise, and no number there', () => {
    const field = differenceField(pairViews(study, pairOf(stage(0.3), stage(0.25)), speaker)!);
    expect(differenceValue(field, 50, 0.95)).toEqual({ decibels: null, kind: 'neither' });
    expect(differenceValue(field, 150, 0.5)).toEqual({ decibels: null, kind: 'neither' });
    const { differencesDb, timesSeconds, frequenciesHz } = differenceTable(field);
    expect(differencesDb.length).toBe(frequenciesHz.length);
    expect(differencesDb.every((row) => row.length === timesSeconds.length)).toBe(true);
    expect(differencesDb.flat().some((value) => value === null)).toBe(true);
    expect(differencesDb.flat().every((value) => value === null || Number.isFinite(value))).toBe(true);
  });

  it('forgets the gain of files that may be normalised, and keeps it of the same or calibrated ones', () => {
    const [loud, quiet] = [stage(0.6), stage(0.6, 0.1)];
    const level = (pair: PairSnapshot): number =>
      differenceValue(differenceField(pairViews(study, pair, speaker)!), 50, 0.2).decibels!;
    expect(level(pairOf(loud, quiet))).toBeCloseTo(0, 1);
    expect(level(pairOf(loud, quiet, 'same'))).toBeCloseTo(-20, 1);
    const [a, b] = [stage(0.6, 1, 100), stage(0.6, 0.1, 114)];
    expect(level(pairOf(a, b, 'calibrated'))).toBeCloseTo(-6, 1);
    expect(levelOffsetDb(pairOf(a, b))).toBe(0);
  });

  it('is told under the cursor, with both levels', () => {
    const pair = pairOf(stage(1.2), stage(0.6));
    const text = pairReadout({ ...study, cursor: { frequencyHz: 50, timeSeconds: 0.4 } }, pair, speaker);
    expect(text).toMatch(/^50\.0\sHz at 0\.40\ss: -\d+\.\d\sdB, -\d+\.\d\sdB; -\d+\.\d\sdB$/);
    const silent = pairReadout({ ...study, cursor: { frequencyHz: 150, timeSeconds: 0.9 } }, pair, speaker);
    expect(silent).toContain('neither');
  });
});

describe('two pictures beside each other', () => {
  const pair = pairOf(stage(1.2), stage(0.6));
  const picture = pairPicture(
    study,
    pair,
    { first: 'before', second: 'after' },
    { form: 'spectrogram', difference: true },
    speaker,
  )!;
  const theme = looks.light;

  it('stand in one, two or three rows by the width', () => {
    expect([1200, 800, 400].map((width) => pairRows(width, true))).toEqual([1, 2, 3]);
    expect([1200, 800, 400].map((width) => pairRows(width, false))).toEqual([1, 1, 2]);
  });

  it('read the same field at the same place of each', () => {
    const size = { cssWidth: 1200, cssHeight: 420, pixelRatio: 1 };
    const layout = drawPair(svgPen('t'), picture, theme, size);
    const width = (1200 - 36) / 3;
    const points = [0, 1].map((k) => layout.toField(k * (width + 18) + 150, 200)!);
    expect(points[0].column).toBeCloseTo(points[1].column, 9);
    expect(points[0].row).toBeCloseTo(points[1].row, 9);
    const between = layout.toField(2 * (width + 18) + 150, 200)!;
    expect(between.row).toBeCloseTo(points[0].row, 9);
    expect(layout.toField(150, 2)).toBeNull();
  });

  it('leave no room above a difference that stands in a row of its own', () => {
    const size = { cssWidth: 400, cssHeight: 1200, pixelRatio: 1 };
    const flag = {
      position: 50,
      label: '50.0 Hz\n1.20 s\n(1,0,0) 80 %',
      until: 0.5,
      selected: false,
      weight: 1,
    };
    const first = { ...picture.first, view: { ...picture.first.view, flags: [flag] } };
    const layout = drawPair(svgPen('t'), { ...picture, first }, theme, size);
    const height = (1200 - 2 * 18) / 3;
    // The first height at which there is a picture, from the top of each.
    const begins = [0, 2].map((k) => {
      const top = k * (height + 18);
      return Array.from({ length: 200 }, (_, y) => y).find((y) => layout.toField(200, top + y) !== null)!;
    });
    // Names of ridges stand above the one; a title of 24 px and the name of the key above the other.
    expect(begins[1]).toBeLessThanOrEqual(24 + 26);
    expect(begins[0]).toBeGreaterThan(begins[1] + 15);
  });

  it('have one hue to each side of nothing, by equal steps of lightness', () => {
    const { field } = picture.difference!.view;
    const view = {
      ...picture.difference!.view,
      field: {
        ...field,
        values: field.values.map(
          (_, k) => ((k % field.columns) / (field.columns - 1) - 0.5) * 2 * differenceReachDb,
        ),
        kinds: field.kinds.map(() => 0),
      },
    };
    const axes = {
      column: makeAxis(view.columnScale, view.columnRange, 0, 101),
      row: makeAxis('linear', view.rowRange, 0, 3),
    };
    const bytes = differencePixels(view, axes, theme, { width: 101, height: 3, ratio: 1 });
    const table = signedTable(theme);
    expect([...bytes.subarray(0, 3)]).not.toEqual([...bytes.subarray(400, 403)]);
    // The middle is the ground; the ends are those of the signed scale, half a pixel further.
    const near = (at: number, entry: number): void =>
      [0, 1, 2].forEach((k) => expect(Math.abs(bytes[at * 4 + k] - table[entry * 4 + k])).toBeLessThan(12));
    near(50, 127);
    near(0, 0);
    near(100, 254);
  });
});
