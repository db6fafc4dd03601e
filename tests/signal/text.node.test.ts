import { describe, expect, it } from 'vitest';
import { encodeWav, openRecording } from '../../src/signal/index.js';
import { command } from '../support/command.js';
import { addMode } from '../support/signals.js';

const rate = 8000;
const response = addMode(new Float64Array(rate), rate, 50, 0.4, 0.8, 0.05);
const encode = (text: string) => new TextEncoder().encode(text);
const lines = (line: (t: number, value: number) => string) =>
  Array.from(response, (v, i) => line(i / rate, v)).join('\n');
const comma = (value: number, digits = 9) => value.toFixed(digits).replace('.', ',');

describe('a response written as text', () => {
  const forms: Record<string, string> = {
    'time, comma, amplitude': lines((t, v) => `${t.toFixed(6)},${v.toFixed(9)}`),
    'time, semicolon, amplitude': lines((t, v) => `${t.toFixed(6)};${v.toFixed(9)}`),
    'time, tab, amplitude': lines((t, v) => `${t.toFixed(6)}\t${v.toFixed(9)}`),
    'blanks and a head with comments': `# exported\nTime (s) Amplitude\n\n${lines((t, v) => `  ${t.toFixed(6)}   ${v.toFixed(9)}`)}\n`,
    'decimal commas parted by semicolons': lines((t, v) => `${comma(t, 6)};${comma(v)}`),
    'decimal commas parted by commas': lines((t, v) => `${comma(t, 6)},${comma(v)}`),
    'exponents and Windows line ends': lines((t, v) => `${t.toExponential(8)} ${v.toExponential(9)}\r`),
    milliseconds: `t in ms;p\n${lines((t, v) => `${(t * 1000).toFixed(3)};${v.toFixed(9)}`)}`,
  };
  for (const [name, text] of Object.entries(forms))
    it(`is read with the rate of its times: ${name}`, () => {
      const { samples, sampleRate } = openRecording(encode(text));
      expect(sampleRate).toBe(rate);
      expect(samples).toHaveLength(response.length);
      expect(samples.every((v, i) => Math.abs(v - response[i]) < 1e-8)).toBe(true);
    });

  it('of one column takes the rate it is given, also with decimal commas', () => {
    for (const text of [lines((_, v) => v.toFixed(9)), lines((_, v) => comma(v))]) {
      const recording = openRecording(encode(text), { sampleRate: rate });
      expect(recording.sampleRate).toBe(rate);
      expect(recording.samples[500]).toBeCloseTo(response[500], 8);
    }
  });

  it('is read in the UTF-16 of spreadsheets, with either byte order', () => {
    const text = `\uFEFFTime\tPressure\r\n${lines((t, v) => `${comma(t, 6)}\t${comma(v)}`)}`;
    for (const little of [true, false]) {
      const bytes = new Uint8Array(2 * text.length);
      const view = new DataView(bytes.buffer);
      for (let i = 0; i < text.length; i++) view.setUint16(2 * i, text.charCodeAt(i), little);
      const { samples, sampleRate } = openRecording(bytes);
      expect(sampleRate).toBe(rate);
      expect(samples[500]).toBeCloseTo(response[500], 8);
    }
  });

  it('is read by the command with --rate, which a WAV file that says otherwise refuses', async () => {
    const wav = encodeWav({ channels: [response], sampleRate: rate, encoding: 'float-32' });
    const files = { 'one.txt': encode(lines((_, v) => comma(v))), 'one.wav': wav };
    const read = (...argv: string[]) => command(['diagnose', ...argv, '--json'], files);
    const given = await read('one.txt', '--rate', '8000');
    expect(given.status).toBe(0);
    expect((JSON.parse(given.out) as { files: { sampleRate: number }[] }).files[0].sampleRate).toBe(rate);
    expect((await read('one.txt')).err).toContain('sample rate must be given');
    expect((await read('one.wav', '--rate', '44100')).err).toContain('the file itself says 8000 Hz');
    expect((await command(['grid', 'one.txt', '--rate', '8000'], files)).status).toBe(0);
  });

  it('is refused with one code where it says too little or contradicts itself', () => {
    const good = forms['time, comma, amplitude'];
    const cases: [string, string, number?][] = [
      ['text-rate-needed', lines((_, v) => v.toFixed(9))],
      ['text-rate-differs', good, 44100],
      ['text-line', good.replace('0.010000,', 'later,')],
      ['text-columns', lines((t, v) => `${t.toFixed(6)} ${v.toFixed(6)} 1`)],
      ['text-ambiguous', lines((t) => `${Math.round(t * rate)},5,7`)],
      ['text-times-uneven', lines((t, v) => `${(t * t).toFixed(9)} ${v.toFixed(6)}`)],
      ['rate', lines((t, v) => `${(t * 1000).toFixed(3)} ${v.toFixed(6)}`)],
    ];
    for (const [code, text, sampleRate] of cases)
      expect(() => openRecording(encode(text), { sampleRate }), code).toThrow(
        expect.objectContaining({ code }),
      );
  });

  it('and other containers are refused by their first bytes, with their name', () => {
    for (const [head, code, params] of [
      ['fLaC', 'container-browser', { container: 'FLAC' }],
      ['OggS', 'container-lossy', { container: 'Ogg' }],
      ['caff', 'container-unread', { container: 'CAF' }],
      ['\x89HDF\r\n\x1a\n', 'sofa-apart', {}],
    ] as const) {
      const bytes = Uint8Array.from({ length: 200 }, (_, i) => (i < head.length ? head.charCodeAt(i) : 0));
      expect(() => openRecording(bytes)).toThrow(expect.objectContaining({ code, params }));
    }
  });
});
