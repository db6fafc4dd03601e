import { refusal } from './error-codes.js';
import type { RingdownError } from './errors.js';
import { decodeText } from './text.js';
import type { DecodedAudio } from './types.js';
import { decodeWav } from './wav.js';

/** The container of AES69 (SOFA) files, which need a reader of their own. */
export const sofaContainer = 'HDF5 (AES69)';
/** Lossless, and decoded by browsers. */
export const flacContainer = 'FLAC';
/** What is dropped as inaudible in these is what hangs on: a decay read from them is not the room's. */
const lossyContainers = ['Ogg', 'MPEG audio', 'MP4'];

/** Containers known by their first bytes that the engine itself does not read. A browser may decode some of them. */
const otherContainers: readonly (readonly [offset: number, text: string, name: string])[] = [
  [0, 'fLaC', flacContainer],
  [0, 'OggS', 'Ogg'],
  [0, 'ID3', 'MPEG audio'],
  [0, '\xff\xfb', 'MPEG audio'],
  [4, 'ftyp', 'MP4'],
  [8, 'AIFF', 'AIFF'],
  [8, 'AIFC', 'AIFF'],
  [0, 'caff', 'CAF'],
  [0, '\x89HDF\r\n', sofaContainer],
  [0, 'PK\x03\x04', 'a zip archive'],
  [0, '\x1f\x8b', 'a gzip archive'],
  [0, '%PDF', 'PDF'],
];

/** The container by its first bytes: `wav`, `text`, the name of another, or null for none that is known. */
export function containerOf(bytes: Uint8Array): string | null {
  const head = String.fromCharCode(...bytes.subarray(0, 16));
  if (/^(RIFF|RF64|BW64|RIFX)/.test(head)) return 'wav';
  const other = otherContainers.find(([offset, text]) => head.startsWith(text, offset));
  if (other) return other[2];
  if (/^(\xff\xfe|\xfe\xff)/.test(head)) return 'text';
  const sample = bytes.subarray(0, 4096);
  const printable = sample.every((byte) => byte >= 32 || byte === 9 || byte === 10 || byte === 13);
  return bytes.length > 0 && printable && sample.some((byte) => byte >= 48 && byte <= 57) ? 'text' : null;
}

/**
 * Reads the samples of a file, by its first bytes and never by its name: WAV, or text of one or two columns.
 *
 * @param sampleRate Hz; for text without times. One that the file contradicts is refused.
 * @throws RingdownError `file-rate-differs`; for other containers `container-unread`, `container-lossy`,
 * `container-browser`, `sofa-apart`; and those of `decodeWav` and `decodeText`
 */
export function readAudio(bytes: Uint8Array, sampleRate: number | null = null): DecodedAudio {
  const container = containerOf(bytes);
  if (container === 'text') return decodeText(bytes, sampleRate);
  if (container === 'wav' || container === null) {
    const audio = decodeWav(bytes);
    if (sampleRate !== null && sampleRate !== audio.sampleRate)
      throw refusal('file-rate-differs', { rate: sampleRate, found: audio.sampleRate });
    return audio;
  }
  throw containerRefusal(container);
}

/** Why a container is not opened where only the engine is at hand. */
export function containerRefusal(container: string): RingdownError {
  if (container === sofaContainer) return refusal('sofa-apart', {});
  if (container === flacContainer) return refusal('container-browser', { container });
  return refusal(lossyContainers.includes(container) ? 'container-lossy' : 'container-unread', { container });
}
