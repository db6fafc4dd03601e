import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import type { BandEnvelopes } from './band-range.js';
import { endOfChange, quantisationOf } from '../signal/quantisation.js';
import type { GridSource } from './grid.js';
import { silenceSeconds } from './quantised.js';
import * as maths from '../signal/maths.js';

/** Whether a recording is fit to be read: what misleads in its samples, each with its evidence. */

/** Samples at the extreme, in a row, that no sound makes: three equal ones. */
const clippedRun = 3;
/** Of the slowest wave whose top may lie within one step of a coarse file. */
const lowestHz = 20;
/** Blocks in which late energy is looked for, where it may begin, and by how much it must rise. */
const lateBlockSeconds = 0.1;
const lateFromSeconds = 0.3;
const lateRiseDb = 10;

const rms = (samples: Float64Array, from: number, to: number): number => {
  let sum = 0;
  for (let i = Math.max(0, from); i < Math.min(to, samples.length); i++) sum += maths.square(samples[i]);
  return to > from ? Math.sqrt(sum / (to - from)) : 0;
};

/** Runs of equal samples at the largest magnitude. `lastSeconds` is where the last of them ends, from the file's start. */
export function clipping(source: GridSource): { count: number; lastSeconds: number } | null {
  const { samples, sampleRate } = source;
  let peak = 0;
  for (const value of samples) peak = Math.max(peak, Math.abs(value));
  // The top of a slow wave stays within one step for so long: runs that short are the steps' own.
  const steps = quantisationOf(samples);
  const within = steps ? Math.sqrt((2 * steps.step) / peak) / (Math.PI * lowestHz) : 0;
  const shortest = Math.max(clippedRun, Math.ceil(within * sampleRate) + 1);
  let count = 0;
  let last = 0;
  for (let i = 0; i < samples.length;) {
    let j = i + 1;
    while (j < samples.length && samples[j] === samples[i]) j++;
    if (j - i >= shortest && peak > 0 && Math.abs(samples[i]) >= peak * 0.999) {
      count += j - i;
      last = j;
    }
    i = j;
  }
  return count > 0 ? { count, lastSeconds: last / sampleRate } : null;
}

export interface Cut {
  readonly atSeconds: number;
  /** Of the last 50 ms before it, re the loudest. */
  readonly levelDb: number;
}

/** Where the response was cut and silence follows, digital or of noise alone, while what comes before still sounds. */
export function cutOff(source: GridSource): Cut | null {
  return cutToOneValue(source) ?? abruptEnd(source);
}

/** One value repeated to the end. */
function cutToOneValue({ samples, sampleRate, onsetSeconds }: GridSource): Cut | null {
  const end = endOfChange(samples);
  if (samples.length - end < silenceSeconds * sampleRate) return null;
  const onset = Math.round(onsetSeconds * sampleRate);
  const block = Math.round(0.05 * sampleRate);
  if (end - onset < 2 * block) return null;
  const peak = Math.max(
    ...Array.from({ length: 4 }, (_, i) => rms(samples, onset + i * block, onset + (i + 1) * block)),
  );
  const levelDb = 20 * maths.log10(rms(samples, end - block, end) / peak);
  return levelDb > -60 ? { atSeconds: (end - onset) / sampleRate, levelDb } : null;
}

/** The bass falls this much more within 0.1 s than within the 0.1 s before: no decay does, and it stays down. */
const abruptDb = 20;

function abruptEnd(source: GridSource): Cut | null {
  const levels = bassLevels(source, 0.05);
  const peak = Math.max(...levels);
  for (let b = 3; b + 2 < levels.length; b++) {
    const [before, last, next] = [levels[b - 2], levels[b], levels[b + 2]];
    const stays = Math.max(...levels.slice(b + 2)) <= last - abruptDb;
    if (stays && last > peak - 60 && last - next > Math.max(0, before - last) + abruptDb)
      return { atSeconds: (b + 1) * 0.05, levelDb: last - peak };
  }
  return null;
}

/** Level of the bass in blocks from the onset on, dB re full scale; what is silent lies at -400. */
function bassLevels(source: GridSource, blockSeconds: number): number[] {
  const reduced = decimate(withoutOffset(source.samples, source.sampleRate), source.sampleRate, 200);
  const rate = reduced.sampleRate;
  const onset = Math.round(source.onsetSeconds * rate) - reduced.firstIndex;
  const block = blockSeconds * rate;
  const end = Math.floor((source.samples.length / source.sampleRate) * rate) - reduced.firstIndex;
  return Array.from({ length: Math.max(0, Math.floor((end - onset) / block)) }, (_, i) =>
    Math.max(
      -400,
      20 *
        maths.log10(rms(reduced.samples, Math.round(onset + i * block), Math.round(onset + (i + 1) * block))),
    ),
  );
}

/** A burst long after the onset that rises above what came before it: a disturbance, or wrapped distortion of a sweep. */
export function lateEnergy(
  source: GridSource,
): { atSeconds: number; levelDb: number; riseDb: number } | null {
  const reduced = decimate(withoutOffset(source.samples, source.sampleRate), source.sampleRate, 200);
  const rate = reduced.sampleRate;
  const onset = Math.round(source.onsetSeconds * rate) - reduced.firstIndex;
  const block = Math.round(lateBlockSeconds * rate);
  const end = Math.min(
    reduced.samples.length,
    Math.floor((source.samples.length / source.sampleRate) * rate) - reduced.firstIndex,
  );
  const levels: number[] = [];
  for (let i = onset; i + block <= end; i += block >> 1) levels.push(rms(reduced.samples, i, i + block));
  const peak = Math.max(...levels, 0);
  const first = Math.ceil(lateFromSeconds / (lateBlockSeconds / 2));
  let found: { atSeconds: number; levelDb: number; riseDb: number } | null = null;
  for (let b = first; b < levels.length; b++) {
    // The loudest of the four blocks before: modes that beat dip deeper, but come back no louder than they were.
    const before = Math.max(...levels.slice(b - 6, b - 2));
    const riseDb = 20 * maths.log10(levels[b] / Math.max(before, peak * 1e-10));
    const levelDb = 20 * maths.log10(levels[b] / peak);
    if (riseDb > lateRiseDb && levelDb > -70 && (!found || levelDb > found.levelDb))
      found = { atSeconds: (b * (block >> 1) + block / 2) / rate, levelDb, riseDb };
  }
  return found;
}

/** Less fall than this at the end of the file, while it is still falling, means that the decay was not let out. */
const wholeFallDb = 30;
/** Between two stretches of noise lie a few tenths of a decibel; between two of a decay that goes on, more than this. */
const fallingDb = 2;
/** A recording shorter than this behind its onset is short whatever it holds: 0.5 s is half a bass waterfall. */
const shortSeconds = 0.5;

const meanOf = (power: Float64Array, from: number, to: number): number => {
  const begin = Math.max(0, Math.round(from));
  let sum = 0;
  for (let i = begin; i < Math.min(power.length, Math.round(to)); i++) sum += power[i];
  return sum / Math.max(1, Math.round(to) - begin);
};

/** Whether power still falls over the last tenths of a file: it is then a decay that ends there, and no noise. */
export function stillFalling(power: Float64Array, onsetIndex: number, sampleRate: number): boolean {
  const stretch = Math.max(0.05 * sampleRate, 0.15 * (power.length - onsetIndex));
  const end = power.length;
  const before = meanOf(power, end - 2 * stretch, end - stretch);
  return 10 * maths.log10(before / meanOf(power, end - stretch, end)) > fallingDb;
}

/**
 * Whether the file ends before its decay does: shorter than half a second, or little fallen and falling still. Judged in
 * the third-octaves together, so that rumble below them does not count.
 *
 * @returns `fallDb` from the loudest 50 ms to the last; null where nothing sounds at the end
 */
export function endsEarly(
  source: GridSource,
  { sampleRate, onsetIndex, bands }: BandEnvelopes,
): { seconds: number; fallDb: number | null; unfinished: boolean } | null {
  const seconds = source.samples.length / source.sampleRate - source.onsetSeconds;
  const length = bands[0]?.power.length ?? 0;
  const power = new Float64Array(length);
  for (const band of bands) for (let i = 0; i < length; i++) power[i] += band.power[i];
  const block = 0.05 * sampleRate;
  let loudest = 0;
  for (let i = onsetIndex; i + block <= length; i += block / 2)
    loudest = Math.max(loudest, meanOf(power, i, i + block));
  const fallDb = 10 * maths.log10(loudest / meanOf(power, length - block, length));
  const unfinished = fallDb < wholeFallDb && stillFalling(power, onsetIndex, sampleRate);
  if (!(seconds < shortSeconds || unfinished)) return null;
  return { seconds, fallDb: Number.isFinite(fallDb) ? fallDb : null, unfinished };
}
