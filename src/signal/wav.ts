import { refusal } from './error-codes.js';
import { requireFits } from './limits.js';
import type { DecodedAudio, Note } from './types.js';
import { wavChunks, type WavChunk } from './wav-chunks.js';
import { encodingName, wavFormat } from './wav-format.js';
import { wavSamples } from './wav-samples.js';

/** Why the size in the header could not be used as it stood; `absent`: none, `beyond-end`: more than there is. */
export type SizeGuess = 'absent' | 'beyond-end' | 'partial-frame';

function sizeNote(data: WavChunk, frameBytes: number): Note[] {
  let reason: SizeGuess | null = null;
  if (data.declaredBytes === null) reason = 'absent';
  else if (data.declaredBytes > data.bytes) reason = 'beyond-end';
  else if (data.bytes % frameBytes !== 0) reason = 'partial-frame';
  if (reason === null) return [];
  const readBytes = data.bytes - (data.bytes % frameBytes);
  return [{ code: 'size-guessed', params: { reason, declaredBytes: data.declaredBytes, readBytes } }];
}

/**
 * Reads a WAV file: RIFF, RF64 and BW64 (EBU Tech 3306, ITU-R BS.2088); integer samples of 8 (unsigned), 16, 24 and 32
 * bits, float samples of 32 and 64 bits; WAVE_FORMAT_EXTENSIBLE with fewer valid bits than stored; chunks in any order.
 * Sample rate and samples stay as they are: full scale of integers is 1, floats may exceed it. A data size of 0,
 * of 0xFFFFFFFF or beyond the end is replaced by what is there, half a frame at the end is left out, and both are
 * noted as `size-guessed`. Memory follows the bytes given, never a number in a header.
 *
 * @throws RingdownError `file-empty`, `no-samples`, `too-long`, and those whose code begins with `wav-`
 */
export function decodeWav(bytes: Uint8Array): DecodedAudio {
  const chunks = wavChunks(bytes);
  const formatChunk = chunks.find(({ id }) => id === 'fmt ');
  const data = chunks.find(({ id }) => id === 'data');
  if (!formatChunk) throw refusal('wav-no-format', {});
  const format = wavFormat(bytes, formatChunk);
  if (!data) throw refusal('wav-no-data', {});
  const frameBytes = format.channels * format.containerBytes;
  const frames = Math.floor(data.bytes / frameBytes);
  if (frames === 0) throw refusal('no-samples', {});
  requireFits(frames, format.channels, format.sampleRate);
  const view = new DataView(bytes.buffer, bytes.byteOffset + data.offset, frames * frameBytes);
  return {
    sampleRate: format.sampleRate,
    channels: wavSamples(view, format),
    encoding: encodingName(format),
    notes: sizeNote(data, frameBytes),
  };
}
