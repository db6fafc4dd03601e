import type { Decimated } from '../signal/decimate.js';
import { RingdownError } from '../signal/errors.js';
import type { Job } from '../signal/types.js';
import { smoothedOverFrequency, tailPlaces } from './grid-noise.js';
import { inDb, lowestDb, windowDecayShare } from './grid-levels.js';
import type { Grid, GridParams } from './types.js';
import * as maths from '../signal/maths.js';

/** The frequency at which a constant-Q window has the length that is asked for, Hz: the middle of 20 to 200 Hz. */
export const constantQHz = 63;

/** Frequencies between two reports of progress: some 2 ms. */
const frequenciesPerReport = 8;

/** Sums of one signal under Hann windows of one length at one frequency. Nothing is allocated per slice. */
class Demodulator {
  private readonly re: Float64Array;
  private readonly im: Float64Array;

  constructor(private readonly samples: Float64Array) {
    this.re = new Float64Array(samples.length);
    this.im = new Float64Array(samples.length);
  }

  /** Turns the frequency down to zero. @param turn radians per sample */
  tune(turn: number): void {
    const { samples, re, im } = this;
    for (let i = 0; i < samples.length; i++) {
      re[i] = samples[i] * maths.cos(turn * i);
      im[i] = samples[i] * maths.sin(turn * i);
    }
  }

  /** Squared modulus of the sum under w = cos^2(pi (n - centre) / length); what lies outside the signal is zero. */
  power(centre: number, length: number): number {
    const { re, im } = this;
    const first = Math.max(0, Math.ceil(centre - length / 2));
    const last = Math.min(re.length - 1, Math.floor(centre + length / 2));
    // cos^2 x = (1 + cos 2x) / 2, and cos 2x goes on by c[n+1] = 2 cos(step) c[n] - c[n-1]: exact to 1e-12 over a window.
    const step = (2 * Math.PI) / length;
    const twice = 2 * maths.cos(step);
    let here = maths.cos(step * (first - centre));
    let before = maths.cos(step * (first - 1 - centre));
    let [sumRe, sumIm] = [0, 0];
    for (let n = first; n <= last; n++) {
      const weight = 0.5 + 0.5 * here;
      sumRe += weight * re[n];
      sumIm += weight * im[n];
      [here, before] = [twice * here - before, here];
    }
    return sumRe * sumRe + sumIm * sumIm;
  }
}

export interface ConstantQSource {
  readonly reduced: Decimated;
  /** Place of the onset in `reduced.samples`. */
  readonly onsetPlace: number;
  /** From the onset to the end of the file. */
  readonly dataSeconds: number;
}

/**
 * A sliding grid whose Hann window has as many periods at every frequency: `windowSeconds` long at 63 Hz, longer below.
 * All windows are 1 in their middle, so that a click reads alike at all frequencies and a slice that holds a whole
 * decay reads its response. Resolution, own decay and end of the data follow the window.
 *
 * @throws RingdownError `grid-silent`
 */
export function* constantQGrid(source: ConstantQSource, params: GridParams): Job<Grid> {
  const { reduced, onsetPlace, dataSeconds } = source;
  const { windowSeconds, stepSeconds, spanSeconds, frequenciesHz } = params;
  const { samples, sampleRate } = reduced;
  const columns = frequenciesHz.length;
  const rows = Math.floor(spanSeconds / stepSeconds + 1e-9) + 1;
  const windowAt = (f: number): number => (windowSeconds * constantQHz) / frequenciesHz[f];
  const power = new Float64Array(rows * columns);
  const noise = new Float64Array(columns);
  const demodulator = new Demodulator(samples);
  for (let f = 0; f < columns; f++) {
    const length = windowAt(f) * sampleRate;
    demodulator.tune((2 * Math.PI * frequenciesHz[f]) / sampleRate);
    for (let t = 0; t < rows; t++)
      power[t * columns + f] = demodulator.power(onsetPlace + t * stepSeconds * sampleRate, length);
    const places = tailPlaces(length, onsetPlace, onsetPlace + dataSeconds * sampleRate);
    for (const place of places) noise[f] += demodulator.power(place, length) / places.length;
    if (f % frequenciesPerReport === frequenciesPerReport - 1)
      yield { stage: 'grid', fraction: 0.3 + (0.65 * f) / columns };
  }
  let loudest = 0;
  for (let f = 1; f < columns; f++) if (power[f] > power[loudest]) loudest = f;
  const reference = power[loudest];
  if (!(reference > 0)) throw new RingdownError('grid-silent', {});
  // The sum of a Hann window is half its length; a sine of amplitude A reads A / 2 of that.
  const scale = maths.square(4 / (windowAt(loudest) * sampleRate));
  const floor = smoothedOverFrequency(noise, frequenciesHz);
  return {
    method: 'constant-q',
    windowSeconds,
    stepSeconds,
    frequenciesHz,
    timesSeconds: Float64Array.from({ length: rows }, (_, t) => t * stepSeconds),
    levelsDb: Float32Array.from(power, (value) => Math.max(lowestDb, inDb(value / reference))),
    referenceDbFs: inDb(reference * scale),
    limits: {
      windowDecaySeconds: windowDecayShare * windowSeconds,
      resolutionHz: Float32Array.from(frequenciesHz, (_, f) => 2 / windowAt(f)),
      noiseFloorDb: Float32Array.from(floor, (value) => inDb(value / reference)),
      // The highest frequency has the shortest window: later than this no slice rests wholly on data.
      dataEndSeconds: dataSeconds - windowAt(columns - 1) / 2,
      // Below it, half the window reaches past the end of the data.
      lowestHz: Float32Array.from({ length: rows }, (_, t) => {
        const left = dataSeconds - t * stepSeconds;
        return left > 0 ? (windowSeconds * constantQHz) / (2 * left) : frequenciesHz[columns - 1];
      }),
    },
  };
}
