import { backComplex, choleskyHermitian, forwardComplex } from './complex-linear.js';
import { Gram } from './gram.js';
import { decayRate, type Poles } from './poles.js';
import type { Weights } from './weights.js';
import * as maths from '../signal/maths.js';

/** Complex samples. */
export interface Signal {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Samples ready for projection: each channel times w2, padded with zeros to a multiple of four. */
export interface Target {
  readonly channels: readonly Signal[];
  /** Sum over channels of w2 |y|^2. */
  readonly energy: number;
}

/** What one evaluation of the projection leaves behind; reused, never shared. */
export class Evaluation {
  cost = 0;
  /** Complex amplitudes: channel by channel, real and imaginary part of each pole interleaved. */
  amplitudes = new Float64Array(0);
  /** Gauss-Newton matrix and half the negative gradient of the cost for (frequencyHz, logDecay), interleaved. */
  hessian = new Float64Array(0);
  gradient = new Float64Array(0);
  /** Cholesky factor of the Gram matrix. */
  factorRe = new Float64Array(0);
  factorIm = new Float64Array(0);

  reserve(m: number, channels: number): void {
    if (this.gradient.length >= 2 * m && this.amplitudes.length >= 2 * m * channels) return;
    const room = Math.ceil(1.3 * m) + 4;
    this.amplitudes = new Float64Array(2 * room * channels);
    this.gradient = new Float64Array(2 * room);
    this.hessian = new Float64Array(4 * room * room);
    this.factorRe = new Float64Array(room * room);
    this.factorIm = new Float64Array(room * room);
  }
}

/**
 * Price of a pole whose energy alone equals that of the samples, chi-squared. It weighs nothing for modes, and forbids
 * crowds of huge poles that cancel each other to imitate what is no decaying sine.
 */
const shrinkage = 3;

/**
 * Weighted variable projection (Golub and Pereyra 1973) in Gram form on complex samples about `centreHz`: the residual is
 * never formed, the amplitudes of all channels are eliminated with one factorisation.
 */
export class Projection {
  readonly gram: Gram;
  /** Row j: inverse(L) times column j of g1. Valid after an evaluation with its Jacobian. */
  solvedRe = new Float64Array(0);
  solvedIm = new Float64Array(0);
  private b0r = new Float64Array(0);
  private b0i = new Float64Array(0);
  private b1r = new Float64Array(0);
  private b1i = new Float64Array(0);
  private xr = new Float64Array(0);
  private xi = new Float64Array(0);

  constructor(
    readonly sampleRate: number,
    readonly centreHz: number,
    readonly count: number,
    readonly channels: number,
    readonly weights: Weights,
  ) {
    this.gram = new Gram(sampleRate, centreHz, count, weights);
  }

  /** Channels for a target, all zero. */
  room(): Signal[] {
    const length = Math.ceil(this.count / 4) * 4;
    return Array.from({ length: this.channels }, () => ({
      re: new Float64Array(length),
      im: new Float64Array(length),
    }));
  }

  /**
   * @param samples Per channel, `count` values whose noise has unit variance in each part.
   * @param into Channels from `room` that are overwritten, and the target's from then on.
   */
  target(samples: readonly Signal[], into = this.room()): Target {
    const { squares } = this.weights;
    let energy = 0;
    const channels = samples.map((y, c) => {
      const { re, im } = into[c];
      for (let n = 0; n < this.count; n++) {
        re[n] = y.re[n] * squares[n];
        im[n] = y.im[n] * squares[n];
        energy += re[n] * y.re[n] + im[n] * y.im[n];
      }
      return { re, im };
    });
    return { channels, energy };
  }

  private reserve(m: number): void {
    if (this.xr.length >= m) return;
    const room = Math.ceil(1.5 * m) + 4;
    for (const key of ['b0r', 'b0i', 'b1r', 'b1i'] as const)
      this[key] = new Float64Array(room * this.channels);
    for (const key of ['xr', 'xi'] as const) this[key] = new Float64Array(room);
    for (const key of ['solvedRe', 'solvedIm'] as const) this[key] = new Float64Array(room * room);
  }

  /** Fills `out`; its Hessian and gradient only where `jacobian` is set. */
  evaluate(target: Target, poles: Poles, jacobian: boolean, out: Evaluation): void {
    const m = poles.frequencyHz.length;
    const { gram, channels } = this;
    out.reserve(m, channels);
    this.reserve(m);
    gram.fill(poles, jacobian);
    this.rightHandSides(target, poles, jacobian);
    const { factorRe, factorIm, amplitudes } = out;
    for (let ridge = Math.max(1e-12, shrinkage / target.energy); ; ridge *= 30) {
      for (let i = 0; i < m * m; i++) {
        factorRe[i] = gram.g0r[i];
        factorIm[i] = gram.g0i[i];
      }
      for (let i = 0; i < m; i++) factorRe[i * m + i] *= 1 + ridge;
      if (choleskyHermitian(factorRe, factorIm, m)) break;
    }
    // Channel by channel: y = inverse(L) b0; the cost is what y leaves of the energy.
    let explained = 0;
    const { xr, xi } = this;
    for (let c = 0; c < channels; c++) {
      for (let i = 0; i < m; i++) {
        xr[i] = this.b0r[c * m + i];
        xi[i] = this.b0i[c * m + i];
      }
      forwardComplex(factorRe, factorIm, m, xr, xi, 0);
      for (let i = 0; i < m; i++) explained += xr[i] * xr[i] + xi[i] * xi[i];
      backComplex(factorRe, factorIm, m, xr, xi, 0);
      for (let i = 0; i < m; i++) {
        amplitudes[2 * (c * m + i)] = xr[i];
        amplitudes[2 * (c * m + i) + 1] = xi[i];
      }
    }
    out.cost = target.energy - explained;
    if (!jacobian) return;
    const { solvedRe, solvedIm } = this;
    for (let j = 0; j < m; j++) {
      const row = j * m;
      for (let i = 0; i < m; i++) {
        solvedRe[row + i] = gram.g1r[row + i];
        solvedIm[row + i] = -gram.g1i[row + i];
      }
      forwardComplex(factorRe, factorIm, m, solvedRe, solvedIm, row);
    }
    this.assemble(poles, out);
  }

  private rightHandSides(target: Target, poles: Poles, jacobian: boolean): void {
    const m = poles.frequencyHz.length;
    for (let k = 0; k < m; k++) {
      const d = decayRate(poles.logDecay[k]) / this.sampleRate;
      const w = (2 * Math.PI * (poles.frequencyHz[k] - this.centreHz)) / this.sampleRate;
      // Past 18 nepers (156 dB) nothing is left of the exponential.
      const length = Math.min(this.count, Math.ceil(18 / d) + 1);
      for (let c = 0; c < this.channels; c++) {
        const at = c * m + k;
        if (jacobian) project(target.channels[c], length, d, -w, moments);
        else projectPlainly(target.channels[c], length, d, -w, moments);
        this.b0r[at] = moments[0];
        this.b0i[at] = moments[1];
        if (!jacobian) continue;
        this.b1r[at] = moments[2] / this.sampleRate;
        this.b1i[at] = moments[3] / this.sampleRate;
      }
    }
  }

  /** Hessian and gradient from what the projection leaves of the columns' derivatives. */
  private assemble(poles: Poles, out: Evaluation): void {
    const m = poles.frequencyHz.length;
    const n = 2 * m;
    const { gram, solvedRe, solvedIm, channels } = this;
    const { amplitudes, hessian, gradient } = out;
    const tau = 2 * Math.PI;
    for (let i = 0; i < m; i++) {
      const di = decayRate(poles.logDecay[i]);
      for (let j = 0; j <= i; j++) {
        // K = g2 - g1* inverse(g0) g1.
        let kr = gram.g2r[i * m + j];
        let ki = gram.g2i[i * m + j];
        for (let q = 0, a = i * m, b = j * m; q < m; q++, a++, b++) {
          kr -= solvedRe[a] * solvedRe[b] + solvedIm[a] * solvedIm[b];
          ki -= solvedRe[a] * solvedIm[b] - solvedIm[a] * solvedRe[b];
        }
        let cr = 0;
        let ci = 0;
        for (let c = 0; c < channels; c++) {
          const p = 2 * (c * m + i);
          const q = 2 * (c * m + j);
          cr += amplitudes[p] * amplitudes[q] + amplitudes[p + 1] * amplitudes[q + 1];
          ci += amplitudes[p] * amplitudes[q + 1] - amplitudes[p + 1] * amplitudes[q];
        }
        const sr = kr * cr - ki * ci;
        const si = kr * ci + ki * cr;
        const dj = decayRate(poles.logDecay[j]);
        const r0 = 2 * i * n + 2 * j;
        const s0 = 2 * j * n + 2 * i;
        hessian[r0] = hessian[s0] = tau * tau * sr;
        hessian[r0 + n + 1] = hessian[s0 + n + 1] = di * dj * sr;
        hessian[r0 + 1] = hessian[s0 + n] = tau * dj * si;
        hessian[r0 + n] = hessian[s0 + 1] = -tau * di * si;
      }
      let gf = 0;
      let gd = 0;
      for (let c = 0; c < channels; c++) {
        let hr = this.b1r[c * m + i];
        let hi = this.b1i[c * m + i];
        for (let j = 0; j < m; j++) {
          const ar = amplitudes[2 * (c * m + j)];
          const ai = amplitudes[2 * (c * m + j) + 1];
          hr -= gram.g1r[i * m + j] * ar - gram.g1i[i * m + j] * ai;
          hi -= gram.g1r[i * m + j] * ai + gram.g1i[i * m + j] * ar;
        }
        const ar = amplitudes[2 * (c * m + i)];
        const ai = amplitudes[2 * (c * m + i) + 1];
        gf += ar * hi - ai * hr;
        gd += ar * hr + ai * hi;
      }
      gradient[2 * i] = tau * gf;
      gradient[2 * i + 1] = di * gd;
    }
  }
}

const moments = new Float64Array(4);

/**
 * Sums of x z^n and n x z^n over `length` samples, z = exp(-decay + j turn), in blocks of four samples so that only the
 * power at the head of each block is a chain of multiplications.
 */
function project({ re, im }: Signal, length: number, decay: number, turn: number, out: Float64Array): void {
  const step = maths.exp(-decay);
  const r1 = step * maths.cos(turn);
  const i1 = step * maths.sin(turn);
  const r2 = r1 * r1 - i1 * i1;
  const i2 = 2 * r1 * i1;
  const r3 = r2 * r1 - i2 * i1;
  const i3 = r2 * i1 + i2 * r1;
  const r4 = r2 * r2 - i2 * i2;
  const i4 = 2 * r2 * i2;
  let qr = 1;
  let qi = 0;
  let s0r = 0;
  let s0i = 0;
  let s1r = 0;
  let s1i = 0;
  for (let n = 0; n < length; n += 4) {
    const ar = re[n + 1] * r1 - im[n + 1] * i1;
    const ai = re[n + 1] * i1 + im[n + 1] * r1;
    const br = re[n + 2] * r2 - im[n + 2] * i2;
    const bi = re[n + 2] * i2 + im[n + 2] * r2;
    const cr = re[n + 3] * r3 - im[n + 3] * i3;
    const ci = re[n + 3] * i3 + im[n + 3] * r3;
    const pr = re[n] + ar + br + cr;
    const pi = im[n] + ai + bi + ci;
    const dr = n * pr + ar + 2 * br + 3 * cr;
    const di = n * pi + ai + 2 * bi + 3 * ci;
    s0r += qr * pr - qi * pi;
    s0i += qr * pi + qi * pr;
    s1r += qr * dr - qi * di;
    s1i += qr * di + qi * dr;
    const next = qr * r4 - qi * i4;
    qi = qr * i4 + qi * r4;
    qr = next;
  }
  out[0] = s0r;
  out[1] = s0i;
  out[2] = s1r;
  out[3] = s1i;
}

/** The first of these sums alone. */
function projectPlainly(
  { re, im }: Signal,
  length: number,
  decay: number,
  turn: number,
  out: Float64Array,
): void {
  const step = maths.exp(-decay);
  const r1 = step * maths.cos(turn);
  const i1 = step * maths.sin(turn);
  const r2 = r1 * r1 - i1 * i1;
  const i2 = 2 * r1 * i1;
  const r3 = r2 * r1 - i2 * i1;
  const i3 = r2 * i1 + i2 * r1;
  const r4 = r2 * r2 - i2 * i2;
  const i4 = 2 * r2 * i2;
  let qr = 1;
  let qi = 0;
  let sr = 0;
  let si = 0;
  for (let n = 0; n < length; n += 4) {
    const pr =
      re[n] +
      (re[n + 1] * r1 - im[n + 1] * i1) +
      (re[n + 2] * r2 - im[n + 2] * i2) +
      (re[n + 3] * r3 - im[n + 3] * i3);
    const pi =
      im[n] +
      (re[n + 1] * i1 + im[n + 1] * r1) +
      (re[n + 2] * i2 + im[n + 2] * r2) +
      (re[n + 3] * i3 + im[n + 3] * r3);
    sr += qr * pr - qi * pi;
    si += qr * pi + qi * pr;
    const next = qr * r4 - qi * i4;
    qi = qr * i4 + qi * r4;
    qr = next;
  }
  out[0] = sr;
  out[1] = si;
}
