import { backSolve, cholesky, forwardSolve } from './linear.js';
import { applyPrior } from './levenberg.js';
import type { Model, State } from './model.js';
import { decayRate } from './poles.js';
import { Evaluation } from './varpro.js';

/** Standard deviations from the Fisher information of all poles and amplitudes together. */
export interface Deviations {
  readonly frequencyHz: Float64Array;
  readonly logDecay: Float64Array;
  /** Of ln |amplitude| and of the phase (rad) extrapolated back by `leadSeconds`; [channel * M + pole]. */
  readonly logAmplitude: Float64Array;
  readonly phase: Float64Array;
  /** Sum over channels of the pole's weighted energy: its energy over the noise variance per sample. */
  readonly rho: Float64Array;
}

/** @param leadSeconds From the onset, where amplitude and phase are stated, to the first sample of the fit. */
export function deviationsOf(model: Model, state: State, leadSeconds: number): Deviations {
  const { poles } = state;
  const m = poles.frequencyHz.length;
  const n = 2 * m;
  const { projection } = model;
  const { channels, gram } = projection;
  const at = new Evaluation();
  projection.evaluate(model.whole, poles, true, at);
  applyPrior(at, poles.logDecay);
  const covariance = invertScaled(at.hessian, n);
  const variance = (i: number): number => Math.max(covariance[i * n + i], 0);
  const inverseGram = invertScaled(gram.g0, n);
  const logAmplitude = new Float64Array(channels * m);
  const phase = new Float64Array(channels * m);
  const rho = new Float64Array(m);
  // Rows of inverse(G0) G1: how the amplitudes answer to a change of a pole.
  const shift = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) shift[i * n + j] = projection.solved[i * n + j];
    backSolve(at.factor, n, shift, i * n);
  }
  const slopeSize = new Float64Array(n);
  const slopePhase = new Float64Array(n);
  for (let c = 0; c < channels; c++) {
    for (let k = 0; k < m; k++) {
      const a = at.amplitudes[c * n + 2 * k];
      const b = at.amplitudes[c * n + 2 * k + 1];
      const square = Math.max(a * a + b * b, 1e-300);
      const i = 2 * k * n + 2 * k;
      rho[k] += a * a * gram.g0[i] + 2 * a * b * gram.g0[i + 1] + b * b * gram.g0[i + n + 1];
      for (let j = 0; j < m; j++) {
        const p = at.amplitudes[c * n + 2 * j];
        const q = at.amplitudes[c * n + 2 * j + 1];
        // `shift` is transposed: row = column of inverse(G0) G1.
        const s11 = shift[2 * j * n + 2 * k];
        const s12 = shift[(2 * j + 1) * n + 2 * k];
        const s21 = shift[2 * j * n + 2 * k + 1];
        const s22 = shift[(2 * j + 1) * n + 2 * k + 1];
        const rate = decayRate(poles.logDecay[j]);
        const tau = 2 * Math.PI;
        const af = -tau * (-q * s11 + p * s12);
        const bf = -tau * (-q * s21 + p * s22);
        const ad = -rate * (p * s11 + q * s12);
        const bd = -rate * (p * s21 + q * s22);
        slopeSize[2 * j] = (a * af + b * bf) / square;
        slopePhase[2 * j] = (a * bf - b * af) / square;
        slopeSize[2 * j + 1] = (a * ad + b * bd) / square;
        slopePhase[2 * j + 1] = (a * bd - b * ad) / square;
      }
      // Back to the onset: times exp((d - j w) lead).
      slopeSize[2 * k + 1] -= decayRate(poles.logDecay[k]) * leadSeconds;
      slopePhase[2 * k] -= 2 * Math.PI * leadSeconds;
      const vaa = inverseGram[i];
      const vab = inverseGram[i + 1];
      const vbb = inverseGram[i + n + 1];
      const sizeNoise = (a * a * vaa + 2 * a * b * vab + b * b * vbb) / (square * square);
      const phaseNoise = (b * b * vaa - 2 * a * b * vab + a * a * vbb) / (square * square);
      logAmplitude[c * m + k] = Math.sqrt(Math.max(0, sizeNoise + quadratic(covariance, slopeSize, n)));
      phase[c * m + k] = Math.sqrt(Math.max(0, phaseNoise + quadratic(covariance, slopePhase, n)));
    }
  }
  return {
    frequencyHz: Float64Array.from({ length: m }, (_, k) => Math.sqrt(variance(2 * k))),
    logDecay: Float64Array.from({ length: m }, (_, k) => Math.sqrt(variance(2 * k + 1))),
    logAmplitude,
    phase,
    rho,
  };
}

function quadratic(matrix: Float64Array, x: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) {
    let row = 0;
    for (let j = 0; j < n; j++) row += matrix[i * n + j] * x[j];
    sum += x[i] * row;
  }
  return sum;
}

/** Inverse of a symmetric matrix, scaled to a unit diagonal first; a ridge of 1e-12 or more where it is not definite. */
function invertScaled(matrix: Float64Array, n: number): Float64Array {
  const scale = Float64Array.from(
    { length: n },
    (_, i) => 1 / Math.sqrt(Math.max(matrix[i * n + i], 1e-300)),
  );
  const factor = new Float64Array(n * n);
  for (let ridge = 1e-12; ; ridge *= 10) {
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) factor[i * n + j] = matrix[i * n + j] * scale[i] * scale[j];
    for (let i = 0; i < n; i++) factor[i * n + i] += ridge;
    if (cholesky(factor, n)) break;
  }
  const inverse = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    inverse[i * n + i] = 1;
    forwardSolve(factor, n, inverse, i * n, i);
    backSolve(factor, n, inverse, i * n);
  }
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) inverse[i * n + j] *= scale[i] * scale[j];
  return inverse;
}
