import * as maths from './maths.js';

/** Word lengths that files of samples have. */
const wordLengths = [8, 12, 16, 20, 24] as const;

export interface Quantisation {
  readonly bits: number;
  /** Between neighbouring values, re full scale. */
  readonly step: number;
}

/** The coarsest word length that holds these samples exactly; null where they are finer than 24 bits. */
export function quantisationOf(samples: Float64Array): Quantisation | null {
  for (const bits of wordLengths) {
    const scale = maths.power(2, bits - 1);
    if (samples.every((value) => Number.isInteger(value * scale))) return { bits, step: 1 / scale };
  }
  return null;
}

/** Index behind the last sample that differs from the one the file ends on. */
export function endOfChange(samples: Float64Array): number {
  let end = samples.length;
  while (end > 0 && samples[end - 1] === samples[samples.length - 1]) end--;
  return end;
}
