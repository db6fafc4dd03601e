import * as maths from '../signal/maths.js';

/** ln 1000: decay rate (1/s) times the 60 dB decay time. */
export const ln1000 = maths.log(1000);

/** A slower pole is held undamped: its decay is no parameter of the fit. s. */
export const undampedSeconds = 100;
export const undampedLog = maths.log(undampedSeconds);

/** Bounds of the fit: 15 ms and 30 s as natural logarithms of the decay time; 8 Hz. */
export const shortestLog = maths.log(0.015);
export const longestLog = maths.log(30);
export const lowestPoleHz = 8;
/** Poles are looked for this far from the centre of a band, as far as its filter lets strong ones through. Hz. */
export const reachHz = 97;

/** Poles of a sum of decaying sines, shared by every channel. */
export interface Poles {
  readonly frequencyHz: Float64Array;
  /** Natural logarithm of the 60 dB decay time in seconds. */
  readonly logDecay: Float64Array;
}

export const polesOf = (frequencies: readonly number[], logDecays: readonly number[]): Poles => ({
  frequencyHz: Float64Array.from(frequencies),
  logDecay: Float64Array.from(logDecays),
});

export const pick = (poles: Poles, indices: readonly number[]): Poles => ({
  frequencyHz: Float64Array.from(indices, (i) => poles.frequencyHz[i]),
  logDecay: Float64Array.from(indices, (i) => poles.logDecay[i]),
});

export const join = (a: Poles, b: Poles): Poles => ({
  frequencyHz: Float64Array.from([...a.frequencyHz, ...b.frequencyHz]),
  logDecay: Float64Array.from([...a.logDecay, ...b.logDecay]),
});

/** Decay rate, 1/s. */
export const decayRate = (logDecay: number): number => ln1000 / maths.exp(logDecay);

/** Half-power bandwidth, Hz. */
export const bandwidth = (logDecay: number): number => decayRate(logDecay) / Math.PI;
