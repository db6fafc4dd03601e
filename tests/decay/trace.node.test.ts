import { describe, expect, it } from 'vitest';
import { examine, recordingTrace } from '../../src/decay/index.js';
import { openRecording, Rng } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';
import { addMode } from '../support/signals.js';

const sampleRate = 4000;
const onsetSeconds = 0.1;

/** A mode of 50 Hz over white noise; amplitude 1. */
function modeInNoise(decaySeconds: number, noiseSd: number, seconds = 3): Float64Array {
  const samples = addMode(
    new Float64Array(seconds * sampleRate),
    sampleRate,
    50,
    decaySeconds,
    1,
    onsetSeconds,
  );
  const random = new Rng(5);
  return samples.map((value) => value + noiseSd * random.gaussian());
}

const traceOf = (samples: Float64Array) => recordingTrace({ samples, sampleRate, onsetSeconds });
const columnAt = (trace: ReturnType<typeof traceOf>, seconds: number): number =>
  Math.floor(seconds / trace.stepSeconds);

describe('the trace of a recording', () => {
  it('keeps every extreme of the waveform, and covers it from the first sample to the last', () => {
    const samples = modeInNoise(0.6, 0.01);
    const trace = traceOf(samples);
    expect(Math.min(...trace.lowest)).toBeCloseTo(Math.min(...samples), 6);
    expect(Math.max(...trace.highest)).toBeCloseTo(Math.max(...samples), 6);
    expect(trace.levelsDb.length * trace.stepSeconds).toBeCloseTo(3, 9);
    expect(trace.lowest.every((low, k) => low <= trace.highest[k])).toBe(true);
  });

  it('falls by 60 dB in the decay time of a mode', () => {
    const trace = traceOf(modeInNoise(0.6, 0));
    const level = (seconds: number): number => trace.levelsDb[columnAt(trace, seconds)];
    expect(level(onsetSeconds + 0.2) - level(onsetSeconds + 0.5)).toBeCloseTo(30, 0);
  });

  it('takes no decay that the file cuts short for noise', () => {
    for (const decaySeconds of [0.8, 1.2]) {
      const trace = traceOf(modeInNoise(decaySeconds, 1e-4, 0.8));
      expect(trace.noiseDb).toBeNull();
      expect(trace.usableEndSeconds).toBeCloseTo(0.8, 6);
    }
  });

  it('ends to be usable where the decay meets its noise', () => {
    for (const [decaySeconds, noiseSd] of [
      [0.6, 0.003],
      [1.2, 0.03],
    ]) {
      const trace = traceOf(modeInNoise(decaySeconds, noiseSd));
      // The band of 20 to 200 Hz passes 180 of 2000 Hz of the noise, about; the mode's mean power is a half.
      const rangeDb = 10 * Math.log10(0.5 / (noiseSd ** 2 * (190 / 2000)));
      const expected = onsetSeconds + (decaySeconds * rangeDb) / 60;
      expect(trace.usableEndSeconds! / expected).toBeGreaterThan(0.93);
      expect(trace.usableEndSeconds! / expected).toBeLessThan(1.07);
      const quiet = trace.levelsDb.slice(columnAt(trace, 2.4), columnAt(trace, 2.9));
      const mean = 10 * Math.log10(quiet.reduce((sum, db) => sum + 10 ** (db / 10), 0) / quiet.length);
      expect(Math.abs(mean - trace.noiseDb!)).toBeLessThan(1);
    }
  });

  it('is small and finite for anything finite', () => {
    const random = new Rng(3);
    const noise = new Float64Array(40000).map(() => random.gaussian());
    for (const samples of [noise, new Float64Array(4000).fill(0.5), noise.slice(0, 320)]) {
      const trace = recordingTrace({ samples, sampleRate, onsetSeconds: 0 });
      expect(trace.levelsDb.length).toBeLessThanOrEqual(4000);
      for (const values of [trace.levelsDb, trace.lowest, trace.highest])
        expect(values.every((value) => Number.isFinite(value))).toBe(true);
    }
  });
});

describeWithRecordings('the examination of real recordings', () => {
  it('tells the usable end of a hand clap in noise as earlier than the file’s, and gives every band both readings', () => {
    const recording = openRecording(recordingBytes(recordingNames.clap));
    const { trace, ranges, decays, notes } = drain(examine(recording, { fromHz: 20, toHz: 200 }));
    expect(trace.usableEndSeconds!).toBeLessThan(0.5 * trace.durationSeconds);
    expect(notes.map(({ code }) => code)).toContain('noisy');
    expect(ranges.map(({ centreHz }) => centreHz)).toEqual(decays.map(({ centreHz }) => centreHz));
  });
});
