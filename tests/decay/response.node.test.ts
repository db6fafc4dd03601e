import { describe, expect, it } from 'vitest';
import {
  computeResponse,
  erbHz,
  peaksAndDips,
  smoothingEdges,
  smoothPower,
  type Response,
  type Smoothing,
} from '../../src/decay/index.js';
import { dcOffset, openRecording, Rng, RingdownError, type Recording } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { describeWithScipy, runPython } from '../support/python.js';
import { hasRecordings, recordingBytes, recordingNames, recordingPath } from '../support/shared-data.js';
import { addMode } from '../support/signals.js';

const range = { fromHz: 20, toHz: 200 };
const responseOf = (
  source: Pick<Recording, 'samples' | 'sampleRate' | 'onsetSeconds'>,
  smoothing: Smoothing = 'none',
): Response => drain(computeResponse(source, { ...range, smoothing }));
const interpolated = (at: Float64Array, values: Float64Array, hertz: number): number => {
  const k = Math.max(0, Math.min(at.length - 2, at.findIndex((f) => f >= hertz) - 1));
  return values[k] + ((values[k + 1] - values[k]) * (hertz - at[k])) / (at[k + 1] - at[k]);
};
const levelAt = ({ frequenciesHz, levelsDb }: Response, hertz: number): number =>
  interpolated(frequenciesHz, levelsDb, hertz);

describe('the response', () => {
  it('of one full-scale sample is 0 dB everywhere, at any rate, smoothed or not', () => {
    for (const sampleRate of [2000, 44100, 96000])
      for (const smoothing of ['none', '1/3', 'erb'] as const) {
        const samples = new Float64Array(sampleRate);
        samples[Math.round(0.1 * sampleRate)] = 1;
        const { levelsDb, frequenciesHz } = responseOf({ samples, sampleRate, onsetSeconds: 0.1 }, smoothing);
        expect(Math.max(...levelsDb.map(Math.abs)), `${sampleRate} ${smoothing}`).toBeLessThan(0.01);
        expect(frequenciesHz[0]).toBeCloseTo(20, 9);
        expect(frequenciesHz[frequenciesHz.length - 1]).toBeCloseTo(200, 9);
      }
  });

  it('peaks at a mode as high as its decay is long', () => {
    const sampleRate = 4000;
    for (const decaySeconds of [0.4, 0.8]) {
      const samples = addMode(new Float64Array(3 * sampleRate), sampleRate, 60, decaySeconds, 1, 0.1);
      const response = responseOf({ samples, sampleRate, onsetSeconds: 0.1 });
      // The sum of exp(-6.9078 t / T) / 2 over all samples.
      expect(levelAt(response, 60)).toBeCloseTo(
        20 * Math.log10((sampleRate * decaySeconds) / (2 * Math.log(1000))),
        1,
      );
    }
  });

  it('tells its noise: twice the level of the file is twice the response, and so is its noise', () => {
    const sampleRate = 4000;
    const random = new Rng(9);
    const samples = addMode(new Float64Array(3 * sampleRate), sampleRate, 60, 0.4, 1, 0.1).map(
      (value) => value + 0.001 * random.gaussian(),
    );
    const one = responseOf({ samples, sampleRate, onsetSeconds: 0.1 }, '1/3');
    const two = responseOf({ samples: samples.map((x) => 2 * x), sampleRate, onsetSeconds: 0.1 }, '1/3');
    // White noise adds up by its power: sd squared times the energy of the window, 2.95 s less half of its fades.
    const expected = 10 * Math.log10(1e-6 * sampleRate * 2.95 * (1 - 0.1 * (1 - 3 / 8)));
    const mean = one.noiseDb.reduce((sum, level) => sum + level, 0) / one.noiseDb.length;
    expect(Math.abs(mean - expected)).toBeLessThan(1.5);
    for (let k = 0; k < one.frequenciesHz.length; k += 20) {
      expect(two.levelsDb[k] - one.levelsDb[k]).toBeCloseTo(20 * Math.log10(2), 6);
      expect(two.noiseDb[k] - one.noiseDb[k]).toBeCloseTo(20 * Math.log10(2), 6);
    }
  });

  it('has the same frequencies for every recording, and refuses what a rate cannot hold', () => {
    const source = (sampleRate: number) => ({
      samples: Float64Array.from({ length: sampleRate }, (_, n) => Math.exp(-n / 400)),
      sampleRate,
      onsetSeconds: 0,
    });
    expect(responseOf(source(8000)).frequenciesHz).toEqual(responseOf(source(48000)).frequenciesHz);
    expect(() => responseOf(source(400))).toThrow(RingdownError);
    expect(() => responseOf({ ...source(8000), samples: new Float64Array(8000) })).toThrow('grid-silent');
  });
});

describe('smoothing', () => {
  it('has the width of the ear’s filters as published: 30 Hz at 50 Hz, where a third-octave has 11.6', () => {
    // ERB = 24.673 (0.004368 f + 1) Hz, ANSI/ASA S3.4-2007.
    expect(erbHz(50)).toBeCloseTo(30.06, 2);
    expect(erbHz(1000)).toBeCloseTo(132.4, 1);
    const [low, high] = smoothingEdges('1/3', 50);
    expect(high - low).toBeCloseTo(11.6, 1);
    expect(high / low).toBeCloseTo(2 ** (1 / 3), 9);
  });

  it('keeps a straight line, and the mean of a hill', () => {
    const frequencies = Float64Array.from({ length: 400 }, (_, k) => 10 + k * 0.5);
    const at = Float64Array.from([30, 63, 100]);
    const flat = smoothPower(frequencies, new Float64Array(400).fill(2.5), '1/3', at);
    for (const value of flat) expect(value).toBeCloseTo(2.5, 9);
    const slope = smoothPower(frequencies, frequencies.slice(), 'erb', at);
    slope.forEach((value, k) => {
      const [low, high] = smoothingEdges('erb', at[k]);
      expect(value).toBeCloseTo((Math.max(10, low) + Math.min(209.5, high)) / 2, 6);
    });
  });
});

describe('peaks and dips', () => {
  it('are counted by prominence, not by every wiggle, and never at the ends', () => {
    const levels = [0, 4, 3, 10, 2, 2.5, 2, -9, 1, 1, 0.5, 12];
    const found = peaksAndDips(levels, 5);
    expect(found.map(({ index, kind }) => `${kind} ${index}`)).toEqual(['dip 7', 'peak 3']);
    expect(found.find(({ index }) => index === 3)!.prominenceDb).toBe(10);
    expect(found.find(({ index }) => index === 7)!.prominenceDb).toBe(19);
    expect(peaksAndDips(levels, 0.5).length).toBeGreaterThan(3);
    expect(peaksAndDips([1, 2, 3], 0.1)).toEqual([]);
  });
});

interface Reference {
  none: number[];
  centres: number[];
  third: number[];
  erb: number[];
  noise: number[];
  peaks: number[];
  dips: number[];
}

describeWithScipy('the response of real recordings', () => {
  it.skipIf(!hasRecordings)('agrees with SciPy: levels, smoothing, noise, peaks and dips', () => {
    const names = [
      recordingNames.corner1,
      recordingNames.frl,
      recordingNames.livingRoom,
      recordingNames.office,
    ];
    const recordings = names.map((name) => openRecording(recordingBytes(name)));
    const args = recordings.flatMap(({ samples, sampleRate, onsetSeconds, channel }, i) => {
      const { offset, evident } = dcOffset(samples, sampleRate);
      return [recordingPath(names[i]), String(channel), String(onsetSeconds), String(evident ? offset : 0)];
    });
    const references = runPython('response_reference.py', ...args) as Reference[];
    recordings.forEach((recording, i) => {
      const name = names[i];
      const reference = references[i];
      const plain = responseOf(recording);
      const top = Math.max(...reference.none);
      expect(plain.levelsDb.length).toBe(reference.none.length);
      reference.none.forEach((level, k) => {
        // 0.1 dB, and in a null 50 dB below the top: the window begins and ends between two samples of the reduced rate.
        const [ours, theirs, most] = [plain.levelsDb[k], level, top].map((db) => 10 ** (db / 20));
        const bound = theirs * (10 ** (0.1 / 20) - 1) + most / 316;
        expect(Math.abs(ours - theirs) / bound, `${name} ${plain.frequenciesHz[k]} Hz`).toBeLessThan(1);
      });
      for (const [smoothing, key] of [
        ['1/3', 'third'],
        ['erb', 'erb'],
      ] as const) {
        const smoothed = responseOf(recording, smoothing);
        reference.centres.forEach((hertz, k) => {
          expect(
            Math.abs(levelAt(smoothed, hertz) - reference[key][k]),
            `${name} ${key} ${hertz}`,
          ).toBeLessThan(0.25);
        });
      }
      const { frequenciesHz, noiseDb } = responseOf(recording, '1/3');
      const noiseAt = (hertz: number): number => interpolated(frequenciesHz, noiseDb, hertz);
      const noiseOff = reference.centres.map((hertz, k) => Math.abs(noiseAt(hertz) - reference.noise[k]));
      // Both average the same windows, but for the decimation's edges.
      expect(noiseOff.sort((a, b) => a - b)[noiseOff.length >> 1], `${name} noise`).toBeLessThan(1);
      const found = peaksAndDips(plain.levelsDb, 6);
      for (const kind of ['peak', 'dip'] as const) {
        const ours = found.filter((one) => one.kind === kind).map(({ index }) => plain.frequenciesHz[index]);
        const theirs = kind === 'peak' ? reference.peaks : reference.dips;
        expect(Math.abs(ours.length - theirs.length), `${name} ${kind}`).toBeLessThanOrEqual(1);
        for (const hertz of theirs.filter((f) => f > 21 && f < 199)) {
          const near = Math.min(...ours.map((f) => Math.abs(f - hertz)));
          expect(near, `${name} ${kind} ${hertz}`).toBeLessThan(0.3);
        }
      }
    });
  });
});
