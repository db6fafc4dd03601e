import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import { RingdownError } from '../signal/errors.js';
import type { Job } from '../signal/types.js';
import { logFrequencies } from './frequencies.js';
import { constantQGrid } from './grid-constant-q.js';
import { inDb, lowestDb, windowDecayShare } from './grid-levels.js';
import { tailPower } from './grid-noise.js';
import { SliceSpectrum } from './spectrum.js';
import type { Grid, GridParams } from './types.js';
import * as maths from '../signal/maths.js';

/** What a grid needs of a recording. */
export interface GridSource {
  readonly samples: Float64Array;
  readonly sampleRate: number;
  readonly onsetSeconds: number;
}

/** 20 to 200 Hz in 1/48 octave, 0.3 s Hann, 10 ms steps over 1 s (common practice for a bass waterfall). */
export const defaultGridParams: GridParams = {
  method: 'sliding',
  windowSeconds: 0.3,
  stepSeconds: 0.01,
  spanSeconds: 1,
  frequenciesHz: logFrequencies(),
};

/** A cumulative slice fades out over this share of what is left, so that the end of the file makes no ripple. */
const tailFade = 0.1;
/** Slices between two reports of progress: some 2 ms. */
const slicesPerReport = 16;

function check(params: GridParams, sampleRate: number): void {
  const { windowSeconds, stepSeconds, spanSeconds, frequenciesHz } = params;
  const top = frequenciesHz[frequenciesHz.length - 1] ?? 0;
  if (frequenciesHz.length < 2) throw new RingdownError('grid-frequencies', { count: frequenciesHz.length });
  if (!(frequenciesHz[0] > 0 && top <= sampleRate * 0.4))
    throw new RingdownError('grid-top', { toHz: top, highestHz: sampleRate * 0.4 });
  if (!(windowSeconds >= 0.005 && windowSeconds <= 10))
    throw new RingdownError('grid-window', { seconds: windowSeconds, from: 0.005, to: 10 });
  if (!(stepSeconds >= 0.0005 && spanSeconds > 0 && spanSeconds / stepSeconds <= 20000))
    throw new RingdownError('grid-step', { step: stepSeconds, span: spanSeconds });
}

/** Fills `window` for one slice and gives its first sample and length, at the reduced rate. */
type Placer = (centreOrEdge: number, window: Float64Array) => { from: number; count: number };

/** Hann of full length `length` samples about a place between samples: w = cos^2(pi (n - centre) / length). */
function slidingPlacer(length: number): Placer {
  return (centre, window) => {
    const from = Math.ceil(centre - length / 2);
    const count = Math.floor(centre + length / 2) - from + 1;
    for (let i = 0; i < count; i++)
      window[i] = maths.square(maths.cos((Math.PI * (from + i - centre)) / length));
    return { from, count };
  };
}

/** From a left edge, rising over `fade` samples, to a fixed right edge. */
function cumulativePlacer(fade: number, right: number): Placer {
  return (left, window) => {
    const from = Math.ceil(left);
    const count = Math.max(0, Math.floor(right) - from + 1);
    const fall = tailFade * (right - left);
    for (let i = 0; i < count; i++) {
      const at = from + i;
      const rise = Math.min(1, (at - left) / fade);
      const end = Math.min(1, (right - at) / fall);
      window[i] =
        maths.square(maths.sin((Math.PI / 2) * rise)) * maths.square(maths.sin((Math.PI / 2) * end));
    }
    return { from, count };
  };
}

/**
 * Level over time and frequency of one recording. Time zero is the onset. A sliding slice is labelled by the centre of
 * its Hann window, a cumulative one by its left edge; past the end of the file there are zeros, and the limits say
 * from where. A constant-Q slice is a sliding one whose window follows frequency. Levels are dB relative to the loudest point of the first slice. Only the samples needed are decimated
 * (110 dB stop-band), then each slice is one zero-padded FFT.
 *
 * @throws RingdownError `grid-frequencies`, `grid-top`, `grid-window`, `grid-step`, `grid-silent`
 */
export function* computeGrid(source: GridSource, params: GridParams = defaultGridParams): Job<Grid> {
  check(params, source.sampleRate);
  const { method, windowSeconds, stepSeconds, spanSeconds, frequenciesHz } = params;
  const columns = frequenciesHz.length;
  const reduced = decimate(
    withoutOffset(source.samples, source.sampleRate),
    source.sampleRate,
    frequenciesHz[columns - 1],
  );
  yield { stage: 'decimate', fraction: 0.3 };

  const rate = reduced.sampleRate;
  /** Place of a time from the onset, in samples of `reduced.samples`. */
  const placeOf = (seconds: number): number => (source.onsetSeconds + seconds) * rate - reduced.firstIndex;
  const dataSeconds = source.samples.length / source.sampleRate - source.onsetSeconds;
  if (method === 'constant-q')
    return yield* constantQGrid({ reduced, onsetPlace: placeOf(0), dataSeconds }, params);
  const rows = Math.floor(spanSeconds / stepSeconds + 1e-9) + 1;
  const timesSeconds = Float64Array.from({ length: rows }, (_, t) => t * stepSeconds);
  const length = windowSeconds * rate;
  const sliding = method === 'sliding';
  const longest = Math.ceil(sliding ? length : dataSeconds * rate) + 2;
  const place = sliding ? slidingPlacer(length) : cumulativePlacer(length, placeOf(dataSeconds));
  const spectrum = new SliceSpectrum(longest, rate, frequenciesHz);
  const window = new Float64Array(longest + 2);

  const levelsDb = new Float32Array(rows * columns);
  let reference = 0;
  let scale = 1;
  for (let t = 0; t < rows; t++) {
    const { from, count } = place(placeOf(timesSeconds[t]), window);
    if (count > 0) spectrum.slice(reduced.samples, from, window, count);
    else spectrum.power.fill(0);
    if (t === 0) {
      let sum = 0;
      for (let i = 0; i < count; i++) sum += window[i];
      // A sine of amplitude A under a window of sum S gives A S / 2.
      scale = maths.square(2 / sum);
      reference = spectrum.power.reduce((most, value) => Math.max(most, value), 0);
      if (!(reference > 0)) throw new RingdownError('grid-silent', {});
    }
    for (let f = 0; f < columns; f++)
      levelsDb[t * columns + f] = Math.max(lowestDb, inDb(spectrum.power[f] / reference));
    if (t % slicesPerReport === slicesPerReport - 1)
      yield { stage: 'grid', fraction: 0.3 + (0.65 * t) / rows };
  }

  const noise = tailPower(reduced.samples, spectrum, {
    window: slidingPlacer(length),
    length,
    fromPlace: placeOf(0),
    toPlace: placeOf(dataSeconds),
    frequenciesHz,
  });
  return {
    method,
    windowSeconds,
    stepSeconds,
    frequenciesHz,
    timesSeconds,
    levelsDb,
    referenceDbFs: inDb(reference * scale),
    limits: {
      // The rise of a cumulative window from 1 to 1/1000 is half a Hann of twice the length.
      windowDecaySeconds: (sliding ? 1 : 2) * windowSeconds * windowDecayShare,
      resolutionHz: new Float32Array(columns).fill(
        sliding ? 2 / windowSeconds : 1 / Math.max(dataSeconds, 1e-3),
      ),
      noiseFloorDb: Float32Array.from(noise, (power) => inDb(power / reference)),
      dataEndSeconds: sliding ? dataSeconds - windowSeconds / 2 : dataSeconds,
      lowestHz: Float32Array.from(timesSeconds, (t) =>
        sliding ? 1 / windowSeconds : 1 / Math.max(dataSeconds - t, 1e-3),
      ),
    },
  };
}
