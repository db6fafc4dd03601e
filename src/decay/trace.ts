import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import { complexFft, inverseFft, nextPowerOfTwo } from '../signal/fft.js';
import { stillFalling } from './checks.js';
import type { GridSource } from './grid.js';
import { truncation } from './lundeby.js';
import { hiddenPower } from './quantised.js';
import * as maths from '../signal/maths.js';

/** The course of a recording from its first sample to its last, small enough to draw. */
export interface RecordingTrace {
  /** Width of one column. Column k covers the times from k to k + 1 steps, from the first sample. */
  readonly stepSeconds: number;
  /** Lowest and highest sample of each column, re full scale, all frequencies. */
  readonly lowest: Float32Array;
  readonly highest: Float32Array;
  /** Mean power of the band in each column, dB re its loudest column. */
  readonly levelsDb: Float32Array;
  /** The band whose level is traced. */
  readonly fromHz: number;
  readonly toHz: number;
  /**
   * Of its noise, on the same scale; null where none was found: nothing decays out of it, the end is digitally silent, or
   * the decay goes on to the end.
   */
  readonly noiseDb: number | null;
  /** From the first sample. */
  readonly onsetSeconds: number;
  readonly durationSeconds: number;
  /** Where the decay of the band meets its noise, or the end of the samples; null where nothing decays. From the first sample. */
  readonly usableEndSeconds: number | null;
}

/** Columns are no shorter than this, so that a level is that of a few periods of the band, nor more than `mostColumns`. */
const leastStepSeconds = 0.0025;
const mostColumns = 4000;
/** Levels are averaged over this long, two periods at 50 Hz: shorter ones show the beating of the band, not its decay. */
const averageSeconds = 0.04;
/** Levels end here, dB below the loudest column. */
const lowestDb = -160;

/** Power of the analytic signal between two frequencies; edges rise over a quarter of an octave, zero phase. */
function bandPower(source: GridSource, fromHz: number, toHz: number): { power: Float64Array; rate: number } {
  const edge = maths.power(2, 0.25);
  const reduced = decimate(
    withoutOffset(source.samples, source.sampleRate),
    source.sampleRate,
    Math.min(toHz * edge, source.sampleRate * 0.25),
  );
  const skip = -reduced.firstIndex;
  const rate = reduced.sampleRate;
  const length = Math.floor(source.samples.length / reduced.factor);
  // Half a second of zeros takes the ringing of the lower edge, which would else wrap to the start.
  const size = nextPowerOfTwo(reduced.samples.length + Math.round(rate * 0.5));
  const input = new Float64Array(2 * size);
  for (let i = 0; i < reduced.samples.length; i++) input[2 * i] = reduced.samples[i];
  const bins = new Float64Array(2 * size);
  complexFft(input, bins);
  const rise = (octaves: number): number =>
    maths.square(maths.sin((Math.PI / 2) * Math.min(1, Math.max(0, octaves))));
  for (let k = 0; k < size; k++) {
    const f = (k * rate) / size;
    const inside = k > 0 && k < size / 2;
    const gain = inside
      ? 2 * rise(1 + maths.log2(f / fromHz) / 0.25) * rise(1 + maths.log2(toHz / f) / 0.25)
      : 0;
    bins[2 * k] *= gain;
    bins[2 * k + 1] *= gain;
  }
  inverseFft(bins, input);
  const power = new Float64Array(length);
  for (let i = 0; i < length; i++)
    power[i] = (maths.square(input[2 * (i + skip)]) + maths.square(input[2 * (i + skip) + 1])) / 2;
  return { power, rate };
}

/** Extremes per column. */
function extremes(samples: Float64Array, perColumn: number, columns: number): [Float32Array, Float32Array] {
  const lowest = new Float32Array(columns);
  const highest = new Float32Array(columns);
  for (let k = 0; k < columns; k++) {
    const from = Math.min(samples.length - 1, Math.floor(k * perColumn));
    const to = Math.max(from + 1, Math.min(samples.length, Math.ceil((k + 1) * perColumn)));
    let low = samples[from];
    let high = low;
    for (let i = from + 1; i < to; i++) {
      if (samples[i] < low) low = samples[i];
      if (samples[i] > high) high = samples[i];
    }
    lowest[k] = low;
    highest[k] = high;
  }
  return [lowest, highest];
}

/**
 * Waveform and level of one recording over its whole length. The level is that of the band from `fromHz` to `toHz`
 * averaged over 40 ms; where it meets its own noise is found after Lundeby et al. 1995.
 *
 * @param toHz At most 0.4 of the sample rate; higher ones are lowered to it.
 */
export function recordingTrace(source: GridSource, fromHz = 20, toHz = 200): RecordingTrace {
  const { samples, sampleRate, onsetSeconds } = source;
  const durationSeconds = samples.length / sampleRate;
  const columns = Math.max(2, Math.min(mostColumns, Math.floor(durationSeconds / leastStepSeconds)));
  const stepSeconds = durationSeconds / columns;
  const [lowest, highest] = extremes(samples, samples.length / columns, columns);

  const top = Math.min(toHz, sampleRate * 0.4);
  const { power, rate } = bandPower(source, Math.min(fromHz, top / 2), top);
  const sums = new Float64Array(power.length + 1);
  for (let i = 0; i < power.length; i++) sums[i + 1] = sums[i] + power[i];
  const half = (averageSeconds / 2) * rate;
  const means = Float64Array.from({ length: columns }, (_, k) => {
    const centre = (k + 0.5) * stepSeconds * rate;
    const from = Math.max(0, Math.min(power.length - 1, Math.round(centre - half)));
    const to = Math.max(from + 1, Math.min(power.length, Math.round(centre + half)));
    return (sums[to] - sums[from]) / (to - from);
  });
  const loudest = means.reduce((most, value) => Math.max(most, value), 0);
  const inDb = (value: number): number =>
    value > 0 && loudest > 0 ? Math.max(lowestDb, 10 * maths.log10(value / loudest)) : lowestDb;
  const onset = Math.min(power.length - 1, Math.round(onsetSeconds * rate));
  const cut = truncation(power, onset, rate, rate / (2 * Math.sqrt(fromHz * top)), hiddenPower(source));
  // What still falls at the end is no noise, however little of it is left.
  const endless = stillFalling(power, onset, rate);
  return {
    stepSeconds,
    lowest,
    highest,
    levelsDb: Float32Array.from(means, inDb),
    fromHz,
    toHz: top,
    noiseDb: cut && !endless && cut.noisePower > 0 ? inDb(cut.noisePower) : null,
    onsetSeconds,
    durationSeconds,
    usableEndSeconds: cut && (endless ? durationSeconds : cut.endIndex / rate),
  };
}
