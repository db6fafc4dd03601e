import { meanOf } from '../signal/level.js';
import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import { complexFft, inverseFft, nextPowerOfTwo } from '../signal/fft.js';
import type { Job, Recording } from '../signal/types.js';
import type { Resonance, ResonanceFit } from '../resonance/types.js';
import { remake } from './residual.js';
import * as maths from '../signal/maths.js';

/** One resonance beside the sound it was fitted to, in a narrow band about it. Levels: dB re the loudest of the band. */
export interface RidgeFit {
  readonly target: RidgeTarget;
  /** Width of the band at -3 dB. */
  readonly bandwidthHz: number;
  /** From the onset. */
  readonly timesSeconds: Float64Array;
  /** Of the recording. */
  readonly levelsDb: Float32Array;
  /** Of the one resonance, by the fit; null where the ridge has none. */
  readonly fittedDb: Float32Array | null;
  /** Of all resonances together: where neighbours beat, this does too. */
  readonly togetherDb: Float32Array;
  /** Of the recording less all resonances. */
  readonly residualDb: Float32Array;
  /** Of what the resonances leave over at the end of the recording; -200 where that is nothing. */
  readonly floorDb: number;
  /** From here on the band is noise, or the recording has ended: nothing later is decay. */
  readonly sinksSeconds: number;
  /** End of the recording. */
  readonly endSeconds: number;
  /** The stretch that the fit saw. */
  readonly fitFromSeconds: number;
  readonly fitToSeconds: number;
}

export interface RidgeTarget {
  readonly frequencyHz: number;
  /** Index among the resonances of the fit, or null. */
  readonly resonance: number | null;
  /** As it was told: of the resonance, or of the band that none explains. */
  readonly decayTimeSeconds: number | null;
  readonly decayTimeSdSeconds: number | null;
}

/** Narrow enough to part neighbours, wide enough not to ring longer than the decay. Hz. */
const narrowestHz = 4;
const widestHz = 12;
/** Smallest product of the band's width and the decay time: as asked of time-reversed filters (value from memory). */
const leastProduct = 4;
const stepSeconds = 0.005;
const longestSeconds = 4;
/**
 * Share of the response, at its end, whose mean residual is taken for noise: the recording itself may still decay there.
 */
const noiseShare = 0.2;
/** The band counts as noise from where its mean over `restSeconds` comes this near to the floor. */
const nearFloorDb = 3;
const restSeconds = 0.1;
const lowestDb = -200;
/** What a fit leaves over of a sound without any noise, re the loudest: a fainter floor is taken for silence. */
const faintestFloorDb = -130;

/** Distance to the nearest other resonance that is no fainter than 30 dB below. */
function spacingOf(resonances: readonly Resonance[], { frequencyHz, resonance }: RidgeTarget): number {
  const own = resonance === null ? -Infinity : resonances[resonance].levelDb;
  let nearest = widestHz;
  resonances.forEach((other, k) => {
    if (k !== resonance && other.levelDb > own - 30)
      nearest = Math.min(nearest, Math.abs(other.frequencyHz - frequencyHz));
  });
  return nearest;
}

/**
 * Squared envelope of a band with a Gaussian response, which rings shortest, zero phase: at every time the same delay as
 * the samples. -60 dB after the reciprocal of the width.
 */
class Band {
  private readonly size: number;
  private readonly bins: Float64Array;
  private readonly work: Float64Array;
  constructor(
    private readonly length: number,
    private readonly rate: number,
    private readonly centreHz: number,
    private readonly widthHz: number,
  ) {
    this.size = nextPowerOfTwo(length + Math.ceil((2 * rate) / widthHz));
    this.bins = new Float64Array(2 * this.size);
    this.work = new Float64Array(2 * this.size);
  }

  power(samples: Float64Array): Float64Array {
    const { size, bins, work, rate, centreHz, widthHz, length } = this;
    work.fill(0);
    for (let i = 0; i < length; i++) work[2 * i] = samples[i];
    complexFft(work, bins);
    for (let k = 0; k < size; k++) {
      const outside = ((k * rate) / size - centreHz) / (widthHz / 2);
      const gain = k > 0 && k < size / 2 ? 2 * maths.exp((-Math.LN2 / 2) * outside * outside) : 0;
      bins[2 * k] *= gain;
      bins[2 * k + 1] *= gain;
    }
    inverseFft(bins, work);
    return Float64Array.from({ length }, (_, i) => maths.square(work[2 * i]) + maths.square(work[2 * i + 1]));
  }
}

/** Index from which the band is noise: its first mean over 0.1 s that comes near to the floor, after the loudest. */
function sinkIndex(power: Float64Array, onset: number, rate: number, floorPower: number): number {
  const block = Math.max(1, Math.round(restSeconds * rate));
  let loudest = onset;
  for (let i = onset; i < power.length; i++) if (power[i] > power[loudest]) loudest = i;
  for (let i = loudest; i + block <= power.length; i += Math.max(1, block >> 3))
    if (meanOf(power, i, i + block) < floorPower * maths.power(10, nearFloorDb / 10)) return i;
  return power.length;
}

/**
 * The decay of one ridge as it was fitted: recording, resonance, all resonances and what they leave over, each through
 * the same filter.
 *
 * @param index Of the recording among those the fit was made from.
 */
export function* ridgeFit(
  recording: Recording,
  fit: ResonanceFit,
  target: RidgeTarget,
  index = 0,
): Job<RidgeFit> {
  const { frequencyHz, resonance } = target;
  const chosen = resonance === null ? null : fit.resonances[resonance];
  const decay = target.decayTimeSeconds;
  const bandwidthHz = Math.max(
    Math.min(widestHz, Math.max(narrowestHz, spacingOf(fit.resonances, target))),
    decay === null ? narrowestHz : leastProduct / decay,
  );
  const reduced = decimate(
    withoutOffset(recording.samples, recording.sampleRate),
    recording.sampleRate,
    Math.min(frequencyHz + 3 * bandwidthHz, recording.sampleRate * 0.25),
  );
  yield { stage: 'decimate', fraction: 0.3 };
  const rate = reduced.sampleRate;
  // The ringing of the decimation past the file's end is no part of the recording.
  const fileEnd = Math.floor((recording.samples.length / recording.sampleRate) * rate) - reduced.firstIndex;
  const samples = reduced.samples.slice(0, Math.min(reduced.samples.length, fileEnd));
  const onsetSeconds = recording.onsetSeconds - reduced.firstIndex / rate;
  const onset = Math.max(0, Math.min(samples.length - 1, Math.round(onsetSeconds * rate)));
  const bass = { samples, sampleRate: rate, onsetSeconds };
  const together = remake(bass, fit.resonances, index);
  const alone = chosen ? remake(bass, [chosen], index) : null;
  yield { stage: 'fit', fraction: 0.6 };
  const band = new Band(samples.length, rate, frequencyHz, bandwidthHz);
  const recorded = band.power(samples);
  const after = samples.length - onset;
  // The filter smears the end of the file over the reciprocal of its width; what it touches is no noise.
  const quiet = samples.length - Math.min(Math.round(rate / bandwidthHz), after >> 2);
  const residual = band.power(samples.map((value, n) => value - together[n]));
  const left = meanOf(residual, Math.max(onset, quiet - Math.round(noiseShare * after)), quiet);
  const rows = Math.max(2, Math.floor(Math.min(after / rate, longestSeconds) / stepSeconds));
  const timesSeconds = Float64Array.from({ length: rows }, (_, t) => t * stepSeconds);
  const at = (power: Float64Array, seconds: number): number => {
    const place = Math.min(power.length - 1, (onsetSeconds + seconds) * rate);
    const low = Math.floor(place);
    const high = Math.min(power.length - 1, low + 1);
    return power[low] + (place - low) * (power[high] - power[low]);
  };
  const loudest = timesSeconds.reduce((most, t) => Math.max(most, at(recorded, t)), 0);
  const floorPower = left < loudest * maths.power(10, faintestFloorDb / 10) ? 0 : left;
  const sink = sinkIndex(recorded.subarray(0, quiet), onset, rate, floorPower);
  const inDb = (power: number): number =>
    power > 0 && loudest > 0 ? Math.max(lowestDb, 10 * maths.log10(power / loudest)) : lowestDb;
  const levelsOf = (power: Float64Array): Float32Array =>
    Float32Array.from(timesSeconds, (t) => inDb(at(power, t)));
  const floorDb = inDb(floorPower);
  return {
    target,
    bandwidthHz,
    timesSeconds,
    levelsDb: levelsOf(recorded),
    fittedDb: alone && levelsOf(band.power(alone)),
    togetherDb: levelsOf(band.power(together)),
    residualDb: levelsOf(residual),
    floorDb,
    sinksSeconds: sink >= quiet ? after / rate : Math.max(0, sink / rate - onsetSeconds),
    endSeconds: after / rate,
    fitFromSeconds: chosen?.fitFromSeconds ?? fit.fitFromSeconds,
    fitToSeconds: chosen?.fitToSeconds ?? fit.fitToSeconds,
  };
}
