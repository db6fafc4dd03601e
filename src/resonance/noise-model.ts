import { cholesky } from './linear.js';
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
 * for one channel, the poles' columns. Read at every fourth sample: it changes slowly.
 */
function leverage(model: Model, state: State): Float64Array {
  const { poles, amplitudes } = state;
  const { sampleRate, count } = model.data;
  const channels = model.projection.channels;
  const m = poles.frequencyHz.length;
  const half = 2 * m;
  const both = channels === 1;
  const n = both ? 2 * half : half;
  const { gram } = model.projection;
  gram.fill(poles, true);
  // Poles' columns are t times the basis: scaling by the amplitudes does not change the space they span.
  const scale = new Float64Array(n);
  for (let i = 0; i < half; i++) {
    scale[i] = 1 / Math.sqrt(gram.g0[i * half + i]);
    if (both) scale[half + i] = 1 / Math.sqrt(gram.g2[i * half + i]);
  }
  const matrix = new Float64Array(n * n);
  const build = (ridge: number) => {
    for (let i = 0; i < half; i++)
      for (let j = 0; j < half; j++) {
        matrix[i * n + j] = gram.g0[i * half + j] * scale[i] * scale[j];
        if (!both) continue;
        matrix[(half + i) * n + j] = gram.g1[i * half + j] * scale[half + i] * scale[j];
        matrix[j * n + half + i] = matrix[(half + i) * n + j];
        matrix[(half + i) * n + half + j] = gram.g2[i * half + j] * scale[half + i] * scale[half + j];
      }
    for (let i = 0; i < n; i++) matrix[i * n + i] += ridge;
  };
  let ridge = 1e-9;
  for (build(ridge); !cholesky(matrix, n); build(ridge)) ridge *= 10;
  const x = new Float64Array(n);
  const shares = new Float64Array(count);
  let share = 0;
  for (let sample = 0; sample < count; sample++) {
    if (sample % 4 === 0) {
      const weight = Math.sqrt(model.weights.squares[sample]);
      const t = sample / sampleRate;
      for (let k = 0; k < m; k++) {
        const size = weight * Math.exp(-decayRate(poles.logDecay[k]) * t);
        const angle = 2 * Math.PI * poles.frequencyHz[k] * t;
        x[2 * k] = size * Math.cos(angle) * scale[2 * k];
        x[2 * k + 1] = -size * Math.sin(angle) * scale[2 * k + 1];
        if (!both) continue;
        x[half + 2 * k] = (x[2 * k] / scale[2 * k]) * t * scale[half + 2 * k];
        x[half + 2 * k + 1] = (x[2 * k + 1] / scale[2 * k + 1]) * t * scale[half + 2 * k + 1];
      }
      share = 0;
      for (let i = 0; i < n; i++) {
        const row = i * n;
        let s = x[i];
        for (let k = 0; k < i; k++) s -= matrix[row + k] * x[k];
        x[i] = s / matrix[row + i];
        share += x[i] * x[i];
      }
      // Several channels share one pole: their poles' columns count once for all.
      if (!both) share *= 1 + 1 / channels;
    }
    shares[sample] = Math.min(share, 0.98);
  }
  return amplitudes.length > 0 ? shares : shares.fill(0);
}

/**
 * The noise that fits best, by maximum likelihood on the squared residuals corrected for what the fit has taken up.
 *
 * @param noiseGain Variance of filtered white noise of unit variance per sample.
 */
export function fitNoise(model: Model, state: State, noiseGain: number): NoiseModel {
  const { sampleRate, count, channels } = model.data;
  const residuals = model.residual(state, [...state.poles.frequencyHz.keys()]);
  const shares = leverage(model, state);
  // Blocks of eight samples lose nothing: the models are smooth.
  const size = 8;
  const blocks = Math.ceil(count / size);
  const power = new Float64Array(blocks);
  const freedom = new Float64Array(blocks);
  let total = 0;
  for (let n = 0; n < count; n++) {
    const b = Math.floor(n / size);
    for (const r of residuals) power[b] += (r[n] * r[n]) / noiseGain;
    const left = channels.length * Math.max(1 - shares[n], 0.02);
    freedom[b] += left;
    total += left;
  }
  let best = { cost: Infinity, decaySeconds: 1, diffuse: 0, floor: 1 };
  const shape = new Float64Array(blocks);
  for (const decaySeconds of decayTimes) {
    for (let b = 0; b < blocks; b++)
      shape[b] = Math.exp((-2 * ln1000 * (size * (b + 0.5))) / sampleRate / decaySeconds);
    for (let log = -3; log <= 11; log += 0.5) {
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
