import { backComplex, inverseDiagonal } from './complex-linear.js';
import { backSolve, cholesky, forwardSolve } from './linear.js';
import { applyPrior } from './levenberg.js';
import type { Model, State } from './model.js';
import { decayRate } from './poles.js';
import { Evaluation } from './varpro.js';

/** Standard deviations from the Fisher information of all poles and amplitudes together. */
export interface Deviations {
  readonly frequencyHz: Float64Array;
  readonly logDecay: Float64Array;
  /** Of ln |amplitude| and of the phase (rad) extrapolated back to the onset; [channel * M + pole]. */
  readonly logAmplitude: Float64Array;
  readonly phase: Float64Array;
  /** Sum over channels of the pole's weighted energy: its energy over the noise variance per sample. */
  readonly rho: Float64Array;
}

/** @param leadSeconds Per channel, from the onset, where amplitude and phase are stated, to the first sample of the fit. */
export function deviationsOf(model: Model, state: State, leadSeconds: readonly number[]): Deviations {
  const { poles } = state;
  const m = poles.frequencyHz.length;
  const n = 2 * m;
  const { projection } = model;
  const { channels, gram } = projection;
  const at = new Evaluation();
  projection.evaluate(model.whole, poles, true, at);
  applyPrior(at, poles.logDecay);
  const covariance = invertScaled(at.hessian, n);
  const amplitudeVariance = inverseDiagonal(
    at.factorRe,
    at.factorIm,
    m,
    new Float64Array(m),
    new Float64Array(m),
  );
  const logAmplitude = new Float64Array(channels * m);
  const phase = new Float64Array(channels * m);
  const rho = new Float64Array(m);
  // Row j: column j of inverse(g0) g1, how the amplitudes answer to a change of pole j.
  const shiftRe = projection.solvedRe.slice(0, m * m);
  const shiftIm = projection.solvedIm.slice(0, m * m);
  for (let j = 0; j < m; j++) backComplex(at.factorRe, at.factorIm, m, shiftRe, shiftIm, j * m);
  const slopeSize = new Float64Array(n);
  const slopePhase = new Float64Array(n);
  const tau = 2 * Math.PI;
  for (let c = 0; c < channels; c++) {
    for (let k = 0; k < m; k++) {
      const ar = at.amplitudes[2 * (c * m + k)];
      const ai = at.amplitudes[2 * (c * m + k) + 1];
      const square = Math.max(ar * ar + ai * ai, 1e-300);
      rho[k] += square * gram.g0r[k * m + k];
      for (let j = 0; j < m; j++) {
        const br = at.amplitudes[2 * (c * m + j)];
        const bi = at.amplitudes[2 * (c * m + j) + 1];
        const sr = shiftRe[j * m + k];
        const si = shiftIm[j * m + k];
        // S = (inverse(g0) g1)_kj b_j / a_k: d ln a_k = -S (j tau df + d_j du).
        const pr = sr * br - si * bi;
        const pi = sr * bi + si * br;
        const qr = (pr * ar + pi * ai) / square;
        const qi = (pi * ar - pr * ai) / square;
        const rate = decayRate(poles.logDecay[j]);
        slopeSize[2 * j] = tau * qi;
        slopePhase[2 * j] = -tau * qr;
        slopeSize[2 * j + 1] = -rate * qr;
        slopePhase[2 * j + 1] = -rate * qi;
      }
      // Back to the onset: times exp((d - j w) lead).
      slopeSize[2 * k + 1] -= decayRate(poles.logDecay[k]) * leadSeconds[c];
      slopePhase[2 * k] -= tau * leadSeconds[c];
      // Unit variance in each part of the noise: so has each part of the amplitude this variance.
      const own = amplitudeVariance[k] / square;
      logAmplitude[c * m + k] = Math.sqrt(Math.max(0, own + quadratic(covariance, slopeSize, n)));
      phase[c * m + k] = Math.sqrt(Math.max(0, own + quadratic(covariance, slopePhase, n)));
    }
  }
  const deviation = (i: number): number => Math.sqrt(Math.max(covariance[i * n + i], 0));
  return {
    frequencyHz: Float64Array.from({ length: m }, (_, k) => deviation(2 * k)),
    logDecay: Float64Array.from({ length: m }, (_, k) => deviation(2 * k + 1)),
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
