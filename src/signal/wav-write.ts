import { refusal } from './error-codes.js';
import * as maths from './maths.js';

export type WavEncoding = 'pcm-8' | 'pcm-16' | 'pcm-24' | 'pcm-32' | 'pcm-24-in-32' | 'float-32' | 'float-64';

export interface WavContent {
  /** One array per channel, all of the same length; full scale is 1. */
  readonly channels: readonly (Float64Array | Float32Array)[];
  /** Whole Hz, as the format holds it. */
  readonly sampleRate: number;
  readonly encoding: WavEncoding;
  /** `riff` unless said; `rf64` and `bw64` carry 64-bit sizes. */
  readonly container?: 'riff' | 'rf64' | 'bw64';
  /** WAVE_FORMAT_EXTENSIBLE; always so for `pcm-24-in-32`. */
  readonly extensible?: boolean;
}

interface Layout {
  readonly tag: 1 | 3;
  readonly bytes: number;
  readonly validBits: number;
  readonly write: (view: DataView, offset: number, value: number) => void;
}

const quantise = (value: number, bits: number) =>
  Math.min(
    maths.power(2, bits - 1) - 1,
    Math.max(-maths.power(2, bits - 1), Math.round(value * maths.power(2, bits - 1))),
  );

function writeInt24(view: DataView, offset: number, value: number): void {
  const word = quantise(value, 24);
  view.setUint16(offset, word & 0xffff, true);
  view.setInt8(offset + 2, word >> 16);
}

const layouts: Readonly<Record<WavEncoding, Layout>> = {
  'pcm-8': { tag: 1, bytes: 1, validBits: 8, write: (v, o, x) => v.setUint8(o, quantise(x, 8) + 128) },
  'pcm-16': { tag: 1, bytes: 2, validBits: 16, write: (v, o, x) => v.setInt16(o, quantise(x, 16), true) },
  'pcm-24': { tag: 1, bytes: 3, validBits: 24, write: writeInt24 },
  'pcm-32': { tag: 1, bytes: 4, validBits: 32, write: (v, o, x) => v.setInt32(o, quantise(x, 32), true) },
  'pcm-24-in-32': {
    tag: 1,
    bytes: 4,
    validBits: 24,
    write: (v, o, x) => v.setInt32(o, quantise(x, 24) * 256, true),
  },
  'float-32': { tag: 3, bytes: 4, validBits: 32, write: (v, o, x) => v.setFloat32(o, x, true) },
  'float-64': { tag: 3, bytes: 8, validBits: 64, write: (v, o, x) => v.setFloat64(o, x, true) },
};

/** Bytes of a GUID after its two-byte format tag. */
const guidTail = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];

function check({ channels, encoding }: WavContent, layout: Layout): number {
  const frames = channels[0]?.length ?? 0;
  channels.forEach((samples, index) => {
    if (samples.length !== frames)
      throw refusal('lengths-differ', { channel: index + 1, samples: samples.length, expected: frames });
    let peak = 0;
    for (const value of samples) {
      if (!Number.isFinite(value)) throw refusal('write-not-finite', { channel: index + 1 });
      peak = Math.max(peak, Math.abs(value));
    }
    if (layout.tag === 1 && peak > 1) throw refusal('write-clips', { peak, encoding });
  });
  return frames;
}

/**
 * Writes a WAV file. Integer samples are rounded without dither: an impulse response has no use for added noise, and
 * the same samples always give the same bytes.
 *
 * @throws RingdownError `lengths-differ`, `write-not-finite`, `write-clips` (integer formats, above full scale)
 */
export function encodeWav(content: WavContent): Uint8Array<ArrayBuffer> {
  const { channels, sampleRate, encoding, container = 'riff' } = content;
  const layout = layouts[encoding];
  const frames = check(content, layout);
  const extensible = content.extensible ?? encoding === 'pcm-24-in-32';
  const frameBytes = channels.length * layout.bytes;
  const dataBytes = frames * frameBytes;
  const wide = container !== 'riff';
  const formatBytes = extensible ? 40 : layout.tag === 1 ? 16 : 18;
  const factBytes = layout.tag === 3 ? 12 : 0;
  const total = 12 + (wide ? 36 : 0) + 8 + formatBytes + factBytes + 8 + dataBytes + (dataBytes % 2);

  const view = new DataView(new ArrayBuffer(total));
  let at = 0;
  const text = (letters: string) => {
    for (const letter of letters) view.setUint8(at++, letter.charCodeAt(0));
  };
  const u16 = (value: number) => {
    view.setUint16(at, value, true);
    at += 2;
  };
  const u32 = (value: number) => {
    view.setUint32(at, value, true);
    at += 4;
  };
  const u64 = (value: number) => {
    u32(value % 2 ** 32);
    u32(Math.floor(value / 2 ** 32));
  };

  text(container.toUpperCase());
  u32(wide ? 0xffffffff : total - 8);
  text('WAVE');
  if (wide) {
    text('ds64');
    u32(28);
    u64(total - 8);
    u64(dataBytes);
    u64(frames);
    u32(0);
  }
  text('fmt ');
  u32(formatBytes);
  u16(extensible ? 0xfffe : layout.tag);
  u16(channels.length);
  u32(sampleRate);
  u32(sampleRate * frameBytes);
  u16(frameBytes);
  u16(8 * layout.bytes);
  if (formatBytes >= 18) u16(formatBytes - 18);
  if (extensible) {
    u16(layout.validBits);
    u32(0); // No claim where the channels belong.
    u16(layout.tag);
    for (const byte of guidTail) view.setUint8(at++, byte);
  }
  if (factBytes) {
    text('fact');
    u32(4);
    u32(Math.min(frames, 0xffffffff));
  }
  text('data');
  u32(wide ? 0xffffffff : dataBytes);
  channels.forEach((samples, channel) => {
    let offset = at + channel * layout.bytes;
    for (let frame = 0; frame < frames; frame++, offset += frameBytes)
      layout.write(view, offset, samples[frame]);
  });
  return new Uint8Array(view.buffer);
}
