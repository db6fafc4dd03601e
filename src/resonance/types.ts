import type { Note } from '../signal/types.js';

export type ResonanceKind = 'resolved' | 'cluster' | 'two-slopes' | 'hum' | 'source';

/** One fitted exponential (or an effective one standing for several). Sd are one standard deviation. */
export interface Resonance {
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
  /** 60 dB decay time; null for hum, which never decays. */
  readonly decayTimeSeconds: number | null;
  readonly decayTimeSdSeconds: number | null;
  readonly q: number | null;
  /** Of `two-slopes`: the earlier of its two decay times. */
  readonly decayTimeEarlySeconds: number | null;
  /** Of `two-slopes`: frequency, amplitudes and phases of the early decay, as those below are of the later; else null. */
  readonly early: EarlyDecay | null;
  /** Level at the reference sample (the start of the fit window), dB re the loudest resonance of the fit. */
  readonly levelDb: number;
  /** The same per recording of a joint fit; one entry for a single recording. */
  readonly levelsDb: readonly number[];
  /** Amplitude re full scale of the file and phase (rad) of cos(2 pi f t + phase) at the onset, per recording. */
  readonly amplitudes: readonly number[];
  readonly phasesRadians: readonly number[];
  readonly amplitudeSd: readonly number[];
  readonly phaseSdRadians: readonly number[];
  /** Modal energy over noise variance per sample, dB (the benchmark's rho). */
  readonly rhoDb: number;
  readonly kind: ResonanceKind;
  /** Stated fit window, seconds from the onset. */
  readonly fitFromSeconds: number;
  readonly fitToSeconds: number;
}

/** The early decay of `two-slopes`. */
export interface EarlyDecay {
  readonly frequencyHz: number;
  readonly amplitudes: readonly number[];
  readonly phasesRadians: readonly number[];
}

export interface ResonanceFit {
  /** Ascending frequency. */
  readonly resonances: readonly Resonance[];
  readonly fitFromSeconds: number;
  readonly fitToSeconds: number;
  /** Of the weighted energy in the fitted band; 0 to 1. */
  readonly explainedEnergy: number;
  /**
   * Spectral flatness of what the fit leaves of the samples, 1 for white noise: how much it looks like noise and not like
   * something that rings. Mean over the fitted range; 0 where nothing was fitted.
   */
  readonly residualWhiteness: number;
  /** White-equivalent noise sd per full-rate sample, per recording. */
  readonly noiseSd: readonly number[];
  /** Two equal modes closer than this cannot be told apart here (resolution law), at the median decay time; null if unknown. */
  readonly resolvableSpacingHz: number | null;
  /** `no-range` and the like: where present, `resonances` is empty. */
  readonly notes: readonly Note[];
}

export interface FitParams {
  readonly fromHz: number;
  readonly toHz: number;
  /** Room volume, surface (m2) and edge length (m) for the modal density; null uses the stated default of 60 m3. */
  readonly volumeCubicMetres: number | null;
  /**
   * Frequencies at which modes are predicted. They are tried where no start value lies near, and like every other must be
   * worth their price to the data: a wrong prediction makes no mode.
   */
  readonly predictedHz?: readonly number[];
  /** Yields a first answer on the way, as `draft` of the progress: a `ResonanceFit` of start values and one look at the noise. */
  readonly draft?: boolean;
}
