import { invertFactor, inverseElement } from './linear.js';
import { Minimiser, type Minimum } from './levenberg.js';
import { decayRate, type Poles } from './poles.js';
import { Evaluation, Projection, type Target } from './varpro.js';
import type { Weights } from './gram.js';

/** Samples of all channels on one time grid, in units of their floor's standard deviation. */
export interface ModalData {
  readonly sampleRate: number;
  readonly count: number;
  readonly channels: readonly Float64Array[];
}

/** A state of the search: poles with their amplitudes and cost. */
export type State = Minimum;

/** Data under one set of weights, with what the search for the order asks of them. */
export class Model {
  readonly projection: Projection;
  readonly minimiser: Minimiser;
  readonly whole: Target;
  private readonly evaluation = new Evaluation();
  private inverse = new Float64Array(0);

  constructor(
    readonly data: ModalData,
    readonly weights: Weights,
  ) {
    this.projection = new Projection(data.sampleRate, data.count, data.channels.length, weights);
    this.minimiser = new Minimiser(this.projection);
    this.whole = this.projection.target(data.channels);
  }

  at(poles: Poles): State {
    return this.minimiser.at(this.whole, poles);
  }

  /** The samples less the poles of `without`, unweighted. */
  residual(state: State, without: readonly number[]): Float64Array[] {
    const { sampleRate, count, channels } = this.data;
    const n = 2 * state.poles.frequencyHz.length;
    return channels.map((channel, c) => {
      const y = channel.slice(0, count);
      for (const k of without) {
        const a = state.amplitudes[c * n + 2 * k];
        const b = state.amplitudes[c * n + 2 * k + 1];
        subtractPole(y, sampleRate, state.poles.frequencyHz[k], state.poles.logDecay[k], a, b);
      }
      return y;
    });
  }

  /** The target of a local fit: the samples less the poles that are held. */
  without(state: State, held: readonly number[]): Target {
    return held.length === 0 ? this.whole : this.projection.target(this.residual(state, held));
  }

  /** Chi-squared that each pole's removal would cost with all other poles held (amplitudes refitted). */
  dropCosts(state: State): Float64Array {
    const { channels } = this.projection;
    const m = state.poles.frequencyHz.length;
    const n = 2 * m;
    this.projection.evaluate(this.whole, state.poles, false, this.evaluation);
    if (this.inverse.length < n * n) this.inverse = new Float64Array(2 * n * n);
    const { inverse, evaluation } = this;
    invertFactor(evaluation.factor, n, inverse);
    return Float64Array.from({ length: m }, (_, k) => {
      const i = 2 * k;
      const aa = inverseElement(inverse, n, i, i);
      const ab = inverseElement(inverse, n, i, i + 1);
      const bb = inverseElement(inverse, n, i + 1, i + 1);
      const determinant = aa * bb - ab * ab;
      let sum = 0;
      for (let c = 0; c < channels; c++) {
        const x = evaluation.amplitudes[c * n + i];
        const y = evaluation.amplitudes[c * n + i + 1];
        sum += (bb * x * x - 2 * ab * x * y + aa * y * y) / determinant;
      }
      return sum;
    });
  }
}

/** Takes a cos - b sin, decaying, out of the samples. The recurrence restarts every 256 samples to stay exact. */
export function subtractPole(
  y: Float64Array,
  sampleRate: number,
  frequencyHz: number,
  logDecay: number,
  a: number,
  b: number,
): void {
  const turn = (2 * Math.PI * frequencyHz) / sampleRate;
  const decay = decayRate(logDecay) / sampleRate;
  const step = Math.exp(-decay);
  const cr = step * Math.cos(turn);
  const ci = step * Math.sin(turn);
  const end = Math.min(y.length, Math.ceil(40 / decay) + 1);
  for (let from = 0; from < end; from += 256) {
    const size = Math.exp(-decay * from);
    let r = size * Math.cos(turn * from);
    let i = size * Math.sin(turn * from);
    const to = Math.min(end, from + 256);
    for (let n = from; n < to; n++) {
      y[n] -= a * r - b * i;
      const next = r * cr - i * ci;
      i = r * ci + i * cr;
      r = next;
    }
  }
}
