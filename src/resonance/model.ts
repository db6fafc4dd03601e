import { inverseDiagonal } from './complex-linear.js';
import { Minimiser, type Minimum } from './levenberg.js';
import { decayRate, type Poles } from './poles.js';
import { Evaluation, Projection, type Signal, type Target } from './varpro.js';
import type { Weights } from './weights.js';
import * as maths from '../signal/maths.js';

/** Complex samples of all channels about one centre frequency; their floor has unit variance in each part. */
export interface ModalData {
  readonly sampleRate: number;
  readonly centreHz: number;
  readonly count: number;
  readonly channels: readonly Signal[];
}

/** A state of the search: poles with their amplitudes and cost. */
export type State = Minimum;

/** Data under one set of weights, with what the search for the order asks of them. */
export class Model {
  readonly projection: Projection;
  readonly minimiser: Minimiser;
  readonly whole: Target;
  private readonly evaluation = new Evaluation();
  private samples: Signal[] | null = null;
  private targetRoom: Signal[] | null = null;
  private known: { readonly state: State; readonly residual: readonly Signal[] } | null = null;

  constructor(
    readonly data: ModalData,
    readonly weights: Weights,
  ) {
    const { sampleRate, centreHz, count, channels } = data;
    this.projection = new Projection(sampleRate, centreHz, count, channels.length, weights);
    this.minimiser = new Minimiser(this.projection);
    this.whole = this.projection.target(channels);
  }

  at(poles: Poles): State {
    return this.minimiser.at(this.whole, poles);
  }

  /** Adds `sign` times some poles of a state to the signals of all channels, in place. */
  put(
    signals: readonly Signal[],
    { poles, amplitudes }: State,
    which: readonly number[],
    sign: 1 | -1,
  ): void {
    const { sampleRate, centreHz } = this.data;
    const m = poles.frequencyHz.length;
    signals.forEach((y, c) => {
      for (const k of which) {
        const at = 2 * (c * m + k);
        const turn = (2 * Math.PI * (poles.frequencyHz[k] - centreHz)) / sampleRate;
        const decay = decayRate(poles.logDecay[k]) / sampleRate;
        addPole(y, turn, decay, sign * amplitudes[at], sign * amplitudes[at + 1]);
      }
    });
  }

  /** The samples less all poles, unweighted. Not to be written to. */
  residualOfAll(state: State): readonly Signal[] {
    if (this.known?.state !== state) {
      const { count, channels } = this.data;
      const residual = channels.map(({ re, im }) => ({ re: re.slice(0, count), im: im.slice(0, count) }));
      this.put(residual, state, [...state.poles.frequencyHz.keys()], -1);
      this.known = { state, residual };
    }
    return this.known.residual;
  }

  /** What all poles but these leave of the samples. */
  without(state: State, but: readonly number[]): Signal[] {
    const signals = this.residualOfAll(state).map(({ re, im }) => ({ re: re.slice(), im: im.slice() }));
    this.put(signals, state, but, 1);
    return signals;
  }

  /** The target of a local fit of the poles `near`: the others are held. Good until the next local target is asked for. */
  around(state: State, near: readonly number[]): Target {
    if (near.length === state.poles.frequencyHz.length) return this.whole;
    const from = this.residualOfAll(state);
    this.samples ??= this.projection.room();
    this.samples.forEach(({ re, im }, c) => {
      re.set(from[c].re);
      im.set(from[c].im);
    });
    this.put(this.samples, state, near, 1);
    return this.local(this.samples);
  }

  /** A target that is good until the next local one is asked for: a search makes hundreds, one after the other. */
  local(samples: readonly Signal[]): Target {
    this.targetRoom ??= this.projection.room();
    return this.projection.target(samples, this.targetRoom);
  }

  /** Chi-squared that each pole's removal would cost with all other poles held (amplitudes refitted). */
  dropCosts(state: State): Float64Array {
    const { channels } = this.projection;
    const m = state.poles.frequencyHz.length;
    this.projection.evaluate(this.whole, state.poles, false, this.evaluation);
    const { factorRe, factorIm, amplitudes } = this.evaluation;
    const variances = inverseDiagonal(factorRe, factorIm, m, new Float64Array(m), new Float64Array(m));
    return variances.map((variance, k) => {
      let sum = 0;
      for (let c = 0; c < channels; c++) {
        const at = 2 * (c * m + k);
        sum += maths.square(amplitudes[at]) + maths.square(amplitudes[at + 1]);
      }
      return sum / variance;
    });
  }
}

/** Past so many nepers (260 dB) nothing is left of a pole. */
const nepers = 30;

/** Adds (a + j b) exp((-decay + j turn) n) to the samples. The recurrence restarts every 256 samples. */
function addPole({ re, im }: Signal, turn: number, decay: number, a: number, b: number): void {
  const step = maths.exp(-decay);
  const cr = step * maths.cos(turn);
  const ci = step * maths.sin(turn);
  const end = Math.min(re.length, Math.ceil(nepers / decay) + 1);
  for (let from = 0; from < end; from += 256) {
    const size = maths.exp(-decay * from);
    const cosine = size * maths.cos(turn * from);
    const sine = size * maths.sin(turn * from);
    let r = a * cosine - b * sine;
    let i = a * sine + b * cosine;
    const to = Math.min(end, from + 256);
    for (let n = from; n < to; n++) {
      re[n] += r;
      im[n] += i;
      const next = r * cr - i * ci;
      i = r * ci + i * cr;
      r = next;
    }
  }
}
