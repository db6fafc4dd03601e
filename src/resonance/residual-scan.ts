import { complexFft, nextPowerOfTwo } from '../signal/fft.js';
import type { Model } from './model.js';
import { ln1000 } from './poles.js';
import type { Signal } from './varpro.js';
import * as maths from '../signal/maths.js';

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
  private readonly gains: Float64Array;
  private readonly envelopes: {
    readonly decaySeconds: number;
    /** w2 e^-dt per sample. */
    readonly window: Float64Array;
    readonly energy: number;
  }[];

  constructor(
    private readonly model: Model,
    private readonly fromHz: number,
    private readonly toHz: number,
  ) {
    const { count, sampleRate } = model.data;
    this.size = nextPowerOfTwo(2 * count);
    this.input = new Float64Array(2 * this.size);
    this.output = new Float64Array(2 * this.size);
    this.gains = new Float64Array(this.size);
    this.envelopes = decayTimes.map((decaySeconds) => {
      let energy = 0;
      const { squares } = model.weights;
      const window = new Float64Array(count);
      maths.powers(1, -ln1000 / sampleRate / decaySeconds, window, 0, count);
      for (let n = 0; n < count; n++) {
        const e = window[n];
        window[n] *= squares[n];
        energy += window[n] * e;
      }
      return { decaySeconds, window, energy };
    });
  }

  /** @param barred Frequencies within 0.8 Hz of these are passed over. */
  best(residuals: readonly Signal[], barred: readonly number[]): Find {
    const { size, input, output, gains } = this;
    const { count, sampleRate, centreHz } = this.model.data;
    const spacing = sampleRate / size;
    const from = Math.max(-size / 2, Math.ceil((this.fromHz - centreHz) / spacing));
    const to = Math.min(size / 2 - 1, Math.floor((this.toHz - centreHz) / spacing));
    let find: Find = { frequencyHz: 0, decaySeconds: 1, gain: 0 };
    for (const { decaySeconds, window, energy } of this.envelopes) {
      gains.fill(0);
      for (const { re, im } of residuals) {
        for (let n = 0; n < count; n++) {
          input[2 * n] = re[n] * window[n];
          input[2 * n + 1] = im[n] * window[n];
        }
        input.fill(0, 2 * count);
        complexFft(input, output);
        for (let k = from; k <= to; k++) {
          const at = 2 * (k < 0 ? k + size : k);
          gains[at / 2] += (output[at] * output[at] + output[at + 1] * output[at + 1]) / energy;
        }
      }
      let best = -1;
      let most = find.gain;
      for (let k = from; k <= to; k++) {
        const at = k < 0 ? k + size : k;
        if (gains[at] <= most) continue;
        const frequencyHz = centreHz + k * spacing;
        if (barred.some((f) => Math.abs(f - frequencyHz) < 0.8)) continue;
        most = gains[at];
        best = k - from;
      }
      if (best >= 0) find = { frequencyHz: centreHz + (from + best) * spacing, decaySeconds, gain: most };
    }
    return find;
  }
}
