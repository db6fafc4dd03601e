import { describe, expect, it } from 'vitest';
import { computeResponse, examine } from '../../src/decay/index.js';
import type { RingdownError } from '../../src/signal/index.js';
import { encodeWav, hashOf, microphoneLevel, openRecording, readMicrophone } from '../../src/signal/index.js';
import { createSpeaker } from '../../src/words/index.js';
import { command } from '../support/command.js';
import { drain } from '../support/drain.js';
import { bandErrorDb, peakOf } from '../support/loudspeaker.js';
import { addMode } from '../support/signals.js';

const rate = 8000;
const encode = (text: string) => new TextEncoder().encode(text);
const comma = (value: number) => String(value).replace('.', ',');
const points = [
  [10.5, -6.25],
  [20, -3.5],
  [100, 0.25],
  [1000, 0],
] as const;

/** A step down of 9.5 dB between 12 and 4 Hz by the bilinear transform, as of a leaky microphone: of minimum phase. */
const corner = Math.tan((Math.PI * 12) / rate);
const zero = Math.tan((Math.PI * 4) / rate);
function heardBy(samples: Float64Array): Float64Array {
  const heard = new Float64Array(samples.length);
  let [x1, y1] = [0, 0];
  for (let i = 0; i < samples.length; i++) {
    y1 = ((1 + zero) * samples[i] - (1 - zero) * x1 + (1 - corner) * y1) / (1 + corner);
    x1 = samples[i];
    heard[i] = y1;
  }
  return heard;
}
/** Its level in closed form: H = (s + 2 pi 4) / (s + 2 pi 12) at the warped frequency. */
const levelAt = (f: number): number => {
  const w = Math.tan((Math.PI * f) / rate);
  return 20 * Math.log10(Math.hypot(zero, w) / Math.hypot(corner, w));
};
const table = Array.from({ length: 900 }, (_, k) => 0.25 * 2 ** (k / 50)).filter((f) => f < rate / 2);
const microphoneFile = encode(
  `* invented microphone\n${table.map((f) => `${f.toFixed(6)}\t${levelAt(f).toFixed(6)}`).join('\n')}\n`,
);

const clean = new Float64Array(2 * rate);
clean[400] += 0.4;
for (const [f, t, a] of [
  [24, 1.1, 0.5],
  [41, 0.6, 1],
  [88, 0.4, 0.6],
])
  addMode(clean, rate, f, t, a, 0.05);
const file = (samples: Float64Array) =>
  encodeWav({ channels: [samples], sampleRate: rate, encoding: 'float-64' });
const heard = file(heardBy(clean));
const microphone = { label: 'mic 7', bytes: microphoneFile };

describe('the response of a microphone as text', () => {
  const rows = (sep: string, digits: (value: number) => string = String) =>
    points.map(([f, l]) => `${digits(f)}${sep}${digits(l)}`).join('\n');
  const forms: Record<string, string> = {
    'tabs and a head': `Freq(Hz)\tSPL(dB)\n${rows('\t')}`,
    'blanks, a comment and Windows line ends': `* number 7\r\n${rows('   ').replaceAll('\n', '\r\n')}\r\n`,
    'commas with decimal points': rows(','),
    'semicolons with decimal commas': rows(';', comma),
    'blanks with decimal commas': rows(' ', comma),
    'commas with decimal commas': points
      .map(([f, l]) => `${f.toFixed(2)},${l.toFixed(2)}`.replaceAll('.', ','))
      .join('\n'),
    'a phase behind it': points.map(([f, l]) => `${f}\t${l}\t-12.5`).join('\n'),
    'a phase behind it, all with commas': points
      .map(([f, l]) => `${f.toFixed(1)},${l.toFixed(2)},12.5`.replaceAll('.', ','))
      .join('\n'),
    'a quoted head': `"Sens Factor =-1.2dB, SERNO: 7"\n${rows('\t')}`,
  };
  for (const [name, text] of Object.entries(forms))
    it(`is read: ${name}`, () => {
      const bytes = encode(text);
      const read = readMicrophone(bytes, 'mic');
      expect(read.frequenciesHz).toEqual(points.map(([f]) => f));
      expect(read.levelsDb).toEqual(points.map(([, l]) => l));
      expect(read).toMatchObject({ label: 'mic', hash: hashOf(bytes) });
    });

  it('of whole numbers parted by commas alone has two columns, since one would say nothing', () => {
    expect(readMicrophone(encode('20,-3\n40,-1\n90,0')).levelsDb).toEqual([-3, -1, 0]);
  });

  it('is linear in dB over the logarithm of frequency, and keeps its ends', () => {
    const read = readMicrophone(encode(rows('\t')));
    expect(microphoneLevel(read, 5)).toBe(-6.25);
    expect(microphoneLevel(read, 5000)).toBe(0);
    expect(microphoneLevel(read, Math.sqrt(20 * 100))).toBeCloseTo((-3.5 + 0.25) / 2, 9);
  });

  it('is refused with one sentence where it is none', () => {
    const cases: [string, string][] = [
      ['a letter', 'microphone-none'],
      ['20 1', 'microphone-none'],
      ['20 1\n30 1\n25 1', 'microphone-order'],
      ['0 1\n30 1', 'microphone-order'],
      ['20 94\n30 94', 'microphone-level'],
      ['20\n30', 'microphone-columns'],
      ['20 1 2 3\n30 1 2 3', 'microphone-columns'],
      ['20 1\n30 x1', 'text-line'],
    ];
    for (const [text, code] of cases) {
      const attempt = () => openRecording(heard, { microphone: { label: '', bytes: encode(text) } });
      expect(attempt, text).toThrow(expect.objectContaining({ code }));
      try {
        attempt();
      } catch (thrown) {
        const { params } = thrown as RingdownError;
        expect(createSpeaker('en').error({ code, params })).toMatch(/^[A-Z][^]*\.$/);
      }
    }
  });
});

describe('a recording whose microphone is known', () => {
  const corrected = openRecording(heard, { microphone });

  it('is what the microphone would have heard without its own response, within -60 dB from 20 to 200 Hz', () => {
    expect(corrected.samples).toHaveLength(clean.length);
    expect(bandErrorDb(corrected.samples, 0, clean, rate)).toBeLessThan(-60);
    // Without the correction the error is that of some 1 dB at 20 Hz and its phase.
    expect(bandErrorDb(openRecording(heard).samples, 0, clean, rate)).toBeGreaterThan(-25);
  });

  it('has levels that differ by the table and decay times that do not', () => {
    const params = { fromHz: 20, toHz: 200, smoothing: 'none' } as const;
    const raw = openRecording(heard);
    const [with_, without] = [corrected, raw].map((one) => drain(computeResponse(one, params)));
    with_.frequenciesHz.forEach((f, k) => {
      if (with_.levelsDb[k] < Math.max(...with_.levelsDb) - 30) return;
      expect(Math.abs(with_.levelsDb[k] - without.levelsDb[k] + levelAt(f)), `${f} Hz`).toBeLessThan(0.1);
    });
    const [a, b] = [corrected, raw].map((one) => drain(examine(one)).decays);
    a.forEach((band, k) => {
      const [now, then] = [band.t20.seconds, b[k].t20.seconds];
      if (now !== null && then !== null && band.centreHz > 35)
        expect(Math.abs(now / then - 1), `${band.centreHz} Hz`).toBeLessThan(0.02);
    });
  });

  it('does not ring before its onset, and has the same one', () => {
    expect(peakOf(corrected.samples.slice(0, 399)) / peakOf(corrected.samples)).toBeLessThan(1e-4);
    expect(corrected.onsetSeconds).toBe(openRecording(heard).onsetSeconds);
  });

  it('says so, with the numbers of the correction in the bass', () => {
    const note = corrected.notes.find(({ code }) => code === 'microphone')!;
    expect(note.params).toMatchObject({ label: 'mic 7', points: table.length, fromHz: 0.25, mostHz: 20 });
    expect(note.params.mostDb).toBeCloseTo(-levelAt(20), 3);
  });

  it('and its calibration are refused or told, never guessed', () => {
    expect(openRecording(heard).fullScaleDb).toBeUndefined();
    const { fullScaleDb, notes } = openRecording(heard, { fullScaleDb: 114.5 });
    expect(fullScaleDb).toBe(114.5);
    expect(notes.map(({ code }) => code)).toContain('calibrated');
    for (const value of [NaN, 12, 250])
      expect(() => openRecording(heard, { fullScaleDb: value })).toThrow(
        expect.objectContaining({ code: 'calibration-range' }),
      );
  });
});

describe('the command with a microphone and a calibration', () => {
  const files = { 'a.wav': heard, 'b.wav': file(clean), 'mic.txt': microphoneFile };

  it('prints both in its documents, its text and its tables', async () => {
    const given = ['--microphone', 'mic.txt', '--calibration', '114,5'];
    const { out, err } = await command(['diagnose', 'a.wav', ...given, '--json'], files);
    expect(err).toBe('');
    const [told] = (JSON.parse(out) as { files: Record<string, unknown>[] }).files;
    expect(told.fullScale).toBe(114.5);
    expect(told.microphone).toMatchObject({ file: 'mic.txt', hash: hashOf(microphoneFile) });
    const codes = (told.notes as { code: string }[]).map(({ code }) => code);
    expect(codes).toEqual(expect.arrayContaining(['microphone', 'calibrated']));
    const text = (await command(['diagnose', 'a.wav', ...given], files)).out.replace(/\s+/g, ' ');
    expect(text).toContain('The response of the microphone is taken off (“mic.txt”');
    expect(text).toContain('114.5 dB');
    const picture = (await command(['grid', 'a.wav', ...given], files)).out.replace(/\s+/g, ' ');
    expect(picture).toContain('response of the microphone taken off (“mic.txt”)');
    expect(picture).toMatch(/dB re 20 µPa by the calibration given/);
    const csv = (await command(['grid', 'a.wav', ...given, '--csv'], files)).out;
    expect(csv).toContain('# full scale = 114.5 dB re 20 µPa');
    const grid = JSON.parse((await command(['grid', 'a.wav', ...given, '--json'], files)).out) as object;
    expect(grid).toMatchObject({ fullScale: 114.5, microphone: { hash: hashOf(microphoneFile) } });
  });

  it('takes them once, or once per file, and says where a file of a microphone is off', async () => {
    const each = ['diagnose', 'a.wav', 'b.wav', '--calibration', '110', '--calibration', '111', '--json'];
    const lines = (await command(each, files)).out.trimEnd().split('\n');
    expect(
      lines.map((line) => (JSON.parse(line) as { files: { fullScale: number }[] }).files[0].fullScale),
    ).toEqual([110, 111]);
    const many = await command(
      ['diagnose', 'a.wav', '--microphone', 'mic.txt', '--microphone', 'mic.txt'],
      files,
    );
    expect(many.err).toMatch(/microphone/);
    expect(many.status).toBeGreaterThan(0);
    const wrong = await command(['diagnose', 'a.wav', '--microphone', 'a.wav'], files);
    expect(wrong.err).toMatch(/^a\.wav: The file of the microphone holds no response/);
    const range = await command(['diagnose', 'a.wav', '--calibration', '10'], files);
    expect(range.err).toMatch(/--calibration 10 is outside 40 to 200/);
  });
});
