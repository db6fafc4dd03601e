import { peakOf } from '../signal/level.js';
import { endOfChange, quantisationOf, type Quantisation } from '../signal/quantisation.js';
import type { GridSource } from './grid.js';
import * as maths from '../signal/maths.js';

/** One value that is repeated to the end for this long is no noise. */
export const silenceSeconds = 0.02;

/**
 * Whole-numbered samples that end on one repeated value: without dither, what falls below half a step is stored as
 * silence, and nothing is known of it. Null where the end holds noise, or the samples are finer than 24 bits.
 */
export function silentSteps({
  samples,
  sampleRate,
}: Pick<GridSource, 'samples' | 'sampleRate'>): Quantisation | null {
  if (samples.length - endOfChange(samples) < silenceSeconds * sampleRate) return null;
  return quantisationOf(samples);
}

/** Mean square of a tone of half a step, which stands for the noise that such a silence hides; 0 where nothing is hidden. */
export const hiddenPower = (source: Pick<GridSource, 'samples' | 'sampleRate'>): number =>
  maths.square(silentSteps(source)?.step ?? 0) / 8;

/** More range than this is that of any measurement: where it ends does not mislead, dB. */
const ampleDb = 80;
/** What comes before the silence is this many steps high at most: it faded into the steps and was not cut off. */
const lastSteps = 2;
const lastSeconds = 0.05;

export interface Quantised {
  readonly bits: number;
  /** Peak re half a step. */
  readonly rangeDb: number;
  /** From the onset to the last value that differs. */
  readonly atSeconds: number;
}

/** Whether the decay falls between the steps of its file; null where that does not mislead or does not happen. */
export function fallsBetweenSteps(source: GridSource): Quantised | null {
  const { samples, sampleRate, onsetSeconds } = source;
  const steps = silentSteps(source);
  if (!steps) return null;
  const { bits, step } = steps;
  const silence = samples[samples.length - 1];
  const end = endOfChange(samples);
  const last = samples.subarray(Math.max(0, end - Math.round(lastSeconds * sampleRate)), end);
  if (last.some((value) => Math.abs(value - silence) > (lastSteps + 0.5) * step)) return null;
  const rangeDb = 20 * maths.log10(peakOf(samples) / (step / 2));
  return rangeDb < ampleDb ? { bits, rangeDb, atSeconds: end / sampleRate - onsetSeconds } : null;
}
