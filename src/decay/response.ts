import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import { RingdownError } from '../signal/errors.js';
import type { Job } from '../signal/types.js';
import { hannWindow } from '../signal/windows.js';
import { peaksAndDips, type Extreme } from './extremes.js';
import type { GridSource } from './grid.js';
import { inDb } from './grid-levels.js';
import { smoothingEdges, smoothPower, type Smoothing } from './smoothing.js';
import { SliceSpectrum } from './spectrum.js';
import * as maths from '../signal/maths.js';

export interface ResponseParams {
  readonly fromHz: number;
  readonly toHz: number;
  readonly smoothing: Smoothing;
}

/** Magnitude response of one recording: one spectrum of all of it, so that a long tail counts as much as it is long. */
export interface Response {
  readonly smoothing: Smoothing;
  /** The same list for every recording with the same parameters. */
  readonly frequenciesHz: Float64Array;
  /** dB re a system that passes the signal unchanged, at the file's own scale: the sum of its samples at each frequency. */
  readonly levelsDb: Float64Array;
  /** What noise of the file's end would read, same scale; -300 where there is none. */
  readonly noiseDb: Float64Array;
  /** Peaks and dips of these levels, the most prominent first; none that lies in the noise. */
  readonly extremes: readonly Extreme[];
  /** The stretch that is transformed, from the onset; it fades in before and out at its end. */
  readonly fromSeconds: number;
  readonly toSeconds: number;
  /** 1 / its length: finer detail is interpolated. */
  readonly resolutionHz: number;
}

/** Spacing of the spectrum before it is smoothed. Over 4 s it misses a lone line's height by 0.2 dB at most. */
const stepHz = 0.125;
/** A smoothed response is told at so many points per octave. */
const pointsPerOctave = 96;
/** What a linear-phase filter or a deconvolution rings before the onset belongs to the response. */
const leadSeconds = 0.05;
const longestSeconds = 4;
/** Fade at the end, as a share of the stretch. */
const fadeShare = 0.1;
/** Noise is taken from the last quarter, in Hann windows of this many seconds at most. */
const noiseShare = 0.25;
const noiseWindowSeconds = 0.5;
/** What stands no higher than this above the noise may be noise: one estimate of it scatters by as much. */
export const overNoiseDb = 6;
/** A peak or dip stands out from its surroundings by at least this much. */
const leastProminenceDb = 6;
/** Highest frequency that is exact at a sample rate. */
const usableShare = 0.4;

function windowOf(count: number, lead: number): Float64Array {
  const fade = Math.max(1, Math.round(fadeShare * count));
  return Float64Array.from({ length: count }, (_, n) => {
    const rise = lead > 0 && n < lead ? maths.square(maths.sin((Math.PI / 2) * ((n + 0.5) / lead))) : 1;
    const left = count - 1 - n;
    return rise * (left < fade ? maths.square(maths.sin((Math.PI / 2) * ((left + 0.5) / fade))) : 1);
  });
}

/** Power per frequency of one sample's worth of noise at the end of the file, after Welch. */
function noiseDensity(
  samples: Float64Array,
  rate: number,
  fromPlace: number,
  toPlace: number,
  frequenciesHz: Float64Array,
): Float64Array {
  const density = new Float64Array(frequenciesHz.length);
  const begin = Math.ceil(toPlace - noiseShare * (toPlace - fromPlace));
  const available = Math.floor(toPlace) - begin;
  const length = Math.min(available, Math.round(noiseWindowSeconds * rate));
  if (length < 16) return density;
  const window = hannWindow(length);
  const energy = window.reduce((sum, w) => sum + w * w, 0);
  const spectrum = new SliceSpectrum(length, rate, frequenciesHz);
  const count = Math.max(1, Math.floor((2 * available) / length) - 1);
  for (let k = 0; k < count; k++) {
    const at = begin + Math.round((k * (available - length)) / Math.max(1, count - 1));
    spectrum.slice(samples, at, window, length);
    for (let f = 0; f < density.length; f++) density[f] += spectrum.power[f] / energy / count;
  }
  return density;
}

/**
 * Magnitude response between two frequencies: one transform of the recording from 50 ms before its onset to its end, 4 s
 * at most. Nothing is normalised.
 *
 * @throws RingdownError `frequency-range`; `grid-top` where the sample rate is too low for `toHz`; `grid-silent`
 */
export function* computeResponse(source: GridSource, params: ResponseParams): Job<Response> {
  const { fromHz, toHz, smoothing } = params;
  const { sampleRate, onsetSeconds } = source;
  if (!(fromHz > 0 && toHz > fromHz)) throw new RingdownError('frequency-range', { fromHz, toHz });
  if (toHz > usableShare * sampleRate)
    throw new RingdownError('grid-top', { toHz, highestHz: usableShare * sampleRate });
  // Beyond the range as far as an average at its ends reaches.
  const lowHz = Math.max(1, Math.floor(smoothingEdges(smoothing, fromHz)[0]));
  const highHz = Math.min(usableShare * sampleRate, Math.ceil(smoothingEdges(smoothing, toHz)[1]));
  const fine = Float64Array.from(
    { length: Math.floor((highHz - lowHz) / stepHz + 1e-9) + 1 },
    (_, k) => lowHz + k * stepHz,
  );
  const reduced = decimate(withoutOffset(source.samples, sampleRate), sampleRate, highHz);
  yield { stage: 'decimate', fraction: 0.3 };

  const rate = reduced.sampleRate;
  const onset = onsetSeconds * rate - reduced.firstIndex;
  const end = Math.min(
    reduced.samples.length,
    (source.samples.length / sampleRate) * rate - reduced.firstIndex,
    onset + longestSeconds * rate,
  );
  // A file that begins closer to its onset is taken from its first sample, and the ringing of the decimation with it.
  const later = onsetSeconds > leadSeconds;
  const begin = later ? Math.round(onset - leadSeconds * rate) : 0;
  const count = Math.max(2, Math.floor(end) - begin);
  const lead = later ? Math.round(0.4 * leadSeconds * rate) : 0;
  const window = windowOf(count, lead);
  const spectrum = new SliceSpectrum(count, rate, fine);
  spectrum.slice(reduced.samples, begin, window, count);
  // One sample at the reduced rate stands for `factor` of the file.
  const scale = maths.square(reduced.factor);
  const power = spectrum.power.map((value) => value * scale);
  if (!power.some((value) => value > 0)) throw new RingdownError('grid-silent', {});
  yield { stage: 'grid', fraction: 0.7 };

  const energy = window.reduce((sum, w) => sum + w * w, 0) * scale;
  const noise = noiseDensity(reduced.samples, rate, onset, end, fine).map((value) => value * energy);
  const frequenciesHz = smoothing === 'none' ? within(fine, fromHz, toHz) : logarithmic(fromHz, toHz);
  // Noise is smooth but its estimate is not: it is always averaged over a third of an octave at least.
  const noiseWidth = smoothing === '1/1' || smoothing === 'erb' ? smoothing : '1/3';
  const levelsDb = smoothPower(fine, power, smoothing, frequenciesHz).map(inDb);
  const noiseDb = smoothPower(fine, noise, noiseWidth, frequenciesHz).map(inDb);
  return {
    smoothing,
    frequenciesHz,
    levelsDb,
    noiseDb,
    extremes: peaksAndDips(levelsDb, leastProminenceDb).filter(
      ({ index }) => levelsDb[index] > noiseDb[index] + overNoiseDb,
    ),
    // The ringing of the decimation before the first sample is no part of the file.
    fromSeconds: Math.max(-onsetSeconds, (begin - onset) / rate),
    toSeconds: (begin + count - onset) / rate,
    resolutionHz: rate / count,
  };
}

const within = (list: Float64Array, fromHz: number, toHz: number): Float64Array =>
  list.filter((f) => f >= fromHz - 1e-9 && f <= toHz + 1e-9);

function logarithmic(fromHz: number, toHz: number): Float64Array {
  const steps = Math.max(1, Math.round(maths.log2(toHz / fromHz) * pointsPerOctave));
  return Float64Array.from({ length: steps + 1 }, (_, k) => fromHz * maths.power(toHz / fromHz, k / steps));
}
