/** The difference of two fields as a signed heat map: one hue to each side of nothing, what neither field shows left out. */
import { axisTicks, labelledTicks, makeAxis, type Axis } from './axes.js';
import { indexAt } from './field.js';
import type { Pen, Pixels, TextStyle } from './pen.js';
import { isDrawable, type Box, type DrawSize, type Pick } from './picture.js';
import { signedTable } from './signed-image.js';
import { cssOf, tonesOf } from './tones.js';
import type { AxisScale, DrawTheme } from './types.js';

/** What a cell of a difference is: something, nothing that either field shows, or no data. */
export const differenceKinds = ['shown', 'neither', 'past-end'] as const;

export interface DifferenceField {
  readonly columns: number;
  readonly rows: number;
  /** `values[row * columns + column]`; not read where the cell is not shown. */
  readonly values: Float32Array;
  /** Per cell an index into `differenceKinds`. */
  readonly kinds: Uint8Array;
  readonly columnPositions: Float64Array;
  readonly rowPositions: Float64Array;
}

export interface DifferenceView {
  readonly field: DifferenceField;
  readonly columnScale: AxisScale;
  readonly columnRange: readonly [number, number];
  readonly rowRange: readonly [number, number];
  /** Half of the scale: colours run from -reach to +reach. */
  readonly reach: number;
  readonly cursor: { readonly column: number; readonly row: number } | null;
  readonly columnLabel: string;
  readonly rowLabel: string;
  readonly valueLabel: string;
  readonly formatNumber: (value: number, digits: number) => string;
}

export interface DifferenceLayout {
  readonly plot: Box;
  toField(xCss: number, yCss: number): Pick | null;
}

const TEXT = 11;
const KEY_WIDTH = 10;

interface Sample {
  readonly column: number;
  readonly row: number;
}

/** Value and kind at fractional indices: the kind of the nearest cell, the value between those that are shown. */
export function differenceAt(
  field: DifferenceField,
  { column, row }: Sample,
): { value: number; kind: number } {
  const { columns, rows, values, kinds } = field;
  const kind = kinds[Math.round(row) * columns + Math.round(column)];
  if (kind !== 0) return { value: NaN, kind };
  const [c, r] = [Math.floor(column), Math.floor(row)];
  const [s, t] = [column - c, row - r];
  let [sum, weight] = [0, 0];
  for (const [dc, dr, w] of [
    [0, 0, (1 - s) * (1 - t)],
    [1, 0, s * (1 - t)],
    [0, 1, (1 - s) * t],
    [1, 1, s * t],
  ]) {
    const at = Math.min(rows - 1, r + dr) * columns + Math.min(columns - 1, c + dc);
    if (w === 0 || kinds[at] !== 0) continue;
    sum += w * values[at];
    weight += w;
  }
  return { value: sum / weight, kind };
}

/** Indices of the pixels along an axis. */
const along = (positions: Float64Array, axis: Axis, pixels: number): Float64Array =>
  Float64Array.from({ length: pixels }, (_, k) => indexAt(positions, axis.value((k + 0.5) / pixels)));

/** RGBA of the plot; what neither field shows is the noise's grey, what rests on no data is hatched. */
export function differencePixels(
  view: DifferenceView,
  axes: { readonly column: Axis; readonly row: Axis },
  theme: DrawTheme,
  size: { readonly width: number; readonly height: number; readonly ratio: number },
): Uint8ClampedArray<ArrayBuffer> {
  const { field, reach } = view;
  const { width, height, ratio } = size;
  const table = signedTable(theme);
  const steps = (table.length / 4 - 1) / 2;
  const { background, noise, hatch } = tonesOf(theme);
  const bytes = new Uint8ClampedArray(width * height * 4);
  const across = along(field.columnPositions, axes.column, width);
  const down = along(field.rowPositions, axes.row, height);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const { value, kind } = differenceAt(field, { column: across[x], row: down[y] });
      const at = (y * width + x) * 4;
      if (kind === 0) {
        const entry = (Math.round(Math.max(-1, Math.min(1, value / reach)) * steps) + steps) * 4;
        for (let k = 0; k < 3; k += 1) bytes[at + k] = table[entry + k];
      } else {
        const stripe = ((x + y) / ratio) % 7;
        const ink = kind === 1 ? noise : stripe < 1 ? hatch : background;
        for (let k = 0; k < 3; k += 1) bytes[at + k] = ink[k];
      }
      bytes[at + 3] = 255;
    }
  return bytes;
}

const images = new WeakMap<DifferenceField, { readonly key: string; readonly image: Pixels }>();

/**
 * Draws from the pen's origin; `pixelRatio` is the fineness of the map within, `least` the room that maps beside it leave
 * above and below themselves.
 */
export function drawDifference(
  pen: Pen,
  view: DifferenceView,
  theme: DrawTheme,
  size: DrawSize,
  least: { readonly top: number; readonly below: number } = { top: 0, below: 0 },
): DifferenceLayout {
  const { columnRange, rowRange, columnScale, reach, formatNumber, field } = view;
  const ratio = size.pixelRatio;
  const tick: TextStyle = { colour: theme.faint, size: TEXT };
  const title: TextStyle = { colour: theme.text, size: TEXT };
  const signed = (value: number, digits: number): string =>
    `${value > 0 ? '+' : ''}${formatNumber(value, digits)}`;
  const keyTicks = axisTicks('linear', [-reach, reach], 5);
  const rowTicks = (most: number) => axisTicks('linear', rowRange, most);
  const widest = (texts: readonly string[]): number =>
    Math.max(...texts.map((text) => pen.measure(text, tick)));
  const snap = (at: number): number => Math.round(at * ratio) / ratio;
  const left = snap(widest(rowTicks(6).map((at) => formatNumber(at.value, at.digits))) + 14);
  const keyLeft = size.cssWidth - (KEY_WIDTH + 8 + widest(keyTicks.map((at) => signed(at.value, at.digits))));
  const right = snap(Math.max(left + 8, keyLeft - 14));
  const top = snap(Math.max(24, least.top));
  const bottom = snap(Math.max(top + 8, size.cssHeight - least.below - 40));
  const plot = { left, right, top, bottom };
  const columnAxis = makeAxis(columnScale, columnRange, left, right);
  const rowAxis = makeAxis('linear', rowRange, top, bottom);
  if (isDrawable(size)) {
    const width = Math.max(1, Math.round((right - left) * ratio));
    const height = Math.max(1, Math.round((bottom - top) * ratio));
    const key = JSON.stringify([width, height, ratio, columnScale, columnRange, rowRange, reach, theme]);
    const kept = images.get(field);
    const image =
      kept?.key === key
        ? kept.image
        : {
            data: differencePixels(view, { column: columnAxis, row: rowAxis }, theme, {
              width,
              height,
              ratio,
            }),
            width,
            height,
          };
    images.set(field, { key, image });
    pen.image(image, { left, top, right: left + width / ratio, bottom: top + height / ratio });
  }
  const columns = { scale: columnScale, range: columnRange, most: (right - left) / 42 };
  const widthOf = (label: string): number => pen.measure(label, tick);
  for (const { major, at, label } of labelledTicks(columnAxis, columns, formatNumber, widthOf)) {
    const x = Math.round(at) + 0.5;
    pen.line([x, bottom, x, bottom + (major ? 5 : 3)], { colour: theme.faint, width: 1 });
    if (label) pen.text(label, x, bottom + 17, { ...tick, align: 'middle' });
  }
  for (const at of rowTicks((bottom - top) / 42)) {
    const y = Math.round(rowAxis.pixel(at.value)) + 0.5;
    pen.line([left - 5, y, left, y], { colour: theme.faint, width: 1 });
    pen.text(formatNumber(at.value, at.digits), left - 8, y, { ...tick, align: 'end', vertical: 'middle' });
  }
  pen.line([left, top, right, top, right, bottom, left, bottom, left, top], { colour: theme.line, width: 1 });
  pen.text(view.columnLabel, right, bottom + 33, { ...title, align: 'end' });
  pen.text(view.rowLabel, 2, bottom + 33, title);
  drawKey(pen, theme, { left: Math.max(right + 14, keyLeft), top, bottom, reach });
  for (const at of keyTicks) {
    const y = bottom - ((at.value + reach) / (2 * reach)) * (bottom - top);
    pen.text(signed(at.value, at.digits), Math.max(right + 14, keyLeft) + KEY_WIDTH + 6, y, {
      ...tick,
      vertical: 'middle',
    });
  }
  pen.text(view.valueLabel, size.cssWidth - 2, top - 10, { ...title, align: 'end' });
  if (view.cursor) {
    const [x, y] = [columnAxis.pixel(view.cursor.column), rowAxis.pixel(view.cursor.row)];
    pen.clipped(plot, () => {
      for (const style of [
        { colour: theme.background, width: 3, opacity: 0.55 },
        { colour: theme.accent, width: 1 },
      ]) {
        pen.line([left, y, right, y], style);
        pen.line([x, top, x, bottom], style);
      }
    });
  }
  return {
    plot,
    toField(x, y) {
      if (x < left || x > right || y < top || y > bottom) return null;
      const [column, row] = [columnAxis.atPixel(x), rowAxis.atPixel(y)];
      const at = { column: indexAt(field.columnPositions, column), row: indexAt(field.rowPositions, row) };
      return { column, row, value: differenceAt(field, at).value };
    },
  };
}

function drawKey(
  pen: Pen,
  theme: DrawTheme,
  { left, top, bottom }: { left: number; top: number; bottom: number; reach: number },
): void {
  const table = signedTable(theme);
  const steps = Math.min(96, Math.max(16, Math.round((bottom - top) / 2)));
  for (let k = 0; k < steps; k += 1) {
    const y0 = bottom - ((bottom - top) * k) / steps;
    // A sliver of overlap, so that no seam shows.
    const y1 = Math.max(top, bottom - ((bottom - top) * (k + 1)) / steps - 0.6);
    const entry = Math.round((k / (steps - 1)) * (table.length / 4 - 1)) * 4;
    pen.area(
      [left, y0, left + KEY_WIDTH, y0, left + KEY_WIDTH, y1, left, y1],
      cssOf([table[entry], table[entry + 1], table[entry + 2]]),
    );
  }
}
