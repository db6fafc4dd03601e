import { describe, expect, it } from 'vitest';
import { diagnose } from '../../src/diagnosis/index.js';
import { fitResonances } from '../../src/resonance/index.js';
import { createRoom, synthesise } from '../../src/room/index.js';
import {
  decodeWav,
  deconvolve,
  defaultSweep,
  encodeWav,
  hashOf,
  makeSweep,
  openRecording,
  recordingFromSamples,
  responsesOfSweep,
  Rng,
  sweepLaw,
  type SweepParams,
} from '../../src/signal/index.js';
import { command } from '../support/command.js';
import { drain } from '../support/drain.js';
import { bandErrorDb, convolved, distorted, peakOf } from '../support/loudspeaker.js';
import { addMode } from '../support/signals.js';

const rate = 8000;
const params: SweepParams = { ...defaultSweep, sampleRate: rate, seconds: 8, toHz: 800 };

/** The invented live room of a community radio station, without noise. */
const room = synthesise({
  room: createRoom({ size: { lengthMetres: 5.6, widthMetres: 3.9, heightMetres: 2.7 } }),
  seat: { x: 4.1, y: 3.3, z: 1.2 },
  source: { x: 0.4, y: 0.5, z: 0.3 },
  absorption: 0.12,
  sampleRate: rate,
  seconds: 3,
});

/** The room's answer to a sweep with harmonics, and white noise 70 dB below its largest sample. */
function recorded(shares: readonly number[], response = room.samples, noiseDb = -70): Float64Array {
  const heard = convolved(distorted(params, shares), response);
  const rng = new Rng(7);
  const sd = peakOf(heard) * 10 ** (noiseDb / 20);
  return heard.map((v) => v + sd * rng.gaussian());
}

describe('a sweep', () => {
  it('begins and ends at zero and keeps to its level', () => {
    const sweep = makeSweep(params);
    expect(sweep[0]).toBe(0);
    expect(Math.abs(sweep[sweep.length - 1])).toBeLessThan(1e-3);
    expect(20 * Math.log10(peakOf(sweep))).toBeCloseTo(-12, 1);
  });

  it('is never made louder than 3 dB below full scale, nor past the rate', () => {
    for (const change of [{ levelDbFs: 0 }, { toHz: 7000 }, { fromHz: 900 }, { seconds: 0.1 }])
      expect(() => makeSweep({ ...params, ...change })).toThrow(
        expect.objectContaining({ code: 'sweep-bounds' }),
      );
  });

  it('is recognised from its samples, also behind silence, as 16 bits and in noise', () => {
    const sweep = makeSweep(params);
    const rng = new Rng(2);
    const forms = [
      sweep,
      Float64Array.from([...new Float64Array(rate), ...sweep, ...new Float64Array(rate)]),
      sweep.map((v) => Math.round(v * 2 ** 15) / 2 ** 15),
      sweep.map((v) => v + 1e-4 * rng.gaussian()),
    ];
    for (const [i, samples] of forms.entries()) {
      const law = sweepLaw(samples, rate);
      // Its ends are faded, so that the first and the last third of a semitone are not seen.
      expect(Math.abs(law.fromHz / 15 - 1), `${i}`).toBeLessThan(0.06);
      expect(Math.abs(law.toHz / 800 - 1), `${i}`).toBeLessThan(0.03);
      const constant = (of: SweepParams) => of.seconds / Math.log(of.toHz / of.fromHz);
      expect(Math.abs(constant(law) / constant(params) - 1), `${i}`).toBeLessThan(0.01);
    }
    expect(sweepLaw(forms[1], rate).startSeconds).toBeGreaterThan(0.99);
  });

  it('that rises by so many hertz per second, noise, and a steady tone are not taken for one', () => {
    const rng = new Rng(3);
    const forms = [
      Float64Array.from({ length: 8 * rate }, (_, n) =>
        Math.sin(2 * Math.PI * (15 + (385 / 16) * (n / rate)) * (n / rate)),
      ),
      Float64Array.from({ length: 2 * rate }, () => rng.gaussian()),
      Float64Array.from({ length: 2 * rate }, (_, n) => Math.sin((2 * Math.PI * 50 * n) / rate)),
      new Float64Array(rate),
    ];
    for (const samples of forms)
      expect(() => sweepLaw(samples, rate)).toThrow(
        expect.objectContaining({ code: 'sweep-not-exponential' }),
      );
  });
});

describe('the response worked out of a recorded sweep', () => {
  it('is that of the room within -60 dB in band, through 3 % second and 1 % third harmonic and noise 70 dB down', () => {
    const { samples, zeroIndex, distortion } = drain(
      deconvolve(recorded([0.03, 0.01]), makeSweep(params), params),
    );
    const cut = samples.slice(0, zeroIndex + room.samples.length);
    expect(bandErrorDb(cut, zeroIndex, room.samples, rate)).toBeLessThan(-60);
    // 3 % and 1 % are -30.5 and -40 dB; a product of order k lies in the band from k times the lowest frequency on.
    const [second, third] = distortion;
    expect(second.levelDb!).toBeGreaterThan(-32.5);
    expect(second.levelDb!).toBeLessThan(-28.5);
    expect(third.levelDb!).toBeGreaterThan(-42.5);
    expect(third.levelDb!).toBeLessThan(-37.5);
  });

  it('has the ridges of the room within their stated uncertainty', () => {
    const truth = [
      [31, 0.9, 0.5],
      [47, 0.6, 1],
      [72, 0.5, 0.7],
      [118, 0.35, 0.8],
    ];
    const response = new Float64Array(2 * rate);
    for (const [f, t, a] of truth) addMode(response, rate, f, t, a * 0.02, 0.01);
    const { samples } = drain(deconvolve(recorded([0.03, 0.01], response), makeSweep(params), params));
    const recording = recordingFromSamples(samples, rate);
    const { resonances } = drain(
      fitResonances([recording], { fromHz: 20, toHz: 200, volumeCubicMetres: null }),
    );
    for (const [f, t] of truth) {
      // What the source leaves beside a mode is no ridge.
      const found = resonances.find(
        ({ frequencyHz, kind }) => kind !== 'source' && Math.abs(frequencyHz - f) < 1,
      )!;
      expect(Math.abs(found.frequencyHz - f), `${f} Hz`).toBeLessThan(found.frequencySdHz);
      expect(Math.abs(found.decayTimeSeconds! - t), `${f} Hz`).toBeLessThan(found.decayTimeSdSeconds!);
      // The stated uncertainty allows for modes that a room may hide; of these four, far apart, more is known.
      expect(Math.abs(found.frequencyHz - f), `${f} Hz`).toBeLessThan(0.02);
      expect(Math.abs(found.decayTimeSeconds! / t - 1), `${f} Hz`).toBeLessThan(0.01);
    }
  });

  it('has one slope where the room has one, with and without distortion and noise', () => {
    for (const [f, t] of [
      [31, 0.9],
      [47, 0.6],
      [80, 1.2],
      [120, 0.3],
      [50, 2],
    ]) {
      const response = addMode(new Float64Array(3 * rate), rate, f, t, 0.02, 0.01);
      for (const heard of [recorded([0.03, 0.01], response), recorded([], response, -200)]) {
        const { samples } = drain(deconvolve(heard, makeSweep(params), params));
        const { files, resonances } = drain(diagnose([recordingFromSamples(samples, rate)]));
        expect(
          files[0].notes.map(({ code }) => code),
          `${f} Hz`,
        ).not.toContain('two-slopes');
        expect(
          resonances.map(({ kind }) => kind),
          `${f} Hz`,
        ).not.toContain('two-slopes');
        const [main] = resonances.filter(({ levelDb }) => levelDb === 0);
        expect(Math.abs(main.frequencyHz - f), `${f} Hz`).toBeLessThan(0.02);
        expect(Math.abs(main.decayTimeSeconds! / t - 1), `${f} Hz`).toBeLessThan(0.01);
      }
    }
  });

  it('says nothing of distortion where there is none, and keeps out what there is', () => {
    const clean = drain(deconvolve(recorded([]), makeSweep(params), params));
    expect(clean.distortion.every(({ levelDb }) => levelDb === null || levelDb < -60)).toBe(true);
    const strong = drain(deconvolve(recorded([0.3, 0.2]), makeSweep(params), params));
    const before = (of: typeof clean): number =>
      peakOf(of.samples.slice(0, of.zeroIndex - rate / 10)) / peakOf(of.samples);
    // 30 % of distortion would stand 10 dB below the response if it were let in.
    expect(20 * Math.log10(before(strong))).toBeLessThan(-40);
  });

  it('is the same wherever the recording begins, and keeps the delay of one that began with the sweep', () => {
    const heard = recorded([0.03]);
    const late = Float64Array.from([...new Float64Array(5 * rate), ...heard]);
    const [now, then] = [heard, late].map((one) => drain(deconvolve(one, makeSweep(params), params)));
    expect(now.arrivalIndex - now.zeroIndex).toBe(then.arrivalIndex - then.zeroIndex - 5 * rate);
    const tail = (of: typeof now) => of.samples.slice(of.arrivalIndex, of.arrivalIndex + rate);
    const difference = tail(now).map((v, i) => v - tail(then)[i]);
    expect(peakOf(difference) / peakOf(tail(now))).toBeLessThan(2e-3);
    expect(now.arrivalIndex - now.zeroIndex).toBeGreaterThanOrEqual(Math.floor(room.onsetSeconds * rate));
  });

  it('is what opening the recording beside its sweep gives, with the channel chosen as of any file', () => {
    const heard = recorded([0.03, 0.01]);
    const wire = new Float64Array(heard.length);
    wire.set(makeSweep(params));
    const sweep = {
      label: 'sweep',
      bytes: encodeWav({ channels: [makeSweep(params)], sampleRate: rate, encoding: 'float-64' }),
    };
    const bytes = encodeWav({ channels: [wire, heard], sampleRate: rate, encoding: 'float-64' });
    const opened = openRecording(bytes, { sweep });
    expect(opened).toMatchObject({ channel: 2, channelCount: 2, hash: hashOf(bytes) });
    expect(opened.sweep).toEqual({ label: 'sweep', hash: hashOf(sweep.bytes) });
    expect(opened.notes.map(({ code }) => code)).toEqual(expect.arrayContaining(['swept', 'channel-chosen']));
    const { audio } = drain(responsesOfSweep(decodeWav(bytes), decodeWav(sweep.bytes)));
    expect(opened.samples).toEqual(audio.channels[1]);
    expect(openRecording(bytes, { sweep, channel: 1 })).toMatchObject({ channel: 1, channelCount: 2 });
    expect(() => openRecording(bytes, { sweep: { ...sweep, bytes } })).not.toThrow();
    expect(() => openRecording(sweep.bytes, { sweep: { label: '', bytes: new Uint8Array(0) } })).toThrow();
  });

  it('is refused with one code where sweep and recording do not fit', () => {
    const audio = (samples: Float64Array, sampleRate = rate) =>
      decodeWav(encodeWav({ channels: [samples], sampleRate, encoding: 'float-32' }));
    const sweep = makeSweep(params);
    const attempt = (...args: Parameters<typeof responsesOfSweep>) => drain(responsesOfSweep(...args));
    const cases: [string, Parameters<typeof responsesOfSweep>][] = [
      ['sweep-rate', [audio(sweep), audio(sweep, 44100)]],
      ['sweep-recording-short', [audio(sweep.slice(0, 2 * rate)), audio(sweep)]],
      ['channel-range', [audio(sweep), audio(sweep), 2]],
      ['silent', [audio(sweep), audio(new Float64Array(rate))]],
      ['sweep-not-exponential', [audio(sweep), audio(room.samples)]],
    ];
    for (const [code, args] of cases)
      expect(() => attempt(...args), code).toThrow(expect.objectContaining({ code }));
  });
});

describe('ringdown sweep and ringdown response', () => {
  const call = ['--rate', String(rate), '--to', '800', '--seconds', '8'];

  it('make a sweep with its cautions, and of its recording a response that is diagnosed', async () => {
    const made = await command(['sweep', ...call, '--out', 'sweep.wav']);
    expect(made.status).toBe(0);
    expect(made.out.replace(/\s+/g, ' ')).toContain('Begin quietly and raise the level by steps');
    expect(made.out).toContain('85 dBA');
    const sweep = made.written.get('sweep.wav')!;
    expect(openRecording(sweep).samples.length).toBe(12 * rate);

    // A second channel carries the same by wire.
    const heard = recorded([0.03, 0.01]);
    const wire = new Float64Array(heard.length);
    wire.set(makeSweep(params));
    const recording = encodeWav({ channels: [heard, wire], sampleRate: rate, encoding: 'float-32' });
    const files = { 'sweep.wav': sweep, 'heard.wav': recording };
    const { status, out, err, written } = await command(
      ['response', 'sweep.wav', 'heard.wav', '--out', 'room.wav'],
      files,
    );
    expect(err).toBe('');
    expect(status).toBe(0);
    expect(out).toMatch(/Order 2/);
    expect(out).toMatch(/\n +1 +0\.\d{4} s +-\d+ dB +-\d+ dB/);
    const opened = openRecording(written.get('room.wav')!);
    expect(opened).toMatchObject({ channel: 1, channelCount: 2, sampleRate: rate });
    expect(opened.notes.find(({ code }) => code === 'channel-chosen')!.params.loopbacks).toBe('2');
    const one = await command(
      ['response', 'sweep.wav', 'heard.wav', '--channel', '1', '--out', 'one.wav'],
      files,
    );
    expect(openRecording(one.written.get('one.wav')!).channelCount).toBe(1);
    const diagnosis = await command(['diagnose', 'room.wav', '--json'], {
      'room.wav': written.get('room.wav')!,
    });
    expect((JSON.parse(diagnosis.out) as { resonances: unknown[] }).resonances.length).toBeGreaterThan(5);
  });

  it('end with one sentence where a file or a word is off', async () => {
    const files = {
      'a.wav': encodeWav({ channels: [room.samples], sampleRate: rate, encoding: 'float-32' }),
    };
    const cases: [string, number, RegExp][] = [
      ['sweep', 2, /--out/],
      ['sweep --out x.wav --level 0', 2, /--level 0 is outside -60 to -3/],
      ['sweep --out x.wav --from 300', 2, /must lie from/],
      ['response a.wav --out x.wav', 2, /needs two files/],
      ['response a.wav a.wav a.wav --out x.wav', 2, /a\.wav/],
      ['response a.wav gone.wav --out x.wav', 1, /gone\.wav: /],
      ['response a.wav a.wav --out x.wav', 1, /no exponential sweep/],
    ];
    for (const [words, status, sentence] of cases) {
      const result = await command(words.split(' '), files);
      expect(result.err, words).toMatch(sentence);
      expect(result.err.trimEnd().split('\n'), words).toHaveLength(1);
      expect(result.status, words).toBe(status);
    }
  });
});
