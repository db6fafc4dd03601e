import { describe, expect, it } from 'vitest';
import { createRoom, modeDecayTime, synthesise, type SynthParams } from '../../src/room/index.js';
import { onsetIndex } from '../../src/signal/index.js';

const size = { lengthMetres: 5.3, widthMetres: 4.1, heightMetres: 2.7 };
const room = createRoom({ size, absorption: 0.1 });
const source = { x: 0.4, y: 0.5, z: 0.3 };
const seat = { x: 3.6, y: 2.3, z: 1.2 };
const params: SynthParams = { room, seat, source, seconds: 1 };

/** Level of a response at a frequency: the magnitude of its Fourier transform. */
function magnitudeAt(samples: Float64Array, sampleRate: number, frequencyHz: number): number {
  const w = (2 * Math.PI * frequencyHz) / sampleRate;
  let re = 0;
  let im = 0;
  samples.forEach((value, n) => {
    re += value * Math.cos(w * n);
    im -= value * Math.sin(w * n);
  });
  return Math.hypot(re, im);
}

describe('the synthesised impulse response', () => {
  it('equals the sum of image sources in a rigid box (Allen and Berkley, J. Acoust. Soc. Am. 65:943, 1979)', () => {
    const sampleRate = 8000;
    const span = 0.08;
    const rigid = createRoom({ size, absorption: 0 });
    const rollOff = { highPassHz: 40, highPassOrder: 2, lowPassHz: 120, lowPassOrder: 4 } as const;
    const { samples } = synthesise({
      ...params,
      room: rigid,
      sampleRate,
      rollOff,
      leadSeconds: 0,
      toHz: 800,
    });
    const speed = rigid.speedOfSoundMetresPerSecond;
    // The source's own pulse in free field, which every image repeats at 1 / r.
    const pulse = butterworthPulse(sampleRate, span);
    const images = new Float64Array(Math.round(span * sampleRate));
    const reach = Math.ceil((speed * span) / 2.7 / 2) + 1;
    for (let i = -reach; i <= reach; i++)
      for (let j = -reach; j <= reach; j++)
        for (let k = -reach; k <= reach; k++)
          for (const [sx, sy, sz] of signs) {
            const r = Math.hypot(
              2 * i * size.lengthMetres + sx * source.x - seat.x,
              2 * j * size.widthMetres + sy * source.y - seat.y,
              2 * k * size.heightMetres + sz * source.z - seat.z,
            );
            pulse(images, (r / speed) * sampleRate, 1 / r);
          }
    const peak = images.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    let worst = 0;
    for (let n = 0; n < images.length * 0.9; n++) worst = Math.max(worst, Math.abs(images[n] - samples[n]));
    expect(worst / peak).toBeLessThan(0.02);
  });

  it('begins at the time of flight, and the onset is found there', () => {
    const { samples, sampleRate, onsetSeconds } = synthesise(params);
    const flight = Math.hypot(3.2, 1.8, 0.9) / room.speedOfSoundMetresPerSecond;
    expect(onsetSeconds).toBeCloseTo(0.02 + flight, 9);
    expect(Math.abs(onsetIndex(samples, sampleRate) / sampleRate - onsetSeconds)).toBeLessThan(0.0005);
    const before = samples.slice(0, Math.floor(onsetSeconds * sampleRate) - 1);
    const most = samples.reduce((max, value) => Math.max(max, Math.abs(value)), 0);
    expect(before.reduce((max, value) => Math.max(max, Math.abs(value)), 0)).toBeLessThan(0.01 * most);
  });

  it('finds the onset of a bass source of 4th order within 2 ms', () => {
    const rollOff = { highPassHz: 24, lowPassHz: 120 } as const;
    const { samples, sampleRate, onsetSeconds } = synthesise({ ...params, rollOff, noiseDb: -60 });
    expect(Math.abs(onsetIndex(samples, sampleRate) / sampleRate - onsetSeconds)).toBeLessThan(0.002);
  });

  it('is the sum of the modes that it reports, from shortly after the onset on', () => {
    const { samples, sampleRate, onsetSeconds, modes } = synthesise({ ...params, sampleRate: 8000 });
    let error = 0;
    let energy = 0;
    for (let n = Math.round((onsetSeconds + 0.15) * sampleRate); n < samples.length; n++) {
      const t = n / sampleRate - onsetSeconds;
      let sum = 0;
      for (const { amplitude, decayTimeSeconds, frequencyHz, phaseRadians } of modes)
        sum +=
          amplitude *
          Math.exp((-6.907755279 * t) / decayTimeSeconds) *
          Math.cos(2 * Math.PI * frequencyHz * t + phaseRadians);
      error += (samples[n] - sum) ** 2;
      energy += sum ** 2;
    }
    // What is left is the 22 Hz high-pass itself, which rings too.
    expect(10 * Math.log10(error / energy)).toBeLessThan(-35);
    expect(modes[0].decayTimeSeconds).toBeCloseTo(
      modeDecayTime([1, 0, 0], size, room.speedOfSoundMetresPerSecond, [0.1, 0.1, 0.1, 0.1, 0.1, 0.1])!,
      9,
    );
  });

  it('is the same with seat and source exchanged (reciprocity)', () => {
    const there = synthesise(params).samples;
    const back = synthesise({ ...params, seat: source, source: seat }).samples;
    there.forEach((value, n) => expect(Math.abs(value - back[n])).toBeLessThan(1e-12));
  });

  it('has the same response at every sample rate', () => {
    const at = (sampleRate: number, f: number) =>
      magnitudeAt(synthesise({ ...params, sampleRate }).samples, sampleRate, f);
    for (const f of [33.1, 47.9, 72, 118])
      for (const rate of [8000, 44100, 192000])
        expect(Math.abs(20 * Math.log10(at(rate, f) / at(48000, f)))).toBeLessThan(0.05);
  });

  it('puts the noise and the hum where they are asked for', () => {
    const quiet = synthesise(params);
    const { samples, onsetSeconds } = synthesise({ ...params, noiseDb: -40 });
    const peak = quiet.samples.reduce(
      (m, v, n) => (n > onsetSeconds * 48000 + 500 ? Math.max(m, Math.abs(v)) : m),
      0,
    );
    let power = 0;
    samples.forEach((value, n) => (power += (value - quiet.samples[n]) ** 2 / samples.length));
    const inBand = 10 * Math.log10((power * 180) / 24000) - 20 * Math.log10(peak);
    expect(Math.abs(inBand + 40)).toBeLessThan(3);
    const hum = { mainsHz: 50, levelsDb: [-30, -50] };
    const humming = synthesise({ ...params, hum });
    const only = humming.samples.map((value, n) => value - quiet.samples[n]);
    expect(20 * Math.log10(magnitudeAt(only, 48000, 50) / magnitudeAt(only, 48000, 100))).toBeCloseTo(20, 1);
  });

  it('gives the same samples for the same seed and others for another', () => {
    const make = (seed: number) => synthesise({ ...params, noiseDb: -50, seed, spread: { decayLog: 0.2 } });
    expect(make(3).samples).toEqual(make(3).samples);
    expect(make(3).samples).not.toEqual(make(4).samples);
  });

  it('refuses a seat outside the room, an impossible rate and no length', () => {
    const code = (more: Partial<SynthParams>) => () => synthesise({ ...params, ...more });
    expect(code({ seat: { x: 6, y: 1, z: 1 } })).toThrow(expect.objectContaining({ code: 'place-outside' }));
    expect(code({ sampleRate: 10 })).toThrow(expect.objectContaining({ code: 'rate' }));
    expect(code({ seconds: 0 })).toThrow(expect.objectContaining({ code: 'too-short' }));
    expect(code({ seconds: 1e9 })).toThrow(expect.objectContaining({ code: 'too-long' }));
  });
});

const signs = [-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [-1, 1].map((z) => [x, y, z] as const)));

/**
 * Adds the source's own pulse at a place between samples, times a gain: 2nd-order Butterworth high-pass at 40 Hz and
 * 4th-order low-pass at 120 Hz, as a sum of its analogue poles' exponentials by partial fractions.
 */
function butterworthPulse(sampleRate: number, span: number) {
  const wh = 2 * Math.PI * 40;
  const wl = 2 * Math.PI * 120;
  const poles: [number, number][] = [];
  for (const angle of [135]) poles.push([wh * Math.cos(rad(angle)), wh * Math.sin(rad(angle))]);
  for (const angle of [112.5, 157.5]) poles.push([wl * Math.cos(rad(angle)), wl * Math.sin(rad(angle))]);
  const all = poles.flatMap(([re, im]) => [
    [re, im],
    [re, -im],
  ]);
  // Residue of s^2 wl^4 / prod (s - p).
  const residues = all.map(([re, im], i) => {
    let [nr, ni] = [re * re - im * im, 2 * re * im];
    all.forEach(([qr, qi], j) => {
      if (i === j) return;
      const [dr, di] = [re - qr, im - qi];
      const square = dr * dr + di * di;
      [nr, ni] = [(nr * dr + ni * di) / square, (ni * dr - nr * di) / square];
    });
    return [nr * wl ** 4, ni * wl ** 4];
  });
  return (output: Float64Array, place: number, gain: number): void => {
    for (let n = Math.max(0, Math.ceil(place)); n < Math.min(output.length, span * sampleRate); n++) {
      const t = (n - place) / sampleRate;
      let sum = 0;
      all.forEach(([re, im], i) => {
        const [rr, ri] = residues[i];
        sum += Math.exp(re * t) * (rr * Math.cos(im * t) - ri * Math.sin(im * t));
      });
      output[n] += (gain * sum) / sampleRate;
    }
  };
}

function rad(degrees: number): number {
  return (degrees * Math.PI) / 180;
}
