import * as maths from '../signal/maths.js';

/** Widths over which a response may be averaged. `erb` is that of the ear's filters. */
export const smoothings = ['none', '1/48', '1/24', '1/12', '1/6', '1/3', '1/1', 'erb'] as const;
export type Smoothing = (typeof smoothings)[number];

/**
 * Equivalent rectangular bandwidth of the ear's filter, 24.673 (0.004368 f + 1) Hz (ANSI/ASA S3.4-2007). At 50 Hz it is
 * 30 Hz wide, where a third-octave has 11.6: it tells the balance of tone, and hides every ridge.
 */
export const erbHz = (frequencyHz: number): number => 24.673 * (0.004368 * frequencyHz + 1);

/** Edges of the average about one frequency, Hz; the same twice for `none`. The lower one is never below 0. */
export function smoothingEdges(smoothing: Smoothing, frequencyHz: number): readonly [number, number] {
  if (smoothing === 'none') return [frequencyHz, frequencyHz];
  if (smoothing === 'erb') {
    const half = erbHz(frequencyHz) / 2;
    return [Math.max(0, frequencyHz - half), frequencyHz + half];
  }
  const half = maths.power(2, 0.5 / Number(smoothing.slice(2)));
  return [frequencyHz / half, frequencyHz * half];
}

/**
 * Mean power between the edges about each frequency: the integral of the straight lines between points, over its width.
 *
 * @param frequenciesHz Ascending; of `power`.
 * @param atHz Where the average is wanted; edges beyond the points are drawn in to them.
 */
export function smoothPower(
  frequenciesHz: Float64Array,
  power: Float64Array,
  smoothing: Smoothing,
  atHz: Float64Array,
): Float64Array {
  const last = frequenciesHz.length - 1;
  const integral = new Float64Array(last + 1);
  for (let k = 1; k <= last; k++)
    integral[k] =
      integral[k - 1] + ((frequenciesHz[k] - frequenciesHz[k - 1]) * (power[k] + power[k - 1])) / 2;
  let near = 0;
  const place = (f: number): { k: number; part: number } => {
    while (near > 0 && frequenciesHz[near] > f) near--;
    while (near < last - 1 && frequenciesHz[near + 1] < f) near++;
    const part = (f - frequenciesHz[near]) / (frequenciesHz[near + 1] - frequenciesHz[near]);
    return { k: near, part: Math.min(1, Math.max(0, part)) };
  };
  const valueAt = (f: number): number => {
    const { k, part } = place(f);
    return power[k] + part * (power[k + 1] - power[k]);
  };
  const integralTo = (f: number): number => {
    const { k, part } = place(f);
    const width = part * (frequenciesHz[k + 1] - frequenciesHz[k]);
    return integral[k] + (width * (power[k] + valueAt(f))) / 2;
  };
  return atHz.map((f) => {
    const edges = smoothingEdges(smoothing, f);
    const low = Math.max(frequenciesHz[0], edges[0]);
    const high = Math.min(frequenciesHz[last], edges[1]);
    return high > low ? Math.max(0, (integralTo(high) - integralTo(low)) / (high - low)) : valueAt(f);
  });
}
