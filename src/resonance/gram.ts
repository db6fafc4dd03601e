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
 * Inner products of the weighted basis e_k = exp((-d + j w) t), one column per pole: g0, g1 and g2 are the sums of
 * w2 conj(e_i) e_j times 1, t and t^2; Hermitian, M x M, row-major, both triangles filled.
 */
export class Gram {
  g0r = new Float64Array(0);
  g0i = new Float64Array(0);
  g1r = new Float64Array(0);
  g1i = new Float64Array(0);
  g2r = new Float64Array(0);
  g2i = new Float64Array(0);
  private zr = new Float64Array(0);
  private zi = new Float64Array(0);
  private er = new Float64Array(0);
  private ei = new Float64Array(0);
  private readonly stepGain: Float64Array;
  private readonly endGain: Float64Array;

  constructor(
    readonly sampleRate: number,
    readonly centreHz: number,
    readonly count: number,
    readonly weights: Weights,
  ) {
    this.stepGain = weights.rates.map((rate) => Math.exp(-rate / sampleRate));
    this.endGain = weights.rates.map((rate) => Math.exp((-rate * count) / sampleRate));
  }

  private reserve(poles: number): void {
    if (this.zr.length >= poles) return;
    const room = Math.ceil(poles * 1.5) + 4;
    for (const key of ['zr', 'zi', 'er', 'ei'] as const) this[key] = new Float64Array(room);
    for (const key of ['g0r', 'g0i', 'g1r', 'g1i', 'g2r', 'g2i'] as const)
      this[key] = new Float64Array(room * room);
  }

  /** Fills g0, and g1 and g2 where `moments` is set. */
  fill({ frequencyHz, logDecay }: Poles, moments: boolean): void {
    const m = frequencyHz.length;
    this.reserve(m);
    const { zr, zi, er, ei, g0r, g0i, g1r, g1i, g2r, g2i, count, sampleRate, stepGain, endGain } = this;
    const { scales } = this.weights;
    const terms = scales.length;
    const t1 = 1 / sampleRate;
    const t2 = t1 * t1;
    const square = count * count;
    for (let k = 0; k < m; k++) {
      const d = decayRate(logDecay[k]) / sampleRate;
      const w = (2 * Math.PI * (frequencyHz[k] - this.centreHz)) / sampleRate;
      const step = Math.exp(-d);
      const end = Math.exp(-d * count);
      zr[k] = step * Math.cos(w);
      zi[k] = step * Math.sin(w);
      er[k] = end * Math.cos(w * count);
      ei[k] = end * Math.sin(w * count);
    }
    for (let i = 0; i < m; i++) {
      for (let j = 0; j <= i; j++) {
        // Z = conj(z_i) z_j, and Z^N.
        const pr = zr[i] * zr[j] + zi[i] * zi[j];
        const pi = zr[i] * zi[j] - zi[i] * zr[j];
        const qr = er[i] * er[j] + ei[i] * ei[j];
        const qi = er[i] * ei[j] - ei[i] * er[j];
        let s0r = 0;
        let s0i = 0;
        let s1r = 0;
        let s1i = 0;
        let s2r = 0;
        let s2i = 0;
        for (let q = 0; q < terms; q++) {
          const a = scales[q];
          const xr = pr * stepGain[q];
          const xi = pi * stepGain[q];
          const nr = qr * endGain[q];
          const ni = qi * endGain[q];
          // Finite geometric series: (1 - Z) S0 = 1 - Z^N, and the two below.
          const hr = 1 - xr;
          const inverse = 1 / (hr * hr + xi * xi);
          const ir = hr * inverse;
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
          const tr = xr * tr0 - xi * ti0 - square * nr;
          const ti = xr * ti0 + xi * tr0 - square * ni;
          s2r += a * (tr * ir - ti * ii);
          s2i += a * (tr * ii + ti * ir);
        }
        const at = i * m + j;
        const mirror = j * m + i;
        g0r[at] = g0r[mirror] = s0r;
        g0i[mirror] = -s0i;
        g0i[at] = s0i;
        if (!moments) continue;
        g1r[at] = g1r[mirror] = s1r * t1;
        g1i[mirror] = -s1i * t1;
        g1i[at] = s1i * t1;
        g2r[at] = g2r[mirror] = s2r * t2;
        g2i[mirror] = -s2i * t2;
        g2i[at] = s2i * t2;
      }
      g0i[i * m + i] = 0;
    }
  }
}
