import { describe, expect, it } from 'vitest';
import { bandDecays, boundaryDip, examine, type GridSource } from '../../src/decay/index.js';
import { onsetIndex, openRecording, Rng } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';
import { addMode } from '../support/signals.js';

const sampleRate = 48000;
const blank = (seconds = 2) => new Float64Array(seconds * sampleRate);
const source = (samples: Float64Array): GridSource => ({
  samples,
  sampleRate,
  onsetSeconds: onsetIndex(samples, sampleRate) / sampleRate,
});
const noisy = (samples: Float64Array, sd: number, seed = 1) => {
  const rng = new Rng(seed);
  return samples.map((value) => value + sd * rng.gaussian());
};
const recordingNotes = (given: GridSource) => drain(examine(given)).notes;
const codes = (samples: Float64Array) => recordingNotes(source(samples)).map(({ code }) => code);

describe('what misleads in a recording', () => {
  it('a clean decay raises no note but that of bands without sound', () => {
    const samples = blank();
    for (const f of [25, 32, 40, 50, 63, 80, 100, 125, 160, 200])
      addMode(samples, sampleRate, f, 0.5, 1, 0.02);
    expect(codes(noisy(samples, 1e-5))).toEqual([]);
  });

  it('a mode cut at 0.3 s is short, or truncated where zeros follow', () => {
    const samples = addMode(blank(0.3), sampleRate, 30, 1.2);
    expect(codes(samples)).toContain('short');
    const padded = blank();
    padded.set(samples);
    expect(codes(padded)).toContain('truncated');
    expect(
      recordingNotes(source(padded)).find(({ code }) => code === 'truncated')?.params.atSeconds,
    ).toBeCloseTo(0.3, 2);
  });

  it('three equal samples at the extreme are clipping, one peak is not', () => {
    const samples = addMode(blank(), sampleRate, 50, 0.5);
    expect(codes(samples)).not.toContain('clipped');
    expect(codes(samples.map((v) => Math.max(-0.5, Math.min(0.5, v))))).toContain('clipped');
  });

  it('a burst at -40 dB, 1 s before the end, is late energy', () => {
    const samples = addMode(blank(), sampleRate, 50, 0.4);
    expect(codes(samples)).not.toContain('late-energy');
    addMode(samples, sampleRate, 55, 0.15, 0.01, 1);
    const note = recordingNotes(source(samples)).find(({ code }) => code === 'late-energy');
    expect(note?.params.atSeconds).toBeGreaterThan(0.9);
    expect(note?.params.atSeconds).toBeLessThan(1.2);
  });

  it('two close modes that beat are not late energy', () => {
    const samples = addMode(addMode(blank(), sampleRate, 40, 0.6), sampleRate, 43, 0.6);
    expect(codes(samples)).not.toContain('late-energy');
  });

  it('a click and its reflection 5.83 ms later make a boundary dip at 86 Hz, 2 m of detour', () => {
    const samples = blank(1);
    samples[4800] = 1;
    samples[4800 + 280] = 0.9;
    const note = boundaryDip(source(samples));
    expect(note?.params.frequencyHz).toBeCloseTo(86, 0);
    expect(note?.params.extraMetres).toBeCloseTo(2, 1);
    expect(note?.params.explained).toBeGreaterThan(0.9);
    const single = blank(1);
    single[4800] = 1;
    expect(boundaryDip(source(single))).toBeNull();
    // One mode after another makes dips between them, but no comb.
    const modes = blank(1);
    for (const f of [30, 45, 52, 68, 90, 110, 135]) addMode(modes, sampleRate, f, 0.4, 0.2, 0.1);
    modes[4800] = 1;
    expect(boundaryDip(source(modes))).toBeNull();
  });
});

describe('decay times per band', () => {
  const read = (samples: Float64Array, centre: number) =>
    drain(bandDecays(source(samples))).find((band) => Math.round(band.centreHz) === centre)!;

  it('give the decay of one mode that is truncated at its noise', () => {
    const { t20, t30 } = read(noisy(addMode(blank(), sampleRate, 50, 0.6, 1, 0.05), 1e-3), 50);
    expect(t20.seconds! / 0.6).toBeCloseTo(1, 1);
    expect(t30.seconds! / 0.6).toBeCloseTo(1, 1);
  });

  it('refuse what the noise does not allow (ISO 3382 range rule) and what the filter makes itself', () => {
    const sd = 10 ** (-25 / 20) / Math.sqrt((2 * 11.566) / sampleRate);
    expect(read(noisy(addMode(blank(), sampleRate, 50, 0.4), sd), 50).t20.refused).toBe('range');
    const click = blank(1);
    click[4800] = 1;
    expect(read(noisy(click, 1e-7), 50).t20.seconds).toBeNull();
  });

  it('know the shortest decay that each band can show (Jacobsen 1987, values derived)', () => {
    const samples = addMode(blank(), sampleRate, 50, 0.6);
    const expected = {
      reversed: [0.548, 0.346, 0.275, 0.173, 0.138],
      forward: [2.19, 1.38, 1.1, 0.69, 0.55],
    };
    for (const direction of ['reversed', 'forward'] as const) {
      const bands = drain(bandDecays(source(samples), { direction }));
      [32, 50, 63, 100, 126].forEach((centre, i) => {
        const band = bands.find((one) => Math.round(one.centreHz) === centre)!;
        expect(Math.abs(band.shortestSeconds - expected[direction][i])).toBeLessThan(0.006);
      });
    }
  });

  it('tell both slopes of a mode with two decays, and one slope of a mode with one', () => {
    const two = addMode(
      addMode(blank(), sampleRate, 45, 0.3, 1, 0.05),
      sampleRate,
      45,
      1.6,
      10 ** (-18 / 20),
      0.05,
    );
    const band = read(noisy(two, 1e-4), 50);
    expect(band.twoSlopes!.lateSeconds).toBeGreaterThan(1.3);
    expect(band.twoSlopes!.lateSeconds).toBeLessThan(1.9);
    // The band filter itself rings, so that the early decay is read a little long.
    expect(band.twoSlopes!.earlySeconds).toBeGreaterThan(0.27);
    expect(band.twoSlopes!.earlySeconds).toBeLessThan(0.45);
    expect(read(noisy(addMode(blank(), sampleRate, 45, 0.6, 1, 0.05), 1e-4), 50).twoSlopes).toBeNull();
  });
});

describeWithRecordings('notes of real recordings', () => {
  const notes = (name: string) => recordingNotes(openRecording(recordingBytes(name))).map(({ code }) => code);
  const readable = [
    ...recordingNames.corners,
    recordingNames.frl,
    recordingNames.livingRoom,
    recordingNames.coupled,
  ];

  it('call the clap noisy everywhere, and the living room nowhere above 40 Hz', () => {
    const noisyIn = (name: string) =>
      recordingNotes(openRecording(recordingBytes(name))).filter(({ code }) => code === 'noisy');
    const [clap, ...more] = noisyIn(recordingNames.clap);
    expect(more).toEqual([]);
    expect(clap.params.fromHz).toBeLessThan(25);
    expect(clap.params.toHz).toBeGreaterThan(250);
    for (const { params } of noisyIn(recordingNames.livingRoom)) expect(params.toHz).toBeLessThan(40);
  });

  it('call no whole response short, and the office of 0.39 s short', () => {
    for (const name of [...readable, recordingNames.clap]) expect(notes(name), name).not.toContain('short');
    expect(notes(recordingNames.office)).toContain('short');
  });

  it('find a single reflection in none of them: all rooms are full of reflections', () => {
    for (const name of [...readable, recordingNames.clap, recordingNames.office])
      expect(notes(name), name).not.toContain('boundary');
  });

  it('find no late energy and no clipping in them', () => {
    for (const name of readable) {
      expect(notes(name), name).not.toContain('late-energy');
      expect(notes(name), name).not.toContain('clipped');
    }
  });

  it('find two slopes in the coupled rooms, with both times and the level each was read over', () => {
    const slopes = recordingNotes(openRecording(recordingBytes(recordingNames.coupled))).filter(
      ({ code }) => code === 'two-slopes',
    );
    expect(slopes.length).toBeGreaterThan(0);
    for (const { params } of slopes) {
      expect(Number(params.lateSeconds) / Number(params.earlySeconds)).toBeGreaterThan(1.5);
      expect(params.earlyFromDb).toBe(0);
      expect(params.earlyToDb).toBe(params.lateFromDb);
      expect(params.lateToDb).toBeLessThan(Number(params.lateFromDb) - 8);
    }
  });
});
