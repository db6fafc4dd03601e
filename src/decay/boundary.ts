import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import { nextPowerOfTwo, realFft } from '../signal/fft.js';
import type { Note } from '../signal/types.js';
import type { GridSource } from './grid.js';

/** Of the response, this much is read: an early reflection is in it, the tail of a mode hardly. */
const earlySeconds = 0.06;
const topHz = 800;
/** A dip counts from this depth below its surroundings of half an octave. */
const leastDepthDb = 10;

/** Speed of sound for the distance, m/s; at 20 °C (ISO 9613-1). */
const speed = 343.2;

/**
 * A dip that one reflection explains: at an odd half of 1/delay, and again at three times that frequency, as a comb has
 * it and a room's modes do not. `extraMetres` is how much further the reflection travels.
 */
export function boundaryDip(source: GridSource, fromHz = 20, toHz = 200): Note | null {
  const reduced = decimate(withoutOffset(source.samples, source.sampleRate), source.sampleRate, topHz);
  const rate = reduced.sampleRate;
  const onset = Math.round(source.onsetSeconds * rate) - reduced.firstIndex;
  const length = Math.round(earlySeconds * rate);
  const size = nextPowerOfTwo(8 * length);
  const input = new Float64Array(size);
  const lead = Math.min(onset, Math.round(0.005 * rate));
  for (let i = -lead; i < length && onset + i < reduced.samples.length; i++) {
    const fade = i < length / 2 ? 1 : Math.cos((Math.PI / 2) * ((2 * i) / length - 1)) ** 2;
    input[i + lead] = reduced.samples[onset + i] * fade;
  }
  const bins = new Float64Array(2 * size);
  realFft(input, bins);
  const step = rate / size;
  const levels = Float64Array.from(
    { length: Math.min(size / 2, Math.floor(topHz / step)) },
    (_, k) => Math.log10(bins[2 * k] ** 2 + bins[2 * k + 1] ** 2 + 1e-300) * 10,
  );
  const depth = (frequencyHz: number): { depthDb: number; frequencyHz: number } => {
    const from = Math.max(1, Math.floor((frequencyHz * 0.92) / step));
    const to = Math.min(levels.length - 2, Math.ceil((frequencyHz * 1.08) / step));
    let lowest = from;
    for (let k = from; k <= to; k++) if (levels[k] < levels[lowest]) lowest = k;
    const around = [lowest * 0.7, lowest * 1.3].map(
      (k) => levels[Math.min(levels.length - 1, Math.max(1, Math.round(k)))],
    );
    return { depthDb: Math.min(...around) - levels[lowest], frequencyHz: lowest * step };
  };
  let best: { depthDb: number; frequencyHz: number } | null = null;
  for (let f = fromHz * 1.4; f <= toHz; f *= 1.03) {
    const first = depth(f);
    const third = depth(3 * first.frequencyHz);
    const ratio = third.frequencyHz / (3 * first.frequencyHz);
    if (3 * first.frequencyHz > topHz * 0.75 || Math.abs(ratio - 1) > 0.04) continue;
    const depthDb = Math.min(first.depthDb, third.depthDb);
    if (depthDb >= leastDepthDb && (!best || depthDb > best.depthDb)) best = { ...first, depthDb };
  }
  if (!best) return null;
  const { frequencyHz, depthDb } = best;
  return { code: 'boundary', params: { frequencyHz, depthDb, extraMetres: speed / (2 * frequencyHz) } };
}
