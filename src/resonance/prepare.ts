import { tailFloor, tailIsSteady } from './floor.js';
import { humLines } from './hum.js';
import type { ModalData } from './model.js';
import { decimateBackwards, type Decimated, type FitRecording } from './reverse-decimation.js';
import { noWhitener, whitenBackwards, whitenerOf, type Whitener } from './whitening.js';
import { fitWindow, type FitWindow } from './window.js';

/** Samples of the fit under one whitener. */
export interface Whitened {
  readonly whitener: Whitener;
  /** Variance of the noise in these samples over its white-equivalent variance. */
  readonly noiseGain: number;
  /** Per channel: one unit of `data` in units of the decimated samples. */
  readonly scales: readonly number[];
  readonly data: ModalData;
}

/** Recordings on one time grid, their noise known, ready to be fitted. */
export interface Prepared {
  readonly decimated: readonly Decimated[];
  readonly sampleRate: number;
  /** White-equivalent variance of the noise per decimated sample, per recording. */
  readonly floors: readonly number[];
  readonly window: FitWindow;
  readonly humHz: readonly number[];
  /** From the noise at the end of the recordings; later ones come from what the fit leaves. */
  readonly whitener: Whitener;
}

/** Noise coloured by more than this is whitened. dB. */
export const colouredDb = 12;
/**
 * Least floor below the highest sample, as a ratio of powers: 100 dB, beyond any recording, so that noise-free samples
 * have a floor and no sum of squares loses its digits.
 */
const leastFloor = 1e-10;

const floorOf = (samples: Float64Array, sampleRate: number): number => {
  let highest = 0;
  for (const value of samples) highest = Math.max(highest, value * value);
  return Math.max(tailFloor(samples, sampleRate).variance, highest * leastFloor);
};

export function prepare(recordings: readonly FitRecording[]): Prepared {
  const decimated = recordings.map(decimateBackwards);
  const sampleRate = decimated[0].sampleRate;
  const tails = decimated.map((d) => tailFloor(d.samples, sampleRate));
  let coloured = -1;
  tails.forEach(({ tiltDb }, c) => {
    if (tiltDb > colouredDb && tailIsSteady(decimated[c].samples))
      if (coloured < 0 || tiltDb > tails[coloured].tiltDb) coloured = c;
  });
  const floors = decimated.map(({ samples }) => floorOf(samples, sampleRate));
  const powers = floors.map((floor, c) => floor * decimated[c].noiseGain);
  const humHz: number[] = [];
  decimated.forEach(({ samples }, c) => {
    for (const f of humLines(samples, sampleRate, powers[c]))
      if (!humHz.some((g) => Math.abs(f - g) < 0.2)) humHz.push(f);
  });
  return {
    decimated,
    sampleRate,
    floors,
    window: fitWindow(
      decimated.map(({ samples }) => samples),
      sampleRate,
      powers,
    ),
    humHz,
    whitener: coloured < 0 ? noWhitener : whitenerOf(tails[coloured].bands, sampleRate),
  };
}

/** The samples of the fit window through a whitener, in units of their floor's standard deviation. */
export function whiten({ decimated, sampleRate, floors, window }: Prepared, whitener: Whitener): Whitened {
  const plain = whitener.length === 1;
  const channels = decimated.map(({ samples }) => whitenBackwards(samples, whitener));
  const scales = channels.map((y, c) => Math.sqrt(plain ? floors[c] : floorOf(y, sampleRate)));
  const count = Math.min(window.count, ...channels.map(({ length }) => length));
  return {
    whitener,
    noiseGain: plain ? decimated[0].noiseGain : 1,
    scales,
    data: {
      sampleRate,
      count,
      channels: channels.map((y, c) => y.slice(0, count).map((v) => v / scales[c])),
    },
  };
}
