/** What line charts over frequency share: plot, grid, axes, marks of predicted modes, cursor. */
import { drawCursorLine } from './plot.js';
import { axisTicks, labelledTicks, makeAxis, type Axis } from './axes.js';
import { lettersWithoutOverlap, type Label } from './letters.js';
import type { Pen, TextStyle } from './pen.js';
import type { Box, DrawSize, Point } from './picture.js';
import { svgDocument, svgPen, type DocumentWords } from './svg.js';
import type { AxisMark, AxisScale, DrawTheme } from './types.js';

export type ChartSize = Omit<DrawSize, 'pixelRatio'>;

/** What every chart says of its axes. */
export interface ChartAxes {
  readonly columnScale: AxisScale;
  readonly columnRange: readonly [number, number];
  readonly valueRange: readonly [number, number];
  readonly columnLabel: string;
  readonly valueLabel: string;
  readonly marks: readonly AxisMark[];
  /** Position of the cursor's line, or null. */
  readonly cursor: number | null;
  readonly formatNumber: (value: number, digits: number) => string;
}

export interface ChartLayout {
  readonly plot: Box;
  readonly columnAxis: Axis;
  readonly valueAxis: Axis;
  readonly toPixel: (position: number, value: number) => Point;
  /** Positions under a point, or null outside the plot. */
  toField(xCss: number, yCss: number): { readonly position: number; readonly value: number } | null;
}

export const CHART_TEXT = 11;
const MARK_STRIP = 16;

/** Draws the frame and returns where everything is; `right` is the room for labels beside the plot. */
export function drawChartFrame(
  pen: Pen,
  axes: ChartAxes,
  theme: DrawTheme,
  size: ChartSize,
  right = 12,
): ChartLayout {
  const tick: TextStyle = { colour: theme.faint, size: CHART_TEXT };
  const title: TextStyle = { colour: theme.text, size: CHART_TEXT };
  const top = 26;
  const below = axes.marks.length ? MARK_STRIP : 0;
  const bottom = Math.max(top + 8, size.cssHeight - below - 40);
  const valueTicks = axisTicks('linear', axes.valueRange, Math.max(2, (bottom - top) / 40));
  const texts = valueTicks.map(({ value, digits }) => axes.formatNumber(value, digits));
  const left = Math.ceil(Math.max(...texts.map((text) => pen.measure(text, tick)))) + 12;
  const plot = { left, right: Math.max(left + 8, size.cssWidth - right), top, bottom };
  const columnAxis = makeAxis(axes.columnScale, axes.columnRange, plot.left, plot.right);
  const valueAxis = makeAxis('linear', axes.valueRange, plot.bottom, plot.top);
  const grid = { colour: theme.line, width: 1, opacity: 0.8 };
  valueTicks.forEach(({ value }, k) => {
    const y = Math.round(valueAxis.pixel(value)) + 0.5;
    pen.line([plot.left, y, plot.right, y], grid);
    pen.text(texts[k], plot.left - 7, y, { ...tick, align: 'end', vertical: 'middle' });
  });
  const foot = plot.bottom + below;
  const { columnScale: scale, columnRange: range } = axes;
  const columns = { scale, range, most: (plot.right - plot.left) / 42 };
  const widthOf = (label: string): number => pen.measure(label, tick);
  for (const { major, at, label } of labelledTicks(columnAxis, columns, axes.formatNumber, widthOf)) {
    const x = Math.round(at) + 0.5;
    if (major) pen.line([x, plot.top, x, plot.bottom], { ...grid, opacity: 0.5 });
    pen.line([x, foot, x, foot + (major ? 5 : 3)], { colour: theme.faint, width: 1 });
    if (label) pen.text(label, x, foot + 17, { ...tick, align: 'middle' });
  }
  pen.line([plot.left, plot.bottom + 0.5, plot.right, plot.bottom + 0.5], { colour: theme.faint, width: 1 });
  for (const mark of axes.marks) {
    const x = columnAxis.pixel(mark.position);
    if (x < plot.left || x > plot.right) continue;
    for (let k = 0; k < mark.strokes; k += 1)
      pen.line([x, plot.bottom + 3 + k * 4.5, x, plot.bottom + 6 + k * 4.5], {
        colour: theme.text,
        width: 1.25,
        opacity: 0.8,
      });
  }
  pen.text(axes.columnLabel, plot.right, foot + 33, { ...title, align: 'end' });
  pen.text(axes.valueLabel, 2, 13, title);
  return {
    plot,
    columnAxis,
    valueAxis,
    toPixel: (position, value) => ({ x: columnAxis.pixel(position), y: valueAxis.pixel(value) }),
    toField(x, y) {
      if (x < plot.left || x > plot.right || y < plot.top || y > plot.bottom) return null;
      return { position: columnAxis.atPixel(x), value: valueAxis.atPixel(y) };
    },
  };
}

export function drawChartCursor(pen: Pen, axes: ChartAxes, theme: DrawTheme, layout: ChartLayout): void {
  if (axes.cursor === null) return;
  drawCursorLine(pen, axes.cursor, layout.columnAxis, layout.plot, theme);
}

/** Where the title of the values stands: no label goes over it. */
export const titleBox = (pen: Pen, axes: ChartAxes): Box => ({
  left: 0,
  right: 2 + pen.measure(axes.valueLabel, { colour: '', size: CHART_TEXT }) + 4,
  top: 0,
  bottom: 18,
});

/** Draws those labels that can stand. */
export function drawLetters(
  pen: Pen,
  labels: readonly Label[],
  theme: DrawTheme,
  size: ChartSize,
  obstacles: readonly Box[] = [],
): void {
  const places = lettersWithoutOverlap(pen, labels, { ...size, pixelRatio: 1 }, 5, obstacles);
  for (const { text, at, style } of places)
    pen.text(text, at.x, at.y, { ...style, vertical: 'middle', halo: theme.background });
}

/** Points of a curve in runs without gaps: what is not finite or outside the range of columns is left out. */
export function curveRuns(
  layout: ChartLayout,
  axes: ChartAxes,
  positions: ArrayLike<number>,
  values: ArrayLike<number>,
): number[][] {
  const runs: number[][] = [];
  let run: number[] = [];
  for (let k = 0; k < positions.length; k += 1) {
    const inside = positions[k] >= axes.columnRange[0] && positions[k] <= axes.columnRange[1];
    if (inside && Number.isFinite(values[k])) {
      const { x, y } = layout.toPixel(positions[k], values[k]);
      run.push(x, y);
    } else if (run.length) {
      runs.push(run);
      run = [];
    }
  }
  if (run.length) runs.push(run);
  return runs;
}

/** The area between two curves over the same positions, in runs where both are finite. */
export function bandRuns(
  layout: ChartLayout,
  axes: ChartAxes,
  positions: ArrayLike<number>,
  low: ArrayLike<number>,
  high: ArrayLike<number>,
): number[][] {
  const gaps = Array.from(positions, (_, k) => !(Number.isFinite(low[k]) && Number.isFinite(high[k])));
  const cut = (values: ArrayLike<number>): number[] => gaps.map((gap, k) => (gap ? NaN : values[k]));
  const lower = curveRuns(layout, axes, positions, cut(low));
  const upper = curveRuns(layout, axes, positions, cut(high));
  return lower.map((run, n) => {
    const back: number[] = [];
    for (let k = upper[n].length - 2; k >= 0; k -= 2) back.push(upper[n][k], upper[n][k + 1]);
    return [...run, ...back];
  });
}

/** A chart as a document. */
export function chartSvg(
  draw: (pen: Pen) => void,
  theme: DrawTheme,
  size: ChartSize,
  words: DocumentWords,
  idPrefix: string,
): string {
  const pen = svgPen(idPrefix);
  draw(pen);
  return svgDocument(pen.content(), size, theme, words);
}
