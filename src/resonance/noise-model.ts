import { choleskyHermitian, forwardComplex } from './complex-linear.js';
import type { Model, State } from './model.js';
import { decayRate, ln1000 } from './poles.js';

/** Variance of the noise over time: floor (1 + diffuse exp(-2 ln1000 t / decaySeconds)), units of the tail's floor. */
export interface NoiseModel {
  readonly floor: number;
  readonly diffuse: number;
  readonly decaySeconds: number;
  /** Per sample, white-equivalent. */
  readonly variance: Float64Array;
}

const decayTimes = [0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.8, 1];

/**
 * Share of the noise that the fit has taken up at each sample (leverage), from the Gram matrix of the amplitudes' and,
 * for one channel, the poles' columns. Read at every other sample: it changes slowly.
 */
function leverage(model: Model, state: State): Float64Array {
  const { poles } = state;
  const { sampleRate, centreHz, count } = model.data;
  const { channels, gram } = model.projection;
  const m = poles.frequencyHz.length;
  const both = channels === 1;
  const n = both ? 2 * m : m;
  gram.fill(poles, true);
  // Poles' columns are t times the basis: scaling by the amplitudes does not change the space they span.
  const scale = new Float64Array(n);
  for (let i = 0; i < m; i++) {
    scale[i] = 1 / Math.sqrt(gram.g0r[i * m + i]);
    if (both) scale[m + i] = 1 / Math.sqrt(gram.g2r[i * m + i]);
  }
  const re = new Float64Array(n * n);
  const im = new Float64Array(n * n);
  const put = (i: number, j: number, gr: Float64Array, gi: Float64Array, at: number): void => {
    re[i * n + j] = gr[at] * scale[i] * scale[j];
    im[i * n + j] = gi[at] * scale[i] * scale[j];
  };
  for (let ridge = 1e-9; ; ridge *= 10) {
    for (let i = 0; i < m; i++)
      for (let j = 0; j < m; j++) {
        put(i, j, gram.g0r, gram.g0i, i * m + j);
        if (!both) continue;
        put(m + i, j, gram.g1r, gram.g1i, i * m + j);
        put(m + i, m + j, gram.g2r, gram.g2i, i * m + j);
      }
    for (let i = 0; i < n; i++) re[i * n + i] += ridge;
    if (choleskyHermitian(re, im, n)) break;
  }
  const xr = new Float64Array(n);
  const xi = new Float64Array(n);
  const shares = new Float64Array(count);
  let share = 0;
  for (let sample = 0; sample < count; sample++) {
    if (sample % 2 === 0) {
      const weight = Math.sqrt(model.weights.squares[sample]);
      const t = sample / sampleRate;
      for (let k = 0; k < m; k++) {
        // Conjugate basis: the row's leverage is x* inverse(G) x with x = conj(e).
        const size = weight * Math.exp(-decayRate(poles.logDecay[k]) * t);
        const angle = -2 * Math.PI * (poles.frequencyHz[k] - centreHz) * t;
        const cosine = size * Math.cos(angle);
        const sine = size * Math.sin(angle);
        xr[k] = cosine * scale[k];
        xi[k] = sine * scale[k];
        if (!both) continue;
        xr[m + k] = cosine * t * scale[m + k];
        xi[m + k] = sine * t * scale[m + k];
      }
      forwardComplex(re, im, n, xr, xi, 0);
      share = 0;
      for (let i = 0; i < n; i++) share += xr[i] * xr[i] + xi[i] * xi[i];
      // Several channels share one pole: their poles' columns count once for all.
      if (!both) share *= 1 + 1 / channels;
    }
    shares[sample] = Math.min(share, 0.98);
  }
  return shares;
}

/**
 * The noise that fits best, by maximum likelihood on the squared residuals corrected for what the fit has taken up.
 *
 * @param noiseGain Variance of the samples' noise over its white-equivalent variance.
 */
export function fitNoise(model: Model, state: State, noiseGain: number): NoiseModel {
  const { sampleRate, count, channels } = model.data;
  const residuals = model.residualOfAll(state);
  const shares = leverage(model, state);
  // Blocks of four samples lose nothing: the models are smooth.
  const size = 4;
  const blocks = Math.ceil(count / size);
  const power = new Float64Array(blocks);
  const freedom = new Float64Array(blocks);
  let total = 0;
  for (let n = 0; n < count; n++) {
    const b = Math.floor(n / size);
    for (const { re, im } of residuals) power[b] += (re[n] * re[n] + im[n] * im[n]) / noiseGain;
    const left = 2 * channels.length * Math.max(1 - shares[n], 0.02);
    freedom[b] += left;
    total += left;
  }
  let best = { cost: Infinity, decaySeconds: 1, diffuse: 0, floor: 1 };
  const shape = new Float64Array(blocks);
  for (const decaySeconds of decayTimes) {
    for (let b = 0; b < blocks; b++)
      shape[b] = Math.exp((-2 * ln1000 * (size * (b + 0.5))) / sampleRate / decaySeconds);
    for (let log = -3; log <= 14; log += 0.5) {
      const diffuse = Math.exp(log);
      let sum = 0;
      for (let b = 0; b < blocks; b++) sum += power[b] / (1 + diffuse * shape[b]);
      const floor = Math.max(sum / total, 1e-12);
      let cost = total * Math.log(floor);
      for (let b = 0; b < blocks; b++) cost += freedom[b] * Math.log(1 + diffuse * shape[b]);
      if (cost < best.cost - 1e-9) best = { cost, decaySeconds, diffuse, floor };
    }
  }
  const { decaySeconds, diffuse, floor } = best;
  const variance = Float64Array.from(
    { length: count },
    (_, n) => floor * (1 + diffuse * Math.exp((-2 * ln1000 * n) / sampleRate / decaySeconds)),
  );
  return { floor, diffuse, decaySeconds, variance };
}
