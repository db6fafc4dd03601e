import { describe, expect, it } from 'vitest';
import { encodeWav, hashOf } from '../../src/signal/index.js';
import { addMode } from '../support/signals.js';
import { command, nulls } from '../support/command.js';

interface GridDocument {
  version: number;
  file: string;
  hash: string;
  method: string;
  window: number;
  step: number;
  frequencies: number[];
  times: number[];
  levels: number[][];
  limits: {
    windowDecay: number;
    resolution: number[];
    noiseFloor: (number | null)[];
    dataEnd: number;
    lowest: number[];
  };
}

const rate = 4000;
const samples = addMode(new Float64Array(2 * rate), rate, 50, 0.6, 0.5, 0.1);
const wav = encodeWav({ channels: [samples], sampleRate: rate, encoding: 'float-64' });
const files = { 'mode.wav': wav, 'text.wav': new TextEncoder().encode('No sound at all, but letters.') };

describe('ringdown grid', () => {
  it('gives levels by time and frequency that fall as the mode does', async () => {
    const { status, out } = await command(['grid', 'mode.wav', '--json', '--span', '0.6'], files);
    expect(status).toBe(0);
    const document = JSON.parse(out) as GridDocument;
    expect(document.version).toBe(1);
    expect(document.hash).toBe(hashOf(wav));
    expect(document.frequencies[0]).toBe(20);
    expect(document.frequencies.at(-1)).toBe(200);
    expect(document.times).toHaveLength(61);
    expect(document.levels).toHaveLength(61);
    for (const row of document.levels) expect(row).toHaveLength(document.frequencies.length);
    const column = document.frequencies.findIndex((f) => Math.abs(f - 50) < 0.4);
    // One isolated mode under a window that lies wholly after the onset: 60 dB in 0.6 s is 20 dB in 0.2 s.
    expect(document.levels[30][column] - document.levels[50][column]).toBeCloseTo(20, 0);
    expect(nulls(document).filter((path) => !path.startsWith('.limits.noiseFloor'))).toEqual([]);
  });

  it('gives the same levels as comma-separated values, with what made them', async () => {
    const json = JSON.parse((await command(['grid', 'mode.wav', '--json'], files)).out) as GridDocument;
    const { out } = await command(['grid', 'mode.wav', '--csv'], files);
    const lines = out.trimEnd().split('\n');
    const notes = lines.filter((line) => line.startsWith('#'));
    expect(notes.join(' ')).toContain(hashOf(wav));
    const [head, ...rows] = lines.filter((line) => !line.startsWith('#')).map((line) => line.split(','));
    expect(head).toHaveLength(json.frequencies.length + 1);
    expect(rows).toHaveLength(json.times.length);
    rows.forEach(([time, ...levels], t) => {
      expect(Number(time)).toBeCloseTo(json.times[t], 4);
      levels.forEach((level, f) => expect(Number(level)).toBeCloseTo(json.levels[t][f], 1));
    });
  });

  it('says in its table what each number rests on', async () => {
    const { out } = await command(['grid', 'mode.wav', '--window', '0,2'], files);
    expect(out).toContain('Sliding Hann window of 0.20 s');
    expect(out).toContain('resolves ridges 10.0 Hz apart');
  });

  it('refuses a file that is no WAV with one sentence, status 1 and a document that says why', async () => {
    const { status, out, err } = await command(['grid', 'text.wav', '--json'], files);
    expect(status).toBe(1);
    expect(err).toMatch(/^text\.wav: This is not a WAV file/);
    expect(JSON.parse(out)).toEqual({
      version: 1,
      file: 'text.wav',
      error: { code: 'wav-not-riff', message: err.trimEnd().replace('text.wav: ', '') },
    });
  });

  it('refuses a file that is not there', async () => {
    const { status, err } = await command(['grid', '/nowhere/at/all.wav']);
    expect(status).toBe(1);
    expect(err).toContain('no such file');
  });
});
