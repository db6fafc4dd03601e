/** Levels of several sources with their sum and, under them on the same axis, the phase of each against one of them. */
import type { ChartSize } from './chart-frame.js';
import { drawEndNames, endNamesMargin, shortened, type EndName } from './end-names.js';
import type { Pen } from './pen.js';
import { drawCursorLine, drawPlot, FOOT, PLOT_TEXT, valueMargin, type Plot } from './plot.js';
import type { AxisScale, DrawTheme } from './types.js';

export interface SourceCurve {
  readonly label: string;
  readonly levels: ArrayLike<number>;
  /** Degrees; null for the one that the others are held against. */
  readonly phase: ArrayLike<number> | null;
  /** Where a phase means something: what both play. Null where nothing is shared. */
  readonly band: readonly [number, number] | null;
  /** Muted: drawn faintly. */
  readonly quiet: boolean;
}

export interface SourcesChart {
  readonly columnScale: AxisScale;
  readonly columnRange: readonly [number, number];
  readonly levelRange: readonly [number, number];
  readonly columnLabel: string;
  readonly levelLabel: string;
  readonly phaseLabel: string;
  readonly sumLabel: string;
  readonly positions: ArrayLike<number>;
  readonly sources: readonly SourceCurve[];
  readonly sum: ArrayLike<number>;
  readonly cursor: number | null;
  readonly formatNumber: (value: number, digits: number) => string;
}

export interface SourcesLayout {
  toPosition(xCss: number, yCss: number): number | null;
}

const dashes = [[], [8, 4], [3, 3], [10, 3, 2, 3], [1, 3], [14, 4], [6, 2, 1, 2], [2, 6]] as const;
const top = 26;
const between = 34;

export function drawSourcesChart(
  pen: Pen,
  chart: SourcesChart,
  theme: DrawTheme,
  size: ChartSize,
): SourcesLayout {
  const { columnScale, columnRange, formatNumber, positions } = chart;
  const label = { colour: theme.text, size: PLOT_TEXT };
  const names = [
    ...chart.sources.map((one) => ({ text: one.label, main: false })),
    { text: chart.sumLabel, main: true },
  ];
  const phaseTicks = [-180, -90, 0, 90, 180];
  const left = valueMargin(pen, theme, [
    { valueRange: chart.levelRange, formatNumber },
    { valueRange: [-180, 180], valueTicks: phaseTicks, formatNumber },
  ]);
  const right = Math.max(left + 60, size.cssWidth - endNamesMargin(pen, theme, names, size.cssWidth));
  const foot = Math.max(160, size.cssHeight - FOOT);
  const middle = top + (foot - top - between) * 0.6;
  const common = { columnScale, columnRange, formatNumber };
  const levels = drawPlot(pen, theme, {
    ...{ ...common, box: { left, right, top, bottom: middle }, valueRange: chart.levelRange },
    ...{ columnLabel: null, valueLabel: chart.levelLabel },
  });
  const phases = drawPlot(pen, theme, {
    ...{ ...common, box: { left, right, top: middle + between, bottom: foot }, valueRange: [-180, 180] },
    ...{
      columnLabel: chart.columnLabel,
      valueLabel: shortened(pen, chart.phaseLabel, size.cssWidth - 4, label),
      valueTicks: phaseTicks,
    },
  });
  const ends: EndName[] = [];
  pen.clipped(levels.box, () => {
    chart.sources.forEach((source, k) => {
      for (const run of runsOf(levels, positions, source.levels))
        pen.line(run, {
          colour: theme.text,
          width: 1.25,
          opacity: source.quiet ? 0.25 : 0.7,
          dash: dashes[k % dashes.length],
        });
      ends.push({ text: source.label, y: levels.valueAxis.pixel(lastOf(source.levels)), main: false });
    });
    for (const run of runsOf(levels, positions, chart.sum)) pen.line(run, { colour: theme.accent, width: 2 });
    ends.push({ text: chart.sumLabel, y: levels.valueAxis.pixel(lastOf(chart.sum)), main: true });
  });
  drawEndNames(pen, theme, ends, levels.box, size.cssWidth);
  pen.clipped(phases.box, () => {
    const zero = phases.valueAxis.pixel(0);
    pen.line([left, zero, right, zero], { colour: theme.accent, width: 1.25 });
    chart.sources.forEach((source, k) => {
      if (!source.phase) return;
      const dash = dashes[k % dashes.length];
      const { band, phase } = source;
      for (const run of runsOf(phases, positions, phase, 180))
        pen.line(run, { colour: theme.text, width: 1, opacity: 0.2, dash });
      if (!band || source.quiet) return;
      const inside = Array.from(positions, (f, j) => (f >= band[0] && f <= band[1] ? phase[j] : NaN));
      for (const run of runsOf(phases, positions, inside, 180))
        pen.line(run, { colour: theme.text, width: 1.75, dash });
    });
  });
  const whole = { left, right, top, bottom: foot };
  if (chart.cursor !== null) drawCursorLine(pen, chart.cursor, levels.columnAxis, whole, theme);
  return {
    toPosition: (x, y) =>
      x < left || x > right || y < top || y > foot ? null : levels.columnAxis.atPixel(x),
  };
}

const lastOf = (values: ArrayLike<number>): number => values[values.length - 1];

/** Runs of a curve, broken where it is no number and where it leaps by more than `leap`. */
function runsOf(
  plot: Plot,
  positions: ArrayLike<number>,
  values: ArrayLike<number>,
  leap = Infinity,
): number[][] {
  const runs: number[][] = [];
  let run: number[] = [];
  for (let k = 0; k < positions.length; k += 1) {
    if (!Number.isFinite(values[k]) || (run.length > 0 && Math.abs(values[k] - values[k - 1]) > leap)) {
      if (run.length > 2) runs.push(run);
      run = [];
    }
    if (!Number.isFinite(values[k])) continue;
    const { x, y } = plot.toPixel(positions[k], values[k]);
    run.push(x, y);
  }
  if (run.length > 2) runs.push(run);
  return runs;
}
