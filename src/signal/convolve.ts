import { inverseFft, nextPowerOfTwo, realFft } from './fft.js';
import type { Job } from './types.js';

/** Of a block, samples: short enough that a page draws between two, long enough that a second of response is few parts. */
const blockBounds = [256, 8192] as const;

/** Bins 0 to N/2 of N real samples, interleaved. */
function spectrumOf(samples: Float64Array, scratch: Float64Array): Float64Array {
  realFft(samples, scratch);
  return scratch.slice(0, samples.length + 2);
}

/**
 * Linear convolution by overlap-save with a response cut into equal parts: one transform per block and part, so that no
 * step takes long.
 *
 * @param length Samples of the result; the convolution is cut or followed by zeros.
 */
export function* convolveJob(
  signal: Float64Array,
  response: Float64Array,
  length = signal.length + response.length - 1,
): Job<Float64Array> {
  const [least, most] = blockBounds;
  const block = Math.min(most, Math.max(least, nextPowerOfTwo(response.length) / 4));
  const size = 2 * block;
  const scratch = new Float64Array(2 * size);
  const frame = new Float64Array(size);
  const parts: Float64Array[] = [];
  for (let at = 0; at < response.length; at += block) {
    frame.fill(0);
    frame.set(response.subarray(at, Math.min(response.length, at + block)));
    parts.push(spectrumOf(frame, scratch));
  }
  const history: Float64Array[] = [];
  const output = new Float64Array(length);
  const sum = new Float64Array(2 * size);
  for (let at = 0; at < length; at += block) {
    // The block before and this one; the first half of the result is spoilt by wrapping and not kept.
    for (let n = 0; n < size; n++) frame[n] = signal[at - block + n] ?? 0;
    history.unshift(spectrumOf(frame, scratch));
    if (history.length > parts.length) history.pop();
    sum.fill(0);
    history.forEach((bins, k) => {
      const part = parts[k];
      for (let i = 0; i < bins.length; i += 2) {
        sum[i] += bins[i] * part[i] - bins[i + 1] * part[i + 1];
        sum[i + 1] += bins[i] * part[i + 1] + bins[i + 1] * part[i];
      }
    });
    for (let i = 1; i < block; i++) {
      sum[2 * (size - i)] = sum[2 * i];
      sum[2 * (size - i) + 1] = -sum[2 * i + 1];
    }
    inverseFft(sum, scratch);
    const kept = Math.min(block, length - at);
    for (let n = 0; n < kept; n++) output[at + n] = scratch[2 * (block + n)];
    yield { stage: 'listen', fraction: Math.min(1, (at + block) / length) };
  }
  return output;
}
