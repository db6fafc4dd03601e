/**
 * Three colour scales for level, made here from OKLCH control points: a smooth curve through them in OKLab, cut into
 * steps of equal colour difference. Lightness runs one way from the quietest to the loudest, so that a grey print keeps
 * the order; none passes through the whole circle of hues, which would draw edges where the data has none.
 *
 * `dusk` for dark pages (night blue, sea, sand, ivory), `dawn` for light ones (paper, apricot, brick, plum, ink),
 * `clear` for readers with a colour-vision deficiency (blue to yellow only, the axis that protan and deutan vision keep).
 */
import { bytesOfOklab, deltaE, oklabOfLch, type Triple } from './oklab.js';
import type { DrawTheme } from './types.js';

export type ScaleName = DrawTheme['scale'];

/** Entries of every table. */
export const SCALE_ENTRIES = 256;

/** Control points from the quietest to the loudest: OKLCH lightness, chroma, hue in degrees. All inside sRGB. */
const controls: Readonly<Record<ScaleName, readonly Triple[]>> = {
  dusk: [
    [0.235, 0.035, 268],
    [0.36, 0.085, 262],
    [0.5, 0.095, 232],
    [0.64, 0.09, 190],
    [0.77, 0.1, 130],
    [0.87, 0.115, 95],
    [0.965, 0.04, 92],
  ],
  dawn: [
    [0.965, 0.012, 85],
    [0.88, 0.055, 70],
    [0.77, 0.105, 52],
    [0.63, 0.14, 32],
    [0.47, 0.14, 8],
    [0.34, 0.105, 335],
    [0.22, 0.06, 300],
  ],
  clear: [
    [0.24, 0.075, 262],
    [0.37, 0.06, 262],
    [0.51, 0.022, 262],
    [0.65, 0.035, 98],
    [0.79, 0.085, 98],
    [0.935, 0.115, 100],
  ],
};

/** Slopes of a monotone cubic through evenly spaced values (Fritsch and Carlson 1980, harmonic mean form). */
function slopes(values: readonly number[]): number[] {
  const steps = values.slice(1).map((value, k) => value - values[k]);
  return values.map((_, k) => {
    if (k === 0) return steps[0];
    if (k === values.length - 1) return steps[k - 1];
    const before = steps[k - 1];
    const after = steps[k];
    return before * after <= 0 ? 0 : (2 * before * after) / (before + after);
  });
}

/** The smooth curve through the control points at `position` from 0 to 1. */
function curveOf(points: readonly Triple[]): (position: number) => Triple {
  const colours = points.map(([l, c, h]) => oklabOfLch(l, c, h));
  const parts = [0, 1, 2].map((axis) => {
    const values = colours.map((colour) => colour[axis]);
    return { values, slopes: slopes(values) };
  });
  return (position) => {
    const scaled = Math.min(1, Math.max(0, position)) * (points.length - 1);
    const k = Math.min(points.length - 2, Math.floor(scaled));
    const t = scaled - k;
    const [L, a, b] = parts.map(({ values, slopes: m }) => {
      const p = values[k];
      const q = values[k + 1];
      const c = q - p;
      return p + t * (m[k] + t * (3 * c - 2 * m[k] - m[k + 1] + t * (m[k] + m[k + 1] - 2 * c)));
    });
    return [L, a, b];
  };
}

/** Steps of equal colour difference along the curve, in OKLab, before rounding to bytes. */
export function scaleInOklab(name: ScaleName, entries = SCALE_ENTRIES): Triple[] {
  const fine = 4096;
  const curve = curveOf(controls[name]);
  const travelled = new Float64Array(fine + 1);
  let previous = curve(0);
  for (let k = 1; k <= fine; k += 1) {
    const here = curve(k / fine);
    travelled[k] = travelled[k - 1] + deltaE(previous, here);
    previous = here;
  }
  const whole = travelled[fine];
  const steps: Triple[] = [];
  let k = 0;
  for (let entry = 0; entry < entries; entry += 1) {
    const wanted = (whole * entry) / (entries - 1);
    while (k < fine - 1 && travelled[k + 1] < wanted) k += 1;
    const part = (wanted - travelled[k]) / (travelled[k + 1] - travelled[k]);
    steps.push(curve((k + Math.min(1, Math.max(0, part))) / fine));
  }
  return steps;
}

const tables = new Map<ScaleName, Uint8Array>();

/** The scale as RGBA bytes, 256 entries from the quietest to the loudest; made once, not to be written to. */
export function scaleTable(name: ScaleName): Uint8Array {
  let table = tables.get(name);
  if (!table) {
    table = new Uint8Array(SCALE_ENTRIES * 4);
    scaleInOklab(name).forEach((colour, entry) => table!.set([...bytesOfOklab(colour), 255], entry * 4));
    tables.set(name, table);
  }
  return table;
}

/** Entry of the table for a value within `range`; clamped. NaN and -Infinity are the quietest. */
export function scaleEntry(value: number, range: readonly [number, number]): number {
  const part = (value - range[0]) / (range[1] - range[0]);
  if (!(part > 0)) return 0;
  return part >= 1 ? SCALE_ENTRIES - 1 : Math.round(part * (SCALE_ENTRIES - 1));
}

/** The colour of a value as a CSS string. */
export function scaleColour(name: ScaleName, value: number, range: readonly [number, number]): string {
  const table = scaleTable(name);
  const at = scaleEntry(value, range) * 4;
  return `rgb(${table[at]}, ${table[at + 1]}, ${table[at + 2]})`;
}
