import { describe, expect, it } from 'vitest';
import { openRecording } from '../../src/signal/index.js';
import { fitResonances, type FitRecording } from '../../src/resonance/index.js';
import { makeRoom } from '../benchmark/synth.mjs';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';
import { drain } from '../support/drain.js';
import { addMode } from '../support/signals.js';

const params = { fromHz: 20, toHz: 200, volumeCubicMetres: 58.7 };
const fitOf = (recordings: readonly FitRecording[]) => drain(fitResonances(recordings, params));
const about = (recordings: readonly FitRecording[]) =>
  fitOf(recordings).notes.filter(({ code }) => code === 'other-room' || code === 'aligned');

function recordings(seed: number, options: Parameters<typeof makeRoom>[1]): FitRecording[] {
  const { irs, arrivals, sampleRate } = makeRoom(seed, options);
  return irs.map((samples, k) => ({ samples, sampleRate, onsetSeconds: arrivals[k] / sampleRate }));
}

/** The same response in warmer air: everything `factor` times as fast. */
const warmer = (recording: FitRecording, factor: number): FitRecording => ({
  ...recording,
  sampleRate: recording.sampleRate * factor,
  onsetSeconds: recording.onsetSeconds / factor,
});

describe.each([301, 311])('four seats of one room, seed %d', (seed) => {
  const seats = recordings(seed, { snr: 60, seats: 4 });

  it('are fitted together without a word', () => {
    expect(about(seats)).toEqual([]);
  });

  it('tell the one that is of another room, and leave it out', () => {
    const [stranger] = recordings(seed + 1, { snr: 60, sides: [4.6, 3.9, 2.5] });
    const fit = fitOf([seats[0], seats[1], stranger, seats[3]]);
    expect(fit.notes).toContainEqual({ code: 'other-room', params: { recording: 3 } });
    const without = fitOf([seats[0], seats[1], seats[3]]);
    expect(fit.resonances).toHaveLength(without.resonances.length);
    fit.resonances.forEach(({ frequencyHz, levelsDb, amplitudes }, k) => {
      expect(frequencyHz).toBeCloseTo(without.resonances[k].frequencyHz, 6);
      expect([levelsDb.length, amplitudes.length, amplitudes[2]]).toEqual([4, 4, 0]);
      expect(levelsDb[2]).toBeLessThan(-200);
    });
    expect(fit.noiseSd).toHaveLength(4);
  });

  it('tell the one that was made at another stage, when the room was damped', () => {
    const damped = recordings(seed, { snr: 60, seats: 4, decayScale: 0.55 });
    expect(about([seats[0], seats[1], damped[2], seats[3]])).toEqual([
      { code: 'other-room', params: { recording: 3 } },
    ]);
  });

  it('bring the one in air 2 K warmer to the time of the others, and find what they find without the difference', () => {
    const mixed = [seats[0], seats[1], seats[2], warmer(seats[3], 1.0035)];
    const [note, ...more] = about(mixed);
    expect(more).toEqual([]);
    expect(note).toMatchObject({ code: 'aligned', params: { recording: 4 } });
    expect(Math.abs(Number(note.params.percent) - 0.35)).toBeLessThan(0.07);
    const same = fitOf(seats).resonances.filter(({ kind }) => kind === 'resolved');
    const found = fitOf(mixed).resonances;
    const back = same.filter(({ frequencyHz, frequencySdHz }) =>
      found.some((other) => Math.abs(other.frequencyHz - frequencyHz) < 0.02 + 2 * frequencySdHz),
    );
    expect(same.length).toBeGreaterThan(4);
    expect(back.length / same.length).toBeGreaterThan(0.85);
  });
});

describe('two recordings', () => {
  it('of two rooms are told: the second does not belong with the first', () => {
    const [a] = recordings(301, { snr: 55 });
    const [b] = recordings(302, { snr: 55, sides: [4.6, 3.9, 2.5] });
    expect(about([a, b])).toEqual([{ code: 'other-room', params: { recording: 2 } }]);
  });

  it('at 44.1 and 48 kHz, of different length and onset, share their resonances', () => {
    const make = (rate: number, seconds: number, onset: number, scale: number): FitRecording => {
      const samples = new Float64Array(Math.round(seconds * rate));
      for (const [k, [f, t]] of [
        [33.2, 0.8],
        [51.7, 0.5],
        [74.9, 0.6],
        [101.3, 0.4],
        [122.8, 0.35],
      ].entries())
        addMode(samples, rate, f, t, scale * (1 + 0.5 * Math.cos(7 * k + rate)), onset);
      let state = rate;
      for (let n = 0; n < samples.length; n++) {
        state = (state * 48271) % 2147483647;
        samples[n] += scale * 2e-3 * (state / 1073741824 - 1);
      }
      return { samples, sampleRate: rate, onsetSeconds: onset };
    };
    const fit = fitOf([make(48000, 2.2, 0.05, 1), make(44100, 1.3, 0.31, 0.02)]);
    expect(fit.notes).toEqual([]);
    const told = fit.resonances.filter(({ levelDb }) => levelDb > -30);
    expect(told.map(({ frequencyHz }) => Math.round(10 * frequencyHz) / 10)).toEqual([
      33.2, 51.7, 74.9, 101.3, 122.8,
    ]);
  });
});

describeWithRecordings('recordings of real rooms', () => {
  const open = (name: string) => openRecording(recordingBytes(name));
  const corners = recordingNames.corners.map(open);

  it('of four corners belong together', () => {
    expect(about(corners)).toEqual([]);
  });

  it.each([recordingNames.frl, recordingNames.livingRoom])(
    'tell %s apart, which is of another room',
    (name) => {
      expect(about([...corners, open(name)])).toEqual([{ code: 'other-room', params: { recording: 5 } }]);
    },
  );
});
