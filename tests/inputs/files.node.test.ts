import { describe, expect, it } from 'vitest';
import {
  encodeWav,
  openRecording,
  recordingFromSamples,
  Rng,
  type WavEncoding,
} from '../../src/signal/index.js';
import { command } from '../support/command.js';
import { addMode } from '../support/signals.js';
import { blank, diagnosed, rate } from '../support/telling.js';
import { chunk, joined, withDataSize, withoutLast } from '../support/wav-parts.js';

/** The inputs that break a naive build, by their numbers in the trade's list: files and channels. */

const response = (() => {
  const rng = new Rng(5);
  return addMode(blank(0.5), rate, 48, 0.5, 0.7, 0.05).map((v) => v + 1e-4 * rng.gaussian());
})();
const float64 = (channels: readonly Float64Array[]) =>
  encodeWav({ channels, sampleRate: rate, encoding: 'float-64' });
const codes = (notes: readonly { code: string }[]) => notes.map(({ code }) => code);
const refused = (bytes: Uint8Array): string => {
  try {
    openRecording(bytes);
  } catch (thrown) {
    return (thrown as { code: string }).code;
  }
  return 'opened';
};

describe('input 13: every encoding of a WAV file', () => {
  const encodings: [WavEncoding, number][] = [
    ['pcm-24', 2 ** -24],
    ['pcm-24-in-32', 2 ** -24],
    ['float-32', 1e-7],
    ['float-64', 0],
    ['pcm-8', 1 / 256],
  ];
  it.each(encodings)('%s, plain and extensible, equals the reference', (encoding, step) => {
    for (const extensible of [true, false]) {
      const { samples } = openRecording(
        encodeWav({ channels: [response], sampleRate: rate, encoding, extensible }),
      );
      expect(samples).toHaveLength(response.length);
      expect(samples.every((v, i) => Math.abs(v - response[i]) <= step)).toBe(true);
    }
  });
});

describe('input 14: odd layouts', () => {
  const plain = encodeWav({ channels: [response], sampleRate: rate, encoding: 'pcm-16' });
  const reference = openRecording(plain).samples;

  it('LIST before fmt and odd chunks with a pad byte are passed over', () => {
    const whole = joined(
      plain.slice(0, 12),
      chunk('LIST', 13),
      chunk('junk', 7),
      plain.slice(12),
      chunk('LIST', 5),
    );
    expect(openRecording(whole).samples).toEqual(reference);
  });

  it.each([0, 0xffffffff])('a data size of %d is read to the end of the file, and said', (size) => {
    const { samples, notes } = openRecording(withDataSize(plain, size));
    expect(samples).toEqual(reference);
    expect(codes(notes)).toContain('size-guessed');
  });

  it.each(['rf64', 'bw64'] as const)('%s is read', (container) => {
    const bytes = encodeWav({ channels: [response], sampleRate: rate, encoding: 'pcm-16', container });
    expect(openRecording(bytes).samples).toEqual(reference);
  });

  it('half a frame at the end is left out, and said', () => {
    const { samples, notes } = openRecording(withoutLast(plain, 1));
    expect(samples).toEqual(reference.slice(0, -1));
    expect(codes(notes)).toContain('size-guessed');
  });

  it('a broadcast file with its bext and iXML chunks is read like any other', () => {
    // EBU Tech 3285: 602 bytes of fixed fields, then the coding history.
    const whole = joined(plain.slice(0, 12), chunk('bext', 602 + 37), plain.slice(12), chunk('iXML', 201));
    expect(openRecording(whole).samples).toEqual(reference);
    expect(openRecording(whole).notes).toEqual(openRecording(plain).notes);
  });
});

describe('input 15: samples that are no response', () => {
  const float = (change: (v: number, i: number) => number) => {
    const bytes = float64([response]);
    const view = new DataView(bytes.buffer, bytes.length - 8 * response.length);
    response.forEach((v, i) => view.setFloat64(8 * i, change(v, i), true));
    return bytes;
  };

  it.each([NaN, Infinity, -Infinity])('%d is refused, with the channel and the time of the first', (bad) => {
    const bytes = float((v, i) => (i === 4800 ? bad : v));
    expect(() => openRecording(bytes)).toThrow(
      expect.objectContaining({ code: 'not-finite', params: { channel: 1, count: 1, firstSeconds: 0.1 } }),
    );
  });

  it('silence, no data and one sample are refused, each with its own sentence', () => {
    expect(refused(float(() => 0))).toBe('silent');
    expect(refused(float(() => 0.25))).toBe('silent');
    expect(refused(float64([new Float64Array(0)]))).toBe('no-samples');
    expect(refused(float64([response.slice(0, 1)]))).toBe('too-short');
    expect(refused(new Uint8Array(0))).toBe('file-empty');
  });

  it('an offset of 0.1 is told, kept in the samples, and changes neither range nor resonance', () => {
    const long = addMode(blank(), rate, 48, 0.5, 0.7, 0.05);
    const [plain, offset] = [long, long.map((v) => v + 0.1)].map((s) =>
      diagnosed(recordingFromSamples(s, rate)),
    );
    expect(
      recordingFromSamples(
        long.map((v) => v + 0.1),
        rate,
      ).samples[0],
    ).toBe(0.1);
    const note = offset.files[0].notes.find(({ code }) => code === 'dc')!;
    expect(note.params.offset).toBeCloseTo(0.1, 3);
    const strongest = (of: typeof plain) => of.resonances.find(({ levelDb }) => levelDb === 0)!;
    expect(strongest(offset).frequencyHz).toBeCloseTo(strongest(plain).frequencyHz, 2);
    expect(strongest(offset).decayTimeSeconds).toBeCloseTo(strongest(plain).decayTimeSeconds!, 2);
  });

  it('a float peak of 3.7 is kept: it is legal, and no clipping', () => {
    const { samples } = openRecording(float((v) => (v * 3.7) / 0.7));
    expect(samples.reduce((most, v) => Math.max(most, Math.abs(v)), 0)).toBeGreaterThan(3);
    const result = diagnosed(recordingFromSamples(samples, rate));
    expect(codes(result.files[0].notes)).not.toContain('clipped');
  });
});

describe('input 16: several channels', () => {
  const loopback = blank(0.5);
  loopback[100] = 0.9;

  it('left and right of opposite sign: one is read and said, they are never summed', () => {
    const { samples, channel, notes } = openRecording(float64([response, response.map((v) => -v)]));
    expect(samples).toEqual(response);
    expect(channel).toBe(1);
    expect(notes.find(({ code }) => code === 'channel-chosen')!.params).toMatchObject({ count: 2, live: 2 });
  });

  it('room and loopback: the room is read, whichever comes first, and the loopback is named', () => {
    for (const [channels, room] of [
      [[loopback, response], 2],
      [[response, loopback], 1],
    ] as const) {
      const { channel, notes } = openRecording(float64(channels));
      expect(channel).toBe(room);
      expect(notes[0].params).toMatchObject({ reason: 'only-live', loopbacks: String(3 - room) });
    }
    expect(refused(float64([loopback, loopback]))).toBe('only-loopback');
  });

  it('six channels with one live: that one', () => {
    const idle = response.map((_, i) => 1e-7 * Math.sin(i));
    const { channel, notes } = openRecording(float64([idle, idle, idle, response, idle, idle]));
    expect(channel).toBe(4);
    expect(notes[0].params).toMatchObject({ reason: 'only-live', count: 6 });
  });

  it('the command says which, and reads another where it is asked to', async () => {
    const files = { 'two.wav': float64([response, response.map((v) => v * 0.5)]) };
    const read = async (...more: string[]) =>
      JSON.parse((await command(['diagnose', 'two.wav', '--json', ...more], files)).out) as {
        files: { channel: number; notes: { code: string; message: string }[] }[];
      };
    const [first] = (await read()).files;
    expect(first.channel).toBe(1);
    expect(first.notes.find(({ code }) => code === 'channel-chosen')!.message).toMatch(
      /^Channel 1 of 2 is read/,
    );
    expect((await read('--channel', '2')).files[0].channel).toBe(2);
  });
});
