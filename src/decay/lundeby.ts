import * as maths from '../signal/maths.js';

/**
 * Noise floor, truncation and late slope of one squared response: Lundeby, Vigran, Bietz and Vorlaender, Acustica 81:344,
 * 1995.
 */
export interface Truncation {
  /** Mean power of the noise; 0 where the end is digitally silent. */
  readonly noisePower: number;
  /** Index where the decay meets the noise, or the end of the samples. */
  readonly endIndex: number;
  /** Power that the late slope has at `endIndex`, and its decay per sample (natural, of power): for the missing tail. */
  readonly endPower: number;
  readonly lateRate: number;
  /** Loudest block over the noise, dB; capped at 200. */
  readonly rangeDb: number;
}

interface Line {
  /** Natural log of power at index 0, and per sample. */
  readonly intercept: number;
  readonly slope: number;
}

const perDecibel = maths.log(10) / 10;
const mostRangeDb = 200;
/** First blocks, ms: the paper's 10 to 50; the bass needs the longest. */
const firstBlockSeconds = 0.05;
/** Blocks per 10 dB of decay: the paper's 3 to 10. */
const blocksPer10dB = 5;
/** The late slope is read from here above the noise, over this span: the paper's 5 to 10 and 10 to 20 dB. */
const marginDb = 8;
const lateSpanDb = 15;
const rounds = 5;

function blocksOf(power: Float64Array, from: number, length: number): Float64Array {
  const blocks = new Float64Array(Math.max(0, Math.floor((power.length - from) / length)));
  for (let b = 0; b < blocks.length; b++) {
    let sum = 0;
    for (let i = from + b * length; i < from + (b + 1) * length; i++) sum += power[i];
    blocks[b] = sum / length;
  }
  return blocks;
}

/** Regression of ln power over index through blocks `first` to `last`; null below three blocks or if it does not fall. */
function lineThrough(
  blocks: Float64Array,
  first: number,
  last: number,
  from: number,
  length: number,
): Line | null {
  let n = 0;
  let sx = 0;
  let sy = 0;
  let sxx = 0;
  let sxy = 0;
  for (let b = first; b <= last; b++) {
    if (!(blocks[b] > 0)) continue;
    const x = from + (b + 0.5) * length;
    const y = maths.log(blocks[b]);
    n++;
    sx += x;
    sy += y;
    sxx += x * x;
    sxy += x * y;
  }
  const determinant = n * sxx - sx * sx;
  if (n < 3 || !(determinant > 0)) return null;
  const slope = (n * sxy - sx * sy) / determinant;
  return slope < 0 ? { slope, intercept: (sy - slope * sx) / n } : null;
}

const indexOfMax = (values: Float64Array): number =>
  values.reduce((best, v, i) => (v > values[best] ? i : best), 0);

/** First block from `first` on that is below `power`, or the number of blocks. */
function firstBelow(blocks: Float64Array, first: number, power: number): number {
  let b = first;
  while (b < blocks.length && blocks[b] >= power) b++;
  return b;
}

function meanOf(power: Float64Array, from: number): number {
  let sum = 0;
  for (let i = from; i < power.length; i++) sum += power[i];
  return sum / Math.max(1, power.length - from);
}

/**
 * @param power Squared band-filtered samples.
 * @param from Index of the onset.
 * @param halfPeriod Samples of half a period at the band's centre; squares ripple at twice the frequency.
 * @param leastNoise Mean power below which the samples hold nothing, as between the steps of a file.
 * @returns null where nothing decays out of the noise
 */
export function truncation(
  power: Float64Array,
  from: number,
  sampleRate: number,
  halfPeriod: number,
  leastNoise = 0,
): Truncation | null {
  const after = power.length - from;
  const lastTenth = Math.floor(power.length - 0.1 * after);
  const coarse = Math.max(1, Math.round(firstBlockSeconds * sampleRate));
  const first = blocksOf(power, from, coarse);
  if (first.length < 4) return null;
  const peak = indexOfMax(first);
  const loudest = first[peak];
  let noisePower = Math.max(leastNoise, meanOf(power, lastTenth));
  if (!(loudest > 0)) return null;
  const silent = !(noisePower > loudest * maths.power(10, -mostRangeDb / 10));
  const above = (db: number): number => (silent ? loudest * 1e-9 : noisePower * maths.exp(db * perDecibel));

  let line = lineThrough(first, peak, firstBelow(first, peak, above(10)) - 1, from, coarse);
  line ??= lineThrough(first, peak, firstBelow(first, peak, above(5)), from, coarse);
  if (!line) return null;
  let end = crossing(line, noisePower, silent, power.length);
  for (let round = 0; round < rounds && !silent; round++) {
    const per10dB = (10 * perDecibel) / -line.slope;
    const length = Math.max(1, Math.round(Math.max(per10dB / blocksPer10dB, halfPeriod)));
    const blocks = blocksOf(power, from, length);
    const top = indexOfMax(blocks);
    const safe = Math.min(lastTenth, Math.round(end + per10dB * 0.75));
    noisePower = Math.max(leastNoise, meanOf(power, safe));
    const stop = firstBelow(blocks, top, above(marginDb));
    const start = Math.max(top, firstBelow(blocks, top, above(marginDb + lateSpanDb)));
    const late =
      lineThrough(blocks, start, stop - 1, from, length) ?? lineThrough(blocks, top, stop - 1, from, length);
    if (!late) break;
    line = late;
    const next = crossing(line, noisePower, silent, power.length);
    const settled = Math.abs(next - end) < 0.005 * sampleRate;
    end = next;
    if (settled) break;
  }
  const endIndex = Math.min(power.length, Math.max(from + 1, Math.round(end)));
  const ratio = noisePower > 0 ? 10 * maths.log10(loudest / noisePower) : mostRangeDb;
  return {
    noisePower,
    endIndex,
    endPower: maths.exp(line.intercept + line.slope * endIndex),
    lateRate: -line.slope,
    rangeDb: Math.min(mostRangeDb, ratio),
  };
}

function crossing(line: Line, noisePower: number, silent: boolean, length: number): number {
  return silent ? length : (maths.log(noisePower) - line.intercept) / line.slope;
}
