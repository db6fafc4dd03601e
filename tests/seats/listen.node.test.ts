import { describe, expect, it } from 'vitest';
import { createRoom, synthesise } from '../../src/room/index.js';
import {
  heardKinds,
  listenJob,
  matchedCut,
  reducedCopy,
  type Heard,
  type HeardKind,
  type Listened,
  type ListenParams,
} from '../../src/seats/index.js';
import {
  bassRootHz,
  convolveJob,
  interpolate,
  limitSoftly,
  listenLevels,
  listenMaterial,
  materialKinds,
  nextPowerOfTwo,
  realFft,
  recordingFromSamples,
  Rng,
} from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { addMode } from '../support/signals.js';

/** Power within a band, of the whole of the samples. */
function powerWithin(samples: ArrayLike<number>, sampleRate: number, fromHz: number, toHz: number): number {
  const size = nextPowerOfTwo(samples.length);
  const input = new Float64Array(size);
  for (let n = 0; n < samples.length; n++) input[n] = samples[n];
  const bins = new Float64Array(2 * size);
  realFft(input, bins);
  let sum = 0;
  for (let k = Math.ceil((fromHz * size) / sampleRate); k <= (toHz * size) / sampleRate; k++)
    sum += bins[2 * k] ** 2 + bins[2 * k + 1] ** 2;
  return sum / size;
}

/** 60 dB decay time between two times, from the power of 50 ms blocks. */
function decayBetween(samples: Float32Array, sampleRate: number, from: number, to: number): number {
  const block = Math.round(0.05 * sampleRate);
  const db = (seconds: number): number => {
    const at = Math.round(seconds * sampleRate);
    let sum = 0;
    for (let n = at; n < at + block; n++) sum += samples[n] ** 2;
    return 10 * Math.log10(sum);
  };
  return (60 * (to - from)) / (db(from) - db(to));
}

const modeHz = 43.9;
const modeSeconds = 1.4;
const rate = 48000;

/** A click with one mode that hangs and some that do not. */
function recording() {
  const samples = new Float64Array(2 * rate);
  const onset = 0.05;
  samples[onset * rate] = 1;
  for (const f of [31, 57, 64, 72, 88, 101, 120]) addMode(samples, rate, f, 0.15, 0.02, onset);
  addMode(samples, rate, modeHz, modeSeconds, 0.02, onset);
  return recordingFromSamples(samples, rate, { label: 'made' });
}

const params = (change: Partial<ListenParams> = {}): ListenParams => ({
  material: 'bass-line',
  centreHz: modeHz,
  response: recording(),
  untilSeconds: null,
  bands: [matchedCut(modeHz, modeSeconds, 0.3)],
  mode: { frequencyHz: modeHz, decayTimeSeconds: modeSeconds },
  ...change,
});

const heardAs = ({ heard }: Listened, kind: HeardKind): Heard => heard.find((one) => one.kind === kind)!;

describe('the material', () => {
  it('is the same samples every time, within full scale, and made only of what it says', () => {
    for (const kind of materialKinds) {
      const one = listenMaterial(kind, 50, rate);
      expect(listenMaterial(kind, 50, rate).samples).toEqual(one.samples);
      const peak = one.samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
      expect(peak).toBeGreaterThan(0.3);
      expect(peak).toBeLessThan(1);
      const all = powerWithin(one.samples, rate, 0, rate / 2);
      expect(powerWithin(one.samples, rate, 15, 1000) / all, kind).toBeGreaterThan(0.999);
    }
  });

  it('takes the note next to the ridge for its key: F1 is 43.65 Hz and A1 55 Hz (ISO 16, equal temperament)', () => {
    expect(bassRootHz(43.9)).toBeCloseTo(43.6535, 3);
    expect(bassRootHz(54)).toBeCloseTo(55, 6);
    // Brought down by octaves into the range of a bass.
    expect(bassRootHz(110)).toBeCloseTo(55, 6);
    expect(bassRootHz(27.5)).toBeCloseTo(55, 6);
  });

  it('walks in semitones through the frequency, and bursts at it and half an octave about', () => {
    const walk = listenMaterial('tone-walk', 50, rate).notes.map(({ frequencyHz }) => frequencyHz);
    expect(walk).toHaveLength(13);
    expect(walk[6]).toBeCloseTo(50, 9);
    expect(walk[12] / walk[0]).toBeCloseTo(2, 9);
    const burst = listenMaterial('burst', 50, rate);
    expect(burst.notes.map(({ frequencyHz }) => frequencyHz)).toEqual([
      50 * Math.SQRT1_2,
      50,
      50 * Math.SQRT2,
    ]);
    const [, second] = burst.notes;
    const at = Math.round(second.startSeconds * rate);
    const alone = burst.samples.slice(at, at + Math.round(second.seconds * rate));
    // Five cycles in a raised cosine have a -3 dB width of 0.43 octave (our own computation): most lies within an octave.
    expect(powerWithin(alone, rate, 35, 71) / powerWithin(alone, rate, 0, 1000)).toBeGreaterThan(0.95);
  });

  it('leaves out tones that no bass source plays', () => {
    expect(listenMaterial('tone-walk', 24, rate).notes.every(({ frequencyHz }) => frequencyHz >= 20)).toBe(
      true,
    );
  });
});

describe('the convolution', () => {
  it('equals the sum of products it stands for', () => {
    const rng = new Rng(3);
    const signal = new Float64Array(3000).map(() => rng.gaussian());
    for (const length of [1, 7, 700, 2048, 2500]) {
      const response = new Float64Array(length).map(() => rng.gaussian());
      const got = drain(convolveJob(signal, response));
      expect(got).toHaveLength(signal.length + length - 1);
      for (const n of [0, 1, length - 1, 1500, 2999, got.length - 1]) {
        let sum = 0;
        for (let k = 0; k < length; k++) sum += response[k] * (signal[n - k] ?? 0);
        expect(got[n], `${length} at ${n}`).toBeCloseTo(sum, 8);
      }
    }
  });
});

describe('the interpolation', () => {
  it('keeps a tone in its pass band and adds no image above -75 dB', () => {
    const low = Float64Array.from({ length: 3000 }, (_, n) => Math.sin((2 * Math.PI * 200 * n) / 1520.7));
    const high = interpolate(low, 1520.7, 12000, 380);
    let [error, count] = [0, 0];
    for (let m = 2000; m < high.length - 2000; m++, count++)
      error += (high[m] - Math.sin((2 * Math.PI * 200 * m) / 12000)) ** 2;
    expect(10 * Math.log10((2 * error) / count)).toBeLessThan(-75);
  });
});

describe('the limiter', () => {
  it('changes nothing below its knee and lets nothing pass its ceiling, however loud', () => {
    const { kneeDb, ceilingDb } = listenLevels;
    const quiet = Float64Array.from({ length: 1000 }, (_, n) => 0.24 * Math.sin(n / 7));
    const kept = quiet.slice();
    expect(limitSoftly(kept)).toBe(0);
    expect(kept).toEqual(quiet);
    const loud = Float64Array.from({ length: 1000 }, (_, n) => 100 * Math.sin(n / 7));
    expect(limitSoftly(loud)).toBeGreaterThan(40);
    const peak = loud.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    expect(20 * Math.log10(peak)).toBeLessThanOrEqual(ceilingDb + 1e-9);
    expect(20 * Math.log10(peak)).toBeGreaterThan(kneeDb);
    expect(limitSoftly(Float64Array.of(NaN, 0))).toBe(0);
  });

  it('bends without a step: a rising input gives a rising output', () => {
    const ramp = Float64Array.from({ length: 2000 }, (_, n) => n / 1000);
    limitSoftly(ramp);
    for (let n = 1; n < ramp.length; n++) {
      expect(ramp[n]).toBeGreaterThanOrEqual(ramp[n - 1]);
      expect(ramp[n] - ramp[n - 1]).toBeLessThan(0.00101);
    }
  });
});

describe('what is heard', () => {
  const result = drain(listenJob(params()));

  it('has every sound at one mean power, below the knee, and of one length', () => {
    expect(result.heard.map(({ kind }) => kind)).toEqual([...heardKinds]);
    const means = result.heard.map(({ meanDb }) => meanDb);
    expect(Math.max(...means) - Math.min(...means)).toBeLessThan(0.01);
    for (const { samples, peakDb, limitedDb } of result.heard) {
      expect(samples).toHaveLength(Math.round(result.seconds * result.sampleRate));
      expect(peakDb).toBeLessThanOrEqual(listenLevels.kneeDb + 1e-6);
      expect(limitedDb).toBe(0);
    }
    expect(
      Math.max(...result.heard.map(({ peakDb, meanDb }) => Math.min(-peakDb - 12, -meanDb - 26))),
    ).toBeLessThan(0.1);
  });

  it('rings on after the last note as long as the mode does: 30 dB of 1.4 s', () => {
    const end = result.notes[result.notes.length - 1];
    const from = end.startSeconds + end.seconds + 0.25;
    const alone = heardAs(result, 'mode').samples;
    expect(decayBetween(alone, rate, from, from + 0.8)).toBeCloseTo(modeSeconds, 1);
    expect(decayBetween(heardAs(result, 'room').samples, rate, from, from + 0.8)).toBeGreaterThan(1.25);
    // The cut takes the mode to 0.3 s; what is left of the others beats with it.
    expect(decayBetween(heardAs(result, 'treated').samples, rate, from, from + 0.3)).toBeLessThan(0.45);
    const rings = Object.fromEntries(result.heard.map(({ kind, ringsSeconds }) => [kind, ringsSeconds]));
    expect(rings.dry).toBeLessThan(0.03);
    expect(rings.mode).toBeGreaterThan(0.5);
    expect(rings.room).toBeGreaterThan(rings.treated + 0.2);
  });

  it('through a lone click is the dry sound itself', () => {
    const click = new Float64Array(rate);
    click[480] = 0.5;
    const response = { ...recordingFromSamples(click, rate), onsetSeconds: 0.01 };
    const got = drain(listenJob(params({ response, bands: [], mode: null })));
    const [dry, room] = got.heard;
    expect(got.heard).toHaveLength(2);
    // 3 ms of lead are kept before the onset.
    const lag = Math.round(0.003 * rate);
    for (let n = 0; n < dry.samples.length - lag; n += 97)
      expect(room.samples[n + lag]).toBeCloseTo(dry.samples[n], 5);
  });

  it('of a saved study reaches as far as its samples, dry and through the room', () => {
    const response = reducedCopy(recording());
    const low = drain(listenJob(params({ response })));
    expect(low.toHz).toBe(250);
    expect(low.sampleRate).toBe(12000);
    for (const { samples, kind } of low.heard) {
      const all = powerWithin(samples, 12000, 0, 6000);
      expect(powerWithin(samples, 12000, 500, 6000) / all, kind).toBeLessThan(1e-5);
    }
    // The same mode, the same decay as from the file.
    const end = low.notes[low.notes.length - 1];
    const from = end.startSeconds + end.seconds + 0.25;
    expect(decayBetween(heardAs(low, 'room').samples, 12000, from, from + 0.8)).toBeGreaterThan(1.25);
    // Dry and room begin together, within the filter's own rise.
    const first = (kind: HeardKind): number => {
      const { blocksDb } = heardAs(low, kind);
      return blocksDb.findIndex((db) => db > -20);
    };
    expect(Math.abs(first('room') - first('dry'))).toBeLessThanOrEqual(1);
  });

  it('without a response is dry, and the mode alone', () => {
    const got = drain(listenJob(params({ response: null })));
    expect(got.heard.map(({ kind }) => kind)).toEqual(['dry', 'mode']);
    expect(got.responseSeconds).toBeNull();
  });

  it('leaves what is noise out of the response', () => {
    const whole = drain(listenJob(params({ untilSeconds: null })));
    const cut = drain(listenJob(params({ untilSeconds: 0.5 })));
    expect(whole.responseSeconds!).toBeCloseTo(1.95, 2);
    expect(cut.responseSeconds!).toBeCloseTo(0.5, 2);
    expect(heardAs(cut, 'room').ringsSeconds).toBeLessThan(heardAs(whole, 'room').ringsSeconds);
  });

  it('of a predicted room rings with its decay: (1,0,0) of 5 x 4 x 3 m at 0.1 lasts 1.638 s (Morse and Bolt 1944)', () => {
    const room = createRoom({
      size: { lengthMetres: 5, widthMetres: 4, heightMetres: 3 },
      speedOfSoundMetresPerSecond: 343,
    });
    const synth = synthesise({
      room,
      seat: { x: 4.9, y: 2, z: 1.5 },
      source: { x: 0.1, y: 2, z: 1.5 },
      seconds: 3,
      absorption: 0.1,
    });
    const got = drain(
      listenJob(params({ material: 'burst', centreHz: 34.3, response: synth, bands: [], mode: null })),
    );
    const [, burst] = got.notes;
    const from = burst.startSeconds + burst.seconds + 0.3;
    const decay = decayBetween(heardAs(got, 'room').samples, rate, from, from + 0.6);
    expect(decay / 1.638).toBeGreaterThan(0.9);
    expect(decay / 1.638).toBeLessThan(1.1);
  });
});
