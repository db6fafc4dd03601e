import { decayRate, type Poles } from './poles.js';
import type { Weights } from './weights.js';
import * as maths from '../signal/maths.js';

/** Below this times the reciprocal of the number of samples, |1 - Z| is taken for zero in the geometric series. */
const nearOne = 1e-3;

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
  /** Each pole's value at each knot times the root of the weight there: [pole * knots + knot]. */
  private kr = new Float64Array(0);
  private ki = new Float64Array(0);
  /** Growth of the weights per sample, segment by segment. */
  private readonly growth: Float64Array;
  private readonly knots: Float64Array;
  private readonly roots: Float64Array;

  constructor(
    readonly sampleRate: number,
    readonly centreHz: number,
    readonly count: number,
    readonly weights: Weights,
  ) {
    const { knots, levels } = weights;
    this.knots = Float64Array.from(knots);
    this.roots = Float64Array.from(levels, Math.sqrt);
    this.growth = Float64Array.from({ length: knots.length - 1 }, (_, q) =>
      maths.exp(maths.log(levels[q + 1] / levels[q]) / (knots[q + 1] - knots[q])),
    );
  }

  private reserve(poles: number): void {
    if (this.zr.length >= poles) return;
    const room = Math.ceil(poles * 1.5) + 4;
    for (const key of ['zr', 'zi'] as const) this[key] = new Float64Array(room);
    for (const key of ['kr', 'ki'] as const) this[key] = new Float64Array(room * this.knots.length);
    for (const key of ['g0r', 'g0i', 'g1r', 'g1i', 'g2r', 'g2i'] as const)
      this[key] = new Float64Array(room * room);
  }

  private fillPoles({ frequencyHz, logDecay }: Poles): void {
    const { zr, zi, kr, ki, knots, roots, sampleRate } = this;
    for (let k = 0; k < frequencyHz.length; k++) {
      const d = decayRate(logDecay[k]) / sampleRate;
      const w = (2 * Math.PI * (frequencyHz[k] - this.centreHz)) / sampleRate;
      const step = maths.exp(-d);
      zr[k] = step * maths.cos(w);
      zi[k] = step * maths.sin(w);
      for (let q = 0, at = k * knots.length; q < knots.length; q++, at++) {
        const size = roots[q] * maths.exp(-d * knots[q]);
        kr[at] = size * maths.cos(w * knots[q]);
        ki[at] = size * maths.sin(w * knots[q]);
      }
    }
  }

  /** Fills g0, and g1 and g2 where `moments` is set. */
  fill(poles: Poles, moments: boolean): void {
    const m = poles.frequencyHz.length;
    this.reserve(m);
    this.fillPoles(poles);
    const { zr, zi, kr, ki, g0r, g0i, g1r, g1i, g2r, g2i, knots, growth, sampleRate } = this;
    const segments = growth.length;
    const stride = segments + 1;
    const t1 = 1 / sampleRate;
    const t2 = t1 * t1;
    const least = maths.square(nearOne / this.count);
    for (let i = 0; i < m; i++) {
      for (let j = 0; j <= i; j++) {
        // Z = conj(z_i) z_j; a = w2 Z^n at the knot where a segment begins, b where it ends.
        const pr = zr[i] * zr[j] + zi[i] * zi[j];
        const pi = zr[i] * zi[j] - zi[i] * zr[j];
        let p = i * stride;
        let q = j * stride;
        let ar = kr[p] * kr[q] + ki[p] * ki[q];
        let ai = kr[p] * ki[q] - ki[p] * kr[q];
        let s0r = 0;
        let s0i = 0;
        let s1r = 0;
        let s1i = 0;
        let s2r = 0;
        let s2i = 0;
        for (let s = 0; s < segments; s++) {
          p++;
          q++;
          const br = kr[p] * kr[q] + ki[p] * ki[q];
          const bi = kr[p] * ki[q] - ki[p] * kr[q];
          const from = knots[s];
          const to = knots[s + 1];
          const xr = pr * growth[s];
          const xi = pi * growth[s];
          const hr = 1 - xr;
          const square = hr * hr + xi * xi;
          if (square < least) {
            // All terms of the segment are alike: weights that grow as the poles decay.
            const length = to - from;
            const mean = 0.5 * (from + to - 1);
            const cr = 0.5 * (ar + br);
            const ci = 0.5 * (ai + bi);
            s0r += length * cr;
            s0i += length * ci;
            s1r += length * mean * cr;
            s1i += length * mean * ci;
            const squares = length * (mean * mean + (length * length - 1) / 12);
            s2r += squares * cr;
            s2i += squares * ci;
          } else {
            // Finite geometric series: (1 - Z) S0 = Z^a - Z^b, and the two below.
            const ir = hr / square;
            const ii = xi / square;
            const dr = ar - br;
            const di = ai - bi;
            const ur = dr * ir - di * ii;
            const ui = dr * ii + di * ir;
            s0r += ur;
            s0i += ui;
            if (moments) {
              // (1 - Z) S1 = Z S0 + a Z^a - b Z^b.
              const fr = from * ar;
              const fi = from * ai;
              const er = to * br;
              const ei = to * bi;
              const vr0 = xr * ur - xi * ui + fr - er;
              const vi0 = xr * ui + xi * ur + fi - ei;
              const vr = vr0 * ir - vi0 * ii;
              const vi = vr0 * ii + vi0 * ir;
              s1r += vr;
              s1i += vi;
              // (1 - Z) S2 = Z (2 S1 + S0) + a^2 Z^a - b^2 Z^b.
              const tr0 = 2 * vr + ur;
              const ti0 = 2 * vi + ui;
              const tr = xr * tr0 - xi * ti0 + from * fr - to * er;
              const ti = xr * ti0 + xi * tr0 + from * fi - to * ei;
              s2r += tr * ir - ti * ii;
              s2i += tr * ii + ti * ir;
            }
          }
          ar = br;
          ai = bi;
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
