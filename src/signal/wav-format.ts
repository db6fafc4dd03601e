import { refusal } from './error-codes.js';
import { highestChannelCount, highestSampleRate, lowestSampleRate } from './limits.js';
import type { WavChunk } from './wav-chunks.js';

export interface WavFormat {
  readonly kind: 'pcm' | 'float';
  readonly channels: number;
  readonly sampleRate: number;
  /** Bytes of one sample of one channel as stored. */
  readonly containerBytes: number;
  /** Bits that carry sound; fewer than stored for 24 in 32. */
  readonly validBits: number;
}

const tagPcm = 0x0001;
const tagFloat = 0x0003;
const tagExtensible = 0xfffe;

/** Tails of the two families of sub-format GUIDs whose first two bytes are a format tag: WAVEFORMATEX and B-format. */
const guidTails = ['000000001000800000aa00389b71', '00002107d3118644c8c1ca000000'];

/** Names of the trade for the tags that occur (RFC 2361). */
const codecNames: Readonly<Record<number, string>> = {
  0x0002: 'ADPCM',
  0x0006: 'A-law',
  0x0007: 'mu-law',
  0x0011: 'ADPCM',
  0x0031: 'GSM 6.10',
  0x0050: 'MPEG audio',
  0x0055: 'MPEG layer 3',
  0x00ff: 'AAC',
};

const hex = (value: number, digits: number) => value.toString(16).padStart(digits, '0');

/**
 * Reads a `fmt ` chunk: plain, with extension, or WAVE_FORMAT_EXTENSIBLE.
 *
 * @throws RingdownError `wav-truncated-header`, `wav-format-short`, `wav-codec-unsupported`, `wav-channels`,
 * `wav-rate`, `wav-bits`, `wav-frame-size`
 */
export function wavFormat(bytes: Uint8Array, chunk: WavChunk): WavFormat {
  const view = new DataView(bytes.buffer, bytes.byteOffset + chunk.offset, chunk.bytes);
  const need = (needed: number) => {
    if (chunk.bytes >= needed) return;
    if ((chunk.declaredBytes ?? 0) >= needed) throw refusal('wav-truncated-header', { bytes: bytes.length });
    throw refusal('wav-format-short', { bytes: chunk.bytes, needed });
  };
  need(16);
  let tag = view.getUint16(0, true);
  const channels = view.getUint16(2, true);
  const sampleRate = view.getUint32(4, true);
  const frameBytes = view.getUint16(12, true);
  const bits = view.getUint16(14, true);
  let validBits = bits;
  if (tag === tagExtensible) {
    need(40);
    tag = view.getUint16(24, true);
    const tail = Array.from({ length: 14 }, (_, i) => hex(view.getUint8(26 + i), 2)).join('');
    if (!guidTails.includes(tail))
      throw refusal('wav-codec-unsupported', { codec: `${hex(tag, 4)}-${tail}`, tag: tagExtensible });
    validBits = view.getUint16(18, true) || bits;
  }
  if (tag !== tagPcm && tag !== tagFloat)
    throw refusal('wav-codec-unsupported', { codec: codecNames[tag] ?? `0x${hex(tag, 4)}`, tag });
  if (channels < 1 || channels > highestChannelCount)
    throw refusal('wav-channels', { channels, highest: highestChannelCount });
  if (sampleRate < lowestSampleRate || sampleRate > highestSampleRate)
    throw refusal('wav-rate', { rate: sampleRate, lowest: lowestSampleRate, highest: highestSampleRate });

  const kind = tag === tagPcm ? 'pcm' : 'float';
  const readable = kind === 'pcm' ? bits >= 1 && bits <= 32 : bits === 32 || bits === 64;
  if (!readable) throw refusal('wav-bits', { bits, encoding: kind });
  const containerBytes = frameBytes / channels;
  const least = Math.ceil(bits / 8);
  const fits = kind === 'pcm' ? containerBytes >= least && containerBytes <= 4 : containerBytes === least;
  if (!Number.isInteger(containerBytes) || !fits)
    throw refusal('wav-frame-size', { frameBytes, channels, bits });
  return { kind, channels, sampleRate, containerBytes, validBits: Math.min(validBits, 8 * containerBytes) };
}

/** For the reader's eye: `pcm-16`, `float-32`, `pcm-24-in-32`. */
export function encodingName({ kind, containerBytes, validBits }: WavFormat): string {
  const stored = 8 * containerBytes;
  return validBits === stored ? `${kind}-${stored}` : `${kind}-${validBits}-in-${stored}`;
}
