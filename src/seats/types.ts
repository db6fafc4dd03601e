import type { Band } from './biquad.js';

/**
 * Complex responses of every source at every seat, on one clock: entry (source, seat, frequency) lies at
 * `(source * seatCount + seat) * frequenciesHz.length + frequency`.
 */
export interface TransferMatrix {
  /** Ascending; spaced evenly on a logarithmic scale where means are to be of octaves. */
  readonly frequenciesHz: Float64Array;
  readonly sourceCount: number;
  readonly seatCount: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Responses of several sources together: entry (seat, frequency) at `seat * frequenciesHz.length + frequency`. */
export interface SeatSpectra {
  readonly frequenciesHz: Float64Array;
  readonly seatCount: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** What a processor does to one source before it is heard. */
export interface SourceSetting {
  readonly gainDb: number;
  /** Added delay; never negative. */
  readonly delaySeconds: number;
  readonly inverted: boolean;
  readonly muted: boolean;
  readonly bands: readonly Band[];
}

/** A source as it was measured. */
export const plainSetting: SourceSetting = {
  gainDb: 0,
  delaySeconds: 0,
  inverted: false,
  muted: false,
  bands: [],
};
