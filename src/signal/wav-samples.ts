import type { WavFormat } from './wav-format.js';
import * as maths from './maths.js';

type ReadSample = (view: DataView, offset: number) => number;

/** Three little-endian bytes, signed. */
const int24: ReadSample = (view, offset) =>
  (view.getInt8(offset + 2) << 16) | (view.getUint8(offset + 1) << 8) | view.getUint8(offset);

/** Readers by stored bytes and their full scale. Eight bits are unsigned about 128, all others two's complement. */
const integers: Readonly<Record<number, { read: ReadSample; fullScale: number }>> = {
  1: { read: (view, offset) => view.getUint8(offset) - 128, fullScale: 2 ** 7 },
  2: { read: (view, offset) => view.getInt16(offset, true), fullScale: 2 ** 15 },
  3: { read: int24, fullScale: 2 ** 23 },
  4: { read: (view, offset) => view.getInt32(offset, true), fullScale: 2 ** 31 },
};

/**
 * The format puts fewer valid bits at the top of their container, zeros below. Some writers put them at the bottom:
 * then the bits below the valid ones are in use although no sample reaches the upper range. Both together cannot be
 * mistaken: at the top the low bits are zero.
 */
function bitsLieLow(view: DataView, read: ReadSample, step: number, validBits: number): boolean {
  const spare = maths.power(2, 8 * step - validBits);
  const limit = maths.power(2, validBits - 1);
  let lowBitsUsed = false;
  for (let offset = 0; offset + step <= view.byteLength; offset += step) {
    const value = read(view, offset);
    if (value < -limit || value >= limit) return false;
    lowBitsUsed ||= value % spare !== 0;
  }
  return lowBitsUsed;
}

/** Samples of whole frames, one array per channel; integer full scale becomes 1, floats stay as they are. */
export function wavSamples(data: DataView, format: WavFormat): Float64Array[] {
  const { channels, containerBytes, validBits } = format;
  const frameBytes = channels * containerBytes;
  const frames = Math.floor(data.byteLength / frameBytes);
  let read: ReadSample;
  let fullScale = 1;
  if (format.kind === 'float') {
    read =
      containerBytes === 4
        ? (view, offset) => view.getFloat32(offset, true)
        : (view, offset) => view.getFloat64(offset, true);
  } else {
    const integer = integers[containerBytes];
    read = integer.read;
    fullScale = integer.fullScale;
    if (
      containerBytes > 1 &&
      validBits < 8 * containerBytes &&
      bitsLieLow(data, read, containerBytes, validBits)
    )
      fullScale = maths.power(2, validBits - 1);
  }
  return Array.from({ length: channels }, (_, channel) => {
    const samples = new Float64Array(frames);
    for (let frame = 0, offset = channel * containerBytes; frame < frames; frame++, offset += frameBytes)
      samples[frame] = read(data, offset) / fullScale;
    return samples;
  });
}
