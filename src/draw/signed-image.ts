/** A signed grid as colours: the ground for nothing, one hue to each side, so that the order of strength is lightness. */
import { bytesOfOklab, oklabOfBytes, oklabOfLch, type Triple } from './oklab.js';
import { cssBytes } from './tones.js';
import type { DrawTheme } from './types.js';

/** OKLCH of the strongest on either side: blue and orange, which every common colour vision tells apart. */
const ends = {
  light: { above: [0.56, 0.16, 45], below: [0.47, 0.13, 255] },
  dark: { above: [0.74, 0.15, 60], below: [0.62, 0.13, 250] },
} as const;

const steps = 127;

/** RGBA from -1 to 1, 255 entries; the ground in the middle. */
export function signedTable(theme: DrawTheme): Uint8ClampedArray {
  const ground = oklabOfBytes(...cssBytes(theme.background));
  const { above, below } = ends[theme.dark ? 'dark' : 'light'];
  const table = new Uint8ClampedArray((2 * steps + 1) * 4);
  for (let k = -steps; k <= steps; k += 1) {
    const [l, c, h] = k > 0 ? above : below;
    const end = oklabOfLch(l, c, h);
    const part = Math.abs(k) / steps;
    const mixed = [0, 1, 2].map(
      (axis) => ground[axis] + part * (end[axis] - ground[axis]),
    ) as unknown as Triple;
    table.set([...bytesOfOklab(mixed), 255], (k + steps) * 4);
  }
  return table;
}

/** Pixels of a grid, one per point, `factor` times its values; what is no number takes its neighbour's: walls clip it. */
export function signedPixels(
  values: ArrayLike<number>,
  factor: number,
  table: Uint8ClampedArray,
  into: Uint8ClampedArray,
): void {
  for (let k = 0; k < values.length; k += 1) {
    const value = Math.max(-1, Math.min(1, values[k] * factor));
    const entry = (Number.isNaN(value) ? steps : Math.round(value * steps) + steps) * 4;
    into[4 * k] = table[entry];
    into[4 * k + 1] = table[entry + 1];
    into[4 * k + 2] = table[entry + 2];
    into[4 * k + 3] = 255;
  }
}

/** Fills what is no number from its neighbours, so that colours reach to slanted walls. */
export function filled(values: Float32Array, columns: number, rounds = 3): Float32Array {
  let from = values;
  for (let round = 0; round < rounds; round += 1) {
    const to = from.slice();
    for (let k = 0; k < from.length; k += 1) {
      if (!Number.isNaN(from[k])) continue;
      let sum = 0;
      let count = 0;
      for (const other of [
        k - columns,
        k + columns,
        ...(k % columns ? [k - 1] : []),
        ...((k + 1) % columns ? [k + 1] : []),
      ])
        if (other >= 0 && other < from.length && !Number.isNaN(from[other])) {
          sum += from[other];
          count += 1;
        }
      if (count > 0) to[k] = sum / count;
    }
    from = to;
  }
  return from;
}
