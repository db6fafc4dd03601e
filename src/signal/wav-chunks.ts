import { refusal } from './error-codes.js';

/** A chunk as it lies in the file. `bytes` is what is there; `declaredBytes` what its header says, null if unknown. */
export interface WavChunk {
  readonly id: string;
  readonly offset: number;
  readonly bytes: number;
  readonly declaredBytes: number | null;
}

const unknownSize = 0xffffffff;
const chunkHeaderBytes = 8;
const formHeaderBytes = 12;

/** Four bytes as text, for the eye: what is not printable becomes a dot. */
export function fourCharacters(bytes: Uint8Array, offset: number): string {
  return Array.from(bytes.subarray(offset, offset + 4), (byte) =>
    byte >= 0x20 && byte < 0x7f ? String.fromCharCode(byte) : '.',
  ).join('');
}

function isChunkId(bytes: Uint8Array, offset: number): boolean {
  for (let i = 0; i < 4; i++) {
    const byte = bytes[offset + i];
    if (byte === undefined || byte < 0x20 || byte > 0x7e) return false;
  }
  return true;
}

/** Whether a chunk begins here: one that ends within the file, or one whose size may be wrong but not its name. */
function looksLikeChunk(view: DataView, bytes: Uint8Array, offset: number): boolean {
  if (offset + chunkHeaderBytes > bytes.length || !isChunkId(bytes, offset)) return false;
  if (['fmt ', 'data'].includes(fourCharacters(bytes, offset))) return true;
  return offset + chunkHeaderBytes + view.getUint32(offset + 4, true) <= bytes.length;
}

/** 64-bit size of the data from a `ds64` chunk (EBU Tech 3306, ITU-R BS.2088), null where it is absent or nonsense. */
function dataBytes64(view: DataView, ds64: WavChunk): number | null {
  if (ds64.bytes < 16) return null;
  const size = view.getUint32(ds64.offset + 8, true) + view.getUint32(ds64.offset + 12, true) * 2 ** 32;
  return Number.isSafeInteger(size) ? size : null;
}

/**
 * The chunks of a RIFF, RF64 or BW64 file in file order. Sizes in headers are believed only as far as the bytes reach,
 * and the size of the whole is not believed at all: recorders that lost power leave it at 0.
 *
 * @throws RingdownError `file-empty`, `wav-truncated-header`, `wav-not-riff`, `wav-big-endian`, `wav-not-wave`
 */
export function wavChunks(bytes: Uint8Array): WavChunk[] {
  if (bytes.length === 0) throw refusal('file-empty', {});
  const form = fourCharacters(bytes, 0);
  if (bytes.length >= 4 && !['RIFF', 'RF64', 'BW64', 'RIFX'].includes(form))
    throw refusal('wav-not-riff', { found: form });
  if (bytes.length < formHeaderBytes) throw refusal('wav-truncated-header', { bytes: bytes.length });
  if (form === 'RIFX') throw refusal('wav-big-endian', {});
  const type = fourCharacters(bytes, 8);
  if (type !== 'WAVE') throw refusal('wav-not-wave', { found: type });

  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks: WavChunk[] = [];
  let size64: number | null = null;
  let position = formHeaderBytes;
  while (position + chunkHeaderBytes <= bytes.length && isChunkId(bytes, position)) {
    const id = fourCharacters(bytes, position);
    const offset = position + chunkHeaderBytes;
    const rest = bytes.length - offset;
    let declared: number | null = view.getUint32(position + 4, true);
    if (id === 'data') {
      if (declared === unknownSize) declared = size64;
      // A writer to a pipe leaves 0 and never comes back; a file that is really empty goes on with a chunk, or ends.
      if (declared === 0 && rest > 0 && !looksLikeChunk(view, bytes, offset)) declared = null;
    }
    const length = Math.min(declared ?? rest, rest);
    const chunk = { id, offset, bytes: length, declaredBytes: declared };
    chunks.push(chunk);
    if (id === 'ds64') size64 = dataBytes64(view, chunk);
    const end = offset + length;
    // Chunks begin at even places; some writers forget the pad byte, which shows where the next one begins.
    const padded = end + (length % 2);
    position =
      padded !== end && !looksLikeChunk(view, bytes, padded) && looksLikeChunk(view, bytes, end)
        ? end
        : padded;
  }
  return chunks;
}
