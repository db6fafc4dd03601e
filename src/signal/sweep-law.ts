import { refusal } from './error-codes.js';
import { peakOf } from './level.js';
import type { SweepParams } from './sweep.js';
import * as maths from './maths.js';

/** The law of a sweep that was found in samples: it need not begin with the file. */
export interface SweepLaw extends SweepParams {
  /** From the first sample to where the sweep begins. */
  readonly startSeconds: number;
}

/** The sweep is where its envelope is above this share of the peak. */
const soundingShare = 0.02;
/** Frequencies are read from zero crossings up to this share of the rate: higher up these lie between too few samples. */
const highestShare = 1 / 6;
/** The logarithm of frequency may leave the straight line by this much, rms: 2 % of the frequency. */
const straightness = 0.02;
const leastOctaves = 1;
const bins = 200;

/** Times between samples at which the signal crosses zero. */
function crossings(samples: Float64Array, from: number, to: number): Float64Array {
  const places: number[] = [];
  for (let i = from + 1; i < to; i++) {
    const [a, b] = [samples[i - 1], samples[i]];
    if (a < 0 !== b < 0 && a !== b) places.push(i - 1 + a / (a - b));
  }
  return Float64Array.from(places);
}

/**
 * The law by which the frequency of an exponential sweep rises, from its zero crossings: so a sweep file of any program
 * serves, and so does a clean recording of the sweep by wire.
 *
 * @throws RingdownError `sweep-not-exponential` where the frequency does not rise by a constant ratio per second
 */
export function sweepLaw(samples: Float64Array, sampleRate: number): SweepLaw {
  const peak = peakOf(samples);
  const loud = soundingShare * peak;
  const first = samples.findIndex((value) => Math.abs(value) > loud);
  const last = samples.findLastIndex((value) => Math.abs(value) > loud);
  const places = first >= 0 ? crossings(samples, first, last + 1) : new Float64Array(0);
  if (places.length < 20) throw refusal('sweep-not-exponential', {});

  // The mean frequency of each stretch of time, so that the many periods of the end do not outweigh the few of the start.
  const times: number[] = [];
  const logs: number[] = [];
  const width = (places[places.length - 1] - places[0]) / bins;
  for (let k = 0, bin = 0; bin < bins && k < places.length - 1; bin++) {
    const begin = k;
    while (k < places.length - 1 && (places[k] < places[0] + (bin + 1) * width || k === begin)) k++;
    const frequency = ((k - begin) / 2 / (places[k] - places[begin])) * sampleRate;
    if (frequency > sampleRate * highestShare) break;
    times.push((places[begin] + places[k]) / 2 / sampleRate);
    logs.push(maths.log(frequency));
  }
  const n = times.length;
  const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / n;
  const [mt, ml] = [mean(times), mean(logs)];
  const sxx = times.reduce((sum, t) => sum + maths.square(t - mt), 0);
  const slope = times.reduce((sum, t, i) => sum + (t - mt) * (logs[i] - ml), 0) / sxx;
  const rms = Math.sqrt(mean(times.map((t, i) => maths.square(logs[i] - ml - slope * (t - mt)))));
  const [startSeconds, endSeconds] = [first / sampleRate, (last + 1) / sampleRate];
  const seconds = endSeconds - startSeconds;
  const octaves = (slope * seconds) / Math.LN2;
  if (n < 10 || !(octaves >= leastOctaves) || !(rms < straightness))
    throw refusal('sweep-not-exponential', {});
  const at = (t: number): number => maths.exp(ml + slope * (t - mt));
  return {
    fromHz: at(startSeconds),
    toHz: Math.min(at(endSeconds), sampleRate / 2),
    seconds,
    sampleRate,
    levelDbFs: 20 * maths.log10(peak),
    startSeconds,
  };
}
