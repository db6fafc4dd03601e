import { kaiserWindow } from './windows.js';
import * as maths from './maths.js';

/** Stop-band of the decimation filter, dB. The passband ripple of a Kaiser design equals it: 0.00003 dB. */
const stopBandDb = 110;

export interface Decimated {
  readonly samples: Float64Array;
  readonly sampleRate: number;
  readonly factor: number;
  /** Index, at the reduced rate, of the first sample: negative, since the filter rings before the file's start too. */
  readonly firstIndex: number;
}

interface Filter {
  /** Taps from the centre outwards; symmetric. */
  readonly half: Float64Array;
}

const filters = new Map<string, Filter>();

/**
 * Windowed-sinc low-pass with a passband to `passHz` and a stop-band from `sampleRate / factor - passHz`: what aliases
 * falls above `passHz`.
 */
function decimationFilter(sampleRate: number, factor: number, passHz: number): Filter {
  const key = `${sampleRate} ${factor} ${passHz}`;
  const known = filters.get(key);
  if (known) return known;
  const stopHz = sampleRate / factor - passHz;
  // Kaiser 1974: taps = (A - 7.95) / (2.285 x transition in rad/sample).
  const transition = (2 * Math.PI * (stopHz - passHz)) / sampleRate;
  const reach = Math.ceil((stopBandDb - 7.95) / (2.285 * transition) / 2);
  const window = kaiserWindow(2 * reach + 1, 0.1102 * (stopBandDb - 8.7));
  const cutoff = sampleRate / factor / 2 / sampleRate;
  const half = new Float64Array(reach + 1);
  let sum = 0;
  for (let k = 0; k <= reach; k++) {
    const x = 2 * cutoff * k;
    half[k] = window[reach + k] * 2 * cutoff * (k === 0 ? 1 : maths.sin(Math.PI * x) / (Math.PI * x));
    sum += k === 0 ? half[k] : 2 * half[k];
  }
  for (let k = 0; k <= reach; k++) half[k] /= sum;
  const filter = { half };
  if (filters.size > 16) filters.clear();
  filters.set(key, filter);
  return filter;
}

/**
 * Linear-phase decimation to about four times `topHz`, flat to `passHz`, stop-band 110 dB. The delay is
 * removed: output index m lies at m * factor input samples. Outputs go on until the filter has rung out on both sides
 * of the samples. Rates below eight times `topHz` are left as they are.
 *
 * @param samples At `sampleRate`; not changed.
 * @param topHz Highest frequency that must be exact.
 * @param passHz The lower it is, the shorter the filter rings before and after each sample: some 3.6 / (rate - 2 passHz) s.
 */
export function decimate(
  samples: Float64Array,
  sampleRate: number,
  topHz: number,
  passHz = 1.3 * topHz,
): Decimated {
  const factor = Math.max(1, Math.floor(sampleRate / (4 * topHz)));
  if (factor === 1) return { samples, sampleRate, factor, firstIndex: 0 };
  const { half } = decimationFilter(sampleRate, factor, passHz);
  const reach = half.length - 1;
  const firstIndex = -Math.floor(reach / factor);
  const lastIndex = Math.floor((samples.length - 1 + reach) / factor);
  const output = new Float64Array(lastIndex - firstIndex + 1);
  const last = samples.length - 1;
  for (let m = firstIndex; m <= lastIndex; m++) {
    const centre = m * factor;
    let sum = 0;
    if (centre - reach >= 0 && centre + reach <= last) {
      sum = half[0] * samples[centre];
      for (let k = 1; k <= reach; k++) sum += half[k] * (samples[centre - k] + samples[centre + k]);
    } else {
      const from = Math.max(0, centre - reach);
      const to = Math.min(last, centre + reach);
      for (let n = from; n <= to; n++) sum += half[Math.abs(n - centre)] * samples[n];
    }
    output[m - firstIndex] = sum;
  }
  return { samples: output, sampleRate: sampleRate / factor, factor, firstIndex };
}
