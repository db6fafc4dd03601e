import { nextPowerOfTwo, realFft } from '../signal/fft.js';
import type { Model } from './model.js';
import { ln1000 } from './poles.js';

/** Where one more decaying sine would explain most of the residual. */
export interface Find {
  readonly frequencyHz: number;
  readonly decaySeconds: number;
  /** Chi-squared that it would take up, summed over the channels. */
  readonly gain: number;
}

const decayTimes = [0.08, 0.16, 0.3, 0.6, 1.2];

/** Scans residuals on a grid of frequencies (one FFT per decay time and channel). */
export class ResidualScan {
  private readonly size: number;
  private readonly input: Float64Array;
  private readonly output: Float64Array;
  private readonly envelopes: {
    readonly decaySeconds: number;
    /** w2 e^-dt per sample. */
    readonly window: Float64Array;
    /** Inverse of the 2 x 2 Gram matrix per bin: cc, cs, ss. */
    readonly inverse: Float64Array;
  }[];
  private readonly gains: Float64Array;

  constructor(
    private readonly model: Model,
    private readonly fromHz: number,
    private readonly toHz: number,
  ) {
    const { count, sampleRate } = model.data;
    this.size = Math.max(2048, nextPowerOfTwo(2 * count));
    this.input = new Float64Array(this.size);
    this.output = new Float64Array(2 * this.size);
    const bins = this.size / 2;
    this.gains = new Float64Array(bins);
    this.envelopes = decayTimes.map((decaySeconds) => {
      const window = new Float64Array(count);
      this.input.fill(0);
      let energy = 0;
      for (let n = 0; n < count; n++) {
        const e = Math.exp((-ln1000 * n) / sampleRate / decaySeconds);
        window[n] = model.weights.squares[n] * e;
        this.input[n] = window[n] * e;
        energy += this.input[n];
      }
      realFft(this.input, this.output);
      const inverse = new Float64Array(3 * bins);
      for (let k = 0; k < bins / 2; k++) {
        const re = this.output[4 * k];
        const im = this.output[4 * k + 1];
        const cc = 0.5 * (energy + re);
        const ss = 0.5 * (energy - re);
        const cs = 0.5 * im;
        const determinant = cc * ss - cs * cs + 1e-12 * energy * energy;
        inverse[3 * k] = ss / determinant;
        inverse[3 * k + 1] = -cs / determinant;
        inverse[3 * k + 2] = cc / determinant;
      }
      return { decaySeconds, window, inverse };
    });
  }

  /** @param barred Frequencies within 0.8 Hz of these are passed over. */
  best(residuals: readonly Float64Array[], barred: readonly number[]): Find {
    const { size, input, output, gains } = this;
    const { count, sampleRate } = this.model.data;
    const spacing = sampleRate / size;
    const from = Math.ceil(this.fromHz / spacing);
    const to = Math.min(size / 4 - 1, Math.floor(this.toHz / spacing));
    let find: Find = { frequencyHz: 0, decaySeconds: 1, gain: 0 };
    for (const { decaySeconds, window, inverse } of this.envelopes) {
      gains.fill(0);
      for (const residual of residuals) {
        for (let n = 0; n < count; n++) input[n] = residual[n] * window[n];
        input.fill(0, count);
        realFft(input, output);
        for (let k = from; k <= to; k++) {
          const x = output[2 * k];
          const y = output[2 * k + 1];
          gains[k] += inverse[3 * k] * x * x + 2 * inverse[3 * k + 1] * x * y + inverse[3 * k + 2] * y * y;
        }
      }
      for (let k = from; k <= to; k++) {
        if (gains[k] <= find.gain) continue;
        const frequencyHz = k * spacing;
        if (barred.some((f) => Math.abs(f - frequencyHz) < 0.8)) continue;
        find = { frequencyHz, decaySeconds, gain: gains[k] };
      }
    }
    return find;
  }
}
