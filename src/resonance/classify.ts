import type { StretchFit } from './band-fit.js';
import { amplitudeOutside } from './bands.js';
import { clusterError, modelError } from './density.js';
import { bandwidth, undampedLog } from './poles.js';
import { amplitudeAtOnset, type Decimated } from './reverse-decimation.js';
import type { Resonance, ResonanceKind } from './types.js';
import * as maths from '../signal/maths.js';

/** What one mode must keep to, to be told as one: sd of frequency (Hz) and of ln T, and its decay time (s). */
const resolvedSdHz = 0.25;
const resolvedSdLog = 0.1;
const resolvedLongestSeconds = 5;
/** Shorter, or of a lower Q, is the loudspeaker or the direct sound: no room rings so briefly in the bass. */
const sourceSeconds = 0.12;
const sourceQ = 2.5;
/**
 * The Fisher information takes noise and order for known. On synthetic responses errors are so much larger than it says.
 */
const spread = 1.15;
/** Undamped poles are hum where a line was found in the recording within this distance. Hz. */
const humHz = 0.4;
/** And where they decay no faster than this. s. */
const humSeconds = 4;
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
  { band, whitened, state, deviations, joined }: StretchFit,
  k: number,
  told: Told,
): Draft {
  const { decimated } = told;
  const m = state.poles.frequencyHz.length;
  const frequencyHz = state.poles.frequencyHz[k];
  const logDecay = state.poles.logDecay[k];
  const decayTime = maths.exp(logDecay);
  const width = bandwidth(logDecay);
  const undamped = logDecay >= undampedLog;
  const rhoDb = 10 * maths.log10(Math.max(deviations.rho[k], 1e-30));
  const errorOf = (db?: number) =>
    modelError(frequencyHz, width, told.volumeCubicMetres, decimated.length, db);
  const error = errorOf(rhoDb);
  const prudent = errorOf();
  const complex = decimated.map((d, c): [number, number] => {
    const at = 2 * (c * m + k);
    const re = state.amplitudes[at];
    const im = state.amplitudes[at + 1];
    const [a, b] = amplitudeOutside(band, whitened, c, frequencyHz, logDecay, re, im);
    return amplitudeAtOnset(d, frequencyHz, logDecay, a, b);
  });
  const amplitudes = complex.map(([x, y]) => maths.hypot(x, y));
  const q = frequencyHz / width;
  // Without a steady line in the recording, what hardly decays is noise or a slow mode, never hum.
  const line = told.humHz.some((f) => Math.abs(f - frequencyHz) < humHz);
  let kind: ResonanceKind = 'cluster';
  if (line && (undamped || decayTime > humSeconds)) kind = 'hum';
  else if (decayTime < sourceSeconds || q < sourceQ) kind = 'source';
  else if (
    !joined[k] &&
    maths.hypot(spread * deviations.frequencyHz[k], prudent.frequency * width) <= resolvedSdHz &&
    maths.hypot(spread * deviations.logDecay[k], prudent.decay) <= resolvedSdLog &&
    decayTime <= resolvedLongestSeconds
  )
    kind = 'resolved';
  const beside =
    kind === 'cluster' ? clusterError(frequencyHz, width, told.volumeCubicMetres, decimated.length) : error;
  const frequencySdHz = maths.hypot(
    spread * deviations.frequencyHz[k],
    undamped ? 0 : beside.frequency * width,
  );
  const logDecaySd = maths.hypot(spread * deviations.logDecay[k], beside.decay);
  const hum = kind === 'hum';
  return {
    frequencyHz,
    frequencySdHz,
    decayTimeSeconds: hum ? null : decayTime,
    decayTimeSdSeconds: hum ? null : decayTime * logDecaySd,
    q: hum ? null : q,
    decayTimeEarlySeconds: null,
    early: null,
    amplitudes,
    phasesRadians: complex.map(([x, y]) => maths.atan2(y, x)),
    amplitudeSd: amplitudes.map((a, c) => a * deviations.logAmplitude[c * m + k]),
    phaseSdRadians: amplitudes.map((_, c) => deviations.phase[c * m + k]),
    rhoDb,
    kind,
    fitFromSeconds: told.fitFromSeconds,
    fitToSeconds: told.fitFromSeconds + whitened.data.count / band.sampleRate,
    logDecaySd,
    starts: amplitudes.map((a, c) => a * maths.exp((-6.907755 * decimated[c].leadSeconds) / decayTime)),
  };
}
