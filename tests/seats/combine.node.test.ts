import { describe, expect, it } from 'vitest';
import { computeGrid, defaultGridParams, logFrequencies } from '../../src/decay/index.js';
import { diagnose, defaultDiagnosisParams } from '../../src/diagnosis/index.js';
import { fitResonances } from '../../src/resonance/index.js';
import { createRoom, synthesise } from '../../src/room/index.js';
import {
  arrangePoints,
  beyondRepeats,
  combineAll,
  combineAtSeat,
  levelsOf,
  plainSetting,
  readPointName,
  reducedCopy,
  repeatability,
  ridgeLevels,
  ridgesOfSources,
  sharedRidges,
  stageGrid,
  sumSources,
  transferMatrix,
  type SourceSetting,
} from '../../src/seats/index.js';
import { recordingFromSamples, Rng, type OpenOptions, type Recording } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';

const room = createRoom({
  size: { lengthMetres: 5.6, widthMetres: 4.1, heightMetres: 2.6 },
  absorption: 0.1,
});
const sources = [
  { x: 0.3, y: 0.3, z: 0.3 },
  { x: 5.3, y: 3.8, z: 0.3 },
];
const seats = [
  { x: 3.6, y: 1.5, z: 1.2 },
  { x: 3.9, y: 2.5, z: 1.2 },
];
const made = (source: number, seat: number, options: OpenOptions = {}, seconds = 1.8): Recording => {
  const { samples, onsetSeconds } = synthesise({
    ...{ room, seconds, sampleRate: 48000, noiseDb: -60, seed: 10 * source + seat },
    ...{ source: sources[source], seat: seats[seat] },
  });
  const recording = recordingFromSamples(samples, 48000, {
    timeReference: 'common',
    seat: seats[seat],
    source: sources[source],
    ...options,
  });
  return { ...recording, onsetSeconds };
};
const grid = sources.map((_, source) => seats.map((__, seat) => made(source, seat)));
const settings: SourceSetting[] = [
  { ...plainSetting, gainDb: -2 },
  {
    ...plainSetting,
    delaySeconds: 0.00637,
    inverted: true,
    bands: [{ kind: 'peaking', frequencyHz: 42, gainDb: -6, q: 5 }],
  },
];

describe('a low-frequency copy of a recording', () => {
  const [[whole]] = grid;
  const copy = reducedCopy(whole);

  it('keeps fifteen hundred samples a second, on the clock of its file', () => {
    expect(copy.sampleRate).toBe(1500);
    expect(copy.samples.length).toBeLessThan(2720);
    expect(copy.onsetSeconds + copy.reduced!.startSeconds).toBeCloseTo(whole.onsetSeconds, 12);
    expect(copy.reduced).toMatchObject({ sampleRate: 48000, seconds: 1.8 });
    expect(reducedCopy(copy)).toBe(copy);
  });

  it('gives the same picture within 0.05 dB down to -60 dB, and the same response', () => {
    const params = { ...defaultGridParams, frequenciesHz: logFrequencies(20, 200, 24) };
    const a = drain(computeGrid(whole, params));
    const b = drain(computeGrid(copy, params));
    a.levelsDb.forEach((level, k) => {
      if (level > -60) expect(Math.abs(b.levelsDb[k] - level)).toBeLessThan(0.05);
    });
    const at = logFrequencies(20, 200, 24);
    const levels = [whole, copy].map((recording) =>
      levelsOf(sumSources(drain(transferMatrix([[recording]], at)), [plainSetting])),
    );
    levels[0].forEach((level, k) => expect(Math.abs(levels[1][k] - level)).toBeLessThan(0.02));
  });

  it('gives the same resonances within their uncertainty', () => {
    const params = { fromHz: 20, toHz: 150, volumeCubicMetres: 60 };
    const [a, b] = [whole, copy].map((recording) => drain(fitResonances([recording], params)).resonances);
    const strong = a.filter(({ levelDb, kind }) => levelDb > -20 && kind === 'resolved');
    expect(strong.length).toBeGreaterThan(4);
    for (const { frequencyHz, decayTimeSeconds, decayTimeSdSeconds } of strong) {
      const [near] = [...b].sort(
        (x, y) => Math.abs(x.frequencyHz - frequencyHz) - Math.abs(y.frequencyHz - frequencyHz),
      );
      expect(Math.abs(near.frequencyHz - frequencyHz)).toBeLessThan(0.1);
      expect(Math.abs(near.decayTimeSeconds! - decayTimeSeconds!)).toBeLessThan(
        4 * decayTimeSdSeconds! + 0.02 * decayTimeSeconds!,
      );
    }
  });
});

describe('sources added up in time', () => {
  it('have the response that the sum over frequency has', () => {
    const at = logFrequencies(20, 200, 24);
    const combined = drain(combineAll(grid, settings));
    const direct = levelsOf(sumSources(drain(transferMatrix(grid, at)), settings));
    const through = levelsOf(sumSources(drain(transferMatrix([combined], at)), [plainSetting]));
    const top = Math.max(...direct);
    direct.forEach((level, k) => {
      if (level > top - 20) expect(Math.abs(through[k] - level)).toBeLessThan(0.1);
    });
  });

  it('make a recording that can be diagnosed like any other', () => {
    const combined = drain(combineAll(grid, settings));
    const diagnosis = drain(diagnose(combined, { ...defaultDiagnosisParams, room }));
    expect(diagnosis.resonances.length).toBeGreaterThan(8);
    expect(diagnosis.ridges.length).toBeGreaterThan(0);
    for (const { remedies } of diagnosis.ridges) expect(remedies.length).toBeGreaterThan(0);
    expect(combined[0].hash).not.toBe(combined[1].hash);
  });

  it('are refused at different rates, without a common clock, and all muted', () => {
    const other = { ...reducedCopy(grid[1][0]), sampleRate: 1503.3, label: 'odd' };
    expect(() => combineAtSeat([grid[0][0], other], settings)).toThrow(
      expect.objectContaining({ code: 'rates-differ' }),
    );
    const stranger: Recording = { ...grid[1][0], timeReference: 'none' };
    expect(() => combineAtSeat([grid[0][0], stranger], settings)).toThrow(
      expect.objectContaining({ code: 'time-reference' }),
    );
    const silent = settings.map((setting) => ({ ...setting, muted: true }));
    expect(() => combineAtSeat([grid[0][0], grid[1][0]], silent)).toThrow(
      expect.objectContaining({ code: 'all-muted' }),
    );
  });
});

describe('how the sources drive the ridges', () => {
  it('is what the synthesiser made them drive, in level and in sum', () => {
    const modes = sources.map((source) =>
      seats.map((seat) => synthesise({ room, source, seat, seconds: 0.1, sampleRate: 48000 }).modes),
    );
    const truth = modes[0][0]
      .map((mode, m) => ({
        ...mode,
        kind: 'resolved' as const,
        amplitudes: modes.flat().map((list) => list[m].amplitude),
        phasesRadians: modes.flat().map((list) => list[m].phaseRadians),
      }))
      .filter(({ frequencyHz }) => frequencyHz < 190);
    const indices = [
      [0, 1],
      [2, 3],
    ];
    const exact = sharedRidges(truth as never, grid.flat(), indices);
    const found = drain(ridgesOfSources(truth as never, grid));
    const levels = (list: typeof exact) => list.map((ridge) => ridgeLevels(ridge, settings));
    const [a, b] = [levels(exact), levels(found)];
    const top = Math.max(...a.flatMap((list) => [...list]));
    let compared = 0;
    a.forEach((list, r) =>
      list.forEach((level, seat) => {
        // Where modes stand apart; above, neighbours share what the fit cannot part.
        if (level < top - 20 || exact[r].frequencyHz > 75) return;
        compared++;
        expect(Math.abs(b[r][seat] - level), `${exact[r].frequencyHz} Hz`).toBeLessThan(1);
      }),
    );
    expect(compared).toBeGreaterThan(5);
  });
});

describe('points', () => {
  const point = (sourceName: string, seatName: string, stage = '', more = {}) => ({
    ...{ seat: null, source: null, sourceName, seatName, stage, label: `${sourceName}${seatName}` },
    timeReference: 'common' as const,
    ...more,
  });

  it('form a grid of sources by seats per stage, that shows what is missing and what is repeated', () => {
    const list = [
      point('A', '1', 'before'),
      point('B', '1', 'before'),
      point('A', '2', 'before'),
      point('B', '2', 'before'),
      point('A', '3', 'before'),
      point('A', '1', 'before'),
      point('A', '1', 'after'),
    ];
    const arrangement = arrangePoints(list);
    expect(arrangement.sources.map(({ name }) => name)).toEqual(['A', 'B']);
    expect(arrangement.seats.map(({ name }) => name)).toEqual(['1', '2', '3']);
    expect(arrangement.cells[0]).toEqual([
      [[0, 5], [2], [4]],
      [[1], [3], []],
    ]);
    const before = stageGrid(arrangement, 0);
    expect(before).toMatchObject({
      sources: [0, 1],
      seats: [0, 1],
      incomplete: [2],
      recordings: [
        [0, 2],
        [1, 3],
      ],
    });
    expect(stageGrid(arrangement, 1)).toMatchObject({ sources: [0], seats: [0], recordings: [[6]] });
  });

  it('go by place where nobody named them, and by label where nothing is known', () => {
    const at = { x: 1, y: 2, z: 1.2 };
    const unnamed = { seatName: undefined, sourceName: undefined };
    const list = [
      point('', '', '', { ...unnamed, seat: at, label: 'one' }),
      point('', '', '', { ...unnamed, seat: { ...at }, label: 'two' }),
      point('', '', '', { ...unnamed, label: 'three' }),
    ];
    const { seats: found, sources: heard, cells } = arrangePoints(list);
    expect(found).toHaveLength(2);
    expect(found[1].name).toBe('three');
    expect(heard).toHaveLength(1);
    expect(cells[0][0][0]).toEqual([0, 1]);
  });

  it.each([
    ['sub2_seat7_before', 'S2', '7', 'before'],
    ['s1-r4', 'S1', '4', null],
    ['Source 3 Mic 12 after', 'S3', '12', 'after'],
    ['sub_1_pos_2', 'S1', '2', null],
    ['living room', null, null, null],
    ['2024-05-01 console', null, null, null],
  ])('are guessed from a name like %s', (name, source, seat, stage) => {
    expect(readPointName(name)).toEqual({ source, seat, stage });
  });
});

describe('repeats of a point', () => {
  it('say how small a change can still be told', () => {
    const rng = new Rng(4);
    const columns = 400;
    const re = Float64Array.from({ length: 2 * columns }, () => 10 ** (rng.gaussian() / 20));
    const matrix = {
      frequenciesHz: Float64Array.from({ length: columns }, (_, k) => 20 + k),
      ...{ sourceCount: 1, seatCount: 2, re, im: new Float64Array(2 * columns) },
    };
    const repeats = repeatability(matrix)!;
    expect(repeats.levelDb).toBeCloseTo(Math.SQRT2, 0.1);
    expect(repeats.varianceDb2).toBeGreaterThan(0.8);
    expect(repeats.varianceDb2).toBeLessThan(1.2);
    expect(beyondRepeats(20, 10, repeats)).toBe(true);
    expect(beyondRepeats(20, 19, repeats)).toBe(false);
    expect(beyondRepeats(20, 10, null)).toBeNull();
  });
});
