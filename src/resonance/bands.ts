import { ellipticLowPass, noiseGain, responseAt, reverseDecimate, type Sections } from '../signal/filters.js';
import type { ModalData } from './model.js';
import { decayRate } from './poles.js';
import type { Decimated } from './reverse-decimation.js';
import { bandMedians, complexHannPower } from './spectrum.js';
import type { Signal } from './varpro.js';
import { noWhitener, whitenBackwards, whitenerGain, type Whitener } from './whitening.js';
import { fitWindow, type FitWindow } from './window.js';

/**
 * The bass is fitted in three overlapping bands, each with its own noise: in a real room what no fit explains is far
 * stronger at 150 Hz than at 50, and one level for both would hide the lowest modes. A band fits every pole that it hears
 * and reports those of its own range; the poles of the margin, some 20 Hz, are there for their neighbours' sake.
 */
const layout = [
  { centreHz: 74, ownFromHz: 0, ownToHz: 110 },
  { centreHz: 140, ownFromHz: 110, ownToHz: 250 },
] as const;
/** Half width of the pass-band; past 1.42 times it the filter stops 80 dB. Hz. */
const halfHz = 70;
/** Least rate at which the stop-band does not fold into the pass-band. */
const leastRate = 166;
/** Least floor below the highest sample, a ratio of powers: 100 dB, beyond any recording. */
const leastFloor = 1e-10;

export interface Band {
  readonly centreHz: number;
  readonly ownFromHz: number;
  readonly ownToHz: number;
  readonly sampleRate: number;
  /** Rate of the samples that the band was made from, and its filter there. */
  readonly fullRate: number;
  readonly sections: Sections;
  /** Complex samples about the centre, per recording, of full length. */
  readonly signals: readonly Signal[];
  /** Variance of filtered white noise over its white-equivalent variance. */
  readonly noiseGain: number;
  /** White-equivalent variance of each part of the noise per sample, per recording. */
  readonly floors: readonly number[];
  readonly window: FitWindow;
}

/** Samples of one band's fit window through a whitener. */
export interface Whitened {
  readonly whitener: Whitener;
  readonly noiseGain: number;
  /** Per channel: one unit of `data` in units of the band's samples. */
  readonly scales: readonly number[];
  readonly data: ModalData;
}

function floorOf({ re, im }: Signal, sampleRate: number): number {
  let highest = 0;
  for (let n = 0; n < re.length; n++) highest = Math.max(highest, re[n] * re[n] + im[n] * im[n]);
  const tail = Math.min(re.length, Math.max(Math.floor(0.25 * re.length), Math.floor(0.3 * sampleRate)));
  const from = re.length - tail;
  const spectrum = complexHannPower({ re: re.subarray(from), im: im.subarray(from) }, sampleRate);
  return 0.5 * Math.max(bandMedians(spectrum, -0.95 * halfHz, 0.95 * halfHz).variance, highest * leastFloor);
}

export function bandsOf(decimated: readonly Decimated[]): Band[] {
  const fullRate = decimated[0].sampleRate;
  const step = Math.floor(fullRate / leastRate);
  const sampleRate = fullRate / step;
  const sections = ellipticLowPass(8, halfHz, fullRate);
  const gain = noiseGain(sections) * step;
  return layout.map(({ centreHz, ownFromHz, ownToHz }): Band => {
    const turn = (2 * Math.PI * centreHz) / fullRate;
    const signals = decimated.map(({ samples }): Signal => {
      const re = samples.map((value, n) => value * Math.cos(turn * n));
      const im = samples.map((value, n) => -value * Math.sin(turn * n));
      return { re: reverseDecimate(re, 0, step, sections), im: reverseDecimate(im, 0, step, sections) };
    });
    const floors = signals.map((signal) => floorOf(signal, sampleRate));
    const powers = floors.map((floor) => 2 * floor * gain);
    return {
      centreHz,
      ownFromHz,
      ownToHz,
      sampleRate,
      fullRate,
      sections,
      signals,
      noiseGain: gain,
      floors,
      window: fitWindow(signals, sampleRate, powers),
    };
  });
}

/** The samples of the fit window through a whitener, in units of their floor's standard deviation. */
export function whiten(band: Band, whitener: Whitener): Whitened {
  const { sampleRate, centreHz, window } = band;
  const plain = whitener === noWhitener;
  const signals = band.signals.map((signal) => whitenBackwards(signal, whitener));
  const scales = signals.map((signal, c) => Math.sqrt(plain ? band.floors[c] : floorOf(signal, sampleRate)));
  const count = Math.min(window.count, ...signals.map(({ re }) => re.length));
  const channels = signals.map(({ re, im }, c) => ({
    re: re.slice(0, count).map((value) => value / scales[c]),
    im: im.slice(0, count).map((value) => value / scales[c]),
  }));
  return {
    whitener,
    noiseGain: plain ? band.noiseGain : 1,
    scales,
    data: { sampleRate, centreHz, count, channels },
  };
}

/** The real decaying sine a cos - b sin at the first decimated sample, from its complex amplitude in a band. */
export function amplitudeOutside(
  band: Band,
  { whitener, scales }: Whitened,
  channel: number,
  frequencyHz: number,
  logDecay: number,
  re: number,
  im: number,
): [number, number] {
  const turn = 2 * Math.PI * (frequencyHz - band.centreHz);
  const rate = decayRate(logDecay);
  const size = Math.exp(-rate / band.fullRate);
  const angle = turn / band.fullRate;
  const [fr, fi] = responseAt(band.sections, size * Math.cos(angle), size * Math.sin(angle));
  const [wr, wi] = whitenerGain(whitener, rate / band.sampleRate, turn / band.sampleRate);
  const gr = fr * wr - fi * wi;
  const gi = fr * wi + fi * wr;
  // Half of a real sine is at the positive frequency.
  const scale = (2 * scales[channel]) / (gr * gr + gi * gi);
  return [scale * (re * gr + im * gi), scale * (im * gr - re * gi)];
}
