import { readFileSync, existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { bandDecays, computeGrid, defaultGridParams, logFrequencies } from '../../src/decay/index.js';
import { encodeWav } from '../../src/signal/index.js';
import { createPool } from '../../src/study/pool.js';
import { createStudy } from '../../src/study/study.js';
import { createSpeaker, gridCaption } from '../../src/words/index.js';
import { drain } from '../support/drain.js';
import { addMode } from '../support/signals.js';
import { addHum, blank, diagnosed, rate, withNoise } from '../support/telling.js';

/** Figures that are misread, by their numbers in the trade's list; those that no other test answers. */

const bandAt = (samples: Float64Array, centreHz: number, onsetSeconds: number) =>
  drain(bandDecays({ samples, sampleRate: rate, onsetSeconds })).find(
    (band) => Math.round(band.centreHz) === centreHz,
  )!;

/** T20 or T30 by regression on the backward integral of all of the samples: what a naive reading does. */
function naiveReading(samples: Float64Array, toDb: number): number {
  const curve = new Float64Array(samples.length);
  let sum = 0;
  for (let i = samples.length - 1; i >= 0; i--) curve[i] = sum += samples[i] ** 2;
  const points = [...curve.keys()].filter((i) => {
    const level = 10 * Math.log10(curve[i] / curve[0]);
    return level <= -5 && level >= toDb;
  });
  const mean = (list: number[]) => list.reduce((all, v) => all + v, 0) / list.length;
  const levels = points.map((i) => 10 * Math.log10(curve[i] / curve[0]));
  const [mx, my] = [mean(points), mean(levels)];
  const slope =
    points.reduce((all, x, k) => all + (x - mx) * (levels[k] - my), 0) /
    points.reduce((all, x) => all + (x - mx) ** 2, 0);
  return -60 / slope / rate;
}

describe('what every picture of levels says of itself', () => {
  const mode = withNoise(addMode(blank(), rate, 50, 0.5, 1, 0.05), 1e-3);
  const captionOf = (method: 'sliding' | 'cumulative', windowSeconds: number): string => {
    const params = { ...defaultGridParams, method, windowSeconds, frequenciesHz: logFrequencies(20, 200) };
    const grid = drain(computeGrid({ samples: mode, sampleRate: rate, onsetSeconds: 0.05 }, params));
    return gridCaption(createSpeaker('en', { space: ' ' }), grid, 50);
  };

  it('misreadings 1, 3, 4, 6, 7 and 9: method, own decay, resolution, time, range and reference of level', () => {
    const sliding = captionOf('sliding', 0.3);
    expect(sliding).toContain('Sliding Hann window of 0.30 s');
    expect(sliding).toContain('the window alone falls 60 dB in 0.15 s');
    expect(sliding).toContain('resolves ridges 6.7 Hz apart');
    expect(sliding).toContain('labelled by the centre of its window');
    expect(sliding).toContain('50 dB shown');
    expect(sliding).toContain('relative level');
    const cumulative = captionOf('cumulative', 0.3);
    expect(cumulative).toContain('Cumulative, fade-in of');
    expect(cumulative).toContain('labelled by its left edge');
    // A longer window resolves more, and no zero-padding does.
    expect(captionOf('sliding', 0.6)).toContain('resolves ridges 3.3 Hz apart');
  });
});

describe('misreading 8: before and after on different scales', () => {
  it('cannot be: the scales belong to the study, and another recording changes none of them', async () => {
    const study = createStudy({ pool: createPool({ routes: [] }) });
    const file = (decay: number, level: number) =>
      encodeWav({
        channels: [addMode(new Float64Array(8000), 4000, 50, decay, level, 0.05)],
        sampleRate: 4000,
        encoding: 'float-64',
      }).slice().buffer;
    await study.addRecording(file(0.9, 0.5), { stage: 'before' });
    await study.addRecording(file(0.3, 0.01), { stage: 'after' });
    const before = await study.settled();
    study.setActive(1);
    const after = await study.settled();
    expect(after.recordings[after.active].stage).toBe('after');
    expect(after.choices).toEqual(before.choices);
    for (const key of ['method', 'windowSeconds', 'stepSeconds', 'frequenciesHz', 'timesSeconds'] as const)
      expect(after.grid![key], key).toEqual(before.grid![key]);
    study.dispose();
  });
});

describe('misreading 12: noise read as endless decay', () => {
  it('0.40 s in 2 s with 45 dB of signal to noise reads T30 over 3 s when all is integrated, and 0.40 s here', () => {
    const start = 0.1;
    const inNoise = (db: number, seed: number) =>
      withNoise(addMode(blank(), rate, 50, 0.4, 1, start), 10 ** (-db / 20), seed);
    // The noise of the octave alone; the rest would only make the naive reading worse.
    expect(naiveReading(inNoise(45, 1), -35)).toBeGreaterThan(3);
    // With just the range that the standard asks for, noise of one third-octave scatters T20 by 11 % (rms of ten seeds).
    const read = [1, 2, 3, 4].map((seed) => bandAt(inNoise(45, seed), 50, start));
    for (const { t20, t30, usableSeconds } of read) {
      if (t20.seconds !== null) expect(Math.abs(t20.seconds / 0.4 - 1)).toBeLessThan(0.25);
      expect(t30).toEqual({ seconds: null, refused: 'range' });
      expect(usableSeconds).toBeLessThan(0.6);
    }
    expect(read.filter(({ t20 }) => t20.seconds !== null).length).toBeGreaterThan(1);
    for (const seed of [1, 2, 3, 4])
      expect(Math.abs(bandAt(inNoise(60, seed), 50, start).t30.seconds! / 0.4 - 1)).toBeLessThan(0.06);
  });
});

describe('misreading 13: a file cut short', () => {
  it('1.2 s cut at 0.3 s reads T20 0.72 s when that is all, and is refused per band here, with 1.2 s fitted', () => {
    const samples = addMode(blank(0.3), rate, 30, 1.2);
    expect(naiveReading(samples, -25)).toBeCloseTo(0.72, 1);
    const result = diagnosed(samples);
    const band = result.files[0].bands.find(({ centreHz }) => Math.round(centreHz) === 32)!;
    expect(band.t20).toEqual({ seconds: null, refused: 'range' });
    expect(result.files[0].notes.map(({ code }) => code)).toContain('short');
    const [found] = result.resonances.filter(({ frequencyHz }) => Math.abs(frequencyHz - 30) < 1);
    expect(Math.abs(found.decayTimeSeconds! - 1.2)).toBeLessThan(2 * found.decayTimeSdSeconds!);
  });
});

describe('misreading 14: mains hum taken for a mode', () => {
  it('50 Hz at 1 % makes a mode of 0.5 s read 4 s when all is integrated; here it is named, and the mode is 0.5 s', () => {
    const samples = addHum(withNoise(addMode(blank(), rate, 48, 0.5), 5e-4), 50, -40, 1);
    expect(naiveReading(samples, -25)).toBeGreaterThan(1);
    const result = diagnosed(samples);
    expect(result.files[0].notes.find(({ code }) => code === 'hum')?.params.mainsHz).toBe(50);
    const [found] = result.resonances.filter(({ kind, levelDb }) => kind !== 'hum' && levelDb === 0);
    expect(Math.abs(found.decayTimeSeconds! / 0.5 - 1)).toBeLessThan(0.03);
    expect(
      result.ridges.every(({ cause, decayTimeSeconds }) => cause !== 'hum' || decayTimeSeconds === null),
    ).toBe(true);
  });
});

describe('the table of misreadings in DEVELOPERS.md', () => {
  const root = fileURLToPath(new URL('../../', import.meta.url));
  const rows = readFileSync(`${root}DEVELOPERS.md`, 'utf8')
    .split('\n')
    .filter((line) => /^\| +\d+ \|/.test(line))
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );

  it('has each of the 27 with what answers it and the test that proves it, and every file it names is there', () => {
    expect(rows.map(([number]) => Number(number))).toEqual(Array.from({ length: 27 }, (_, k) => k + 1));
    for (const [number, , answer, proof] of rows) {
      const named = (cell: string) => [...cell.matchAll(/`((?:src|tests)\/[^`]+)`/g)].map(([, path]) => path);
      expect(named(answer).length, `${number}: answer`).toBeGreaterThan(0);
      expect(named(proof).length, `${number}: proof`).toBeGreaterThan(0);
      for (const path of named(answer + proof))
        expect(existsSync(root + path), `${number}: ${path}`).toBe(true);
    }
  });
});
