import { refusal } from './error-codes.js';
import { complexFft, inverseFft, nextPowerOfTwo } from './fft.js';
import { sweepConstant, type SweepParams } from './sweep.js';
import type { Job } from './types.js';
import * as maths from './maths.js';

export interface Distortion {
  readonly order: number;
  /** Energy of the product re that of the linear response, dB; null where it is lost in the noise or in its neighbour. */
  readonly levelDb: number | null;
}

export interface Deconvolved {
  /** The impulse response, with what rings before its arrival. */
  readonly samples: Float64Array;
  /** Place of the sweep's time zero within the samples; negative where the recording began long before the sweep. */
  readonly zeroIndex: number;
  /** The largest sample: the arrival, to within the rise of the loudspeaker. */
  readonly arrivalIndex: number;
  /** Orders 2 to 5. */
  readonly distortion: readonly Distortion[];
}

/**
 * What is kept before the arrival, as a share of the way to the second-order product, faded in over its first half: the
 * lower band edge rings for the reciprocal of its width, and cut off it would leak into the bass at -40 dB.
 */
const leadShare = 0.4;
/** Regularisation outside the sweep's band, re the strongest bin. */
const outside = 1e-2;
const inside = 1e-9;
/** Samples of recording and sweep together: more would not fit the memory of a page. */
const mostSamples = 2 ** 23;
/** The bass ends here. What the sweep played later need not have rung out. */
const bassHz = 300;
const leastSeconds = 0.3;

/** Raised-cosine edges of a third of an octave on both ends of the sweep's band. */
function bandWeight(frequencyHz: number, { fromHz, toHz }: SweepParams): number {
  const edge = (octaves: number): number =>
    maths.square(maths.sin((Math.PI / 2) * Math.min(1, Math.max(0, octaves * 3))));
  return frequencyHz <= 0 ? 0 : edge(maths.log2(frequencyHz / fromHz)) * edge(maths.log2(toHz / frequencyHz));
}

function spectrumOf(samples: Float64Array, size: number): Float64Array {
  const signal = new Float64Array(2 * size);
  for (let i = 0; i < samples.length; i++) signal[2 * i] = samples[i];
  const bins = new Float64Array(2 * size);
  complexFft(signal, bins);
  return bins;
}

/**
 * Impulse response from the recording of an exponential sweep: division of spectra, regularised outside the sweep's band
 * (ISO 18233). The products of order k of the loudspeaker's distortion come out earlier than the response by
 * constant x ln k seconds, so they stand before the arrival, are cut off, and are measured. The transform is long enough
 * that nothing wraps.
 *
 * The response begins at the same place of the sweep's clock for every recording that was begun with it, so that several
 * keep their delays; where the arrival comes later than half the lead, it begins so much before the arrival.
 *
 * @param recording At the sweep's rate.
 * @param sweep As it was played.
 * @throws RingdownError `sweep-recording-short` where the recording ends before the sweep does; `too-long`
 */
export function* deconvolve(
  recording: Float64Array,
  sweep: Float64Array,
  params: SweepParams,
): Job<Deconvolved> {
  const { sampleRate, fromHz, toHz } = params;
  const constant = sweepConstant(params);
  if (recording.length < sweep.length * 0.5 || recording.length / sampleRate < params.seconds)
    throw refusal('sweep-recording-short', {
      seconds: recording.length / sampleRate,
      neededSeconds: params.seconds,
    });
  const both = recording.length + sweep.length;
  if (both > mostSamples)
    throw refusal('too-long', {
      seconds: recording.length / sampleRate,
      channels: 1,
      limitSeconds: Math.floor((mostSamples - sweep.length) / sampleRate),
    });
  const size = nextPowerOfTwo(both);
  yield { stage: 'sweep', fraction: 0 };
  const played = spectrumOf(sweep, size);
  yield { stage: 'sweep', fraction: 0.3 };
  const heard = spectrumOf(recording, size);
  yield { stage: 'sweep', fraction: 0.6 };
  let strongest = 0;
  for (let k = 0; k < size; k++)
    strongest = Math.max(strongest, maths.square(played[2 * k]) + maths.square(played[2 * k + 1]));
  for (let k = 0; k < size; k++) {
    const weight = bandWeight((Math.min(k, size - k) * sampleRate) / size, params);
    const [pr, pi] = [played[2 * k], played[2 * k + 1]];
    const [hr, hi] = [heard[2 * k], heard[2 * k + 1]];
    const scale = weight / (pr * pr + pi * pi + strongest * (weight > 0.5 ? inside : outside));
    heard[2 * k] = (hr * pr + hi * pi) * scale;
    heard[2 * k + 1] = (hi * pr - hr * pi) * scale;
  }
  const response = played;
  inverseFft(heard, response);
  yield { stage: 'sweep', fraction: 0.9 };

  const at = (lag: number): number => response[2 * ((lag + size) % size)];
  let arrival = 0;
  for (let lag = 0; lag < size; lag++) if (Math.abs(response[2 * lag]) > Math.abs(at(arrival))) arrival = lag;
  if (arrival > size / 2) arrival -= size;
  const lead = Math.round(leadShare * constant * Math.LN2 * sampleRate);
  const first = arrival >= 0 && arrival <= lead / 2 ? -lead : arrival - lead;
  // At this time of the sweep the bass is over; what follows it in the recording is all decay.
  const bassSeconds = Math.min(params.seconds, constant * maths.log(Math.min(bassHz, toHz) / fromHz));
  const end = Math.min(
    size - sweep.length,
    Math.max(
      arrival + Math.round(leastSeconds * sampleRate),
      recording.length - Math.round(bassSeconds * sampleRate),
    ),
  );
  const fade = lead >> 1;
  const samples = Float64Array.from({ length: end - first }, (_, i) =>
    i < fade ? at(i + first) * maths.square(maths.sin((Math.PI / 2) * (i / fade))) : at(i + first),
  );
  return {
    samples,
    zeroIndex: -first,
    arrivalIndex: arrival - first,
    distortion: distortionOf((lag) => at(lag + arrival), constant, sampleRate),
  };
}

/** A product counts from this far above the noise that stands between it and the next, dB. */
const aboveNoiseDb = 6;

/** Energy of each product within a window about its place before the arrival, re that of the linear response. */
function distortionOf(
  at: (lag: number) => number,
  constant: number,
  sampleRate: number,
): readonly Distortion[] {
  const power = (fromSeconds: number, toSeconds: number): number => {
    const [begin, end] = [Math.round(fromSeconds * sampleRate), Math.round(toSeconds * sampleRate)];
    let sum = 0;
    for (let lag = begin; lag < end; lag++) sum += maths.square(at(lag));
    return end > begin ? sum / (end - begin) : 0;
  };
  return [2, 3, 4, 5].map((order) => {
    const place = -constant * maths.log(order);
    // The gap to the next product, less what lies before this one, is all the window there is.
    const width = constant * maths.log(order / (order - 1)) * 0.8;
    const window = (from: number): number => power(from - 0.05 * width, from + 0.55 * width);
    const noise = power(place + 0.6 * width, place + 0.95 * width);
    const [product, linear] = [window(place) - noise, window(0)];
    const heard = width > 0.1 && linear > 0 && product > noise * (maths.power(10, aboveNoiseDb / 10) - 1);
    return { order, levelDb: heard ? 10 * maths.log10(product / linear) : null };
  });
}
