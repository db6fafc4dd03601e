import { nextPowerOfTwo, realFft } from '../signal/fft.js';

/** Power per bin of Hann-weighted samples, scaled so that white noise reads its variance per sample. */
export interface PowerSpectrum {
  readonly power: Float64Array;
  readonly spacingHz: number;
}

/** Medians of a power spectrum over narrow bands: a smooth spectrum that lines and lone modes do not move. */
export interface BandLevels {
  readonly centresHz: readonly number[];
  /** Natural logarithm of the white-equivalent variance. */
  readonly levels: readonly number[];
  /** White-equivalent variance over the whole bass. */
  readonly variance: number;
}

const fromHz = 18;
const toHz = 200;
const bandHz = 14;
/** The median of exponentially distributed values lies at ln 2 of their mean. */
const medianShare = Math.LN2;

export function hannPower(samples: Float64Array, sampleRate: number): PowerSpectrum {
  const size = nextPowerOfTwo(Math.max(256, samples.length));
  const input = new Float64Array(size);
  const output = new Float64Array(2 * size);
  let energy = 0;
  for (let n = 0; n < samples.length; n++) {
    const w = Math.sin((Math.PI * (n + 0.5)) / samples.length) ** 2;
    energy += w * w;
    input[n] = w * samples[n];
  }
  realFft(input, output);
  const power = new Float64Array(size / 2);
  for (let k = 0; k < size / 2; k++) power[k] = (output[2 * k] ** 2 + output[2 * k + 1] ** 2) / (energy || 1);
  return { power, spacingHz: sampleRate / size };
}

export const medianOf = (values: number[]): number => {
  if (values.length === 0) return 0;
  values.sort((a, b) => a - b);
  const half = values.length >> 1;
  return values.length % 2 ? values[half] : 0.5 * (values[half - 1] + values[half]);
};

export function bandMedians({ power, spacingHz }: PowerSpectrum): BandLevels {
  const within = (from: number, to: number): number[] => {
    const values: number[] = [];
    for (let k = Math.max(1, Math.ceil(from / spacingHz)); k * spacingHz < to && k < power.length; k++)
      values.push(power[k]);
    return values;
  };
  const variance = medianOf(within(fromHz, toHz)) / medianShare;
  const centresHz: number[] = [];
  const levels: number[] = [];
  for (let edge = fromHz - 6; edge + bandHz < toHz + 12; edge += bandHz) {
    centresHz.push(edge + bandHz / 2);
    const level = medianOf(within(edge, edge + bandHz)) / medianShare;
    levels.push(Math.log(Math.max(level, variance * 1e-6, 1e-300)));
  }
  return { centresHz, levels, variance };
}

/** Highest over lowest band, dB. */
export const tiltOf = ({ levels }: BandLevels): number =>
  ((Math.max(...levels) - Math.min(...levels)) * 10) / Math.LN10;
