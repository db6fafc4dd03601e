import { backSolve, cholesky, forwardSolve } from './linear.js';
import { longestLog, lowestPoleHz, pick, reachHz, shortestLog, undampedLog, type Poles } from './poles.js';
import { Evaluation, type Projection, type Target } from './varpro.js';
import * as maths from '../signal/maths.js';

/**
 * Weak prior on the decay time: ln T about ln 0.45 s with a standard deviation of 1, so a factor of 2.7 either way. It
 * only matters where the data say next to nothing.
 */
export const priorLog = maths.log(0.45);
export const priorPrecision = 1;

/** Longest step: Hz, and in ln T. */
const longestStepHz = 1.5;
const longestStepLog = 0.7;

export interface Minimum {
  readonly poles: Poles;
  readonly cost: number;
  /** As in `Evaluation`; a copy. */
  readonly amplitudes: Float64Array;
}

const priorCost = (logDecay: Float64Array): number => {
  let sum = 0;
  for (const u of logDecay) if (u < undampedLog) sum += maths.square(u - priorLog);
  return sum * priorPrecision;
};

/** Adds the prior to the Gauss-Newton matrix and gradient, and takes undamped poles' decay out of them. */
export function applyPrior(evaluation: Evaluation, logDecay: Float64Array): void {
  const n = 2 * logDecay.length;
  const { hessian, gradient } = evaluation;
  for (let k = 0; k < logDecay.length; k++) {
    const i = 2 * k + 1;
    if (logDecay[k] < undampedLog) {
      hessian[i * n + i] += priorPrecision;
      gradient[i] -= priorPrecision * (logDecay[k] - priorLog);
    } else {
      for (let j = 0; j < n; j++) hessian[i * n + j] = hessian[j * n + i] = 0;
      hessian[i * n + i] = 1;
      gradient[i] = 0;
    }
  }
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/** Levenberg-Marquardt on the projected cost. The scratch is kept between calls. */
export class Minimiser {
  private current = new Evaluation();
  private trial = new Evaluation();
  private damped = new Float64Array(0);
  private step = new Float64Array(0);

  /** Poles stay within the band that the samples hear. */
  private readonly lowestHz: number;
  private readonly highestHz: number;

  constructor(readonly projection: Projection) {
    this.lowestHz = Math.max(lowestPoleHz, projection.centreHz - reachHz);
    this.highestHz = projection.centreHz + reachHz;
  }

  /** One evaluation without a step. */
  at(target: Target, poles: Poles): Minimum {
    this.projection.evaluate(target, poles, false, this.current);
    return this.minimum(poles);
  }

  private minimum(poles: Poles): Minimum {
    const count = 2 * poles.frequencyHz.length * this.projection.channels;
    return { poles, cost: this.current.cost, amplitudes: this.current.amplitudes.slice(0, count) };
  }

  minimise(target: Target, start: Poles, iterations: number): Minimum {
    const m = start.frequencyHz.length;
    const n = 2 * m;
    if (this.step.length < n) {
      this.step = new Float64Array(2 * n);
      this.damped = new Float64Array(4 * n * n);
    }
    const { damped, step } = this;
    let poles = pick(start, [...start.frequencyHz.keys()]);
    let next = pick(start, [...start.frequencyHz.keys()]);
    let damping = 1e-3;
    this.projection.evaluate(target, poles, true, this.current);
    let total = this.current.cost + priorCost(poles.logDecay);
    for (let iteration = 0; iteration < iterations; iteration++) {
      applyPrior(this.current, poles.logDecay);
      const { hessian, gradient } = this.current;
      let largest = 0;
      for (let i = 0; i < n; i++) largest = Math.max(largest, hessian[i * n + i]);
      let gain = -1;
      for (let attempt = 0; attempt < 7; attempt++) {
        for (let i = 0; i < n * n; i++) damped[i] = hessian[i];
        for (let i = 0; i < n; i++) damped[i * n + i] += damping * (hessian[i * n + i] + 1e-12 * largest);
        if (!cholesky(damped, n)) {
          damping = Math.max(damping * 10, 1e-9);
          continue;
        }
        for (let i = 0; i < n; i++) step[i] = gradient[i];
        forwardSolve(damped, n, step, 0);
        backSolve(damped, n, step, 0);
        for (let k = 0; k < m; k++) {
          const df = clamp(step[2 * k], -longestStepHz, longestStepHz);
          const du = clamp(step[2 * k + 1], -longestStepLog, longestStepLog);
          next.frequencyHz[k] = clamp(poles.frequencyHz[k] + df, this.lowestHz, this.highestHz);
          const u = poles.logDecay[k];
          next.logDecay[k] = u >= undampedLog ? u : clamp(u + du, shortestLog, longestLog);
        }
        this.projection.evaluate(target, next, true, this.trial);
        const tried = this.trial.cost + priorCost(next.logDecay);
        if (tried < total) {
          gain = total - tried;
          total = tried;
          [poles, next] = [next, poles];
          [this.current, this.trial] = [this.trial, this.current];
          damping = Math.max(damping / 5, 1e-9);
          break;
        }
        damping *= 6;
      }
      // 0.02 of chi-squared is far below anything that could matter.
      if (gain < 0.02) break;
    }
    return this.minimum(poles);
  }
}
