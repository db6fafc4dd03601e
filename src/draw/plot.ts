/** A plot somewhere on a picture that holds several: frame, grid, ticks and titles of one box. */
import { axisTicks, labelledTicks, makeAxis, type Axis } from './axes.js';
import type { Pen, TextStyle } from './pen.js';
import type { Box, Point } from './picture.js';
import type { AxisScale, DrawTheme } from './types.js';

export interface PlotSpec {
  readonly box: Box;
  readonly columnScale: AxisScale;
  readonly columnRange: readonly [number, number];
  readonly valueRange: readonly [number, number];
  /** Title under the columns; null for a plot that shares those of the one below it. */
  readonly columnLabel: string | null;
  /** Title above the values. */
  readonly valueLabel: string;
  /** Room between the plot and its title, px. */
  readonly titleGap?: number;
  /** Values with a line and a figure; made where not given. */
  readonly valueTicks?: readonly number[];
  readonly formatNumber: (value: number, digits: number) => string;
}

export interface Plot {
  readonly box: Box;
  readonly columnAxis: Axis;
  readonly valueAxis: Axis;
  readonly toPixel: (column: number, value: number) => Point;
  /** Whether a point lies on it. */
  readonly holds: (x: number, y: number) => boolean;
}

export const PLOT_TEXT = 11;
/** Room under a plot for its figures and title, px. */
export const FOOT = 40;

/** Room left of a plot that its figures need, px. */
export function valueMargin(
  pen: Pen,
  theme: DrawTheme,
  specs: readonly Pick<PlotSpec, 'valueRange' | 'valueTicks' | 'formatNumber'>[],
): number {
  const style: TextStyle = { colour: theme.faint, size: PLOT_TEXT };
  const widths = specs.flatMap((spec) =>
    valueTicksOf(spec, 6).map(({ value, digits }) => pen.measure(spec.formatNumber(value, digits), style)),
  );
  return Math.ceil(Math.max(0, ...widths)) + 12;
}

function valueTicksOf(
  { valueRange, valueTicks }: Pick<PlotSpec, 'valueRange' | 'valueTicks'>,
  most: number,
): { value: number; digits: number }[] {
  return valueTicks
    ? valueTicks.map((value) => ({ value, digits: 0 }))
    : axisTicks('linear', valueRange, Math.max(2, most));
}

/** Draws grid, ticks and titles; what is plotted comes over them. */
export function drawPlot(pen: Pen, theme: DrawTheme, spec: PlotSpec): Plot {
  const { box, formatNumber } = spec;
  const columnAxis = makeAxis(spec.columnScale, spec.columnRange, box.left, box.right);
  const valueAxis = makeAxis('linear', spec.valueRange, box.bottom, box.top);
  const tick: TextStyle = { colour: theme.faint, size: PLOT_TEXT };
  const title: TextStyle = { colour: theme.text, size: PLOT_TEXT };
  const grid = { colour: theme.line, width: 1, opacity: 0.8 };
  for (const { value, digits } of valueTicksOf(spec, (box.bottom - box.top) / 40)) {
    const y = Math.round(valueAxis.pixel(value)) + 0.5;
    pen.line([box.left, y, box.right, y], grid);
    pen.text(formatNumber(value, digits), box.left - 7, y, { ...tick, align: 'end', vertical: 'middle' });
  }
  const { columnScale: scale, columnRange: range } = spec;
  const columns = { scale, range, most: (box.right - box.left) / (scale === 'log' ? 42 : 60) };
  const widthOf = (label: string): number => pen.measure(label, tick);
  for (const { major, at, label } of labelledTicks(columnAxis, columns, formatNumber, widthOf)) {
    const x = Math.round(at) + 0.5;
    if (major) pen.line([x, box.top, x, box.bottom], { ...grid, opacity: 0.5 });
    if (spec.columnLabel === null) continue;
    pen.line([x, box.bottom, x, box.bottom + (major ? 5 : 3)], { colour: theme.faint, width: 1 });
    if (label) pen.text(label, x, box.bottom + 17, { ...tick, align: 'middle' });
  }
  pen.line([box.left, box.bottom + 0.5, box.right, box.bottom + 0.5], { colour: theme.faint, width: 1 });
  if (spec.columnLabel !== null)
    pen.text(spec.columnLabel, box.right, box.bottom + 33, { ...title, align: 'end' });
  pen.text(spec.valueLabel, Math.max(2, box.left - 40), box.top - (spec.titleGap ?? 9), title);
  return {
    box,
    columnAxis,
    valueAxis,
    toPixel: (column, value) => ({ x: columnAxis.pixel(column), y: valueAxis.pixel(value) }),
    holds: (x, y) => x >= box.left && x <= box.right && y >= box.top && y <= box.bottom,
  };
}

/** Slanted strokes over a part of a plot: there is no data, or what is there means nothing. */
export function hatch(pen: Pen, area: Box, colour: string, pitch = 7): void {
  if (!(area.right > area.left && area.bottom > area.top)) return;
  const height = area.bottom - area.top;
  pen.clipped(area, () => {
    // The strokes of neighbouring areas meet: they are counted from the picture's corner.
    const first = Math.floor((area.left - height + area.bottom) / pitch) * pitch - area.bottom;
    for (let x = first; x <= area.right + pitch; x += pitch)
      pen.line([x, area.bottom, x + height, area.top], { colour, width: 1, opacity: 0.55 });
  });
}

/** The cursor as a line over a plot, where it stands on it. */
export function drawCursorLine(pen: Pen, at: number, axis: Axis, box: Box, theme: DrawTheme): void {
  const x = axis.pixel(at);
  if (x >= box.left && x <= box.right)
    pen.line([x, box.top, x, box.bottom], { colour: theme.accent, width: 1 });
}
