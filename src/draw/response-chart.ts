/** Level over frequency: seats overlaid, their spread, a tolerance window, peaks and dips. */
import {
  bandRuns,
  CHART_TEXT,
  chartSvg,
  curveRuns,
  drawChartCursor,
  drawChartFrame,
  drawLetters,
  titleBox,
  type ChartAxes,
  type ChartLayout,
  type ChartSize,
} from './chart-frame.js';
import { drawEndNames, endNamesMargin, type EndName } from './end-names.js';
import type { Label } from './letters.js';
import type { Pen } from './pen.js';
import type { DocumentWords } from './svg.js';
import { mixCss } from './tones.js';
import type { DrawTheme } from './types.js';

export interface ResponseCurve {
  readonly label: string;
  readonly positions: ArrayLike<number>;
  readonly values: ArrayLike<number>;
  /** The curve that is looked at; others stand behind it. */
  readonly main: boolean;
  /** What lies below these is noise, and greyed; null where all is read. */
  readonly floor?: ArrayLike<number> | null;
}

export interface ResponseChart extends ChartAxes {
  readonly curves: readonly ResponseCurve[];
  /** Lowest and highest of the seats at each position. */
  readonly spread: {
    readonly positions: ArrayLike<number>;
    readonly low: ArrayLike<number>;
    readonly high: ArrayLike<number>;
  } | null;
  /** A window of levels over a range of positions. */
  readonly tolerance: {
    readonly from: number;
    readonly to: number;
    readonly low: number;
    readonly high: number;
    readonly label: string;
  } | null;
  readonly extremes: readonly {
    readonly position: number;
    readonly value: number;
    readonly kind: 'peak' | 'dip';
    readonly label: string;
  }[];
}

/** Patterns that tell curves apart without colour. */
const dashes = [[], [8, 4], [3, 3], [10, 3, 2, 3], [1, 3]] as const;

/** How much of a range of positions lies within a window, from 0 to 1, by logarithmic width; null without data there. */
export function shareWithin(
  positions: ArrayLike<number>,
  values: ArrayLike<number>,
  window: { readonly from: number; readonly to: number; readonly low: number; readonly high: number },
): number | null {
  let whole = 0;
  let inside = 0;
  for (let k = 0; k + 1 < positions.length; k += 1) {
    const from = Math.max(positions[k], window.from);
    const to = Math.min(positions[k + 1], window.to);
    if (to <= from || !(Number.isFinite(values[k]) && Number.isFinite(values[k + 1]))) continue;
    const width = Math.log(to / from);
    whole += width;
    // The part of the straight piece that lies between the two levels.
    const at = (position: number): number =>
      values[k] +
      ((values[k + 1] - values[k]) * Math.log(position / positions[k])) /
        Math.log(positions[k + 1] / positions[k]);
    const [a, b] = [at(from), at(to)];
    if (a === b) inside += a >= window.low && a <= window.high ? width : 0;
    else {
      const [t0, t1] = [(window.low - a) / (b - a), (window.high - a) / (b - a)].sort((x, y) => x - y);
      inside += width * Math.max(0, Math.min(1, t1) - Math.max(0, t0));
    }
  }
  return whole > 0 ? inside / whole : null;
}

export function drawResponseChart(
  pen: Pen,
  chart: ResponseChart,
  theme: DrawTheme,
  size: ChartSize,
): ChartLayout {
  const style = { colour: theme.text, size: CHART_TEXT };
  const several = chart.curves.length > 1;
  const names = chart.curves.map(({ label, main }) => ({ text: label, main }));
  const right = several ? endNamesMargin(pen, theme, names, size.cssWidth) : 12;
  const layout = drawChartFrame(pen, chart, theme, size, right);
  const { plot } = layout;
  const labels: Label[] = [];
  const order = [...chart.curves.keys()].sort(
    (a, b) => Number(chart.curves[a].main) - Number(chart.curves[b].main),
  );
  const ends: EndName[] = [];
  pen.clipped(plot, () => {
    const { tolerance, spread } = chart;
    if (tolerance) {
      const a = layout.toPixel(tolerance.from, tolerance.high);
      const b = layout.toPixel(tolerance.to, tolerance.low);
      pen.area([a.x, a.y, b.x, a.y, b.x, b.y, a.x, b.y], theme.accent, 0.1);
      for (const y of [a.y, b.y])
        pen.line([a.x, y, b.x, y], { colour: theme.accent, width: 1, opacity: 0.8 });
      labels.push({
        text: tolerance.label,
        at: { x: Math.max(plot.left, a.x) + 6, y: Math.max(plot.top + 8, a.y - 9) },
        style: { colour: theme.accent, size: CHART_TEXT, align: 'start' },
        weight: 3,
        spare: {
          at: { x: Math.max(plot.left, a.x) + 6, y: Math.min(plot.bottom - 8, b.y + 9) },
          align: 'start',
        },
      });
    }
    if (spread)
      for (const run of bandRuns(layout, chart, spread.positions, spread.low, spread.high))
        pen.area(run, theme.text, 0.1);
    for (const k of order) {
      const curve = chart.curves[k];
      const runs = curveRuns(layout, chart, curve.positions, curve.values);
      const { floor } = curve;
      if (floor)
        for (const run of runs)
          pen.line(run, { colour: mixCss(theme.background, theme.text, 0.3), width: 1 });
      const heard = floor
        ? Array.from(curve.values, (value, j) => (value > floor[j] ? value : NaN))
        : curve.values;
      for (const run of floor ? curveRuns(layout, chart, curve.positions, heard) : runs)
        pen.line(run, {
          colour: curve.main ? theme.accent : theme.text,
          width: curve.main ? 2 : 1.1,
          opacity: curve.main ? 1 : 0.6,
          dash: curve.main ? [] : dashes[k % dashes.length],
        });
      const last = runs.at(-1);
      if (last) ends.push({ text: curve.label, y: last[last.length - 1], main: curve.main });
    }
  });
  if (several) drawEndNames(pen, theme, ends, plot, size.cssWidth);
  for (const { position, value, kind, label } of chart.extremes) {
    const { x, y } = layout.toPixel(position, value);
    if (x < plot.left || x > plot.right || y < plot.top || y > plot.bottom) continue;
    const up = kind === 'peak' ? -1 : 1;
    pen.area([x, y + up * 3, x - 4, y + up * 9, x + 4, y + up * 9], theme.text);
    labels.push({
      text: label,
      // Below the plot stand the marks of modes.
      at: { x, y: Math.min(y + up * 17, y + up * 9 > plot.bottom - 12 ? y - 12 : plot.bottom - 7) },
      style: { ...style, align: 'middle' },
      weight: 1 + Math.abs(value) / 1000,
    });
  }
  drawLetters(pen, labels, theme, size, [titleBox(pen, chart)]);
  drawChartCursor(pen, chart, theme, layout);
  return layout;
}

export const responseChartSvg = (
  chart: ResponseChart,
  theme: DrawTheme,
  size: ChartSize,
  words: DocumentWords,
): string => chartSvg((pen) => drawResponseChart(pen, chart, theme, size), theme, size, words, 'response');
