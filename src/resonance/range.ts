import { ellipticLowPass, reverseDecimate } from '../signal/filters.js';
import { medianOf } from './spectrum.js';
import * as maths from '../signal/maths.js';

/**
 * Least level over the floor, in the best band, for a decay to be read; dB. Noise alone reaches 5 dB by chance; a hand
 * clap in a noisy room, from which nothing can be read, reached 12. A lone mode of 0.4 s whose peak stands 30 dB above
 * the noise of its octave has 15.
 */
export const neededRangeDb = 15;

const bandHalfHz = 13;
const targetRate = 62;
/** Past the direct sound, which is no decay. */
const fromSeconds = 0.05;
const toSeconds = 0.15;
/** Share at the end of the recording that is taken for the floor. */
const floorShare = 0.25;
/** A shorter one may end before its slow modes meet the noise: the median band's end is the floor of every band. s. */
const shortSeconds = 0.6;

/**
 * How far the decay of a recording stands above its own noise: in bands of 26 Hz, the mean level from 50 to 150 ms over
 * that of the last quarter; the best band's, dB. Infinite where the end is silent. A short recording that still rings at
 * its end is compared with what its median band leaves there.
 */
export function decayRangeDb(
  samples: Float64Array,
  sampleRate: number,
  fromHz: number,
  toHz: number,
): number {
  const sections = ellipticLowPass('4-55', bandHalfHz, sampleRate);
  const decimation = Math.floor(sampleRate / targetRate);
  const rate = sampleRate / decimation;
  const re = new Float64Array(samples.length);
  const im = new Float64Array(samples.length);
  const levels: (readonly [early: number, end: number])[] = [];
  for (let centre = fromHz; centre < toHz + bandHalfHz; centre += bandHalfHz) {
    const turn = (2 * Math.PI * centre) / sampleRate;
    for (let n = 0; n < samples.length; n++) {
      re[n] = samples[n] * maths.cos(turn * n);
      im[n] = -samples[n] * maths.sin(turn * n);
    }
    const zr = reverseDecimate(re, 0, decimation, sections);
    const zi = reverseDecimate(im, 0, decimation, sections);
    const mean = (from: number, to: number): number => {
      let sum = 0;
      for (let n = from; n < to; n++) sum += maths.square(zr[n]) + maths.square(zi[n]);
      return sum / Math.max(1, to - from);
    };
    const last = zr.length;
    const early = mean(
      Math.min(last, Math.round(fromSeconds * rate)),
      Math.min(last, Math.round(toSeconds * rate)),
    );
    levels.push([early, mean(Math.floor((1 - floorShare) * last), last)]);
  }
  const short = samples.length < shortSeconds * sampleRate;
  const middle = short ? medianOf(levels.map(([, end]) => end)) : Infinity;
  return levels.reduce(
    (best, [early, end]) =>
      early > 0 ? Math.max(best, 10 * maths.log10(early / Math.min(end, middle))) : best,
    -Infinity,
  );
}
