/** What filters do: levels without and with them, their gain with a mark to hold each by, and decays before and after. */
import type { ChartSize } from './chart-frame.js';
import { drawEndNames, endNamesMargin } from './end-names.js';
import type { Pen } from './pen.js';
import type { Box, Point } from './picture.js';
import { drawCursorLine, drawPlot, FOOT, valueMargin, type Plot } from './plot.js';
import type { AxisScale, DrawTheme } from './types.js';

export interface RemedyDecay {
  readonly position: number;
  /** As measured, s, and one standard deviation of it; null where it never decays. */
  readonly before: number | null;
  readonly beforeSd: number | null;
  readonly after: number | null;
  readonly afterSd: number | null;
  /** Fitted to the samples, or only expected. */
  readonly fitted: boolean;
  readonly limit: number | null;
}

export interface RemedyChart {
  readonly columnScale: AxisScale;
  readonly columnRange: readonly [number, number];
  readonly levelRange: readonly [number, number];
  readonly gainRange: readonly [number, number];
  readonly decayRange: readonly [number, number];
  readonly columnLabel: string;
  readonly levelLabel: string;
  readonly gainLabel: string;
  readonly decayLabel: string;
  readonly beforeLabel: string;
  readonly afterLabel: string;
  /** Of the levels. */
  readonly positions: ArrayLike<number>;
  readonly before: ArrayLike<number>;
  readonly after: ArrayLike<number>;
  /** The lowest and the highest seat with the filters; null where there is one seat. */
  readonly spread: { readonly low: ArrayLike<number>; readonly high: ArrayLike<number> } | null;
  /** Of the gains. */
  readonly gainPositions: ArrayLike<number>;
  readonly gain: ArrayLike<number>;
  readonly bandGains: readonly ArrayLike<number>[];
  /** Index of the band that is held; null for none. */
  readonly held: number | null;
  readonly decays: readonly RemedyDecay[];
  readonly cursor: number | null;
  readonly formatNumber: (value: number, digits: number) => string;
}

export interface RemedyLayout {
  toPosition(xCss: number, yCss: number): number | null;
  /** Where a band's mark stands. */
  toPixel(position: number, gain: number): Point;
  /** Frequency and gain under a point, held within the plot of the gains. */
  toBand(xCss: number, yCss: number): { readonly position: number; readonly gain: number };
  readonly gains: Box;
}

const TOP = 26;
const BETWEEN = 34;
/** Shares of the height: levels, gains, decays. */
const shares = [0.4, 0.3, 0.3] as const;

export function drawRemedyChart(
  pen: Pen,
  chart: RemedyChart,
  theme: DrawTheme,
  size: ChartSize,
): RemedyLayout {
  const { columnScale, columnRange, formatNumber } = chart;
  const left = valueMargin(pen, theme, [
    { valueRange: chart.levelRange, formatNumber },
    { valueRange: chart.gainRange, formatNumber },
    { valueRange: chart.decayRange, formatNumber },
  ]);
  const names = [
    { text: chart.beforeLabel, main: false },
    { text: chart.afterLabel, main: true },
  ];
  const margin = endNamesMargin(pen, theme, names, size.cssWidth);
  const right = Math.max(left + 60, size.cssWidth - margin);
  const foot = Math.max(220, size.cssHeight - FOOT);
  const height = foot - TOP - 2 * BETWEEN;
  const tops = [
    TOP,
    TOP + height * shares[0] + BETWEEN,
    TOP + height * (shares[0] + shares[1]) + 2 * BETWEEN,
  ];
  const boxes = tops.map((top, k): Box => ({
    left,
    right,
    top,
    bottom: k === 2 ? foot : top + height * shares[k],
  }));
  const common = { columnScale, columnRange, formatNumber };
  const levels = drawPlot(pen, theme, {
    ...{ ...common, box: boxes[0], valueRange: chart.levelRange },
    ...{ columnLabel: null, valueLabel: chart.levelLabel },
  });
  const gains = drawPlot(pen, theme, {
    ...{ ...common, box: boxes[1], valueRange: chart.gainRange },
    ...{ columnLabel: null, valueLabel: chart.gainLabel },
  });
  const decays = drawPlot(pen, theme, {
    ...{ ...common, box: boxes[2], valueRange: chart.decayRange },
    ...{ columnLabel: chart.columnLabel, valueLabel: chart.decayLabel },
  });
  drawLevels(pen, chart, theme, levels);
  drawEnds(pen, chart, theme, levels, size);
  drawGains(pen, chart, theme, gains);
  drawDecays(pen, chart, theme, decays);
  if (chart.cursor !== null)
    drawCursorLine(pen, chart.cursor, levels.columnAxis, { left, right, top: TOP, bottom: foot }, theme);
  return {
    gains: gains.box,
    toPosition: (x, y) =>
      x < left || x > right || y < TOP || y > foot ? null : levels.columnAxis.atPixel(x),
    toPixel: gains.toPixel,
    toBand(x, y) {
      const { box, columnAxis, valueAxis } = gains;
      return {
        position: columnAxis.atPixel(Math.min(box.right, Math.max(box.left, x))),
        gain: valueAxis.atPixel(Math.min(box.bottom, Math.max(box.top, y))),
      };
    },
  };
}

function runOf(plot: Plot, positions: ArrayLike<number>, values: ArrayLike<number>): number[] {
  const run: number[] = [];
  for (let k = 0; k < positions.length; k += 1) {
    if (!Number.isFinite(values[k])) continue;
    const { x, y } = plot.toPixel(positions[k], values[k]);
    run.push(x, y);
  }
  return run;
}

function drawLevels(pen: Pen, chart: RemedyChart, theme: DrawTheme, plot: Plot): void {
  const { positions, spread } = chart;
  pen.clipped(plot.box, () => {
    if (spread) {
      const low = runOf(plot, positions, spread.low);
      const high = runOf(plot, positions, spread.high);
      const back: number[] = [];
      for (let k = high.length - 2; k >= 0; k -= 2) back.push(high[k], high[k + 1]);
      pen.area([...low, ...back], theme.text, 0.1);
    }
    pen.line(runOf(plot, positions, chart.before), { colour: theme.text, width: 1.5, dash: [6, 3] });
    pen.line(runOf(plot, positions, chart.after), { colour: theme.accent, width: 2 });
  });
}

/** Names of the two curves at their right ends. */
function drawEnds(
  pen: Pen,
  { before, after, beforeLabel, afterLabel }: RemedyChart,
  theme: DrawTheme,
  { box, valueAxis }: Plot,
  { cssWidth }: ChartSize,
): void {
  const end = (text: string, levels: ArrayLike<number>, main: boolean) => ({
    ...{ text, main },
    y: valueAxis.pixel(levels[levels.length - 1]),
  });
  drawEndNames(pen, theme, [end(beforeLabel, before, false), end(afterLabel, after, true)], box, cssWidth);
}

function drawGains(pen: Pen, chart: RemedyChart, theme: DrawTheme, plot: Plot): void {
  const zero = plot.valueAxis.pixel(0);
  pen.line([plot.box.left, zero, plot.box.right, zero], { colour: theme.faint, width: 1 });
  pen.clipped(plot.box, () => {
    chart.bandGains.forEach((gain, k) => {
      const held = chart.held === k;
      pen.line(runOf(plot, chart.gainPositions, gain), {
        colour: held ? theme.accent : theme.text,
        width: held ? 1.5 : 1,
        opacity: held ? 0.9 : 0.35,
      });
    });
    pen.line(runOf(plot, chart.gainPositions, chart.gain), { colour: theme.accent, width: 2 });
  });
}

function drawDecays(pen: Pen, { decays }: RemedyChart, theme: DrawTheme, plot: Plot): void {
  pen.clipped({ ...plot.box, left: plot.box.left - 6, right: plot.box.right + 6 }, () => {
    for (const one of decays) {
      const x = plot.columnAxis.pixel(one.position);
      if (x < plot.box.left || x > plot.box.right) continue;
      const y = (value: number): number => plot.valueAxis.pixel(value);
      if (one.limit !== null)
        pen.line([x - 7, y(one.limit), x + 7, y(one.limit)], { colour: theme.faint, width: 1.5 });
      if (one.before !== null && one.after !== null)
        pen.line([x, y(one.before), x, y(one.after)], { colour: theme.accent, width: 1, opacity: 0.7 });
      const bar = (value: number, sd: number | null, colour: string, dx: number): void => {
        if (sd !== null) pen.line([x + dx, y(value - sd), x + dx, y(value + sd)], { colour, width: 1 });
      };
      if (one.before !== null) {
        bar(one.before, one.beforeSd, theme.text, -3);
        pen.circle(x, y(one.before), 4, theme.background, { colour: theme.text, width: 1.5 });
      }
      if (one.after !== null) {
        bar(one.after, one.afterSd, theme.accent, 3);
        pen.circle(x, y(one.after), 3.5, one.fitted ? theme.accent : theme.background, {
          ...{ colour: theme.accent, width: 1.5 },
        });
      }
    }
  });
}
