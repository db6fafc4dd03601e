import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import type { Note } from '../signal/types.js';
import { bandRanges } from './band-range.js';
import type { GridSource } from './grid.js';

/** Whether a recording is fit to be read: what misleads in its samples, each with its evidence. */

/** Samples at the extreme, in a row, that no sound makes: three equal ones. */
const clippedRun = 3;
/** A run of one repeated value at the end is silence put there when it lasts this long. */
const silenceSeconds = 0.02;
/** A band with less range than this is read with doubt; with less than the second, not at all (common practice). */
const doubtfulRangeDb = 35;
const leastRangeDb = 20;
/** Blocks in which late energy is looked for, where it may begin, and by how much it must rise. */
const lateBlockSeconds = 0.1;
const lateFromSeconds = 0.3;
const lateRiseDb = 10;

const rms = (samples: Float64Array, from: number, to: number): number => {
  let sum = 0;
  for (let i = Math.max(0, from); i < Math.min(to, samples.length); i++) sum += samples[i] ** 2;
  return to > from ? Math.sqrt(sum / (to - from)) : 0;
};

/** Runs of equal samples at the largest magnitude. `lastSeconds` is where the last of them ends, from the file's start. */
export function clipping(source: GridSource): { count: number; lastSeconds: number } | null {
  const { samples, sampleRate } = source;
  let peak = 0;
  for (const value of samples) peak = Math.max(peak, Math.abs(value));
  let count = 0;
  let last = 0;
  for (let i = 0; i < samples.length;) {
    let j = i + 1;
    while (j < samples.length && samples[j] === samples[i]) j++;
    if (j - i >= clippedRun && peak > 0 && Math.abs(samples[i]) >= peak * 0.999) {
      count += j - i;
      last = j;
    }
    i = j;
  }
  return count > 0 ? { count, lastSeconds: last / sampleRate } : null;
}

/** Where the response was cut and silence follows: one value repeated to the end, while what comes before still sounds. */
export function cutOff(source: GridSource): { atSeconds: number; levelDb: number } | null {
  const { samples, sampleRate, onsetSeconds } = source;
  let end = samples.length;
  while (end > 0 && samples[end - 1] === samples[samples.length - 1]) end--;
  if (samples.length - end < silenceSeconds * sampleRate) return null;
  const onset = Math.round(onsetSeconds * sampleRate);
  const block = Math.round(0.05 * sampleRate);
  if (end - onset < 2 * block) return null;
  const peak = Math.max(
    ...Array.from({ length: 4 }, (_, i) => rms(samples, onset + i * block, onset + (i + 1) * block)),
  );
  const levelDb = 20 * Math.log10(rms(samples, end - block, end) / peak);
  return levelDb > -60 ? { atSeconds: (end - onset) / sampleRate, levelDb } : null;
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
    const riseDb = 20 * Math.log10(levels[b] / Math.max(before, peak * 1e-10));
    const levelDb = 20 * Math.log10(levels[b] / peak);
    if (riseDb > lateRiseDb && levelDb > -70 && (!found || levelDb > found.levelDb))
      found = { atSeconds: (b * (block >> 1) + block / 2) / rate, levelDb, riseDb };
  }
  return found;
}

/** How far the low band has fallen by the end of the file; dB, positive. */
function fallAtEnd(source: GridSource): number {
  const reduced = decimate(withoutOffset(source.samples, source.sampleRate), source.sampleRate, 200);
  const rate = reduced.sampleRate;
  const onset = Math.max(0, Math.round(source.onsetSeconds * rate) - reduced.firstIndex);
  const end = Math.floor((source.samples.length / source.sampleRate) * rate) - reduced.firstIndex;
  const block = Math.round(0.05 * rate);
  const start = Math.max(
    ...[0, 1, 2].map((i) => rms(reduced.samples, onset + i * block, onset + (i + 1) * block)),
  );
  const last = rms(reduced.samples, Math.max(onset, end - block), end);
  return last > 0 ? 20 * Math.log10(start / last) : Infinity;
}

/** Less fall than this at the end of the file, without noise that explains it: the decay was not let out. */
const wholeFallDb = 30;
/** A recording shorter than this behind its onset is short whatever it holds: 0.5 s is half a bass waterfall. */
const shortSeconds = 0.5;

/**
 * The notes that samples alone give: `clipped`, `truncated`, `short`, `late-energy`, `noisy`, `no-range`. Those that rest
 * on fitted resonances (`hum`, `rate-suspect`, `two-slopes`) are made where these are known.
 */
export function recordingNotes(source: GridSource, fromHz = 20, toHz = 200): Note[] {
  const notes: Note[] = [];
  const clipped = clipping(source);
  if (clipped) notes.push({ code: 'clipped', params: { ...clipped } });
  const cut = cutOff(source);
  if (cut) notes.push({ code: 'truncated', params: { ...cut } });
  const seconds = source.samples.length / source.sampleRate - source.onsetSeconds;
  const ranges = bandRanges(source, Math.max(25, fromHz), Math.min(250, toHz));
  const best = ranges.reduce((most, { rangeDb }) => Math.max(most, rangeDb), 0);
  const fall = fallAtEnd(source);
  if (!cut && (seconds < shortSeconds || (fall < wholeFallDb && seconds < 1)))
    notes.push({ code: 'short', params: { seconds, fallDb: Number.isFinite(fall) ? fall : null } });
  const late = lateEnergy(source);
  if (late) notes.push({ code: 'late-energy', params: { ...late } });
  if (ranges.length > 0 && best < leastRangeDb) {
    const band = { fromHz: ranges[0].fromHz, toHz: ranges[ranges.length - 1].toHz };
    notes.push({ code: 'no-range', params: { ...band, rangeDb: best, neededDb: leastRangeDb } });
  } else {
    notes.push(...noisyBands(ranges));
  }
  return notes;
}

/** One `noisy` note per run of neighbouring bands with too little range. */
function noisyBands(ranges: ReturnType<typeof bandRanges>): Note[] {
  const notes: Note[] = [];
  for (let i = 0; i < ranges.length; i++) {
    if (ranges[i].rangeDb >= doubtfulRangeDb) continue;
    const first = i;
    let rangeDb = ranges[i].rangeDb;
    while (i + 1 < ranges.length && ranges[i + 1].rangeDb < doubtfulRangeDb) {
      i++;
      rangeDb = Math.min(rangeDb, ranges[i].rangeDb);
    }
    notes.push({ code: 'noisy', params: { fromHz: ranges[first].fromHz, toHz: ranges[i].toHz, rangeDb } });
  }
  return notes;
}
