import type { BandFit } from './band-fit.js';
import { amplitudeOutside } from './bands.js';
import { modelError } from './density.js';
import { mainsOf } from './hum.js';
import { bandwidth, undampedLog } from './poles.js';
import { amplitudeAtOnset, type Decimated } from './reverse-decimation.js';
import type { Resonance, ResonanceKind } from './types.js';

/** What one mode must keep to, to be told as one: sd of frequency (Hz) and of ln T, and its decay time (s). */
const resolvedSdHz = 0.25;
const resolvedSdLog = 0.1;
const resolvedLongestSeconds = 5;
/** Shorter, or of a lower Q, is the loudspeaker or the direct sound: no room rings so briefly in the bass. */
const sourceSeconds = 0.12;
const sourceQ = 2.5;
/** Two decays at one frequency: closer than this share of a bandwidth, and apart by this ratio. */
const slopesShare = 0.25;
const slopesRatio = 1.8;
/** Each of the two decay times must be known this well (sd of ln T) for the pair to mean anything. */
const slopesSdLog = 0.25;

/** What the kinds rest on beside the fit itself. */
export interface Told {
  readonly decimated: readonly Decimated[];
  readonly volumeCubicMetres: number;
  readonly fitFromSeconds: number;
  readonly humHz: readonly number[];
}

/** One pole of one band with its uncertainties: a resonance whose level is still to be referred to the others'. */
export interface Draft extends Omit<Resonance, 'levelDb' | 'levelsDb'> {
  readonly logDecaySd: number;
  /** Amplitude at the first sample of the fit, per recording. */
  readonly starts: readonly number[];
}

export function draftOf(
  { band, whitened, state, deviations, joined }: BandFit,
  k: number,
  told: Told,
): Draft {
  const { decimated } = told;
  const m = state.poles.frequencyHz.length;
  const frequencyHz = state.poles.frequencyHz[k];
  const logDecay = state.poles.logDecay[k];
  const decayTime = Math.exp(logDecay);
  const width = bandwidth(logDecay);
  const undamped = logDecay >= undampedLog;
  const error = modelError(frequencyHz, width, told.volumeCubicMetres, decimated.length);
  const frequencySdHz = Math.hypot(deviations.frequencyHz[k], undamped ? 0 : error.frequency * width);
  const logDecaySd = Math.hypot(deviations.logDecay[k], error.decay);
  const complex = decimated.map((d, c): [number, number] => {
    const at = 2 * (c * m + k);
    const re = state.amplitudes[at];
    const im = state.amplitudes[at + 1];
    const [a, b] = amplitudeOutside(band, whitened, c, frequencyHz, logDecay, re, im);
    return amplitudeAtOnset(d, frequencyHz, logDecay, a, b);
  });
  const amplitudes = complex.map(([x, y]) => Math.hypot(x, y));
  const q = frequencyHz / width;
  const nearHum = told.humHz.some((f) => Math.abs(f - frequencyHz) < 0.4);
  const neverDecays =
    undamped || (decayTime > 4 && mainsOf(frequencyHz, 2 * deviations.frequencyHz[k]) !== null);
  let kind: ResonanceKind = 'cluster';
  if (neverDecays && (nearHum || mainsOf(frequencyHz) !== null)) kind = 'hum';
  else if (decayTime < sourceSeconds || q < sourceQ) kind = 'source';
  else if (
    !joined[k] &&
    frequencySdHz <= resolvedSdHz &&
    logDecaySd <= resolvedSdLog &&
    decayTime <= resolvedLongestSeconds
  )
    kind = 'resolved';
  const hum = kind === 'hum';
  return {
    frequencyHz,
    frequencySdHz,
    decayTimeSeconds: hum ? null : decayTime,
    decayTimeSdSeconds: hum ? null : decayTime * logDecaySd,
    q: hum ? null : q,
    decayTimeEarlySeconds: null,
    amplitudes,
    phasesRadians: complex.map(([x, y]) => Math.atan2(y, x)),
    amplitudeSd: amplitudes.map((a, c) => a * deviations.logAmplitude[c * m + k]),
    phaseSdRadians: amplitudes.map((_, c) => deviations.phase[c * m + k]),
    rhoDb: 10 * Math.log10(Math.max(deviations.rho[k], 1e-30)),
    kind,
    fitFromSeconds: told.fitFromSeconds,
    fitToSeconds: told.fitFromSeconds + whitened.data.count / band.sampleRate,
    logDecaySd,
    starts: amplitudes.map((a, c) => a * Math.exp((-6.907755 * decimated[c].leadSeconds) / decayTime)),
  };
}

/** The pair as one resonance with two decays, or null where the two are not that. */
function twoSlopes(a: Draft, b: Draft): Draft | null {
  const early = (a.decayTimeSeconds ?? 0) < (b.decayTimeSeconds ?? 0) ? a : b;
  const late = early === a ? b : a;
  const { decayTimeSeconds: short, q: shortQ } = early;
  const { decayTimeSeconds: long, q: longQ } = late;
  if (short === null || long === null || shortQ === null || longQ === null) return null;
  if (early.logDecaySd > slopesSdLog || late.logDecaySd > slopesSdLog) return null;
  const width = 0.5 * (early.frequencyHz / shortQ + late.frequencyHz / longQ);
  if (Math.abs(a.frequencyHz - b.frequencyHz) > slopesShare * width || long / short < slopesRatio)
    return null;
  return { ...late, kind: 'two-slopes', decayTimeEarlySeconds: short };
}

/** Drafts as resonances by ascending frequency: pairs of two decays joined, levels re the loudest. */
export function tellResonances(all: readonly Draft[]): Resonance[] {
  if (all.length === 0) return [];
  const drafts = [...all].sort((a, b) => a.frequencyHz - b.frequencyHz);
  for (let k = 0; k + 1 < drafts.length;) {
    const pair = twoSlopes(drafts[k], drafts[k + 1]);
    if (pair) drafts.splice(k, 2, pair);
    else k++;
  }
  const rms = (starts: readonly number[]) =>
    Math.sqrt(starts.reduce((sum, a) => sum + a * a, 0) / starts.length);
  const rooms = drafts.filter(({ kind }) => kind !== 'hum');
  const reference = Math.max(...(rooms.length > 0 ? rooms : drafts).map(({ starts }) => rms(starts)));
  const levelOf = (a: number) => 20 * Math.log10(Math.max(a / reference, 1e-15));
  return drafts.map(({ logDecaySd: _, starts, ...draft }) => ({
    ...draft,
    levelDb: levelOf(rms(starts)),
    levelsDb: starts.map(levelOf),
  }));
}
