import { refusal } from './error-codes.js';

/** What the header of a FLAC file says (RFC 9639, section 8.2): its samples are decoded by a browser, not here. */
export interface FlacHeader {
  readonly sampleRate: number;
  readonly channels: number;
  readonly bits: number;
  /** Samples per channel; null where the writer did not know. */
  readonly frames: number | null;
}

/** @throws RingdownError `flac-header` where the first block of metadata is missing or broken */
export function flacHeader(bytes: Uint8Array): FlacHeader {
  // "fLaC", then a block header of 4 bytes and the 34 bytes of STREAMINFO.
  const isStreamInfo = bytes.length >= 42 && (bytes[4] & 0x7f) === 0;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  // 20 bits of rate, 3 of channels less one, 5 of bits less one, 36 of samples.
  const high = isStreamInfo ? view.getUint32(18) : 0;
  const low = isStreamInfo ? view.getUint32(22) : 0;
  const sampleRate = high >>> 12;
  if (sampleRate === 0) throw refusal('flac-header', {});
  const frames = (high & 0xf) * 2 ** 32 + low;
  return {
    sampleRate,
    channels: ((high >>> 9) & 7) + 1,
    bits: ((high >>> 4) & 31) + 1,
    frames: frames > 0 ? frames : null,
  };
}
