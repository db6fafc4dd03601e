import { describe, expect, it } from 'vitest';
import { createRoom, parseRoomSize, synthesise } from '../../src/room/index.js';
import { encodeWav, Rng, type WavContent, type WavEncoding } from '../../src/signal/index.js';
import { addMode } from '../support/signals.js';
import { command } from '../support/command.js';
import { dataOffset, withChunks } from '../support/wav.js';

interface Document {
  readonly error?: { readonly code: string; readonly message: string };
  readonly files: readonly { readonly notes: readonly { readonly code: string }[] }[];
  readonly ridges: readonly {
    readonly frequency: number;
    readonly decayTime: number | null;
    readonly audible: string;
  }[];
}

const sampleRate = 48000;
const { samples: response } = synthesise({
  room: createRoom({
    size: parseRoomSize('5.6x3.9x2.7'),
    absorption: [0.2, 0.2, 0.03, 0.03, 0.15, 0.15],
  }),
  seat: { x: 3.7, y: 3, z: 1.2 },
  source: { x: 0.5, y: 0.4, z: 0.3 },
  noiseDb: -60,
  sampleRate,
  seconds: 1.2,
});
const peak = response.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
const even = response.map((value) => (0.9 * value) / peak);

const wav = (encoding: WavEncoding, more: Partial<WavContent> = {}) =>
  encodeWav({ channels: [even], sampleRate, encoding, ...more });
const sized = (bytes: Uint8Array, size: number): Uint8Array => {
  new DataView(bytes.buffer).setUint32(dataOffset(bytes) + 4, size, true);
  return bytes;
};

/** Forms that measuring programs and recorders write: encoding, container, chunks, channels, sizes that are not true. */
const forms: Record<string, () => Uint8Array> = {
  'pcm-16': () => wav('pcm-16'),
  'pcm-24': () => wav('pcm-24'),
  'pcm-32': () => wav('pcm-32'),
  'pcm-24-in-32': () => wav('pcm-24-in-32'),
  'float-32': () => wav('float-32'),
  'float-64': () => wav('float-64'),
  'pcm-16 extensible': () => wav('pcm-16', { extensible: true }),
  'float-32 extensible': () => wav('float-32', { extensible: true }),
  'pcm-24 in rf64': () => wav('pcm-24', { container: 'rf64' }),
  'float-32 in bw64': () => wav('float-32', { container: 'bw64' }),
  'pcm-16 among other chunks of odd size': () => withChunks(wav('pcm-16')),
  'float-32 among other chunks of odd size': () => withChunks(wav('float-32')),
  'pcm-24 with a data size of 0': () => sized(wav('pcm-24'), 0),
  'pcm-24 with a data size of 0xFFFFFFFF': () => sized(wav('pcm-24'), 0xffffffff),
  'pcm-16 with half a frame at the end': () => wav('pcm-16', { channels: [even, even] }).slice(0, -3),
  'a dead first channel': () => wav('pcm-24', { channels: [new Float64Array(even.length), even] }),
  'a loopback in the second channel': () => {
    const loop = new Float64Array(even.length);
    loop[100] = 0.9;
    return wav('pcm-24', { channels: [even, loop] });
  },
  'float peaks far above 1': () => wav('float-32', { channels: [even.map((value) => 5 * value)] }),
};

const diagnosed = async (bytes: Uint8Array) => {
  const { status, out, err } = await command(['diagnose', 'seat.wav', '--json'], { 'seat.wav': bytes });
  return { status, err, document: JSON.parse(out) as Document };
};

describe('the same response in any form of WAV', () => {
  it(`gives the same ridges: ${Object.keys(forms).length} forms`, async () => {
    expect(Object.keys(forms).length).toBeGreaterThanOrEqual(14);
    const { document: reference } = await diagnosed(wav('float-64'));
    const heard = reference.ridges.filter(({ audible }) => audible === 'yes');
    expect(heard.length).toBeGreaterThan(0);
    for (const [name, make] of Object.entries(forms)) {
      const { status, document } = await diagnosed(make());
      expect(status, name).toBe(0);
      expect(document.ridges.length, name).toBe(reference.ridges.length);
      document.ridges.forEach(({ frequency, decayTime }, k) => {
        expect(Math.abs(frequency - reference.ridges[k].frequency), name).toBeLessThan(0.02);
        expect(decayTime! / reference.ridges[k].decayTime!, name).toBeCloseTo(1, 2);
      });
    }
  });

  it('in 8 bits with dither has more noise, and the same slow mode', async () => {
    const rng = new Rng(8);
    const slow = addMode(new Float64Array(1.5 * sampleRate), sampleRate, 48, 1, 0.7, 0.02);
    const dithered = slow.map((value) => value + (rng.uniform() - rng.uniform()) / 128);
    for (const encoding of ['pcm-8', 'pcm-24'] as const) {
      const { document } = await diagnosed(wav(encoding, { channels: [dithered] }));
      expect(document.ridges[0].frequency).toBeCloseTo(48, 1);
      expect(document.ridges[0].decayTime).toBeCloseTo(1, 1);
    }
  });
});

describe('a broken file', () => {
  const edited = (change: (view: DataView) => void) => {
    const bytes = wav('pcm-16');
    change(new DataView(bytes.buffer));
    return bytes;
  };
  const broken: Record<string, Uint8Array> = {
    'no bytes at all': new Uint8Array(0),
    'noise of bytes': new Uint8Array(4000).fill(200),
    'RIFF of another kind': edited((view) => view.setUint32(8, 0x41564920)),
    'big-endian RIFX': edited((view) => view.setUint32(0, 0x52494658)),
    'ten bytes of a header': wav('pcm-16').slice(0, 10),
    'no format chunk': edited((view) => view.setUint32(12, 0x6a756e6b)),
    'no data chunk': wav('pcm-16').slice(0, 36),
    'a codec': edited((view) => view.setUint16(20, 0x55, true)),
    'no channels': edited((view) => view.setUint16(22, 0, true)),
    'a rate of 900 Hz': edited((view) => view.setUint32(24, 900, true)),
    '48 bits': edited((view) => view.setUint16(34, 48, true)),
    'an impossible frame': edited((view) => view.setUint16(32, 7, true)),
    'a header and no sample': wav('pcm-16').slice(0, 44),
    'one sample': wav('pcm-16', { channels: [even.slice(0, 1)] }),
    silence: wav('pcm-16', { channels: [new Float64Array(24000)] }),
  };

  it.each(Object.entries(broken))('of %s gets one sentence, and status 1', async (_, bytes) => {
    const { status, err, document } = await diagnosed(bytes);
    expect(status).toBe(1);
    expect(document.error!.code).toMatch(/^[a-z-]+$/);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(err.trim()).toMatch(/^\S.*[.?]$/);
    expect(err).not.toMatch(/\bat .*:\d+:\d+|Error:|undefined|NaN/);
  });
});
