/** The heat map: frequency to the right, time downwards, level as colour; ridges as lines to where they sink; a slice beside it. */
import { axisTicks, labelledTicks, makeAxis, type Axis } from './axes.js';
import { scaleColour } from './colours.js';
import { sampleField } from './field.js';
import { drawFlags, flagsHeight, labelAt, layoutFlags, type FlagLabels } from './flags.js';
import { heatMapPixels } from './heatmap-pixels.js';
import { drawSlice, LEAST_WIDTH_WITH_SLICE, SLICE_WIDTH } from './heatmap-slice.js';
import { canvasPen, type Pen, type Pixels, type TextStyle } from './pen.js';
import { fitCanvas, isDrawable, type Box, type DrawSize, type Pick, type Point } from './picture.js';
import { tonesOf } from './tones.js';
import type { DrawTheme, Field, FieldView } from './types.js';

export interface HeatMapLayout {
  /** The field's rectangle, CSS pixels. */
  readonly plot: Box;
  readonly columnAxis: Axis;
  readonly rowAxis: Axis;
  /** The field under a point of the canvas, or null outside the plot. */
  toField(xCss: number, yCss: number): Pick | null;
  toPixel(column: number, row: number): Point;
  /** Index among the view's flags of the label or line under a point, or null. */
  flagAt(xCss: number, yCss: number): number | null;
}

const TICK_SIZE = 11;
const KEY_WIDTH = 10;
const MARK_STRIP = 16;
/** Between the map and the slice beside it. */
const SLICE_GAP = 12;

/** The last picture of a field: a moving cursor must not resample it. */
const images = new WeakMap<Field, { readonly key: string; readonly image: Pixels }>();

function fieldImage(view: FieldView, theme: DrawTheme, layout: HeatMapLayout, ratio: number): Pixels {
  const { plot, columnAxis, rowAxis } = layout;
  const width = Math.max(1, Math.round((plot.right - plot.left) * ratio));
  const height = Math.max(1, Math.round((plot.bottom - plot.top) * ratio));
  const tones = tonesOf(theme);
  const key = JSON.stringify([
    ...[width, height, ratio, view.columnScale, view.columnRange, view.rowRange, view.valueRange],
    ...[theme.scale, tones],
  ]);
  const kept = images.get(view.field);
  if (kept?.key === key) return kept.image;
  const axes = { column: columnAxis, row: rowAxis };
  const data = heatMapPixels(view, axes, theme.scale, tones, width, height, ratio);
  const image = { data, width, height };
  images.set(view.field, { key, image });
  return image;
}

function layoutOf(view: FieldView, plot: Box, labels: FlagLabels): HeatMapLayout {
  const columnAxis = makeAxis(view.columnScale, view.columnRange, plot.left, plot.right);
  const rowAxis = makeAxis('linear', view.rowRange, plot.top, plot.bottom);
  return {
    plot,
    columnAxis,
    rowAxis,
    toField(x, y) {
      if (x < plot.left || x > plot.right || y < plot.top || y > plot.bottom) return null;
      const column = columnAxis.atPixel(x);
      const row = rowAxis.atPixel(y);
      return { column, row, value: sampleField(view.field, column, row) };
    },
    toPixel: (column, row) => ({ x: columnAxis.pixel(column), y: rowAxis.pixel(row) }),
    flagAt(x, y) {
      const label = labelAt(labels, plot.top, x, y);
      if (label !== null) return label;
      const near = view.flags
        .map((flag, k) => ({
          k,
          away: Math.abs(columnAxis.pixel(flag.position) - x),
          bottom: rowAxis.pixel(flag.until),
        }))
        .filter(({ away, bottom }) => away <= 6 && y >= plot.top && y <= bottom + 4)
        .sort((a, b) => a.away - b.away)[0];
      return near ? near.k : null;
    },
  };
}

/** One, two or three strokes in a row, downwards from `top`. */
function drawMarks(pen: Pen, view: FieldView, theme: DrawTheme, layout: HeatMapLayout): void {
  const top = layout.plot.bottom + 3;
  for (const mark of view.marks) {
    const x = layout.columnAxis.pixel(mark.position);
    if (x < layout.plot.left || x > layout.plot.right) continue;
    for (let k = 0; k < mark.strokes; k += 1)
      pen.line([x, top + k * 4.5, x, top + k * 4.5 + 3], { colour: theme.text, width: 1.25, opacity: 0.8 });
  }
}

function drawAxes(
  pen: Pen,
  view: FieldView,
  theme: DrawTheme,
  layout: HeatMapLayout,
  size: DrawSize,
  below: number,
): void {
  const { plot, columnAxis, rowAxis } = layout;
  const tick: TextStyle = { colour: theme.faint, size: TICK_SIZE };
  const title: TextStyle = { colour: theme.text, size: TICK_SIZE };
  const crisp = (at: number): number => (Math.floor(at * size.pixelRatio) + 0.5) / size.pixelRatio;
  const hair = { colour: theme.line, width: 1 / Math.min(2, size.pixelRatio) };
  const foot = plot.bottom + below;

  const most = (plot.right - plot.left) / 42;
  const columns = { scale: view.columnScale, range: view.columnRange, most };
  const widthOf = (label: string): number => pen.measure(label, tick);
  for (const { major, at, label } of labelledTicks(columnAxis, columns, view.formatNumber, widthOf)) {
    const x = crisp(at);
    pen.line([x, foot, x, foot + (major ? 5 : 3)], { ...hair, colour: theme.faint });
    if (label) pen.text(label, x, foot + 17, { ...tick, align: 'middle' });
  }
  pen.text(view.columnLabel, plot.right, foot + 33, { ...title, align: 'end' });

  const rows = axisTicks('linear', view.rowRange, (plot.bottom - plot.top) / 42);
  for (const at of rows) {
    const y = crisp(rowAxis.pixel(at.value));
    pen.line([plot.left - 5, y, plot.left, y], { ...hair, colour: theme.faint });
    pen.text(view.formatNumber(at.value, at.digits), plot.left - 8, y, {
      ...tick,
      align: 'end',
      vertical: 'middle',
    });
  }
  pen.text(view.rowLabel, 2, foot + 33, title);
  const { left, right, top, bottom } = {
    left: crisp(plot.left - 0.5),
    right: crisp(plot.right),
    top: crisp(plot.top - 0.5),
    bottom: crisp(plot.bottom),
  };
  pen.line([left, top, right, top, right, bottom, left, bottom, left, top], hair);
}

function drawKey(pen: Pen, view: FieldView, theme: DrawTheme, plot: Box, size: DrawSize, left: number): void {
  const [bottom, top] = view.valueRange;
  const height = plot.bottom - plot.top;
  const steps = Math.min(128, Math.max(16, Math.round(height / 2)));
  for (let k = 0; k < steps; k += 1) {
    const y0 = plot.bottom - (height * k) / steps;
    // A sliver of overlap, so that no seam shows.
    const y1 = Math.max(plot.top, plot.bottom - (height * (k + 1)) / steps - 0.6);
    pen.area(
      [left, y0, left + KEY_WIDTH, y0, left + KEY_WIDTH, y1, left, y1],
      scaleColour(theme.scale, bottom + ((top - bottom) * (k + 0.5)) / steps, view.valueRange),
    );
  }
  const axis = makeAxis('linear', view.valueRange, plot.bottom, plot.top);
  const tick: TextStyle = { colour: theme.faint, size: TICK_SIZE, vertical: 'middle' };
  for (const at of axisTicks('linear', view.valueRange, Math.max(2, height / 46)))
    pen.text(view.formatNumber(at.value, at.digits), left + KEY_WIDTH + 6, axis.pixel(at.value), tick);
  pen.text(view.valueLabel, size.cssWidth - 2, plot.top - 10, {
    colour: theme.text,
    size: TICK_SIZE,
    align: 'end',
  });
}

function drawRidges(pen: Pen, view: FieldView, theme: DrawTheme, layout: HeatMapLayout): void {
  const { plot, columnAxis, rowAxis } = layout;
  pen.clipped(plot, () => {
    for (const flag of view.flags) {
      const x = columnAxis.pixel(flag.position);
      const y = rowAxis.pixel(flag.until);
      pen.line([x, plot.top, x, y], { colour: theme.background, width: 3.5, opacity: 0.5 });
      pen.line([x, plot.top, x, y], {
        colour: flag.selected ? theme.accent : theme.text,
        width: flag.selected ? 2 : 1.25,
        opacity: flag.selected ? 1 : 0.55 + 0.4 * flag.weight,
      });
      // Where it sinks: a foot across the line.
      pen.line([x - 4, y, x + 4, y], {
        colour: flag.selected ? theme.accent : theme.text,
        width: flag.selected ? 2 : 1.25,
        opacity: 0.9,
      });
    }
  });
}

function drawCursor(pen: Pen, view: FieldView, theme: DrawTheme, layout: HeatMapLayout): void {
  if (!view.cursor) return;
  const { plot } = layout;
  const { x, y } = layout.toPixel(view.cursor.column, view.cursor.row);
  if (x < plot.left || x > plot.right || y < plot.top || y > plot.bottom) return;
  const arms = [
    [plot.left, y, Math.max(plot.left, x - 8), y],
    [Math.min(plot.right, x + 8), y, plot.right, y],
    [x, plot.top, x, Math.max(plot.top, y - 8)],
    [x, Math.min(plot.bottom, y + 8), x, plot.bottom],
  ];
  for (const arm of arms) pen.line(arm, { colour: theme.background, width: 3, opacity: 0.55 });
  for (const arm of arms) pen.line(arm, { colour: theme.accent, width: 1 });
  pen.circle(x, y, 4, null, { colour: theme.background, width: 3.5, opacity: 0.55 });
  pen.circle(x, y, 4, null, { colour: theme.accent, width: 1.5 });
}

/** Draws the whole picture onto the canvas, which is brought to its size; returns where everything is. */
export function drawHeatMap(
  context: CanvasRenderingContext2D,
  view: FieldView,
  theme: DrawTheme,
  size: DrawSize,
): HeatMapLayout {
  fitCanvas(context.canvas, size);
  const ratio = size.pixelRatio;
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.fillStyle = theme.background;
  context.fillRect(0, 0, size.cssWidth, size.cssHeight);
  return drawHeatMapWith(canvasPen(context, theme.fontFamily), view, theme, size);
}

/** Where things stand across, and the labels of the ridges above the map. */
function across(pen: Pen, view: FieldView, theme: DrawTheme, size: DrawSize) {
  const ratio = size.pixelRatio;
  const tick: TextStyle = { colour: theme.faint, size: TICK_SIZE };
  const widest = (range: readonly [number, number]): number =>
    Math.max(
      ...axisTicks('linear', range, 6).map((at) => pen.measure(view.formatNumber(at.value, at.digits), tick)),
    );
  const snap = (at: number): number => Math.round(at * ratio) / ratio;
  const left = snap(widest(view.rowRange) + 14);
  const keyLeft = size.cssWidth - (KEY_WIDTH + 8 + widest(view.valueRange));
  const slice = size.cssWidth >= LEAST_WIDTH_WITH_SLICE ? SLICE_WIDTH + SLICE_GAP : 0;
  const right = snap(Math.max(left + 8, keyLeft - 14 - slice));
  const columnAxis = makeAxis(view.columnScale, view.columnRange, left, right);
  const inside = (x: number): boolean => x >= left - 0.5 && x <= right + 0.5;
  const anchors = view.flags.map((flag) => {
    const x = columnAxis.pixel(flag.position);
    return inside(x) ? x : null;
  });
  const keyTitle = size.cssWidth - 2 - pen.measure(view.valueLabel, tick) - 8;
  const mostRows = size.cssHeight < 260 ? 1 : size.cssHeight < 420 ? 2 : 3;
  const bounds = [2, Math.min(right, keyTitle)] as const;
  const labels = layoutFlags(pen, theme, view.flags, anchors, bounds, mostRows);
  return { left, right, keyLeft, slice, columnAxis, labels, snap };
}

/** Where a map begins under the labels of its ridges: maps beside each other begin at the lowest of these. */
export const heatMapTop = (pen: Pen, view: FieldView, theme: DrawTheme, size: DrawSize): number =>
  Math.max(24, flagsHeight(across(pen, view, theme, size).labels) + 4);

/**
 * The same by any pen; `pixelRatio` is the fineness of the map within. The map begins no higher than `leastTop`, so that maps
 * beside each other stand at one height whatever labels each has.
 */
export function drawHeatMapWith(
  pen: Pen,
  view: FieldView,
  theme: DrawTheme,
  size: DrawSize,
  leastTop = 0,
): HeatMapLayout {
  const ratio = size.pixelRatio;
  const { left, right, keyLeft, slice, columnAxis, labels, snap } = across(pen, view, theme, size);
  const below = view.marks.length ? MARK_STRIP : 0;
  const top = snap(Math.max(24, leastTop, flagsHeight(labels) + 4));
  const bottom = snap(Math.max(top + 8, size.cssHeight - below - 40));
  const layout = layoutOf(view, { left, right, top, bottom }, labels);

  if (isDrawable(size)) {
    const image = fieldImage(view, theme, layout, ratio);
    pen.image(image, { left, top, right: left + image.width / ratio, bottom: top + image.height / ratio });
  }
  drawRidges(pen, view, theme, layout);
  drawMarks(pen, view, theme, layout);
  drawAxes(pen, view, theme, layout, size, below);
  drawKey(pen, view, theme, layout.plot, size, Math.max(right + 14, keyLeft));
  if (slice > 0) {
    const from = right + SLICE_GAP;
    drawSlice(pen, view, theme, layout, { left: from, top, right: from + SLICE_WIDTH, bottom });
  }
  drawFlags(pen, theme, view.flags, labels, top, (flag) => ({
    x: columnAxis.pixel(view.flags[flag].position),
    y: top,
  }));
  drawCursor(pen, view, theme, layout);
  return layout;
}
