import { decayRate, type Poles } from './poles.js';

/**
 * Weights of the samples, 1 / variance, as a sum of exponentials: w2(t) = sum of scales[q] exp(-rates[q] t). Every
 * inner product of two weighted exponentials is then a geometric series and needs no sample.
 */
export interface Weights {
  readonly scales: Float64Array;
  readonly rates: Float64Array;
  /** w2 at each sample. */
  readonly squares: Float64Array;
}

/**
 * Inner products of the weighted basis. The basis holds, per pole, the columns cos(w t) e^-dt and -sin(w t) e^-dt
 * (interleaved); g0, g1 and g2 are their products weighted with 1, t and t^2, 2M x 2M, row-major.
 */
export class Gram {
  g0 = new Float64Array(0);
  g1 = new Float64Array(0);
  g2 = new Float64Array(0);
  private zr = new Float64Array(0);
  private zi = new Float64Array(0);
  private er = new Float64Array(0);
  private ei = new Float64Array(0);
  private readonly sums = new Float64Array(6);
  private readonly differences = new Float64Array(6);
  private readonly stepGain: Float64Array;
  private readonly endGain: Float64Array;

  constructor(
    readonly sampleRate: number,
    readonly count: number,
    readonly weights: Weights,
  ) {
    this.stepGain = weights.rates.map((rate) => Math.exp(-rate / sampleRate));
    this.endGain = weights.rates.map((rate) => Math.exp((-rate * count) / sampleRate));
  }

  private reserve(poles: number): void {
    if (this.zr.length >= poles) return;
    const room = Math.ceil(poles * 1.5) + 4;
    this.zr = new Float64Array(room);
    this.zi = new Float64Array(room);
    this.er = new Float64Array(room);
    this.ei = new Float64Array(room);
    this.g0 = new Float64Array(4 * room * room);
    this.g1 = new Float64Array(4 * room * room);
    this.g2 = new Float64Array(4 * room * room);
  }

  /** Fills g0, and g1 and g2 where `moments` is set. */
  fill(poles: Poles, moments: boolean): void {
    const { frequencyHz, logDecay } = poles;
    const m = frequencyHz.length;
    this.reserve(m);
    const { zr, zi, er, ei, g0, g1, g2, count, sampleRate } = this;
    for (let k = 0; k < m; k++) {
      const d = decayRate(logDecay[k]) / sampleRate;
      const w = (2 * Math.PI * frequencyHz[k]) / sampleRate;
      const step = Math.exp(-d);
      const end = Math.exp(-d * count);
      zr[k] = step * Math.cos(w);
      zi[k] = step * Math.sin(w);
      er[k] = end * Math.cos(w * count);
      ei[k] = end * Math.sin(w * count);
    }
    const n = 2 * m;
    const p = this.sums;
    const q = this.differences;
    for (let i = 0; i < m; i++) {
      const ar = zr[i];
      const ai = zi[i];
      const br = er[i];
      const bi = ei[i];
      for (let j = 0; j <= i; j++) {
        // z_i z_j and z_i conj(z_j).
        const rr = ar * zr[j];
        const ii = ai * zi[j];
        const ri = ar * zi[j];
        const ir = ai * zr[j];
        const err = br * er[j];
        const eii = bi * ei[j];
        const eri = br * ei[j];
        const eir = bi * er[j];
        this.series(rr - ii, ri + ir, err - eii, eri + eir, moments, p);
        this.series(rr + ii, ir - ri, err + eii, eir - eri, moments, q);
        const at = 2 * i * n + 2 * j;
        const mirror = 2 * j * n + 2 * i;
        place(g0, at, mirror, n, p[0], p[1], q[0], q[1]);
        if (!moments) continue;
        place(g1, at, mirror, n, p[2], p[3], q[2], q[3]);
        place(g2, at, mirror, n, p[4], p[5], q[4], q[5]);
      }
    }
  }

  /**
   * Weighted sums S0, S1, S2 over n = 0 .. N-1 of Z^n, n Z^n and n^2 Z^n, with n in seconds, from the recurrences of
   * the finite geometric series: (1 - Z) S0 = 1 - Z^N, and the two beside the code.
   */
  private series(zr: number, zi: number, er: number, ei: number, moments: boolean, out: Float64Array): void {
    const { stepGain, endGain, count } = this;
    const scales = this.weights.scales;
    let s0r = 0;
    let s0i = 0;
    let s1r = 0;
    let s1i = 0;
    let s2r = 0;
    let s2i = 0;
    for (let q = 0; q < scales.length; q++) {
      const a = scales[q];
      const xr = zr * stepGain[q];
      const xi = zi * stepGain[q];
      const nr = er * endGain[q];
      const ni = ei * endGain[q];
      const pr = 1 - xr;
      const inverse = 1 / (pr * pr + xi * xi);
      const ir = pr * inverse;
      const ii = xi * inverse;
      const ur = (1 - nr) * ir + ni * ii;
      const ui = (1 - nr) * ii - ni * ir;
      s0r += a * ur;
      s0i += a * ui;
      if (!moments) continue;
      // (1 - Z) S1 = Z S0 - N Z^N.
      const vr0 = xr * ur - xi * ui - count * nr;
      const vi0 = xr * ui + xi * ur - count * ni;
      const vr = vr0 * ir - vi0 * ii;
      const vi = vr0 * ii + vi0 * ir;
      s1r += a * vr;
      s1i += a * vi;
      // (1 - Z) S2 = Z (2 S1 + S0) - N^2 Z^N.
      const tr0 = 2 * vr + ur;
      const ti0 = 2 * vi + ui;
      const tr = xr * tr0 - xi * ti0 - count * count * nr;
      const ti = xr * ti0 + xi * tr0 - count * count * ni;
      s2r += a * (tr * ir - ti * ii);
      s2i += a * (tr * ii + ti * ir);
    }
    const t = 1 / this.sampleRate;
    out[0] = s0r;
    out[1] = s0i;
    out[2] = s1r * t;
    out[3] = s1i * t;
    out[4] = s2r * t * t;
    out[5] = s2i * t * t;
  }
}

/** The 2 x 2 block of one pair of poles and its mirror image, from the sums of z_i z_j (p) and z_i conj(z_j) (q). */
function place(
  g: Float64Array,
  at: number,
  mirror: number,
  n: number,
  pr: number,
  pi: number,
  qr: number,
  qi: number,
): void {
  const cc = 0.5 * (pr + qr);
  const ss = 0.5 * (qr - pr);
  const cs = -0.5 * (pi - qi);
  const sc = -0.5 * (pi + qi);
  g[at] = cc;
  g[at + 1] = cs;
  g[at + n] = sc;
  g[at + n + 1] = ss;
  g[mirror] = cc;
  g[mirror + 1] = sc;
  g[mirror + n] = cs;
  g[mirror + n + 1] = ss;
}
