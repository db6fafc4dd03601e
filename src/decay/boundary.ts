import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import { nextPowerOfTwo, realFft } from '../signal/fft.js';
import type { Note } from '../signal/types.js';
import type { GridSource } from './grid.js';
import * as maths from '../signal/maths.js';

/** Of the response, this much is read: an early reflection is in it, the tail of a mode hardly. */
const earlySeconds = 0.06;
const topHz = 1000;
/** The comb is held against the spectrum from half its first dip to six times it, and over at least three and a half. */
const [combFrom, combTo, combLeast] = [0.5, 6, 3.5];
/** Lowest dip looked for: half a wave of it is 4.3 m of detour, and the 60 ms hold two and a half of its periods. */
const lowestHz = 40;
/** Gains of the reflection that are tried. From one half on the dip is 10 dB deep beside its peaks. */
const gains = [0.5, 0.6, 0.7, 0.8, 0.9, 0.97];
/**
 * Share of the shape of the spectrum that one reflection must explain. In fifteen measured rooms, full of reflections, the
 * best comb explains 6 to 55 %; a click with one reflection is explained to 99 %.
 */
const leastExplained = 0.7;

/** Speed of sound for the distance, m/s; at 20 °C (ISO 9613-1). */
const speed = 343.2;

/** What is left of the squares of `values` about their best line over `x`. */
function leftOfLine(values: Float64Array, x: Float64Array): number {
  const n = values.length;
  const meanOf = (list: Float64Array): number => list.reduce((sum, value) => sum + value, 0) / n;
  const [mx, mv] = [meanOf(x), meanOf(values)];
  let sxv = 0;
  let sxx = 0;
  for (let i = 0; i < n; i++) {
    sxv += (x[i] - mx) * (values[i] - mv);
    sxx += maths.square(x[i] - mx);
  }
  const slope = sxv / sxx;
  return values.reduce((sum, value, i) => sum + maths.square(value - mv - slope * (x[i] - mx)), 0);
}

/** Level of the early response up to `top`, dB, and the step between its bins, Hz. */
function earlySpectrum(source: GridSource, top: number): { levelsDb: Float64Array; stepHz: number } {
  const reduced = decimate(withoutOffset(source.samples, source.sampleRate), source.sampleRate, top);
  const rate = reduced.sampleRate;
  const onset = Math.round(source.onsetSeconds * rate) - reduced.firstIndex;
  const length = Math.round(earlySeconds * rate);
  const size = nextPowerOfTwo(8 * length);
  const input = new Float64Array(size);
  const lead = Math.min(onset, Math.round(0.005 * rate));
  for (let i = -lead; i < length && onset + i < reduced.samples.length; i++) {
    const fade = i < length / 2 ? 1 : maths.square(maths.cos((Math.PI / 2) * ((2 * i) / length - 1)));
    input[i + lead] = reduced.samples[onset + i] * fade;
  }
  const bins = new Float64Array(2 * size);
  realFft(input, bins);
  const stepHz = rate / size;
  const power = Float64Array.from(
    { length: Math.min(size / 2, Math.floor(top / stepHz)) },
    (_, k) => maths.square(bins[2 * k]) + maths.square(bins[2 * k + 1]),
  );
  const least = power.reduce((most, value) => Math.max(most, value), 0) * 1e-12 + 1e-300;
  return { levelsDb: power.map((value) => 10 * maths.log10(value + least)), stepHz };
}

/**
 * A dip that one reflection explains: its comb, with dips at odd multiples of half the reciprocal of the delay and peaks
 * between them, accounts for most of the shape of the early spectrum, which no single mode and no crowd of reflections
 * does. `extraMetres` is how much further the reflection travels, `explained` the share of the shape (0 to 1).
 */
export function boundaryDip(source: GridSource, fromHz = 20, toHz = 200): Note | null {
  const top = Math.min(topHz, source.sampleRate * 0.4);
  const { levelsDb, stepHz } = earlySpectrum(source, top);
  let best: { frequencyHz: number; gain: number; explained: number } | null = null;
  for (let dip = Math.max(lowestHz, fromHz); dip <= toHz; dip *= 1.004) {
    const from = Math.ceil((combFrom * dip) / stepHz);
    const to = Math.min(levelsDb.length, Math.floor((combTo * dip) / stepHz));
    if (to * stepHz < combLeast * dip) break;
    const levels = levelsDb.subarray(from, to);
    const octaves = levels.map((_, i) => maths.log2((from + i) * stepHz));
    const whole = leftOfLine(levels, octaves);
    for (const gain of gains) {
      const rest = levels.map((level, i) => {
        const phase = (Math.PI * (from + i) * stepHz) / dip;
        // The faded end of the stretch blurs the bottom of the dips.
        return level - 10 * maths.log10(1 + gain * gain + 2 * gain * maths.cos(phase) + 1e-3);
      });
      const explained = 1 - leftOfLine(rest, octaves) / whole;
      if (explained > (best?.explained ?? leastExplained)) best = { frequencyHz: dip, gain, explained };
    }
  }
  if (!best) return null;
  const { frequencyHz, gain, explained } = best;
  const depthDb = 20 * maths.log10((1 + gain) / (1 - gain));
  const extraMetres = speed / (2 * frequencyHz);
  return { code: 'boundary', params: { frequencyHz, depthDb, extraMetres, explained } };
}
