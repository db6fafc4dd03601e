import { roomModeCount } from './room.js';
import type { Mode, Room } from './types.js';
import * as maths from '../signal/maths.js';

/** How the predicted modes lie within one third-octave. */
export interface Crowding {
  readonly centreHz: number;
  readonly fromHz: number;
  readonly toHz: number;
  readonly count: number;
  /** By the expected count of the room, whatever its proportions. */
  readonly expected: number;
  /** From the highest mode below the band's first, or within it, to the next: the widest gap that reaches into it, Hz. */
  readonly widestGapHz: number | null;
  /** Least distance of two neighbours of which one lies in the band, Hz; null where it has none. */
  readonly closestHz: number | null;
}

/** Third-octaves of IEC 61260-1:2014 (base ten) that lie within the range as a whole. */
export function crowding(
  modes: readonly Mode[],
  room: Room,
  { fromHz, toHz }: { readonly fromHz: number; readonly toHz: number },
): Crowding[] {
  const first = Math.ceil(10 * maths.log10(fromHz) + 0.5 - 1e-9);
  const last = Math.floor(10 * maths.log10(toHz) - 0.5 + 1e-9);
  const all = modes.map(({ frequencyHz }) => frequencyHz);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, k): Crowding => {
    const [low, centreHz, high] = [-0.5, 0, 0.5].map((shift) => maths.power(10, (first + k + shift) / 10));
    const inside = all.filter((f) => f >= low && f < high);
    // The last one below and the first one above: a gap may begin before the band and end after it.
    const below = all.filter((f) => f < low).at(-1);
    const above = all.find((f) => f >= high);
    const row = [...(below === undefined ? [] : [below]), ...inside, ...(above === undefined ? [] : [above])];
    const gaps = row.slice(1).map((f, i) => f - row[i]);
    return {
      ...{ centreHz, fromHz: low, toHz: high, count: inside.length },
      expected: roomModeCount(room, high) - roomModeCount(room, low),
      widestGapHz: gaps.length > 0 ? Math.max(...gaps) : null,
      closestHz: inside.length > 0 && gaps.length > 0 ? Math.min(...gaps) : null,
    };
  });
}
