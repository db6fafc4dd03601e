import { describe, expect, it } from 'vitest';
import { ridgeFit, type RidgeFit, type RidgeTarget } from '../../src/diagnosis/index.js';
import { fitResonances, type Resonance } from '../../src/resonance/index.js';
import { openRecording, recordingFromSamples, Rng, type Recording } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';
import { addMode } from '../support/signals.js';

const sampleRate = 4000;
const range = { fromHz: 20, toHz: 200, volumeCubicMetres: null };

/** 42 Hz of 0.8 s among others, over noise. */
function roomOf(noiseSd: number): Recording {
  const samples = new Float64Array(2.5 * sampleRate);
  const random = new Rng(2);
  for (let n = 0; n < samples.length; n++) samples[n] = noiseSd * random.gaussian();
  for (const [f, decay, a] of [
    [42, 0.8, 0.3],
    [53, 0.3, 0.3],
    [71, 0.4, 0.2],
    [96, 0.3, 0.2],
  ])
    addMode(samples, sampleRate, f, decay, a, 0.05);
  return recordingFromSamples(samples, sampleRate);
}

const targetOf = (
  { frequencyHz, decayTimeSeconds, decayTimeSdSeconds }: Resonance,
  resonance: number,
): RidgeTarget => ({ frequencyHz, resonance, decayTimeSeconds, decayTimeSdSeconds });

const read = (recording: Recording, hertz: number): RidgeFit & { decaySeconds: number } => {
  const fit = drain(fitResonances([recording], range));
  const resonance = fit.resonances.findIndex(({ frequencyHz }) => Math.abs(frequencyHz - hertz) < 0.5);
  expect(resonance, `a resonance at ${hertz} Hz`).toBeGreaterThanOrEqual(0);
  const target = targetOf(fit.resonances[resonance], resonance);
  return { ...drain(ridgeFit(recording, fit, target)), decaySeconds: target.decayTimeSeconds! };
};

const levelAt = (fit: RidgeFit, levels: Float32Array, seconds: number): number =>
  levels[fit.timesSeconds.findIndex((t) => t >= seconds - 1e-9)];

describe('the fit of one ridge beside its sound', () => {
  it('falls by 60 dB in its decay time, and lies on the recording until that sinks into the noise', () => {
    const fit = read(roomOf(1e-4), 42);
    const fitted = fit.fittedDb!;
    const fall = levelAt(fit, fitted, 0.2) - levelAt(fit, fitted, 0.5);
    expect(fall).toBeCloseTo((60 * 0.3) / fit.decaySeconds, 1);
    let compared = 0;
    for (let t = 0.15; t < fit.sinksSeconds; t += 0.05) {
      if (levelAt(fit, fitted, t) < fit.floorDb + 20) continue;
      expect(Math.abs(levelAt(fit, fitted, t) - levelAt(fit, fit.levelsDb, t)), `${t} s`).toBeLessThan(1);
      compared++;
    }
    expect(compared).toBeGreaterThan(8);
    // Where the fitted line crosses the floor the recording is noise.
    expect(Math.abs(levelAt(fit, fitted, fit.sinksSeconds) - fit.floorDb)).toBeLessThan(4);
  });

  it('leaves over little where the fit explains the sound', () => {
    const fit = read(roomOf(1e-4), 42);
    const left = levelAt(fit, fit.residualDb, 0.25) - levelAt(fit, fit.levelsDb, 0.25);
    expect(left).toBeLessThan(-25);
    expect(levelAt(fit, fit.togetherDb, 0.25) - levelAt(fit, fit.levelsDb, 0.25)).toBeCloseTo(0, 0);
  });

  it('sinks earlier in more noise, and to the end of the file in silence', () => {
    const quiet = read(roomOf(1e-4), 42);
    const loud = read(roomOf(3e-3), 42);
    expect(loud.sinksSeconds).toBeLessThan(quiet.sinksSeconds - 0.2);
    expect(loud.floorDb).toBeGreaterThan(quiet.floorDb + 20);
    const silent = read(roomOf(0), 42);
    expect(silent.sinksSeconds).toBeCloseTo(silent.endSeconds, 6);
  });

  it('states the stretch that was fitted, and a band no narrower than its decay needs', () => {
    const long = read(roomOf(1e-4), 42);
    const short = read(roomOf(1e-4), 53);
    expect(long.fitFromSeconds).toBeGreaterThan(0);
    expect(long.fitToSeconds).toBeGreaterThan(0.5);
    for (const fit of [long, short]) expect(fit.bandwidthHz * fit.decaySeconds).toBeGreaterThanOrEqual(3.99);
  });

  it('shows a band without a resonance too, with no line that was not fitted', () => {
    const recording = roomOf(1e-4);
    const fit = drain(fitResonances([recording], range));
    const band = drain(
      ridgeFit(recording, fit, {
        frequencyHz: 130,
        resonance: null,
        decayTimeSeconds: null,
        decayTimeSdSeconds: null,
      }),
    );
    expect(band.fittedDb).toBeNull();
    expect(band.levelsDb.every((level) => Number.isFinite(level))).toBe(true);
  });
});

describeWithRecordings('the fits of real recordings', () => {
  it('follow the sound of each slow ridge while it stands clear of the noise', () => {
    const offs: number[] = [];
    for (const name of recordingNames.corners) {
      const recording = openRecording(recordingBytes(name));
      const fit = drain(fitResonances([recording], range));
      fit.resonances.forEach((one, resonance) => {
        const { decayTimeSeconds, rhoDb } = one;
        if (decayTimeSeconds === null || decayTimeSeconds < 0.35 || rhoDb < 45) return;
        const ridge = drain(ridgeFit(recording, fit, targetOf(one, resonance)));
        for (let t = 0.1; t < Math.min(0.35, ridge.sinksSeconds); t += 0.05)
          offs.push(Math.abs(levelAt(ridge, ridge.togetherDb, t) - levelAt(ridge, ridge.levelsDb, t)));
      });
    }
    offs.sort((a, b) => a - b);
    expect(offs.length).toBeGreaterThan(24);
    // Between two beats the level is what little neighbours leave of each other.
    expect(offs[offs.length >> 1]).toBeLessThan(1);
    expect(offs[Math.floor(0.8 * offs.length)]).toBeLessThan(2);
  });
});
