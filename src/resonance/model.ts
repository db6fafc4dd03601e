import { inverseDiagonal } from './complex-linear.js';
import type { Weights } from './gram.js';
import { Minimiser, type Minimum } from './levenberg.js';
import { decayRate, type Poles } from './poles.js';
import { Evaluation, Projection, type Signal, type Target } from './varpro.js';

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

  /** The samples, or `channels`, less the poles of `without`, unweighted. */
  residual(state: State, without: readonly number[], channels = this.data.channels): Signal[] {
    const { sampleRate, centreHz, count } = this.data;
    const { poles, amplitudes } = state;
    const m = poles.frequencyHz.length;
    return channels.map((channel, c) => {
      const y = { re: channel.re.slice(0, count), im: channel.im.slice(0, count) };
      for (const k of without) {
        const at = 2 * (c * m + k);
        const turn = (2 * Math.PI * (poles.frequencyHz[k] - centreHz)) / sampleRate;
        subtractPole(y, turn, decayRate(poles.logDecay[k]) / sampleRate, amplitudes[at], amplitudes[at + 1]);
      }
      return y;
    });
  }

  residualOfAll(state: State): Signal[] {
    return this.residual(state, [...state.poles.frequencyHz.keys()]);
  }

  /** The target of a local fit: the samples less the poles that are held. */
  without(state: State, held: readonly number[]): Target {
    return held.length === 0 ? this.whole : this.projection.target(this.residual(state, held));
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
        sum += amplitudes[at] ** 2 + amplitudes[at + 1] ** 2;
      }
      return sum / variance;
    });
  }
}

/** Takes (a + j b) exp((-decay + j turn) n) out of the samples. The recurrence restarts every 256 samples. */
function subtractPole({ re, im }: Signal, turn: number, decay: number, a: number, b: number): void {
  const step = Math.exp(-decay);
  const cr = step * Math.cos(turn);
  const ci = step * Math.sin(turn);
  const end = Math.min(re.length, Math.ceil(40 / decay) + 1);
  for (let from = 0; from < end; from += 256) {
    const size = Math.exp(-decay * from);
    const cosine = size * Math.cos(turn * from);
    const sine = size * Math.sin(turn * from);
    let r = a * cosine - b * sine;
    let i = a * sine + b * cosine;
    const to = Math.min(end, from + 256);
    for (let n = from; n < to; n++) {
      re[n] -= r;
      im[n] -= i;
      const next = r * cr - i * ci;
      i = r * ci + i * cr;
      r = next;
    }
  }
}
