import { bandMedians, complexHannPower, type BandLevels } from './spectrum.js';
import type { Signal } from './varpro.js';
import * as maths from '../signal/maths.js';

/** Share at the end of a recording that is taken for its noise, and the least of it. s. */
const tailShare = 0.25;
const leastTailSeconds = 0.3;
/** For its spectrum more is taken, where the recording is short. */
const longTailShare = 0.4;
const longTailSeconds = 0.5;
/** A band that falls by more than this from one stretch to the next of that length still decays. Nepers of power: 6 dB. */
const decaying = 0.6 * Math.LN10;

/** Bands that are quieter than the median count as so much quieter at most: the fit gains little there. Nepers: 6 dB. */
const quieter = 0.6 * Math.LN10;

/** First sample of the stretch at the end that is taken for noise. */
export const tailStart = (length: number, sampleRate: number): number =>
  Math.max(0, length - Math.max(Math.floor(tailShare * length), Math.floor(leastTailSeconds * sampleRate)));

/** The samples less steady lines at these frequencies (Hz from the centre), by projection under a Hann window. */
function withoutLines({ re, im }: Signal, sampleRate: number, lines: readonly number[]): Signal {
  const out = { re: re.slice(), im: im.slice() };
  const window = re.map((_, n) => maths.square(maths.sin((Math.PI * (n + 0.5)) / re.length)));
  const energy = window.reduce((sum, w) => sum + w, 0);
  for (const line of lines) {
    const turn = (2 * Math.PI * line) / sampleRate;
    let a = 0;
    let b = 0;
    for (let n = 0; n < re.length; n++) {
      const [cosine, sine] = [maths.cos(turn * n), maths.sin(turn * n)];
      a += window[n] * (out.re[n] * cosine + out.im[n] * sine);
      b += window[n] * (out.im[n] * cosine - out.re[n] * sine);
    }
    for (let n = 0; n < re.length; n++) {
      const [cosine, sine] = [maths.cos(turn * n), maths.sin(turn * n)];
      out.re[n] -= (a * cosine - b * sine) / energy;
      out.im[n] -= (a * sine + b * cosine) / energy;
    }
  }
  return out;
}

/**
 * Smooth spectrum of the noise at the end of a recording, between two offsets from the centre (Hz). Bands that still
 * decay there say nothing about the noise: at most the median of the others is assumed for them. Null where all decay.
 */
export function tailLevels(
  { re, im }: Signal,
  sampleRate: number,
  [fromHz, toHz]: readonly [number, number],
  linesHz: readonly number[],
): BandLevels | null {
  const length = Math.max(
    Math.floor(tailShare * re.length),
    Math.floor(Math.min(longTailShare * re.length, longTailSeconds * sampleRate)),
  );
  const from = re.length - length;
  const before = Math.max(0, from - length);
  if (from - before < 16) return null;
  const levelsOf = (a: number, b: number): BandLevels => {
    const part = { re: re.subarray(a, b), im: im.subarray(a, b) };
    return bandMedians(
      complexHannPower(withoutLines(part, sampleRate, linesHz), sampleRate, 2),
      fromHz,
      toHz,
    );
  };
  const last = levelsOf(from, re.length);
  const earlier = levelsOf(before, from);
  const steady = last.levels.filter((level, k) => earlier.levels[k] - level < decaying);
  if (steady.length === 0) return null;
  steady.sort((a, b) => a - b);
  const middle = steady[steady.length >> 1];
  const levels = last.levels.map((level, k) =>
    Math.max(middle - quieter, earlier.levels[k] - level < decaying ? level : Math.min(level, middle)),
  );
  return { ...last, levels };
}
