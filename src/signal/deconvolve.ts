import { RingdownError } from './errors.js';
import { complexFft, inverseFft, nextPowerOfTwo } from './fft.js';
import { sweepConstant, type SweepParams } from './sweep.js';

export interface Deconvolved {
  /** The impulse response; time zero of the sweep lies at `zeroIndex`. */
  readonly samples: Float64Array;
  readonly zeroIndex: number;
  /** Level of the distortion products of order 2 to 5 re the linear response, dB; null where they cannot be told. */
  readonly distortionDb: readonly { readonly order: number; readonly levelDb: number | null }[];
}

/**
 * What is kept before time zero, as a share of the way to the second-order product, faded in over its first half: the
 * lower band edge rings for the reciprocal of its width, and cut off it would leak into the bass at -40 dB.
 */
const leadShare = 0.4;
/** Regularisation outside the sweep's band, re the strongest bin. */
const outside = 1e-2;
const inside = 1e-9;

/** Raised-cosine edges of a third of an octave on both ends of the sweep's band. */
function bandWeight(frequencyHz: number, { fromHz, toHz }: SweepParams): number {
  const edge = (octaves: number): number =>
    Math.sin((Math.PI / 2) * Math.min(1, Math.max(0, octaves * 3))) ** 2;
  return frequencyHz <= 0 ? 0 : edge(Math.log2(frequencyHz / fromHz)) * edge(Math.log2(toHz / frequencyHz));
}

/**
 * Impulse response from the recording of an exponential sweep: division of spectra, regularised outside the sweep's band
 * (ISO 18233). The products of order k of the loudspeaker's distortion come out earlier than the response by
 * constant x ln k seconds, so they stand before time zero, are cut off, and are measured. The transform is long enough
 * that nothing wraps.
 *
 * @param recording Begins with, or before, the sweep's start; at the sweep's rate.
 * @param sweep As it was played.
 * @throws RingdownError `sweep-recording-short` where the recording ends before the sweep does
 */
export function deconvolve(recording: Float64Array, sweep: Float64Array, params: SweepParams): Deconvolved {
  const { sampleRate } = params;
  if (recording.length < sweep.length)
    throw new RingdownError('sweep-recording-short', {
      seconds: recording.length / sampleRate,
      neededSeconds: sweep.length / sampleRate,
    });
  const size = nextPowerOfTwo(recording.length + sweep.length);
  const spectrumOf = (samples: Float64Array): Float64Array => {
    const signal = new Float64Array(2 * size);
    for (let i = 0; i < samples.length; i++) signal[2 * i] = samples[i];
    const bins = new Float64Array(2 * size);
    complexFft(signal, bins);
    return bins;
  };
  const played = spectrumOf(sweep);
  const heard = spectrumOf(recording);
  let strongest = 0;
  for (let k = 0; k < size; k++) strongest = Math.max(strongest, played[2 * k] ** 2 + played[2 * k + 1] ** 2);
  for (let k = 0; k < size; k++) {
    const frequency = (Math.min(k, size - k) * sampleRate) / size;
    const weight = bandWeight(frequency, params);
    const [pr, pi] = [played[2 * k], played[2 * k + 1]];
    const [hr, hi] = [heard[2 * k], heard[2 * k + 1]];
    const scale = weight / (pr * pr + pi * pi + strongest * (weight > 0.5 ? inside : outside));
    heard[2 * k] = (hr * pr + hi * pi) * scale;
    heard[2 * k + 1] = (hi * pr - hr * pi) * scale;
  }
  const response = played;
  inverseFft(heard, response);

  const lead = Math.round(leadShare * sweepConstant(params) * Math.LN2 * sampleRate);
  const after = Math.min(size - sweep.length, recording.length);
  const at = (index: number): number => response[2 * ((index + size) % size)];
  const fade = lead >> 1;
  const samples = Float64Array.from({ length: lead + after }, (_, i) =>
    i < fade ? at(i - lead) * Math.sin((Math.PI / 2) * (i / fade)) ** 2 : at(i - lead),
  );
  return { samples, zeroIndex: lead, distortionDb: distortion(at, params) };
}

/** Energy of each product within a window about its place, re that of the linear response. */
function distortion(at: (index: number) => number, params: SweepParams): Deconvolved['distortionDb'] {
  const constant = sweepConstant(params);
  const energy = (seconds: number, widthSeconds: number): number => {
    const begin = Math.round((seconds - widthSeconds * 0.1) * params.sampleRate);
    const end = Math.round((seconds + widthSeconds * 0.9) * params.sampleRate);
    let sum = 0;
    for (let i = begin; i < end; i++) sum += at(i) ** 2;
    return sum;
  };
  return [2, 3, 4, 5].map((order) => {
    const place = -constant * Math.log(order);
    // The gap to the next product is all the window there is.
    const width = constant * Math.log((order + 1) / order) * 0.8;
    const linear = energy(0, width);
    const levelDb = width > 0.1 && linear > 0 ? 10 * Math.log10(energy(place, width) / linear) : null;
    return { order, levelDb };
  });
}
