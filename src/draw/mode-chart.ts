/**
 * Predicted modes against measured ridges along one frequency axis: above, what was measured, each with its decay time;
 * between, the predicted modes as marks of one, two or three strokes, tied to the ridges that they may be; below, how
 * many modes lie in each third-octave. Long because each part is tied to the next.
 */
import { CHART_TEXT, drawLetters, type ChartSize } from './chart-frame.js';
import type { Label } from './letters.js';
import type { Pen } from './pen.js';
import type { Box } from './picture.js';
import { drawCursorLine, drawPlot, FOOT, valueMargin, type Plot, type PlotSpec } from './plot.js';
import { mixCss } from './tones.js';
import type { AxisScale, DrawTheme } from './types.js';

export interface MeasuredMode {
  readonly position: number;
  /** One standard deviation of its position; null where unknown. */
  readonly sd: number | null;
  /** Height of its stem; NaN where there is none. */
  readonly value: number;
  readonly label: string;
  readonly flagged: boolean;
  readonly selected: boolean;
}

export interface PredictedMode {
  readonly position: number;
  readonly strokes: 1 | 2 | 3;
  readonly label: string;
  /** Heavier labels win where not all can stand. */
  readonly weight: number;
  readonly selected: boolean;
}

/** A measured mode and a predicted one that it may be, by their places in the lists. */
export interface ModeTie {
  readonly measured: number;
  readonly predicted: number;
  /** 0 to 1. */
  readonly weight: number;
}

export interface ModeCountBand {
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly expected: number;
}

export interface ModeChart {
  readonly columnScale: AxisScale;
  readonly columnRange: readonly [number, number];
  readonly columnLabel: string;
  readonly formatNumber: (value: number, digits: number) => string;
  readonly cursor: number | null;
  /** Null where nothing was recorded: the prediction then stands alone. */
  readonly measured: readonly MeasuredMode[] | null;
  readonly measuredRange: readonly [number, number];
  readonly measuredLabel: string;
  readonly predicted: readonly PredictedMode[];
  readonly predictedLabel: string;
  readonly ties: readonly ModeTie[];
  readonly bands: readonly ModeCountBand[];
  readonly bandsLabel: string;
  /** Where single modes give way to a crowd. */
  readonly transition: { readonly from: number; readonly to: number; readonly label: string } | null;
}

export interface ModeChartTarget {
  readonly kind: 'measured' | 'predicted';
  readonly index: number;
}

export interface ModeChartLayout {
  /** Position under a point, or null outside the plots. */
  toPosition(xCss: number, yCss: number): number | null;
  targetAt(xCss: number, yCss: number): ModeChartTarget | null;
}

const strokeHeight = 7;
const strokeStep = 10;
/** Room for the marks and the names under them, px. */
const stripHeight = 3 * strokeStep + 18;
/** Room for the ties between what was measured and the marks, px. */
const tieHeight = 24;
const reach = 9;

export function drawModeChart(
  pen: Pen,
  chart: ModeChart,
  theme: DrawTheme,
  size: ChartSize,
): ModeChartLayout {
  const { columnScale, columnRange, formatNumber, measured } = chart;
  const mostCount = Math.max(4, ...chart.bands.map(({ count, expected }) => Math.max(count, expected)));
  const countRange = [0, Math.ceil(mostCount / 2) * 2] as const;
  const left = valueMargin(pen, theme, [
    { valueRange: countRange, formatNumber },
    ...(measured ? [{ valueRange: chart.measuredRange, formatNumber }] : []),
  ]);
  const right = Math.max(left + 40, size.cssWidth - 12);
  const foot = Math.max(120, size.cssHeight - FOOT);
  const strip = stripHeight + (measured ? tieHeight : 4);
  const free = Math.max(80, foot - 26 - strip - 26);
  const upper = measured ? Math.round(free * 0.6) : 0;
  const stripTop = 26 + upper;
  const stripBottom = stripTop + strip;
  const common = { columnScale, columnRange, formatNumber };
  const lowerBox: Box = { left, right, top: stripBottom + 24, bottom: foot };
  const whole: Box = { left, right, top: measured ? 26 : stripTop, bottom: foot };

  const axisOnly: PlotSpec = {
    ...{ ...common, box: lowerBox, valueRange: countRange, valueTicks: countTicks(countRange[1]) },
    columnLabel: chart.columnLabel,
    valueLabel: chart.bandsLabel,
  };
  const upperBox: Box = { left, right, top: 26, bottom: stripTop };
  // The transition lies behind everything.
  shade(pen, chart, theme, whole, lowerBox);
  const lower = drawPlot(pen, theme, axisOnly);
  const above = measured
    ? drawPlot(pen, theme, {
        ...{ ...common, box: upperBox, valueRange: chart.measuredRange, columnLabel: null },
        valueLabel: chart.measuredLabel,
      })
    : null;
  drawBands(pen, chart, theme, lower);
  const x = (position: number): number => lower.columnAxis.pixel(position);
  const marksTop = stripTop + (measured ? tieHeight : 4);
  const labels: Label[] = [];
  if (!measured)
    pen.text(chart.predictedLabel, Math.max(2, left - 40), stripTop - 9, {
      colour: theme.text,
      size: CHART_TEXT,
    });
  drawTies(pen, chart, theme, x, stripTop, marksTop);
  drawMarks(pen, chart, theme, x, marksTop, whole, labels);
  if (above && measured) drawMeasured(pen, measured, theme, above, labels);
  if (chart.transition) {
    const at = Math.max(left, x(chart.transition.from)) + 5;
    if (at < right - 20)
      labels.push({
        text: chart.transition.label,
        at: { x: Math.min(at, right - 4), y: lowerBox.top + 8 },
        style: { colour: theme.faint, size: CHART_TEXT, align: 'start' },
        weight: 5,
        spare: { at: { x: right - 4, y: lowerBox.top + 8 }, align: 'end' },
      });
  }
  drawLetters(pen, labels, theme, size, above && measured ? dotsOf(measured, above) : []);
  if (chart.cursor !== null) drawCursorLine(pen, chart.cursor, lower.columnAxis, whole, theme);
  return {
    toPosition: (at, y) =>
      at < left || at > right || y < whole.top || y > foot ? null : lower.columnAxis.atPixel(at),
    targetAt(at, y) {
      const nearest = <T>(list: readonly T[], away: (one: T) => number): number => {
        let best = -1;
        let least = reach;
        list.forEach((one, index) => {
          const distance = away(one);
          if (distance <= least) [best, least] = [index, distance];
        });
        return best;
      };
      if (above && measured && y < stripTop) {
        const index = nearest(measured, ({ position, value }) => {
          const top = Number.isFinite(value) ? above.valueAxis.pixel(value) : stripTop;
          return y < top - reach ? Infinity : Math.abs(x(position) - at);
        });
        return index < 0 ? null : { kind: 'measured', index };
      }
      if (y < marksTop - 2 || y > stripBottom) return null;
      const index = nearest(chart.predicted, ({ position }) => Math.abs(x(position) - at));
      return index < 0 ? null : { kind: 'predicted', index };
    },
  };
}

/** What no label may cover. */
const dotsOf = (measured: readonly MeasuredMode[], plot: Plot): Box[] =>
  measured.map(({ position, value }) => {
    const { x, y } = plot.toPixel(position, Number.isFinite(value) ? value : 0);
    return { left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 };
  });

/** Whole numbers, at most five. */
function countTicks(top: number): number[] {
  const step = [1, 2, 4, 5, 10, 20, 50, 100, 200, 500].find((one) => top / one <= 4.01) ?? 1000;
  return Array.from({ length: Math.floor(top / step) + 1 }, (_, k) => k * step);
}

function shade(pen: Pen, chart: ModeChart, theme: DrawTheme, box: Box, axisBox: Box): void {
  if (!chart.transition) return;
  const { from, to } = chart.transition;
  const [low, high] = chart.columnRange;
  const fraction = (value: number): number =>
    chart.columnScale === 'log'
      ? Math.log(Math.max(value, 1e-9) / low) / Math.log(high / low)
      : (value - low) / (high - low);
  const at = (value: number): number => axisBox.left + (axisBox.right - axisBox.left) * fraction(value);
  const [a, b] = [at(from), at(to)];
  if (b - a < 1 || a > box.right) return;
  // Soft at both ends: there is no sharp crossover.
  const parts = 48;
  pen.clipped(box, () => {
    for (let k = 0; k < parts; k++) {
      const opacity = 0.12 * Math.sin((Math.PI * (k + 0.5)) / parts) ** 0.7;
      const [l, r] = [a + ((b - a) * k) / parts, a + ((b - a) * (k + 1)) / parts].map(Math.round);
      pen.area([l, box.top, r, box.top, r, box.bottom, l, box.bottom], theme.accent, opacity);
    }
  });
}

function drawBands(pen: Pen, chart: ModeChart, theme: DrawTheme, plot: Plot): void {
  const fill = mixCss(theme.background, theme.text, theme.dark ? 0.3 : 0.22);
  pen.clipped(plot.box, () => {
    for (const { from, to, count, expected } of chart.bands) {
      const left = plot.columnAxis.pixel(from) + 1.5;
      const right = plot.columnAxis.pixel(to) - 1.5;
      const y = plot.valueAxis.pixel(count);
      if (count > 0) pen.area([left, y, right, y, right, plot.box.bottom, left, plot.box.bottom], fill);
      const level = plot.valueAxis.pixel(expected);
      pen.line([left, level, right, level], { colour: theme.accent, width: 1.5, dash: [3, 3] });
    }
  });
}

function drawTies(
  pen: Pen,
  { ties, measured, predicted }: ModeChart,
  theme: DrawTheme,
  x: (position: number) => number,
  top: number,
  bottom: number,
): void {
  for (const { measured: from, predicted: to, weight } of ties) {
    const start = measured?.[from];
    if (!start) continue;
    pen.line([x(start.position), top, x(predicted[to].position), bottom - 1], {
      colour: start.selected ? theme.accent : theme.text,
      width: 0.75 + 1.5 * weight,
      opacity: 0.25 + 0.65 * weight,
    });
  }
}

function drawMarks(
  pen: Pen,
  chart: ModeChart,
  theme: DrawTheme,
  x: (position: number) => number,
  top: number,
  box: Box,
  labels: Label[],
): void {
  for (const { position, strokes, label, weight, selected } of chart.predicted) {
    const at = x(position);
    if (at < box.left - 0.5 || at > box.right + 0.5) continue;
    const colour = selected ? theme.accent : theme.text;
    for (let k = 0; k < strokes; k++)
      pen.line([at, top + k * strokeStep, at, top + k * strokeStep + strokeHeight], {
        colour,
        width: selected ? 3 : 1.5,
        opacity: selected ? 1 : 0.85,
      });
    if (label)
      labels.push({
        text: label,
        at: { x: at, y: top + 3 * strokeStep + 6 },
        style: { colour, size: CHART_TEXT - 1, weight: selected ? 600 : 400, align: 'middle' },
        weight: selected ? 9 : weight,
      });
  }
}

function drawMeasured(
  pen: Pen,
  measured: readonly MeasuredMode[],
  theme: DrawTheme,
  plot: Plot,
  labels: Label[],
): void {
  pen.clipped({ ...plot.box, bottom: plot.box.bottom + 1 }, () => {
    for (const { position, sd, value, flagged, selected } of measured) {
      const { x, y } = plot.toPixel(position, Number.isFinite(value) ? value : 0);
      const colour = selected ? theme.accent : theme.text;
      const head = Math.max(plot.box.top + 5, y);
      pen.line([x, plot.box.bottom, x, head], {
        colour,
        width: selected ? 2 : flagged ? 1.5 : 1,
        opacity: flagged || selected ? 1 : 0.55,
      });
      if (sd !== null) {
        const [a, b] = [plot.columnAxis.pixel(position - sd), plot.columnAxis.pixel(position + sd)];
        if (b - a > 3) pen.line([a, head, b, head], { colour, width: 1.25 });
      }
      if (y < plot.box.top)
        pen.area([x, plot.box.top, x - 5, plot.box.top + 9, x + 5, plot.box.top + 9], colour);
      else
        pen.circle(x, head, selected ? 5 : flagged ? 4 : 3, flagged ? colour : theme.background, {
          colour,
          width: 1.5,
        });
    }
  });
  for (const { position, value, label, flagged, selected } of measured) {
    const { x, y } = plot.toPixel(position, Number.isFinite(value) ? value : 0);
    if (!label || x < plot.box.left || x > plot.box.right) continue;
    const at = Math.max(plot.box.top + 6, y - 11);
    labels.push({
      text: label,
      at: { x, y: at },
      style: {
        colour: selected ? theme.accent : theme.text,
        size: CHART_TEXT,
        weight: flagged ? 600 : 400,
        align: 'middle',
      },
      weight: (selected ? 8 : flagged ? 6 : 2) + value / 1000,
      spare: { at: { x: x + 9, y: Math.max(plot.box.top + 6, y) }, align: 'start' },
    });
  }
}
