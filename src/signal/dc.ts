import { blockMeans, peakOf, quantile } from './level.js';
import type { Note } from './types.js';

/** One period at 20 Hz: the lowest bass of interest cancels in each block. */
const blockSeconds = 0.05;

/** Offsets below a thousandth of the peak (-60 dB) mislead nobody. Common practice. */
const leastShareOfPeak = 1e-3;

export interface DcOffset {
  /** Constant part of the samples, in units of full scale. */
  readonly offset: number;
  /** Whether it stands out from the scatter of the blocks and from a thousandth of the peak. */
  readonly evident: boolean;
}

/**
 * The constant offset of a recording: the median of its block means, so that the response itself, which fills few
 * blocks, does not count. Its scatter is judged by the median deviation of the blocks.
 */
export function dcOffset(samples: Float64Array, sampleRate: number): DcOffset {
  const means = blockMeans(samples, blockSeconds * sampleRate);
  const offset = quantile(means, 0.5);
  const deviations = means.map((mean) => Math.abs(mean - offset));
  // 1.4826: from median deviation to standard deviation of a normal distribution; 1.2533: of a median to that of a mean.
  const uncertainty = (1.4826 * 1.2533 * quantile(deviations, 0.5)) / Math.sqrt(means.length);
  const size = Math.abs(offset);
  const evident = means.length >= 4 && size > leastShareOfPeak * peakOf(samples) && size > 4 * uncertainty;
  return { offset, evident };
}

/** The samples less their constant offset where it is evident, else the same array. An offset that ends makes a step. */
export function withoutOffset(samples: Float64Array, sampleRate: number): Float64Array {
  const { offset, evident } = dcOffset(samples, sampleRate);
  return !evident ? samples : samples.map((value) => value - offset);
}

/** `dc` with the offset re full scale and re the peak. The samples keep it: analysis filters do not pass it. */
export function dcNotes(samples: Float64Array, sampleRate: number): Note[] {
  const { offset, evident } = dcOffset(samples, sampleRate);
  if (!evident) return [];
  return [{ code: 'dc', params: { offset, shareOfPeak: Math.abs(offset) / peakOf(samples) } }];
}
