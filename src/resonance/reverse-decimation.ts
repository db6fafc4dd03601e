import { withoutOffset } from '../signal/dc.js';
import {
  ellipticHighPass,
  ellipticLowPass,
  responseAt,
  reverseDecimate,
  type Sections,
} from '../signal/filters.js';
import { rumbleTopHz } from './floor.js';
import { decayRate } from './poles.js';
import * as maths from '../signal/maths.js';

/** One recording as the estimator takes it: samples at any rate, and where its first arrival is. */
export interface FitRecording {
  readonly samples: Float64Array;
  readonly sampleRate: number;
  readonly onsetSeconds: number;
}

/** The bass of one recording from just after its onset on, at some 1000 samples per second. */
export interface Decimated {
  readonly samples: Float64Array;
  readonly sampleRate: number;
  /** Samples of the file per sample here. */
  readonly step: number;
  /** From the onset to the first sample here. */
  readonly leadSeconds: number;
  /** Of the file, divided out before. */
  readonly peak: number;
  /** What it was run through, each at a rate of its own. */
  readonly filters: readonly Filter[];
  /** Rumble was filtered out below this frequency; 0 where there is none. */
  readonly rumbleToHz: number;
}

interface Filter {
  readonly sections: Sections;
  readonly sampleRate: number;
}

/**
 * The rate of the samples lies above this one and so far over the bass for the sake of a low-pass that answers quickly:
 * what its delay spends, the first milliseconds of the decay, is lost to the fit. It stops 110 dB from 794 Hz, whose
 * image is at 206.
 */
const targetRate = 1000;
const passBandHz = 219;
/** Rumble is filtered out from here down at least. */
const lowestHighPassHz = 15;
/** The direct sound, the first reflections and what the onset's search may be off by: they are no modes. */
const guardSeconds = 0.004;
/** The reversed filter's own ringing lies at the end of the samples. */
const filterTailSeconds = 0.06;

/** Three equal samples at the extreme of the file are a clipped stretch. Index after the last of them, or 0. */
function clippedUntil(samples: Float64Array, peak: number): number {
  const limit = peak * (1 - 1e-9);
  for (let i = samples.length - 1, run = 0; i >= 0; i--) {
    run = Math.abs(samples[i]) >= limit ? run + 1 : 0;
    if (run >= 3) return i + 3;
  }
  return 0;
}

/** Length without the digital silence that an export may have put behind the response. */
function soundingLength(samples: Float64Array): number {
  let end = samples.length;
  while (end > 0 && samples[end - 1] === samples[samples.length - 1]) end--;
  return samples.length - end > 16 ? end : samples.length;
}

/**
 * The samples from `from` to `length` without their offset, lengthened by a fade of the last value: a file that ends off
 * zero (rumble, an offset) would otherwise start the reversed filter with a step that rings through the floor.
 */
function faded(samples: Float64Array, from: number, length: number, sampleRate: number): Float64Array {
  const centred = withoutOffset(samples.subarray(0, length), sampleRate);
  const fade = Math.ceil(filterTailSeconds * sampleRate);
  const out = new Float64Array(length - from + fade);
  for (let n = from; n < length; n++) out[n - from] = centred[n];
  const last = length > from ? out[length - from - 1] : 0;
  for (let n = 0; n < fade; n++)
    out[length - from + n] = last * maths.square(maths.cos((0.5 * Math.PI * (n + 1)) / fade));
  return out;
}

/**
 * Runs the high-pass backwards in time. Before it reaches the samples it runs through their odd reflection about
 * the end, so that rumble goes on without a step.
 */
function withoutRumble(samples: Float64Array, sections: Sections): Float64Array {
  const reflected = Math.max(0, samples.length - 1);
  const y = new Float64Array(samples.length + reflected);
  y.set(samples);
  const last = samples[samples.length - 1];
  for (let n = 0; n < reflected; n++) y[samples.length + n] = 2 * last - samples[samples.length - 2 - n];
  reverseDecimate(y, 0, 1, sections, y);
  return y.slice(0, samples.length);
}

/**
 * Bass of one recording for the fit. Filtering backwards in time keeps every exponential that rings after the start
 * exact, so the poles of the samples here are those of the room. Clipped samples are left out by starting 2 ms after
 * the last of them.
 */
export function decimateBackwards({ samples, sampleRate, onsetSeconds }: FitRecording): Decimated {
  let peak = 0;
  for (let n = 0; n < samples.length; n++) peak = Math.max(peak, Math.abs(samples[n]));
  const length = soundingLength(samples);
  const onset = Math.round(onsetSeconds * sampleRate);
  let from = onset + Math.floor(guardSeconds * sampleRate);
  const clipped = clippedUntil(samples, peak);
  if (clipped > 0) from = Math.max(from, clipped + Math.ceil(0.002 * sampleRate));
  from = Math.min(from, Math.max(0, length - 1));
  const step = Math.max(1, Math.floor(sampleRate / targetRate));
  const rate = sampleRate / step;
  const filters: Filter[] =
    step > 1 ? [{ sections: ellipticLowPass('6-110', passBandHz, sampleRate), sampleRate }] : [];
  const padded = faded(samples, from, length, sampleRate);
  let kept: Float64Array = reverseDecimate(
    padded,
    0,
    step,
    filters[0]?.sections ?? new Float64Array(0),
  ).slice(0, Math.max(0, Math.floor((length - from) / step - filterTailSeconds * rate)));
  const top = kept.length > 1 ? rumbleTopHz(kept, rate) : 0;
  const rumbleToHz = top > 0 ? Math.max(lowestHighPassHz, top) : 0;
  if (rumbleToHz > 0) {
    const sections = ellipticHighPass(rumbleToHz, rate);
    kept = withoutRumble(kept, sections);
    filters.push({ sections, sampleRate: rate });
  }
  if (peak > 0) for (let n = 0; n < kept.length; n++) kept[n] /= peak;
  return {
    samples: kept,
    sampleRate: rate,
    step,
    leadSeconds: from / sampleRate - onsetSeconds,
    peak,
    filters,
    rumbleToHz,
  };
}

/** Amplitude at the onset, in units of the file, of the pole that reads a cos - b sin at the first sample here. */
export function amplitudeAtOnset(
  decimated: Decimated,
  frequencyHz: number,
  logDecay: number,
  a: number,
  b: number,
): [number, number] {
  const rate = decayRate(logDecay);
  const turn = 2 * Math.PI * frequencyHz;
  let re = a;
  let im = b;
  for (const { sections, sampleRate } of decimated.filters) {
    const size = maths.exp(-rate / sampleRate);
    const [gr, gi] = responseAt(
      sections,
      size * maths.cos(turn / sampleRate),
      size * maths.sin(turn / sampleRate),
    );
    const square = gr * gr + gi * gi;
    [re, im] = [(re * gr + im * gi) / square, (im * gr - re * gi) / square];
  }
  const growth = decimated.peak * maths.exp(rate * decimated.leadSeconds);
  const cosine = maths.cos(turn * decimated.leadSeconds);
  const sine = maths.sin(turn * decimated.leadSeconds);
  return [growth * (re * cosine + im * sine), growth * (im * cosine - re * sine)];
}
