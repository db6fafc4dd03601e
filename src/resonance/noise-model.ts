import { choleskyHermitian, forwardComplex } from './complex-linear.js';
import type { Model, State } from './model.js';
import { complexFft, inverseFft, nextPowerOfTwo } from '../signal/fft.js';
import { noiseShapes } from './noise-shapes.js';
import { decayRate, ln1000, pick, type Poles } from './poles.js';
import type { Signal } from './varpro.js';
import * as maths from '../signal/maths.js';

/** Variance of the noise over time: floor (1 + diffuse exp(-2 ln1000 t / decaySeconds)), units of the tail's floor. */
export interface NoiseModel {
  readonly floor: number;
  readonly diffuse: number;
  readonly decaySeconds: number;
  /** Minus twice the log likelihood of the residuals, restricted to what the fit has not taken up. */
  readonly cost: number;
}

const decayTimes = [0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.5, 0.6, 0.8, 1];

/**
 * Share of the noise that the fit has taken up at each sample (leverage), from the Gram matrix of the amplitudes' and,
 * for one channel, the poles' columns. Read at every other sample: it changes slowly.
 */
function leverage(model: Model, poles: Poles): Float64Array {
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
  // Values of the poles, two samples further each time; begun anew now and then, so that no rounding adds up.
  const valueRe = new Float64Array(m);
  const valueIm = new Float64Array(m);
  const stepRe = new Float64Array(m);
  const stepIm = new Float64Array(m);
  const valuesAt = (t: number, re: Float64Array, im: Float64Array): void => {
    for (let k = 0; k < m; k++) {
      const size = maths.exp(-decayRate(poles.logDecay[k]) * t);
      // Conjugate basis: the row's leverage is x* inverse(G) x with x = conj(e).
      const angle = -2 * Math.PI * (poles.frequencyHz[k] - centreHz) * t;
      re[k] = size * maths.cos(angle);
      im[k] = size * maths.sin(angle);
    }
  };
  valuesAt(2 / sampleRate, stepRe, stepIm);
  const shares = new Float64Array(count);
  let share = 0;
  for (let sample = 0; sample < count; sample++) {
    if (sample % 2 === 0) {
      const weight = Math.sqrt(model.weights.squares[sample]);
      const t = sample / sampleRate;
      if (sample % 128 === 0) valuesAt(t, valueRe, valueIm);
      for (let k = 0; k < m; k++) {
        const a = valueRe[k];
        const b = valueIm[k];
        const cosine = weight * a;
        const sine = weight * b;
        valueRe[k] = a * stepRe[k] - b * stepIm[k];
        valueIm[k] = a * stepIm[k] + b * stepRe[k];
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

/** Noise of a narrow range is compared with that of a wider one at these times (s); sd of its logarithm. */
const expectedAt = [0, 0.1, 0.2];
const expectedSd = 0.5;

/** Frequencies, offsets from the centre in Hz, between which the noise of a fit is judged. */
export type NoiseRange = readonly [fromHz: number, toHz: number];

/** Width of the flanks of the window in frequency. Hz. */
const flankHz = 10;

/**
 * Half power at the ends of the range; raised-cosine flanks, so that early energy does not ring into the end. Called for every
 * bin: a range that is taken apart here would make an iterator each time.
 */
function windowAt(offsetHz: number, fromHz: number, toHz: number): number {
  const inside = Math.min(offsetHz - fromHz, toHz - offsetHz) / flankHz + 0.5;
  return inside <= 0 ? 0 : inside >= 1 ? 1 : maths.square(maths.sin(0.5 * Math.PI * inside));
}

/** Power per sample of what lies in the range, white-equivalent, summed over the signals; and the share of the spectrum. */
function powerWithin(
  signals: readonly Signal[],
  count: number,
  sampleRate: number,
  range: NoiseRange,
): { power: Float64Array; share: number } {
  const size = nextPowerOfTwo(2 * count);
  const window = new Float64Array(size);
  const [fromHz, toHz] = range;
  let squares = 0;
  for (let k = 0; k < size; k++) {
    window[k] = windowAt(((k < size / 2 ? k : k - size) * sampleRate) / size, fromHz, toHz);
    squares += window[k] * window[k];
  }
  const share = squares / size;
  const power = new Float64Array(count);
  const input = new Float64Array(2 * size);
  const output = new Float64Array(2 * size);
  for (const { re, im } of signals) {
    input.fill(0);
    for (let n = 0; n < count; n++) {
      input[2 * n] = re[n];
      input[2 * n + 1] = im[n];
    }
    complexFft(input, output);
    for (let k = 0; k < size; k++) {
      output[2 * k] *= window[k];
      output[2 * k + 1] *= window[k];
    }
    inverseFft(output, input);
    for (let n = 0; n < count; n++)
      power[n] += (input[2 * n] * input[2 * n] + input[2 * n + 1] * input[2 * n + 1]) / share;
  }
  return { power, share };
}

/**
 * The noise that fits best between two frequencies, by maximum likelihood on the squared residuals corrected for what
 * the fit has taken up.
 *
 * @param expected The noise of a wider range. A few poles can take up all the diffuse decay of a narrow one, which holds
 *   no more than some numbers of information; so it is not believed to lie far off.
 */
export function fitNoise(
  model: Model,
  state: State,
  range: NoiseRange,
  expected: NoiseModel | null = null,
): NoiseModel {
  const { sampleRate, count, channels, centreHz } = model.data;
  const within = powerWithin(model.residualOfAll(state), count, sampleRate, range);
  const { poles } = state;
  const own = [...poles.frequencyHz.keys()].filter(
    (k) => windowAt(poles.frequencyHz[k] - centreHz, ...range) > 0.5,
  );
  const shares = leverage(model, pick(poles, own));
  // Blocks of four samples lose nothing: the models are smooth.
  const size = 4;
  const blocks = Math.ceil(count / size);
  const power = new Float64Array(blocks);
  const freedom = new Float64Array(blocks);
  let total = 0;
  for (let n = 0; n < count; n++) {
    const b = Math.floor(n / size);
    power[b] += within.power[n];
    // The range is a part of the spectrum only, and it is there that the fit takes its share.
    const left = 2 * channels.length * Math.max(1 - shares[n] / within.share, 0.02);
    freedom[b] += left;
    total += left;
  }
  const shapeOf = noiseShapes(blocks, size / sampleRate);
  let best: NoiseModel = { cost: Infinity, decaySeconds: 1, diffuse: 0, floor: 1 };
  const attempt = (decaySeconds: number, log: number): void => {
    const { diffuse, variances, logs } = shapeOf(decaySeconds, log);
    let sum = 0;
    for (let b = 0; b < blocks; b++) sum += power[b] / variances[b];
    const floor = Math.max(sum / total, 1e-12);
    let cost = total * maths.log(floor);
    for (let b = 0; b < blocks; b++) cost += freedom[b] * logs[b];
    if (expected) {
      for (const t of expectedAt) {
        const e = maths.exp((-2 * ln1000 * t) / decaySeconds);
        const wide = maths.exp((-2 * ln1000 * t) / expected.decaySeconds);
        const off = maths.log((floor * (1 + diffuse * e)) / (expected.floor * (1 + expected.diffuse * wide)));
        cost += maths.square(off / expectedSd);
      }
    }
    if (cost < best.cost - 1e-9) best = { cost, decaySeconds, diffuse, floor };
  };
  // Coarse steps first; about the best of them fine ones.
  for (const decaySeconds of decayTimes) for (let log = -3; log <= 15; log += 1.5) attempt(decaySeconds, log);
  const { decaySeconds, diffuse } = best;
  const middle = Math.round(2 * maths.log(diffuse)) / 2;
  for (const near of decayTimes.filter((t) => Math.abs(maths.log(t / decaySeconds)) < 0.35))
    for (let step = -2; step <= 2; step++) attempt(near, middle + 0.5 * step);
  return best;
}
