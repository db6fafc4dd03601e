/**
 * One recording: waveform and level over its time, and the usable range of its bands. Three panels that share their
 * axes and one read-out: parted, each would need the layout of the others.
 */
import {
  PLOT_TEXT,
  FOOT,
  drawCursorLine,
  drawPlot,
  hatch,
  valueMargin,
  type Plot,
  type PlotSpec,
} from './plot.js';
import { lettersWithoutOverlap, type Label } from './letters.js';
import type { Pen } from './pen.js';
import type { Box } from './picture.js';
import { chartSvg, type ChartSize } from './chart-frame.js';
import type { DocumentWords } from './svg.js';
import { mixCss } from './tones.js';
import type { AxisScale, DrawTheme } from './types.js';

/** `good` is read, `doubtful` with care, `unread` not at all. */
export type RangeState = 'good' | 'doubtful' | 'unread';

export interface RangeBar {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly state: RangeState;
}

export interface RecordingChart {
  readonly timeRange: readonly [number, number];
  /** Column k covers the times from `first + k * step` to the next. */
  readonly first: number;
  readonly step: number;
  readonly lowest: ArrayLike<number>;
  readonly highest: ArrayLike<number>;
  /** Half the height of the waveform's plot. */
  readonly peak: number;
  readonly levels: ArrayLike<number>;
  readonly levelRange: readonly [number, number];
  readonly noise: number | null;
  /** What decays lies between these; outside it everything is greyed. */
  readonly usable: readonly [number, number] | null;
  readonly dataEnd: number;
  /** Named places in time. */
  readonly marks: readonly { readonly at: number; readonly label: string }[];
  readonly bars: readonly RangeBar[];
  readonly barRange: readonly [number, number];
  readonly barLimits: readonly { readonly value: number; readonly label: string }[];
  readonly bandScale: AxisScale;
  readonly bandRange: readonly [number, number];
  readonly cursor: { readonly time: number; readonly frequency: number } | null;
  readonly labels: {
    readonly waveform: string;
    readonly level: string;
    readonly time: string;
    readonly range: string;
    readonly frequency: string;
    readonly noise: string;
  };
  readonly formatNumber: (value: number, digits: number) => string;
}

export interface RecordingLayout {
  readonly waveform: Plot;
  readonly level: Plot;
  readonly bands: Plot;
  /** The time or the frequency under a point, or null. */
  toField(x: number, y: number): { readonly time?: number; readonly frequency?: number } | null;
}

/** From here on the bands stand beside the time, not below it. px */
const WIDE = 720;

interface Boxes {
  readonly waveform: Box;
  readonly level: Box;
  readonly bands: Box;
}

function boxesOf(size: ChartSize, left: number, barLeft: number): Boxes {
  const { cssWidth: width, cssHeight: height } = size;
  const top = 44;
  if (width >= WIDE) {
    const right = Math.round(width * 0.66);
    const bottom = height - FOOT;
    const split = top + Math.round((bottom - top - 28) * 0.36);
    return {
      waveform: { left, right, top, bottom: split },
      level: { left, right, top: split + 28, bottom },
      bands: { left: right + 28 + barLeft, right: width - 12, top, bottom },
    };
  }
  const room = Math.max(90, height - top - 28 - 2 * FOOT - 26);
  const a = top + Math.round(room * 0.2);
  const b = a + 28 + Math.round(room * 0.44);
  const right = width - 12;
  const edge = Math.max(left, barLeft);
  return {
    waveform: { left: edge, right, top, bottom: a },
    level: { left: edge, right, top: a + 28, bottom: b },
    bands: { left: edge, right, top: b + FOOT + 26, bottom: height - FOOT },
  };
}

/** Extremes of the columns under each pixel: a path no longer than the plot is wide. */
function perPixel(
  chart: RecordingChart,
  { columnAxis, box }: Plot,
): { x: number; from: number; to: number }[] {
  const count = chart.levels.length;
  const pixels: { x: number; from: number; to: number }[] = [];
  for (let x = Math.floor(box.left); x < box.right; x += 1) {
    const from = Math.floor((columnAxis.atPixel(x) - chart.first) / chart.step);
    const to = Math.max(from + 1, Math.floor((columnAxis.atPixel(x + 1) - chart.first) / chart.step));
    if (to > 0 && from < count) pixels.push({ x: x + 0.5, from: Math.max(0, from), to: Math.min(count, to) });
  }
  return pixels;
}

function most(values: ArrayLike<number>, from: number, to: number, sign: 1 | -1): number {
  let found = values[from];
  for (let k = from + 1; k < to; k += 1) if (sign * values[k] > sign * found) found = values[k];
  return found;
}

/** The plot in three parts: before what is usable, the usable, and after it. */
function parts(chart: RecordingChart, plot: Plot): { box: Box; usable: boolean }[] {
  const { box, columnAxis } = plot;
  const clamp = (time: number): number => Math.min(box.right, Math.max(box.left, columnAxis.pixel(time)));
  const [from, to] = chart.usable ? chart.usable.map(clamp) : [box.right, box.right];
  return [
    { box: { ...box, right: from }, usable: false },
    { box: { ...box, left: from, right: to }, usable: true },
    { box: { ...box, left: to }, usable: false },
  ].filter((part) => part.box.right > part.box.left);
}

function drawTime(pen: Pen, chart: RecordingChart, theme: DrawTheme, waveform: Plot, level: Plot): Label[] {
  const pixels = perPixel(chart, waveform);
  const upper = pixels.flatMap(({ x, from, to }) => [
    x,
    waveform.valueAxis.pixel(most(chart.highest, from, to, 1)) - 0.5,
  ]);
  const lower = pixels.flatMap(({ x, from, to }) => [
    x,
    waveform.valueAxis.pixel(most(chart.lowest, from, to, -1)) + 0.5,
  ]);
  const shape = [...upper];
  for (let k = lower.length - 2; k >= 0; k -= 2) shape.push(lower[k], lower[k + 1]);
  const grey = mixCss(theme.background, theme.text, 0.34);
  for (const { box, usable } of parts(chart, waveform))
    pen.clipped(box, () => pen.area(shape, usable ? theme.text : grey, usable ? 0.8 : 1));

  const floor = chart.noise === null ? null : level.valueAxis.pixel(chart.noise);
  const line = pixels.flatMap(({ x, from, to }) => [
    x,
    level.valueAxis.pixel(most(chart.levels, from, to, 1)),
  ]);
  for (const { box, usable } of parts(chart, level))
    pen.clipped(box, () =>
      pen.line(line, usable ? { colour: theme.accent, width: 2 } : { colour: grey, width: 1.25 }),
    );
  const labels: Label[] = [];
  if (floor !== null) {
    const { left, right, top, bottom } = level.box;
    const y = Math.min(bottom, Math.max(top, floor));
    // Opaque: what lies below the floor is no sound of the room.
    pen.area([left, y, right, y, right, bottom, left, bottom], mixCss(theme.background, theme.text, 0.14));
    pen.line([left, y, right, y], { colour: theme.faint, width: 1 });
    labels.push({
      text: chart.labels.noise,
      at: { x: right - 6, y: Math.min(bottom - 8, y + 10) },
      style: { colour: theme.text, size: PLOT_TEXT, align: 'end' },
      weight: 1,
    });
  }
  for (const { box, columnAxis } of [waveform, level])
    hatch(
      pen,
      { ...box, left: Math.min(box.right, Math.max(box.left, columnAxis.pixel(chart.dataEnd))) },
      theme.faint,
    );
  chart.marks.forEach(({ at, label }, k) => {
    const x = Math.round(waveform.columnAxis.pixel(at)) + 0.5;
    if (x < waveform.box.left - 1 || x > waveform.box.right + 1) return;
    const ink = { colour: theme.text, width: 1, dash: [[], [5, 3], [2, 3]][k % 3] };
    pen.line([x, waveform.box.top - 6, x, waveform.box.bottom], ink);
    pen.line([x, level.box.top, x, level.box.bottom], ink);
    const style = { colour: theme.text, size: PLOT_TEXT };
    const y = waveform.box.top - 10;
    const after = { at: { x: x + 4, y }, align: 'start' } as const;
    const before = { at: { x: x - 4, y }, align: 'end' } as const;
    const fits = x + 4 + pen.measure(label, style) <= waveform.box.right;
    const place = fits ? after : before;
    labels.push({
      text: label,
      at: place.at,
      style: { ...style, align: place.align },
      weight: 4 - k,
      spare: before,
    });
  });
  return labels;
}

function drawBars(pen: Pen, chart: RecordingChart, theme: DrawTheme, plot: Plot): void {
  const { box, columnAxis, valueAxis } = plot;
  for (const { from, to, value, state } of chart.bars) {
    const left = Math.max(box.left, columnAxis.pixel(from) + 1);
    const right = Math.min(box.right, columnAxis.pixel(to) - 1);
    const top = Math.max(box.top, valueAxis.pixel(value));
    if (right <= left || top > box.bottom) continue;
    const shape = [left, box.bottom, left, top, right, top, right, box.bottom];
    if (state === 'good') pen.area(shape, mixCss(theme.background, theme.accent, 0.82));
    else {
      pen.area(shape, mixCss(theme.background, theme.text, state === 'doubtful' ? 0.14 : 0.06));
      if (state === 'doubtful') hatch(pen, { left, right, top, bottom: box.bottom }, theme.text, 6);
      pen.line(shape, { colour: state === 'doubtful' ? theme.text : theme.faint, width: 1 });
    }
  }
  for (const { value, label } of chart.barLimits) {
    const y = Math.round(valueAxis.pixel(value)) + 0.5;
    if (y < box.top || y > box.bottom) continue;
    pen.line([box.left, y, box.right, y], { colour: theme.background, width: 3, opacity: 0.7 });
    pen.line([box.left, y, box.right, y], { colour: theme.text, width: 1, dash: [5, 3] });
    pen.text(label, box.left + 4, y - 8, {
      colour: theme.text,
      size: PLOT_TEXT,
      vertical: 'middle',
      halo: theme.background,
    });
  }
}

export function drawRecordingChart(
  pen: Pen,
  chart: RecordingChart,
  theme: DrawTheme,
  size: ChartSize,
): RecordingLayout {
  const { labels, formatNumber, timeRange, levelRange, peak } = chart;
  const time = { columnScale: 'linear', columnRange: timeRange, formatNumber } as const;
  const level = { ...time, valueRange: levelRange };
  const bars = {
    columnScale: chart.bandScale,
    columnRange: chart.bandRange,
    valueRange: chart.barRange,
    formatNumber,
  };
  const figures = (value: number): string => formatNumber(value, peak < 0.1 ? 3 : peak < 1 ? 2 : 1);
  const waveform: Omit<PlotSpec, 'box'> = {
    ...time,
    valueRange: [-peak, peak],
    valueTicks: [-peak, 0, peak],
    formatNumber: (value, digits) =>
      digits === 0 && Math.abs(value) === peak ? figures(value) : formatNumber(value, digits),
    columnLabel: null,
    valueLabel: labels.waveform,
    titleGap: 26,
  };
  const boxes = boxesOf(size, valueMargin(pen, theme, [waveform, level]), valueMargin(pen, theme, [bars]));
  const layout = {
    waveform: drawPlot(pen, theme, { ...waveform, box: boxes.waveform }),
    level: drawPlot(pen, theme, {
      ...level,
      box: boxes.level,
      columnLabel: labels.time,
      valueLabel: labels.level,
    }),
    bands: drawPlot(pen, theme, {
      ...bars,
      box: boxes.bands,
      columnLabel: labels.frequency,
      valueLabel: labels.range,
    }),
  };
  const found = drawTime(pen, chart, theme, layout.waveform, layout.level);
  drawBars(pen, chart, theme, layout.bands);
  for (const { text, at, style } of lettersWithoutOverlap(pen, found, { ...size, pixelRatio: 1 }))
    pen.text(text, at.x, at.y, { ...style, vertical: 'middle', halo: theme.background });
  if (chart.cursor) {
    const { waveform, level, bands } = layout;
    const both = { ...level.box, top: waveform.box.top };
    drawCursorLine(pen, chart.cursor.time, level.columnAxis, both, theme);
    drawCursorLine(pen, chart.cursor.frequency, bands.columnAxis, bands.box, theme);
  }
  return {
    ...layout,
    toField(x, y) {
      for (const plot of [layout.waveform, layout.level])
        if (plot.holds(x, y)) return { time: plot.columnAxis.atPixel(x) };
      return layout.bands.holds(x, y) ? { frequency: layout.bands.columnAxis.atPixel(x) } : null;
    },
  };
}

export const recordingChartSvg = (
  chart: RecordingChart,
  theme: DrawTheme,
  size: ChartSize,
  words: DocumentWords,
): string => chartSvg((pen) => drawRecordingChart(pen, chart, theme, size), theme, size, words, 'recording');
