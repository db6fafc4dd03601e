import { dcOffset } from './dc.js';
import { blockMeans, peakOf, quantile } from './level.js';

/**
 * The start is looked for where the response first comes within 20 dB of its maximum (ISO 3382-1, value from memory:
 * "more than 20 dB below the maximum"): below that lie the products of a sweep's distortion and of linear-phase
 * filters. An arrival 25 ms later may so be up to 20 dB louder without being taken for the first.
 */
const shareOfPeak = 0.1;
/** From there back down the first flank, at most to -40 dB: the rise of a 4th-order bass source goes with t^3. */
const flankShareOfPeak = 0.01;
/** Multiples of the noise's standard deviation: 5 is passed by chance once in two million samples. */
const noiseFactor = 5;
const flankNoiseFactor = 3;
/** The flank of a bass source is over within this time. */
const flankSeconds = 0.005;
/** Averages that are tried in turn, from none, until the noise lies far enough below the peak. */
const averageSeconds = [0, 0.00025, 0.0005, 0.001];

/** Centred moving average over an odd number of samples; what lies outside the samples counts as zero. */
function movingAverage(samples: Float64Array, width: number): Float64Array {
  if (width <= 1) return samples;
  const half = (width - 1) / 2;
  const sums = new Float64Array(samples.length + 1);
  for (let i = 0; i < samples.length; i++) sums[i + 1] = sums[i] + samples[i];
  return samples.map(
    (_, i) => (sums[Math.min(samples.length, i + half + 1)] - sums[Math.max(0, i - half)]) / width,
  );
}

/**
 * Standard deviation of the noise: from the quieter fifth of blocks of 5 ms, wherever they lie, so that a file needs
 * neither silence before the response nor an end long after it. Zero for noise-free samples.
 */
function noiseDeviation(samples: Float64Array, sampleRate: number): number {
  const block = Math.max(8, 0.005 * sampleRate);
  return Math.sqrt(
    quantile(
      blockMeans(
        samples.map((value) => value * value),
        block,
      ),
      0.2,
    ),
  );
}

/**
 * Index of the first sample of the first arrival, found by its rise above the noise and not by the largest sample:
 * within 2 ms of the truth for bass sources of 4th order. A constant offset does not count. Samples of noise alone give
 * some place in the noise: whether there is anything to be read is judged per band, not here.
 */
export function onsetIndex(samples: Float64Array, sampleRate: number): number {
  if (samples.length === 0) return 0;
  const { offset } = dcOffset(samples, sampleRate);
  const shifted = samples.map((value) => value - offset);
  const scale = peakOf(shifted);
  if (!(scale > 0)) return 0;
  const centred = shifted.map((value) => value / scale);

  let best: { samples: Float64Array; peak: number; noise: number; ratio: number } = {
    samples: centred,
    peak: 1,
    noise: 1,
    ratio: 0,
  };
  for (const seconds of averageSeconds) {
    const averaged = movingAverage(centred, 2 * Math.round((seconds * sampleRate) / 2) + 1);
    const peak = peakOf(averaged);
    const noise = noiseDeviation(averaged, sampleRate);
    const ratio = noise > 0 ? peak / noise : Infinity;
    if (ratio > best.ratio) best = { samples: averaged, peak, noise, ratio };
    if (ratio * shareOfPeak >= noiseFactor) break;
  }
  const { samples: traced, peak, noise } = best;
  const threshold = Math.min(Math.max(shareOfPeak * peak, noiseFactor * noise), 0.5 * peak);
  const flankThreshold = Math.min(Math.max(flankShareOfPeak * peak, flankNoiseFactor * noise), threshold);
  let index = 0;
  while (index < traced.length - 1 && Math.abs(traced[index]) < threshold) index++;
  const earliest = Math.max(0, index - Math.round(flankSeconds * sampleRate));
  const sign = Math.sign(traced[index]);
  while (index > earliest && sign * traced[index - 1] >= flankThreshold) index--;
  return index;
}
