import { Rng, type Job } from '../../src/signal/index.js';
import {
  fitResonances,
  type FitParams,
  type Resonance,
  type ResonanceFit,
} from '../../src/resonance/index.js';

export function drain<T>(job: Job<T>): T {
  for (;;) {
    const next = job.next();
    if (next.done) return next.value;
  }
}

export const wholeBass: FitParams = { fromHz: 15, toHz: 205, volumeCubicMetres: null };

export const fit = (
  samples: Float64Array,
  sampleRate = 48000,
  onsetSeconds = 0,
  params: FitParams = wholeBass,
): ResonanceFit => drain(fitResonances([{ samples, sampleRate, onsetSeconds }], params));

/** a exp(-6.9078 t / T) sin(2 pi f t), 2 s unless said. */
export function mode(f: number, T: number, a = 1, sampleRate = 48000, seconds = 2): Float64Array {
  return Float64Array.from({ length: Math.round(seconds * sampleRate) }, (_, n) => {
    const t = n / sampleRate;
    return a * Math.exp((-6.9078 * t) / T) * Math.sin(2 * Math.PI * f * t);
  });
}

export function sumOf(...parts: readonly Float64Array[]): Float64Array {
  return parts[0].map((_, n) => parts.reduce((sum, part) => sum + part[n], 0));
}

/** White noise whose rms between the two frequencies is `level`. */
export function noise(
  level: number,
  fromHz: number,
  toHz: number,
  seed = 1,
  sampleRate = 48000,
  seconds = 2,
) {
  const rng = new Rng(seed);
  const deviation = level / Math.sqrt((2 * (toHz - fromHz)) / sampleRate);
  return Float64Array.from({ length: Math.round(seconds * sampleRate) }, () => deviation * rng.gaussian());
}

export const nearest = ({ resonances }: ResonanceFit, frequencyHz: number): Resonance | undefined =>
  [...resonances].sort(
    (a, b) => Math.abs(a.frequencyHz - frequencyHz) - Math.abs(b.frequencyHz - frequencyHz),
  )[0];

export const within = ({ resonances }: ResonanceFit, fromHz: number, toHz: number): readonly Resonance[] =>
  resonances.filter(({ frequencyHz }) => frequencyHz >= fromHz && frequencyHz <= toHz);
