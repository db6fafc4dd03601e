import { describe, expect, it } from 'vitest';
import { fit, mode, nearest, noise, sumOf } from './support.js';

describe('inputs that break a naive estimator', () => {
  it.each([
    [60, 0.01],
    [45, 0.04],
    [35, 0.12],
  ])('reads one mode of 0.40 s whose peak stands %d dB above the noise of its octave', (db, tolerance) => {
    const found = fit(sumOf(mode(50, 0.4), noise(10 ** (-db / 20), 35, 71)));
    const found50 = nearest(found, 50);
    expect(found50?.frequencyHz).toBeCloseTo(50, 0);
    expect(Math.abs((found50?.decayTimeSeconds ?? 0) / 0.4 - 1)).toBeLessThan(tolerance);
  });

  it('is not confident of it at 25 dB', () => {
    const found = fit(sumOf(mode(50, 0.4), noise(10 ** (-25 / 20), 35, 71)));
    expect(found.resonances.filter(({ kind }) => kind === 'resolved')).toEqual([]);
  });

  it('finds no room in a bare click without any noise, and divides by no floor of zero', () => {
    const click = new Float64Array(96000);
    click[4800] = 1;
    const found = fit(click, 48000, 0.1);
    expect(found.resonances.filter(({ kind }) => kind !== 'source')).toEqual([]);
    expect(found.noiseSd.every(Number.isFinite)).toBe(true);
    const late = fit(click, 48000, 0.09);
    expect(late.resonances.filter(({ kind }) => kind !== 'source')).toEqual([]);
  });

  it('parts 40 and 43 Hz, both of 0.6 s, without noise', () => {
    const found = fit(sumOf(mode(40, 0.6), mode(43, 0.6)));
    const strong = found.resonances.filter(({ levelDb }) => levelDb > -40);
    expect(strong).toHaveLength(2);
    for (const [k, f] of [40, 43].entries()) {
      expect(Math.abs(strong[k].frequencyHz - f)).toBeLessThan(0.02);
      expect(Math.abs((strong[k].decayTimeSeconds ?? 0) - 0.6)).toBeLessThan(0.006);
    }
  });

  it('names hum as hum beside a mode of 0.5 s', () => {
    const hum = Float64Array.from({ length: 96000 }, (_, n) =>
      [50, 100, 150].reduce((sum, f) => sum + 0.01 * Math.sin((2 * Math.PI * f * n) / 48000 + f), 0),
    );
    const found = fit(sumOf(mode(48, 0.5), hum, noise(0.0005, 20, 200)));
    const lines = found.resonances.filter(({ kind }) => kind === 'hum');
    expect(lines.map(({ frequencyHz }) => Math.round(frequencyHz))).toEqual([50, 100, 150]);
    for (const line of lines) {
      expect(line.decayTimeSeconds).toBeNull();
      expect(line.decayTimeSdSeconds).toBeNull();
      expect(line.q).toBeNull();
    }
    const found48 = nearest(found, 48);
    expect(Math.abs((found48?.decayTimeSeconds ?? 0) - 0.5)).toBeLessThan(0.01);
    expect(found.notes.filter(({ code }) => code === 'hum')).toHaveLength(3);
  });

  it('tells two slopes at one frequency', () => {
    const found = fit(sumOf(mode(45, 0.3), mode(45, 1.6, 10 ** (-18 / 20)), noise(0.0005, 20, 200)));
    const slopes = nearest(found, 45);
    expect(slopes?.kind).toBe('two-slopes');
    expect(slopes?.decayTimeSeconds).toBeCloseTo(1.6, 1);
    expect(slopes?.decayTimeEarlySeconds).toBeCloseTo(0.3, 1);
  });

  it.each([8000, 44100, 48000, 96000, 192000])('reads the same response at %d Hz', (rate) => {
    const found = fit(
      sumOf(
        mode(33, 0.8, 1, rate),
        mode(57, 0.5, 0.7, rate),
        mode(92, 0.35, 0.8, rate),
        noise(0.001, 20, 200, 3, rate),
      ),
      rate,
    );
    for (const [f, T] of [
      [33, 0.8],
      [57, 0.5],
      [92, 0.35],
    ]) {
      const one = nearest(found, f);
      expect(Math.abs((one?.frequencyHz ?? 0) - f)).toBeLessThan(0.2);
      expect(Math.abs((one?.decayTimeSeconds ?? 0) / T - 1)).toBeLessThan(0.02);
    }
  });

  it.each([1000, 1249, 1251, 11025, 384000])('reads any rate: %d Hz', (rate) => {
    const found = fit(sumOf(mode(41, 0.6, 1, rate), noise(0.001, 20, 200, 3, rate)), rate);
    expect(Math.abs((nearest(found, 41)?.frequencyHz ?? 0) - 41)).toBeLessThan(0.05);
  });

  it.each([1e-9, 1e9])('reads any scale: %d', (scale) => {
    const samples = sumOf(mode(41, 0.6), mode(70, 0.4), noise(0.001, 20, 200));
    const plain = fit(samples);
    const scaled = fit(samples.map((value) => value * scale));
    expect(scaled.resonances).toHaveLength(plain.resonances.length);
    scaled.resonances.forEach((one, k) => {
      expect(one.frequencyHz).toBeCloseTo(plain.resonances[k].frequencyHz, 6);
      expect(one.amplitudes[0] / scale).toBeCloseTo(plain.resonances[k].amplitudes[0], 6);
    });
    expect(scaled.noiseSd[0] / scale / plain.noiseSd[0]).toBeCloseTo(1, 6);
  });

  it('states amplitude and phase at the onset', () => {
    const found = fit(sumOf(mode(41, 0.6, 0.5), noise(0.0005, 20, 200)));
    const one = nearest(found, 41);
    expect(one?.amplitudes[0]).toBeCloseTo(0.5, 2);
    // A sine is a cosine a quarter turn late.
    expect(one?.phasesRadians[0]).toBeCloseTo(-Math.PI / 2, 1);
    expect(Math.abs((one?.amplitudes[0] ?? 0) - 0.5)).toBeLessThan(4 * (one?.amplitudeSd[0] ?? 0));
  });
});
