import { Gram, type Weights } from './gram.js';
import { backSolve, cholesky, dot, forwardSolve } from './linear.js';
import { decayRate, type Poles } from './poles.js';

/** Samples ready for projection: each channel times w2, padded with zeros to a multiple of four. */
export interface Target {
  readonly channels: readonly Float64Array[];
  /** Sum over channels of w2 y^2. */
  readonly energy: number;
}

/** What one evaluation of the projection leaves behind; reused, never shared. */
export class Evaluation {
  cost = 0;
  /** Amplitudes a, b of the two columns of each pole: row 2k and 2k + 1, one column per channel. */
  amplitudes = new Float64Array(0);
  /** Gauss-Newton matrix and half the negative gradient of the cost for (frequencyHz, logDecay), interleaved. */
  hessian = new Float64Array(0);
  gradient = new Float64Array(0);
  /** Cholesky factor of the Gram matrix. */
  factor = new Float64Array(0);

  reserve(n: number, channels: number): void {
    if (this.gradient.length >= n && this.amplitudes.length >= n * channels) return;
    const room = Math.ceil(1.3 * n) + 8;
    this.amplitudes = new Float64Array(room * channels);
    this.gradient = new Float64Array(room);
    this.hessian = new Float64Array(room * room);
    this.factor = new Float64Array(room * room);
  }
}

/**
 * Weighted variable projection (Golub and Pereyra 1973) in Gram form: the residual is never formed, the amplitudes of
 * all channels are eliminated with one factorisation.
 */
export class Projection {
  readonly gram: Gram;
  /** Rows: inverse(L) times g1, transposed. Valid after an evaluation with its Jacobian. */
  solved = new Float64Array(0);
  private b0 = new Float64Array(0);
  private b1 = new Float64Array(0);

  constructor(
    readonly sampleRate: number,
    readonly count: number,
    readonly channels: number,
    readonly weights: Weights,
  ) {
    this.gram = new Gram(sampleRate, count, weights);
  }

  /** @param samples Per channel, `count` values in units of the floor's standard deviation. */
  target(samples: readonly Float64Array[]): Target {
    const { squares } = this.weights;
    let energy = 0;
    const channels = samples.map((y) => {
      const x = new Float64Array(Math.ceil(this.count / 4) * 4);
      for (let n = 0; n < this.count; n++) {
        x[n] = y[n] * squares[n];
        energy += x[n] * y[n];
      }
      return x;
    });
    return { channels, energy };
  }

  /** Fills `out`; its Hessian and gradient only where `jacobian` is set. */
  evaluate(target: Target, poles: Poles, jacobian: boolean, out: Evaluation): void {
    const m = poles.frequencyHz.length;
    const n = 2 * m;
    const { gram, channels: c } = this;
    out.reserve(n, c);
    gram.fill(poles, jacobian);
    if (this.b0.length < n * c) {
      this.b0 = new Float64Array(2 * n * c);
      this.b1 = new Float64Array(2 * n * c);
    }
    this.rightHandSides(target, poles);
    const { factor, amplitudes } = out;
    let ridge = 1e-11;
    for (;;) {
      for (let i = 0; i < n * n; i++) factor[i] = gram.g0[i];
      for (let i = 0; i < n; i++) factor[i * n + i] *= 1 + ridge;
      if (cholesky(factor, n)) break;
      ridge *= 30;
    }
    // Channel by channel: y = inverse(L) b0, the cost is what y leaves of the energy.
    let explained = 0;
    const { b0, b1 } = this;
    for (let channel = 0; channel < c; channel++) {
      const o = channel * n;
      for (let i = 0; i < n; i++) amplitudes[o + i] = b0[o + i];
      forwardSolve(factor, n, amplitudes, o);
      explained += dot(amplitudes, o, amplitudes, o, n);
      backSolve(factor, n, amplitudes, o);
    }
    out.cost = target.energy - explained;
    if (!jacobian) return;
    if (this.solved.length < n * n) this.solved = new Float64Array(2 * n * n);
    const { solved } = this;
    for (let i = 0; i < n; i++) {
      const row = i * n;
      for (let j = 0; j < n; j++) solved[row + j] = gram.g1[row + j];
      forwardSolve(factor, n, solved, row);
    }
    for (let channel = 0; channel < c; channel++) {
      const o = channel * n;
      for (let i = 0; i < n; i++) b1[o + i] -= dot(gram.g1, i * n, amplitudes, o, n);
    }
    this.assemble(poles, out);
  }

  private rightHandSides(target: Target, poles: Poles): void {
    const m = poles.frequencyHz.length;
    const n = 2 * m;
    for (let k = 0; k < m; k++) {
      const d = decayRate(poles.logDecay[k]) / this.sampleRate;
      const w = (2 * Math.PI * poles.frequencyHz[k]) / this.sampleRate;
      // Past 18 nepers (156 dB) nothing is left of the exponential.
      const length = Math.min(this.count, Math.ceil(18 / d) + 1);
      for (let channel = 0; channel < this.channels; channel++) {
        project(target.channels[channel], length, d, w, moments);
        const at = channel * n + 2 * k;
        this.b0[at] = moments[0];
        this.b0[at + 1] = -moments[1];
        this.b1[at] = moments[2] / this.sampleRate;
        this.b1[at + 1] = -moments[3] / this.sampleRate;
      }
    }
  }

  /** Hessian and gradient from what the projection leaves of the columns' derivatives. */
  private assemble(poles: Poles, out: Evaluation): void {
    const m = poles.frequencyHz.length;
    const n = 2 * m;
    const { gram, solved, b1, channels } = this;
    const { amplitudes, hessian, gradient } = out;
    const tau = 2 * Math.PI;
    for (let i = 0; i < m; i++) {
      const di = decayRate(poles.logDecay[i]);
      const r0 = 2 * i * n;
      const r1 = r0 + n;
      for (let j = 0; j <= i; j++) {
        const c0 = 2 * j;
        const s0 = c0 * n;
        const s1 = s0 + n;
        const g11 = gram.g2[r0 + c0] - dot(solved, r0, solved, s0, n);
        const g12 = gram.g2[r0 + c0 + 1] - dot(solved, r0, solved, s1, n);
        const g21 = gram.g2[r1 + c0] - dot(solved, r1, solved, s0, n);
        const g22 = gram.g2[r1 + c0 + 1] - dot(solved, r1, solved, s1, n);
        let aa = 0;
        let bb = 0;
        let ab = 0;
        let ba = 0;
        for (let channel = 0; channel < channels; channel++) {
          const p = channel * n + 2 * i;
          const q = channel * n + 2 * j;
          aa += amplitudes[p] * amplitudes[q];
          ab += amplitudes[p] * amplitudes[q + 1];
          ba += amplitudes[p + 1] * amplitudes[q];
          bb += amplitudes[p + 1] * amplitudes[q + 1];
        }
        const dj = decayRate(poles.logDecay[j]);
        const ff = tau * tau * (bb * g11 - ba * g12 - ab * g21 + aa * g22);
        const dd = di * dj * (aa * g11 + ab * g12 + ba * g21 + bb * g22);
        const fd = tau * dj * (-ba * g11 - bb * g12 + aa * g21 + ab * g22);
        const df = tau * di * (-ab * g11 + aa * g12 - bb * g21 + ba * g22);
        hessian[r0 + c0] = hessian[s0 + 2 * i] = ff;
        hessian[r1 + c0 + 1] = hessian[s1 + 2 * i + 1] = dd;
        hessian[r0 + c0 + 1] = hessian[s1 + 2 * i] = fd;
        hessian[r1 + c0] = hessian[s0 + 2 * i + 1] = df;
      }
      let gf = 0;
      let gd = 0;
      for (let channel = 0; channel < channels; channel++) {
        const p = channel * n + 2 * i;
        gf += -amplitudes[p + 1] * b1[p] + amplitudes[p] * b1[p + 1];
        gd += amplitudes[p] * b1[p] + amplitudes[p + 1] * b1[p + 1];
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
function project(x: Float64Array, length: number, decay: number, turn: number, out: Float64Array): void {
  const step = Math.exp(-decay);
  const r1 = step * Math.cos(turn);
  const i1 = step * Math.sin(turn);
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
    const x1 = x[n + 1];
    const x2 = x[n + 2];
    const x3 = x[n + 3];
    const y2 = 2 * x2;
    const y3 = 3 * x3;
    const pr = x[n] + x1 * r1 + x2 * r2 + x3 * r3;
    const pi = x1 * i1 + x2 * i2 + x3 * i3;
    const dr = n * pr + x1 * r1 + y2 * r2 + y3 * r3;
    const di = n * pi + x1 * i1 + y2 * i2 + y3 * i3;
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
