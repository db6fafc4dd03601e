import { describe, expect, it } from 'vitest';
import {
  defaultDiagnosisParams,
  diagnose,
  interpret,
  type Diagnosis,
  type DiagnosisParams,
} from '../../src/diagnosis/index.js';
import { fitResonances } from '../../src/resonance/index.js';
import { createRoom, synthesise, type Room, type SynthParams } from '../../src/room/index.js';
import { recordingFromSamples, Rng, type Recording } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { addMode } from '../support/signals.js';

const sampleRate = 48000;

function diagnosed(
  samples: Float64Array,
  room: Room | null = null,
  more: Partial<DiagnosisParams> = {},
): Diagnosis {
  const recording = recordingFromSamples(samples, sampleRate);
  return drain(diagnose([recording], { ...defaultDiagnosisParams, room, ...more }));
}

/** A click at 20 ms and `modes` from it on, with noise 70 dB below 1. */
function clickWith(modes: readonly (readonly [number, number, number])[], seconds = 2): Float64Array {
  const samples = new Float64Array(seconds * sampleRate);
  for (const [f, decay, amplitude] of modes) addMode(samples, sampleRate, f, decay, amplitude, 0.02);
  samples[0.02 * sampleRate] += 3;
  const rng = new Rng(9);
  return samples.map((value) => value + 3e-4 * rng.gaussian());
}

const ridgeNear = (diagnosis: Diagnosis, frequencyHz: number, withinHz = 1) =>
  diagnosis.ridges.find((ridge) => Math.abs(ridge.frequencyHz - frequencyHz) <= withinHz);

describe('a diagnosis', () => {
  const live = createRoom({ size: { lengthMetres: 5.6, widthMetres: 3.9, heightMetres: 2.7 } });

  it('flags a mode that hangs, with its limit, excess, candidates and remedies', () => {
    const diagnosis = diagnosed(
      clickWith([
        [44, 1.4, 1],
        [30.8, 0.5, 0.7],
        [70, 0.25, 0.7],
        [118, 0.18, 0.5],
      ]),
      live,
    );
    const [worst] = diagnosis.ridges;
    expect(worst.frequencyHz).toBeCloseTo(44, 1);
    expect(worst.decayTimeSeconds).toBeCloseTo(1.4, 1);
    expect(worst.audible).toBe('yes');
    expect(worst.excess).toBeCloseTo(worst.decayTimeSeconds! / worst.limitSeconds!, 9);
    expect(worst.candidates[0].order).toEqual([0, 1, 0]);
    expect(worst.cause).toBe('room-mode');
    expect(worst.seats).toEqual([0]);
    const kinds = worst.remedies.map(({ kind }) => kind);
    expect(kinds).toContain('absorb');
    expect(kinds).toContain('cut');
    expect(kinds).toContain('measure-again');
    // 30.8 Hz at 0.5 s is below every curve and below its neighbours: a resonance, but no ridge.
    expect(ridgeNear(diagnosis, 30.8)).toBeUndefined();
    expect(diagnosis.resonances.some(({ frequencyHz }) => Math.abs(frequencyHz - 30.8) < 0.5)).toBe(true);
    expect(diagnosis.room!.transitionFrequencyHz).toBeGreaterThan(50);
  });

  it('sorts by excess and keeps only what is above the limit', () => {
    const { samples } = synthesise({
      room: live,
      seat: { x: 3.7, y: 3, z: 1.2 },
      source: { x: 0.5, y: 0.4, z: 0.3 },
      noiseDb: -55,
    });
    const { ridges } = diagnosed(samples, live);
    expect(ridges.length).toBeGreaterThan(3);
    ridges.forEach(({ excess }, i) => {
      expect(excess).toBeGreaterThan(1);
      if (i > 0) expect(excess!).toBeLessThanOrEqual(ridges[i - 1].excess!);
    });
  });

  it('names hum as hum, without a decay time or a limit, and leaves the mode beside it alone', () => {
    const samples = clickWith([
      [48, 0.5, 1],
      [75, 0.4, 0.6],
    ]);
    for (const [k, db] of [
      [1, -40],
      [2, -46],
      [3, -50],
    ])
      for (let n = 0; n < samples.length; n++)
        samples[n] += 10 ** (db / 20) * Math.sin((2 * Math.PI * 50 * k * n) / sampleRate + k);
    const diagnosis = diagnosed(samples, live);
    const hum = ridgeNear(diagnosis, 50, 0.2)!;
    expect(hum).toMatchObject({
      cause: 'hum',
      decayTimeSeconds: null,
      limitSeconds: null,
      excess: null,
      candidates: [],
    });
    expect(hum.remedies.map(({ kind, params }) => [kind, params.reason])).toEqual([['measure-again', 'hum']]);
    expect(ridgeNear(diagnosis, 48, 0.5)?.cause).not.toBe('hum');
    expect(
      diagnosis.resonances.find((r) => Math.abs(r.frequencyHz - 48) < 0.3)!.decayTimeSeconds,
    ).toBeCloseTo(0.5, 1);
  });

  it('shows no ridge for a bare click, nor for a click with a second one (a dip, no tail)', () => {
    for (const second of [0, 0.9]) {
      const samples = new Float64Array(2 * sampleRate);
      samples[4800] = 1;
      samples[4800 + Math.round(0.00583 * sampleRate)] += second;
      expect(diagnosed(samples, live).ridges).toEqual([]);
    }
  });

  it('does not call a boost that rings a room mode: Q 16 at 50 Hz rings 0.99 s', () => {
    for (const room of [
      null,
      createRoom({ size: { lengthMetres: 3.43, widthMetres: 4.9, heightMetres: 2.6 } }),
    ]) {
      const samples = boostedClick(50, 16, 12);
      const ridge = ridgeNear(diagnosed(samples, room), 50);
      expect(ridge).toBeDefined();
      expect(ridge!.cause).not.toBe('room-mode');
      expect(ridge!.candidates).toEqual([]);
    }
  });

  it('suspects the sample rate where a known room comes out off by one common ratio: 48 kHz labelled 44.1', () => {
    const params: SynthParams = {
      room: live,
      seat: { x: 4.1, y: 3.3, z: 1.2 },
      source: { x: 0.3, y: 0.3, z: 0.3 },
      absorption: 0.12,
      noiseDb: -60,
    };
    const { samples } = synthesise(params);
    const as = (rate: number): Recording => recordingFromSamples(samples, rate);
    const of = (rate: number) =>
      drain(diagnose([as(rate)], { ...defaultDiagnosisParams, toHz: 120, room: live })).files[0].notes;
    const note = of(44100).find(({ code }) => code === 'rate-suspect');
    expect(note?.params).toMatchObject({ labelledRate: 44100, likelyRate: 48000 });
    expect(note?.params.ratio).toBeCloseTo(44100 / 48000, 6);
    expect(of(48000).some(({ code }) => code === 'rate-suspect')).toBe(false);
  });

  it('says which modes the seat cannot hear: odd orders along x from the middle of 6.0 x 4.5 x 2.6 m', () => {
    const room = createRoom({ size: { lengthMetres: 6, widthMetres: 4.5, heightMetres: 2.6 } });
    const seat = { x: 3, y: 1.4, z: 1.2 };
    const source = { x: 0.3, y: 0.3, z: 0.3 };
    const { samples } = synthesise({ room, seat, source, absorption: 0.25, noiseDb: -55 });
    const recording = recordingFromSamples(samples, sampleRate, { seat, source });
    const diagnosis = drain(diagnose([recording], { ...defaultDiagnosisParams, room }));
    const nodes = diagnosis.files[0].notes.filter(({ code }) => code === 'node');
    const orders = nodes.map(({ params }) => String(params.order));
    for (const order of ['(1,0,0)', '(1,1,0)', '(1,0,1)', '(3,0,0)']) expect(orders).toContain(order);
    expect(orders).not.toContain('(0,1,0)');
    for (const { params } of nodes) expect(params.place).toBe('seat');
    for (const { candidates, frequencyHz: ridgeHz } of diagnosis.ridges)
      for (const { weight, order, frequencyHz } of candidates) {
        // A candidate that is nearly sure is the mode that rings there.
        if (weight > 0.9) expect(Math.abs(frequencyHz - ridgeHz), order.join()).toBeLessThan(0.5);
        expect(weight).toBeLessThan(0.99);
      }
    expect(diagnosis.resonances.some(({ frequencyHz }) => Math.abs(frequencyHz - 28.6) < 0.8)).toBe(false);
  });

  it('needs no new fit where only the room or the limit changes', () => {
    const recording = recordingFromSamples(
      clickWith([
        [44, 1.4, 1],
        [70, 0.3, 0.6],
      ]),
      sampleRate,
    );
    const fit = drain(fitResonances([recording], { fromHz: 20, toHz: 200, volumeCubicMetres: null }));
    const without = drain(interpret([recording], fit, defaultDiagnosisParams));
    const other = drain(
      interpret([recording], fit, { ...defaultDiagnosisParams, room: live, limit: 'target' }),
    );
    expect(without.fit).toBe(fit);
    expect(without.room).toBeNull();
    expect(other.room!.modes.length).toBeGreaterThan(10);
    expect(other.ridges.every(({ limitName }) => limitName !== 'audibility')).toBe(true);
  });

  it('reports progress that never falls and ends below or at 1', () => {
    const recording = recordingFromSamples(clickWith([[44, 1.4, 1]]), sampleRate);
    let last = 0;
    for (const { fraction } of diagnose([recording])) {
      expect(fraction).toBeGreaterThanOrEqual(last - 1e-12);
      expect(fraction).toBeLessThanOrEqual(1);
      last = fraction;
    }
    expect(last).toBeGreaterThan(0.5);
  });

  it('refuses a range that holds nothing', () => {
    expect(() => diagnosed(clickWith([[44, 1, 1]]), null, { fromHz: 100, toHz: 50 })).toThrow(
      expect.objectContaining({ code: 'frequency-range' }),
    );
  });
});

describe('a band that no resonance explains', () => {
  it('is a ridge of unknown cause, without candidates', () => {
    const samples = clickWith([
      [44, 0.4, 1],
      [90, 1.1, 0.5],
      [140, 0.3, 0.4],
    ]);
    const recording = recordingFromSamples(samples, sampleRate);
    const params = { ...defaultDiagnosisParams };
    const fit = drain(fitResonances([recording], { fromHz: 20, toHz: 200, volumeCubicMetres: null }));
    const blind = {
      ...fit,
      resonances: fit.resonances.filter(({ frequencyHz }) => Math.abs(frequencyHz - 90) > 5),
    };
    expect(drain(interpret([recording], fit, params)).ridges.filter((r) => r.resonance === null)).toEqual([]);
    const [ridge, ...others] = drain(interpret([recording], blind, params)).ridges.filter(
      (r) => r.resonance === null,
    );
    expect(others).toEqual([]);
    expect(Math.abs(ridge.frequencyHz - 90)).toBeLessThan(3);
    expect(ridge.decayTimeSeconds).toBeGreaterThan(0.9);
    expect(ridge.decayTimeSeconds).toBeLessThan(1.3);
    expect(ridge).toMatchObject({ cause: 'unknown', candidates: [], audible: 'yes' });
    expect(ridge.remedies[0]).toEqual({ kind: 'measure-again', params: { reason: 'unexplained' } });
  });
});

/** A click through a peaking filter of the W3C Audio EQ Cookbook, with noise 80 dB down. */
function boostedClick(frequencyHz: number, q: number, gainDb: number): Float64Array {
  const a = 10 ** (gainDb / 40);
  const w = (2 * Math.PI * frequencyHz) / sampleRate;
  // The poles ring with Q = q A: to ring with `q` itself the Cookbook's Q is q / A.
  const alpha = Math.sin(w) / (2 * (q / a) * 1);
  const a0 = 1 + alpha / a;
  const b = [(1 + alpha * a) / a0, (-2 * Math.cos(w)) / a0, (1 - alpha * a) / a0];
  const f = [(-2 * Math.cos(w)) / a0, (1 - alpha / a) / a0];
  expect((q * 2.1988) / frequencyHz).toBeCloseTo(0.7, 1);
  const rng = new Rng(4);
  const samples = new Float64Array(2 * sampleRate);
  let s1 = 0;
  let s2 = 0;
  for (let n = 0; n < samples.length; n++) {
    const x = n === 960 ? 1 : 0;
    const y = b[0] * x + s1;
    s1 = b[1] * x - f[0] * y + s2;
    s2 = b[2] * x - f[1] * y;
    samples[n] = y + 1e-5 * rng.gaussian();
  }
  return samples;
}
