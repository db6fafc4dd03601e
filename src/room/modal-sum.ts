import * as maths from '../signal/maths.js';

/** One mode as it sounds at a place: amplitude exp(-damping t) sin(2 pi f t + phase) from the instant of emission on. */
export interface RingingMode {
  readonly frequencyHz: number;
  /** 1/s, of the amplitude. */
  readonly damping: number;
  readonly amplitude: number;
  readonly phaseRadians: number;
}

/**
 * Samples between two exact values. The recurrence x[n] = 2 g cos(w) x[n-1] - g^2 x[n-2] loses about n / w of the
 * rounding error: 1e-10 of the value at 20 Hz and 192 kHz, which is below every converter.
 */
const anchorSamples = 512;
/** What has fallen this far below the largest mode, 200 dB, is not summed any more. */
const leastShare = 1e-10;

/**
 * Adds damped sines to `output`, from `startPlace` (in samples, may lie between two) on. Four at a time, so that four
 * recurrences run beside each other and each sample is loaded once.
 */
export function* addRingingModes(
  output: Float64Array,
  sampleRate: number,
  startPlace: number,
  modes: readonly RingingMode[],
): Generator<number, void, void> {
  const largest = modes.reduce((most, mode) => Math.max(most, Math.abs(mode.amplitude)), 0);
  if (!(largest > 0)) return;
  const heard = modes.filter((mode) => Math.abs(mode.amplitude) > largest * leastShare);
  const first = Math.max(0, Math.ceil(startPlace));
  for (let i = 0; i < heard.length; i += 4) {
    const group = heard.slice(i, i + 4);
    addFour(output, sampleRate, startPlace, first, group, largest * leastShare);
    yield (i + group.length) / heard.length;
  }
}

function addFour(
  output: Float64Array,
  sampleRate: number,
  startPlace: number,
  first: number,
  modes: readonly RingingMode[],
  least: number,
): void {
  const c = new Float64Array(4);
  const d = new Float64Array(4);
  let until = first;
  modes.forEach(({ frequencyHz, damping, amplitude }, k) => {
    const decay = maths.exp(-damping / sampleRate);
    c[k] = 2 * decay * maths.cos((2 * Math.PI * frequencyHz) / sampleRate);
    d[k] = -decay * decay;
    const seconds = damping > 0 ? maths.log(Math.abs(amplitude) / least) / damping : Infinity;
    until = Math.max(until, startPlace + seconds * sampleRate);
  });
  const end = Math.min(output.length, Math.ceil(until));
  const at = (k: number, n: number): number => {
    if (k >= modes.length) return 0;
    const { frequencyHz, damping, amplitude, phaseRadians } = modes[k];
    const t = (n - startPlace) / sampleRate;
    return amplitude * maths.exp(-damping * t) * maths.sin(2 * Math.PI * frequencyHz * t + phaseRadians);
  };
  const [c0, c1, c2, c3] = c;
  const [d0, d1, d2, d3] = d;
  for (let begin = first; begin < end; begin += anchorSamples) {
    let a0 = at(0, begin);
    let a1 = at(1, begin);
    let a2 = at(2, begin);
    let a3 = at(3, begin);
    let b0 = at(0, begin + 1);
    let b1 = at(1, begin + 1);
    let b2 = at(2, begin + 1);
    let b3 = at(3, begin + 1);
    const stop = Math.min(end, begin + anchorSamples);
    for (let n = begin; n < stop; n++) {
      output[n] += a0 + a1 + (a2 + a3);
      const e0 = c0 * b0 + d0 * a0;
      const e1 = c1 * b1 + d1 * a1;
      const e2 = c2 * b2 + d2 * a2;
      const e3 = c3 * b3 + d3 * a3;
      a0 = b0;
      a1 = b1;
      a2 = b2;
      a3 = b3;
      b0 = e0;
      b1 = e1;
      b2 = e2;
      b3 = e3;
    }
  }
}
