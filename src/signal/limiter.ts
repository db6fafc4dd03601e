import { peakOf } from './level.js';
import * as maths from './maths.js';

/**
 * Levels of what is played, dB re full scale. Sounds are brought to one mean power, low enough that peaks stay below the
 * knee; the limiter is a safeguard behind that, and no sample passes its ceiling.
 */
export const listenLevels = { meanDb: -26, kneeDb: -12, ceilingDb: -6 } as const;

export const decibels = (amplitude: number): number => 20 * maths.log10(Math.max(1e-12, amplitude));
const amplitudeOf = (db: number): number => maths.power(10, db / 20);

/** Root of the mean square; 0 for no samples. */
export function rmsOf(samples: Float64Array | Float32Array): number {
  let sum = 0;
  for (const value of samples) sum += value * value;
  return samples.length > 0 ? Math.sqrt(sum / samples.length) : 0;
}

/**
 * Gains that bring several sounds to one mean power, so that what is compared is how they ring and not how loud they
 * are; all are lowered together where the highest peak of any would pass the knee. A silent sound keeps the gain 1.
 */
export function matchedGains(sounds: readonly Float64Array[]): number[] {
  const { meanDb, kneeDb } = listenLevels;
  const gains = sounds.map((samples) => {
    const rms = rmsOf(samples);
    return rms > 0 ? amplitudeOf(meanDb) / rms : 1;
  });
  const highest = Math.max(0, ...sounds.map((samples, k) => gains[k] * peakOf(samples)));
  const common = Math.min(1, amplitudeOf(kneeDb) / Math.max(1e-12, highest));
  return gains.map((gain) => gain * common);
}

/**
 * Limits in place, sample by sample: nothing changes below the knee, above it the level bends (by a hyperbolic tangent)
 * towards the ceiling and never reaches it. No time constants, so nothing can pass before it answers.
 *
 * @returns How far the highest peak was lowered, dB; 0 where nothing was touched.
 */
export function limitSoftly(
  samples: Float64Array,
  levels: { kneeDb: number; ceilingDb: number } = listenLevels,
): number {
  const knee = amplitudeOf(levels.kneeDb);
  const ceiling = amplitudeOf(levels.ceilingDb);
  const before = peakOf(samples);
  if (before <= knee) return 0;
  for (let n = 0; n < samples.length; n++) {
    const size = Math.abs(samples[n]);
    if (size <= knee) continue;
    const bent = knee + (ceiling - knee) * maths.tanh((size - knee) / (ceiling - knee));
    samples[n] = samples[n] < 0 ? -bent : bent;
  }
  return decibels(before) - decibels(peakOf(samples));
}
