import { ellipticLowPass, noiseGain, responseAt, reverseDecimate, type Sections } from '../signal/filters.js';
import { tailStart } from './colour.js';
import type { ModalData } from './model.js';
import { decayRate } from './poles.js';
import type { Decimated } from './reverse-decimation.js';
import { bandMedians, complexHannPower } from './spectrum.js';
import type { Signal } from './varpro.js';
import { noWhitener, whitenBackwards, whitenerGain, type Whitener } from './whitening.js';
import { fitWindow, type FitWindow } from './window.js';
import * as maths from '../signal/maths.js';

/**
 * The bass is fitted in three overlapping bands, each with its own noise: in a real room what no fit explains is far
 * stronger at 150 Hz than at 50, and one level for both would hide the lowest modes. A band fits every pole that it hears
 * and reports those of its own range; the poles of the margin, some 20 Hz, are there for their neighbours' sake.
 */
const layout = [
  { centreHz: 66, ownFromHz: 0, ownToHz: 110 },
  { centreHz: 152, ownFromHz: 110, ownToHz: 250 },
] as const;
/** Half width of the pass-band; past 1.42 times it the filter stops 80 dB. Hz. */
const halfHz = 70;
/**
 * Least rate of a band's samples. What the stop-band leaves of positive frequencies folds to where the band does not
 * report: in the lower one below 16 Hz, in the upper above 200.
 */
const leastRate = 190;
/**
 * Negative frequencies are taken out first: folded by the decimation, the image of a mode at f would stand at the rate
 * less f (a mode of 80 Hz at 120) only 80 dB down. The filter passes from here up to as far below half the rate, and
 * stops 40 dB below -60 Hz: enough for what recordings hold, and short, since what a filter's delay
 * spends, the first milliseconds of the decay, is lost to the fit.
 */
const analyticFromHz = 14;
/** The noise is judged between these. Hz. */
export const lowestNoiseHz = 16;
export const highestNoiseHz = 206;
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
  readonly analytic: Sections;
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
  /** Per channel. */
  readonly whiteners: readonly Whitener[];
  readonly noiseGain: number;
  /** Per channel: one unit of `data` in units of the band's samples. */
  readonly scales: readonly number[];
  readonly data: ModalData;
}

/** Offsets from the centre between which the noise of a band is judged: within its pass-band and the bass. Hz. */
export const noiseRange = (centreHz: number): [number, number] => [
  Math.max(-0.95 * halfHz, lowestNoiseHz - centreHz),
  Math.min(0.95 * halfHz, highestNoiseHz - centreHz),
];

function floorOf({ re, im }: Signal, sampleRate: number, centreHz: number): number {
  let highest = 0;
  for (let n = 0; n < re.length; n++) highest = Math.max(highest, re[n] * re[n] + im[n] * im[n]);
  const from = tailStart(re.length, sampleRate);
  const spectrum = complexHannPower({ re: re.subarray(from), im: im.subarray(from) }, sampleRate);
  return 0.5 * Math.max(bandMedians(spectrum, ...noiseRange(centreHz)).variance, highest * leastFloor);
}

/** The samples times exp(-2 pi j turns n). */
function shifted({ re, im }: Signal, turns: number): Signal {
  const out = { re: new Float64Array(re.length), im: new Float64Array(re.length) };
  maths.phasors(2 * Math.PI * turns, out.re, out.im);
  for (let n = 0; n < re.length; n++) {
    const cosine = out.re[n];
    const sine = out.im[n];
    out.re[n] = re[n] * cosine + im[n] * sine;
    out.im[n] = im[n] * cosine - re[n] * sine;
  }
  return out;
}

export function bandsOf(decimated: readonly Decimated[]): Band[] {
  const fullRate = decimated[0].sampleRate;
  const step = Math.floor(fullRate / leastRate);
  const sampleRate = fullRate / step;
  const sections = ellipticLowPass('8-80', halfHz, fullRate);
  const gain = noiseGain(sections) * step;
  const analytic = ellipticLowPass('4-40', fullRate / 4 - analyticFromHz, fullRate);
  const positive = decimated.map(({ samples }): Signal => {
    const { re, im } = shifted({ re: samples, im: new Float64Array(samples.length) }, 0.25);
    return { re: reverseDecimate(re, 0, 1, analytic), im: reverseDecimate(im, 0, 1, analytic) };
  });
  return layout.map(({ centreHz, ownFromHz, ownToHz }): Band => {
    const signals = positive.map((signal): Signal => {
      const { re, im } = shifted(signal, centreHz / fullRate - 0.25);
      return { re: reverseDecimate(re, 0, step, sections), im: reverseDecimate(im, 0, step, sections) };
    });
    const floors = signals.map((signal) => floorOf(signal, sampleRate, centreHz));
    const powers = floors.map((floor) => 2 * floor * gain);
    return {
      centreHz,
      ownFromHz,
      ownToHz,
      sampleRate,
      fullRate,
      sections,
      analytic,
      signals,
      noiseGain: gain,
      floors,
      window: fitWindow(signals, sampleRate, powers),
    };
  });
}

/** No whitener for any channel. */
export const plain = (band: Band): Whitener[] => band.signals.map(() => noWhitener);

/** The samples of the fit window, each channel through its whitener, in units of their floor's standard deviation. */
export function whiten(band: Band, whiteners: readonly Whitener[]): Whitened {
  const { sampleRate, centreHz, window } = band;
  const white = whiteners.every((whitener) => whitener === noWhitener);
  const signals = band.signals.map((signal, c) => whitenBackwards(signal, whiteners[c]));
  const scales = signals.map((signal, c) =>
    Math.sqrt(white ? band.floors[c] : floorOf(signal, sampleRate, centreHz)),
  );
  const count = Math.min(window.count, ...signals.map(({ re }) => re.length));
  const channels = signals.map(({ re, im }, c) => ({
    re: re.slice(0, count).map((value) => value / scales[c]),
    im: im.slice(0, count).map((value) => value / scales[c]),
  }));
  return { whiteners, noiseGain: band.noiseGain, scales, data: { sampleRate, centreHz, count, channels } };
}

/** The real decaying sine a cos - b sin at the first decimated sample, from its complex amplitude in a band. */
export function amplitudeOutside(
  band: Band,
  { whiteners, scales }: Whitened,
  channel: number,
  frequencyHz: number,
  logDecay: number,
  re: number,
  im: number,
): [number, number] {
  const rate = decayRate(logDecay);
  const size = maths.exp(-rate / band.fullRate);
  const through = (sections: Sections, shiftHz: number): [number, number] => {
    const angle = (2 * Math.PI * (frequencyHz - shiftHz)) / band.fullRate;
    return responseAt(sections, size * maths.cos(angle), size * maths.sin(angle));
  };
  const [ar, ai] = through(band.analytic, band.fullRate / 4);
  const [br, bi] = through(band.sections, band.centreHz);
  const turn = 2 * Math.PI * (frequencyHz - band.centreHz);
  const [wr, wi] = whitenerGain(whiteners[channel], rate / band.sampleRate, turn / band.sampleRate);
  const [fr, fi] = [ar * br - ai * bi, ar * bi + ai * br];
  const gr = fr * wr - fi * wi;
  const gi = fr * wi + fi * wr;
  // Half of a real sine is at the positive frequency.
  const scale = (2 * scales[channel]) / (gr * gr + gi * gi);
  return [scale * (re * gr + im * gi), scale * (im * gr - re * gi)];
}
