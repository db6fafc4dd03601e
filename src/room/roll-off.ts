import type { Sections } from '../signal/filters.js';
import * as maths from '../signal/maths.js';

/** Where a bass source stops playing: Butterworth slopes, as closed (2nd order) and vented (4th order) boxes have. */
export interface SourceRollOff {
  /** Null: plays down to 0 Hz. */
  readonly highPassHz: number | null;
  readonly highPassOrder: 2 | 4;
  /** Null: a source of the whole audible range. */
  readonly lowPassHz: number | null;
  readonly lowPassOrder: 2 | 4;
}

type Section = readonly [number, number, number, number, number];

/** Q of the sections of a Butterworth filter of even order: 1 / (2 sin((2k - 1) pi / 2n)). */
const butterworthQ = (order: 2 | 4): number[] =>
  order === 2 ? [Math.SQRT1_2] : [1 / (2 * maths.sin(Math.PI / 8)), 1 / (2 * maths.sin((3 * Math.PI) / 8))];

/** Bilinear transform with the corner pre-warped. */
function section(kind: 'high' | 'low', cornerHz: number, q: number, sampleRate: number): Section {
  const w = maths.tan((Math.PI * cornerHz) / sampleRate);
  const norm = 1 / (1 + w / q + w * w);
  const gain = (kind === 'high' ? 1 : w * w) * norm;
  const middle = kind === 'high' ? -2 * gain : 2 * gain;
  return [gain, middle, gain, 2 * (w * w - 1) * norm, (1 - w / q + w * w) * norm];
}

/** The sections of a roll-off at a sample rate. Corners above 0.45 of the rate are left out: they change nothing. */
export function rollOffSections(rollOff: SourceRollOff, sampleRate: number): Sections {
  const of = (kind: 'high' | 'low', corner: number | null, order: 2 | 4): Section[] =>
    corner === null || corner > 0.45 * sampleRate
      ? []
      : butterworthQ(order).map((q) => section(kind, corner, q, sampleRate));
  const chain = [
    ...of('high', rollOff.highPassHz, rollOff.highPassOrder),
    ...of('low', rollOff.lowPassHz, rollOff.lowPassOrder),
  ];
  return Float64Array.from(chain.flat());
}

/**
 * Complex gain of the sections for the exponential exp((-damping + j 2 pi f) t): what a decaying sine is multiplied by
 * once the filter's own start has passed.
 */
export function gainForDecay(
  sections: Sections,
  frequencyHz: number,
  damping: number,
  sampleRate: number,
): { gain: number; phaseRadians: number } {
  // z^-1 of the pole.
  const size = maths.exp(damping / sampleRate);
  const angle = (-2 * Math.PI * frequencyHz) / sampleRate;
  const zr = size * maths.cos(angle);
  const zi = size * maths.sin(angle);
  const z2r = zr * zr - zi * zi;
  const z2i = 2 * zr * zi;
  let gain = 1;
  let phaseRadians = 0;
  for (let k = 0; k < sections.length; k += 5) {
    const [b0, b1, b2, a1, a2] = sections.subarray(k, k + 5);
    const [nr, ni] = [b0 + b1 * zr + b2 * z2r, b1 * zi + b2 * z2i];
    const [dr, di] = [1 + a1 * zr + a2 * z2r, a1 * zi + a2 * z2i];
    gain *= maths.hypot(nr, ni) / maths.hypot(dr, di);
    phaseRadians += maths.atan2(ni, nr) - maths.atan2(di, dr);
  }
  return { gain, phaseRadians };
}
