/** The heat map's pixels from the field: by position on both axes, so that a marked frequency is under its mark. */
import type { Axis } from './axes.js';
import { scaleEntry, scaleTable } from './colours.js';
import { finite, floorAt, indexAt, lowestAt } from './field.js';
import type { Tones } from './tones.js';
import type { DrawTheme, Field, FieldView } from './types.js';

/** For every pixel: the fractional index under its middle, and the whole cells whose positions lie within it. */
interface Sampling {
  readonly index: Float64Array;
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** Pixels outside the field's positions have the index -1. */
function sampleAxis(positions: Float64Array, axis: Axis, pixels: number): Sampling {
  const index = new Float64Array(pixels);
  const first = new Int32Array(pixels);
  const last = new Int32Array(pixels);
  const end = positions.length - 1;
  // Half a pixel of grace: rounding must not blank the outermost one.
  const grace = 0.5 / pixels;
  const low = axis.fraction(positions[0]) - grace;
  const high = axis.fraction(positions[end]) + grace;
  for (let k = 0; k < pixels; k += 1) {
    const middle = (k + 0.5) / pixels;
    index[k] = middle < low || middle > high ? -1 : indexAt(positions, axis.value(middle));
    first[k] = Math.ceil(indexAt(positions, axis.value(k / pixels)));
    last[k] = Math.floor(indexAt(positions, axis.value((k + 1) / pixels)));
  }
  return { index, first, last };
}

/** One direction of the resampling: linear between cells, the loudest cell where several share a pixel. */
function blend(at: (cell: number) => number, { index, first, last }: Sampling, k: number): number {
  const low = Math.floor(index[k]);
  const part = index[k] - low;
  let value = part === 0 ? at(low) : at(low) * (1 - part) + at(low + 1) * part;
  if (last[k] > first[k])
    for (let cell = first[k]; cell <= last[k]; cell += 1) value = Math.max(value, at(cell));
  return value;
}

/** The field by pixels, NaN outside it. A peak narrower than a pixel keeps its height. */
export function resample(
  field: Field,
  columns: Axis,
  rows: Axis,
  width: number,
  height: number,
): Float32Array {
  const across = sampleAxis(field.columnPositions, columns, width);
  const down = sampleAxis(field.rowPositions, rows, height);
  const strip = new Float32Array(field.rows * width);
  for (let row = 0; row < field.rows; row += 1) {
    const base = row * field.columns;
    const at = (cell: number): number => finite(field.values[base + cell]);
    for (let x = 0; x < width; x += 1)
      strip[row * width + x] = across.index[x] < 0 ? NaN : blend(at, across, x);
  }
  const pixels = new Float32Array(width * height);
  for (let y = 0; y < height; y += 1) {
    if (down.index[y] < 0) {
      pixels.fill(NaN, y * width, (y + 1) * width);
      continue;
    }
    for (let x = 0; x < width; x += 1)
      pixels[y * width + x] = blend((cell) => strip[cell * width + x], down, y);
  }
  return pixels;
}

/** Coverage of slanted strokes one CSS pixel wide, `pitch` CSS pixels apart. */
function stroke(x: number, y: number, slope: 1 | -1, pitch: number, ratio: number): number {
  const across = ((((x + slope * y) / ratio) % pitch) + pitch) % pitch;
  const distance = Math.min(across, pitch - across) * Math.SQRT1_2 * ratio;
  return Math.min(1, Math.max(0, 0.5 * ratio + 0.5 - distance));
}

/**
 * RGBA bytes of the plot, `width` by `height` device pixels, rows running down. Below the noise floor one grey; past the
 * end hatched one way on the background, finer than the slice resolves the other way.
 */
export function heatMapPixels(
  view: FieldView,
  axes: { readonly column: Axis; readonly row: Axis },
  scale: DrawTheme['scale'],
  tones: Tones,
  width: number,
  height: number,
  ratio: number,
): Uint8ClampedArray<ArrayBuffer> {
  const { field, valueRange } = view;
  const values = resample(field, axes.column, axes.row, width, height);
  const table = scaleTable(scale);
  const bytes = new Uint8ClampedArray(width * height * 4);
  const positions = Float64Array.from({ length: width }, (_, x) => axes.column.value((x + 0.5) / width));
  const floors = Float64Array.from(positions, (at) => floorAt(field, indexAt(field.columnPositions, at)));
  const { background, noise, hatch } = tones;
  for (let y = 0; y < height; y += 1) {
    const time = axes.row.value((y + 0.5) / height);
    const past = time > field.rowEnd;
    const lowest = lowestAt(field, indexAt(field.rowPositions, time));
    for (let x = 0; x < width; x += 1) {
      const value = values[y * width + x];
      const at = (y * width + x) * 4;
      const unresolved = positions[x] < lowest;
      if (past || unresolved || Number.isNaN(value)) {
        const ink = Number.isNaN(value) && !past ? 0 : stroke(x, y, past ? 1 : -1, past ? 7 : 5, ratio);
        for (let k = 0; k < 3; k += 1) bytes[at + k] = background[k] + (hatch[k] - background[k]) * ink;
      } else if (value <= floors[x]) {
        for (let k = 0; k < 3; k += 1) bytes[at + k] = noise[k];
      } else {
        const entry = scaleEntry(value, valueRange) * 4;
        for (let k = 0; k < 3; k += 1) bytes[at + k] = table[entry + k];
      }
      bytes[at + 3] = 255;
    }
  }
  return bytes;
}
