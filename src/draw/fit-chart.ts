/** One decay beside what was fitted to it: level over time, the floor, what is left over, the stretch that was fitted. */
import { chartSvg, drawLetters, type ChartSize } from './chart-frame.js';
import type { Label } from './letters.js';
import type { Pen } from './pen.js';
import { drawCursorLine, drawPlot, FOOT, hatch, PLOT_TEXT, valueMargin, type Plot } from './plot.js';
import type { DocumentWords } from './svg.js';
import { mixCss } from './tones.js';
import type { DrawTheme } from './types.js';

export interface FitChart {
  readonly timeRange: readonly [number, number];
  readonly levelRange: readonly [number, number];
  readonly times: ArrayLike<number>;
  readonly recorded: ArrayLike<number>;
  /** The one decay; null where none was fitted. */
  readonly fitted: ArrayLike<number> | null;
  /** Of all decays that were fitted. */
  readonly together: ArrayLike<number>;
  readonly residual: ArrayLike<number>;
  /** -Infinity where there is none. */
  readonly floor: number;
  /** From here on the recording is noise or has ended. */
  readonly sinks: number;
  readonly dataEnd: number;
  readonly fitFrom: number;
  readonly fitTo: number;
  readonly cursor: number | null;
  readonly labels: {
    readonly time: string;
    readonly level: string;
    readonly recorded: string;
    readonly fitted: string;
    readonly together: string;
    readonly residual: string;
    readonly floor: string;
    readonly window: string;
  };
  readonly formatNumber: (value: number, digits: number) => string;
}

interface Strand {
  readonly values: ArrayLike<number>;
  readonly from: number;
  readonly to: number;
  readonly style: Parameters<Pen['line']>[1];
  readonly label: string;
  /** Where along it the name stands, as a share of its length. */
  readonly nameAt: number;
  readonly weight: number;
}

/** Points of a curve between two times. */
function pointsOf({ times }: FitChart, plot: Plot, { values, from, to }: Strand): number[] {
  const points: number[] = [];
  for (let k = 0; k < times.length; k += 1)
    if (times[k] >= from - 1e-9 && times[k] <= to + 1e-9 && Number.isFinite(values[k])) {
      const { x, y } = plot.toPixel(times[k], values[k]);
      points.push(x, y);
    }
  return points;
}

/** The time at which a falling curve goes under the floor for good. */
function meets({ times }: FitChart, values: ArrayLike<number>, floor: number): number {
  let last = 0;
  for (let k = 0; k < times.length; k += 1) if (values[k] > floor) last = times[k];
  return last;
}

function strandsOf(chart: FitChart, theme: DrawTheme): Strand[] {
  const { fitted, floor, dataEnd, sinks } = chart;
  const faint = mixCss(theme.background, theme.text, 0.4);
  const readEnd = Math.min(sinks, dataEnd);
  const strands: Strand[] = [
    {
      values: chart.residual,
      from: 0,
      to: readEnd,
      style: { colour: theme.faint, width: 1.25, dash: [2, 3] },
      label: chart.labels.residual,
      nameAt: 0.55,
      weight: 1,
    },
    {
      values: chart.recorded,
      from: readEnd,
      to: dataEnd,
      style: { colour: faint, width: 1 },
      label: '',
      nameAt: 0,
      weight: 0,
    },
    {
      values: chart.together,
      from: chart.fitFrom,
      to: readEnd,
      style: { colour: theme.accent, width: 1.25, dash: [6, 3], opacity: 0.9 },
      label: chart.labels.together,
      nameAt: 0.82,
      weight: 1.5,
    },
    {
      values: chart.recorded,
      from: 0,
      to: readEnd,
      style: { colour: theme.text, width: 1.75 },
      label: chart.labels.recorded,
      nameAt: 0.06,
      weight: 2,
    },
  ];
  if (fitted)
    strands.push({
      values: fitted,
      from: chart.fitFrom,
      to: Math.min(dataEnd, meets(chart, fitted, floor)),
      style: { colour: theme.accent, width: 2.25 },
      label: chart.labels.fitted,
      nameAt: 0.4,
      weight: 3,
    });
  return strands;
}

/** The stretch that was fitted, as a bracket above the plot. */
function drawWindow(pen: Pen, chart: FitChart, theme: DrawTheme, plot: Plot): void {
  const { box, columnAxis } = plot;
  const clamp = (at: number): number => Math.min(box.right, Math.max(box.left, columnAxis.pixel(at)));
  const [a, b] = [clamp(chart.fitFrom), clamp(chart.fitTo)];
  const y = box.top - 7;
  const ink = { colour: theme.accent, width: 1.5 };
  pen.line([a, y + 4, a, y, b, y], ink);
  if (columnAxis.pixel(chart.fitTo) <= box.right + 1) pen.line([b, y, b, y + 4], ink);
  const style = { colour: theme.accent, size: PLOT_TEXT };
  const width = pen.measure(chart.labels.window, style);
  pen.text(
    chart.labels.window,
    Math.max(box.left + 60, Math.min(box.right - width, (a + b - width) / 2)),
    y - 6,
    style,
  );
}

export function drawFitChart(pen: Pen, chart: FitChart, theme: DrawTheme, size: ChartSize): Plot {
  const spec = {
    columnScale: 'linear',
    columnRange: chart.timeRange,
    valueRange: chart.levelRange,
    formatNumber: chart.formatNumber,
  } as const;
  const left = valueMargin(pen, theme, [spec]);
  const box = { left, right: size.cssWidth - 12, top: 34, bottom: Math.max(60, size.cssHeight - FOOT) };
  const plot = drawPlot(pen, theme, {
    ...spec,
    box,
    columnLabel: chart.labels.time,
    valueLabel: chart.labels.level,
    titleGap: 20,
  });
  const labels: Label[] = [];
  const strands = strandsOf(chart, theme);
  pen.clipped(box, () => {
    for (const strand of strands) {
      const points = pointsOf(chart, plot, strand);
      if (points.length < 4) continue;
      pen.line(points, strand.style);
      if (strand.label === '') continue;
      const k = 2 * Math.round((strand.nameAt * (points.length - 2)) / 2);
      const [x, y] = [points[k], points[k + 1]];
      labels.push({
        text: strand.label,
        at: { x: x + 8, y: y - 11 },
        style: {
          colour: strand.style.colour,
          size: PLOT_TEXT,
          align: 'start',
          weight: strand.weight > 2 ? 600 : 400,
        },
        weight: strand.weight,
        spare: { at: { x: x - 8, y: y + 13 }, align: 'end' },
      });
    }
    if (plot.valueAxis.pixel(chart.floor) < box.bottom) {
      const y = Math.max(box.top, Math.min(box.bottom, plot.valueAxis.pixel(chart.floor)));
      // Opaque: what lies below the floor is no sound of the room.
      pen.area(
        [box.left, y, box.right, y, box.right, box.bottom, box.left, box.bottom],
        mixCss(theme.background, theme.text, 0.14),
      );
      pen.line([box.left, y, box.right, y], { colour: theme.faint, width: 1 });
      if (y < box.bottom - 14)
        labels.push({
          text: chart.labels.floor,
          at: { x: box.right - 6, y: y + 10 },
          style: { colour: theme.text, size: PLOT_TEXT, align: 'end' },
          weight: 2.5,
        });
    }
    const end = plot.columnAxis.pixel(chart.dataEnd);
    if (end < box.right) hatch(pen, { ...box, left: Math.max(box.left, end) }, theme.faint);
  });
  drawWindow(pen, chart, theme, plot);
  drawLetters(
    pen,
    labels.filter(({ at }) => at.y > box.top + 4 && at.y < box.bottom),
    theme,
    size,
  );
  if (chart.cursor !== null) drawCursorLine(pen, chart.cursor, plot.columnAxis, box, theme);
  return plot;
}

export const fitChartSvg = (
  chart: FitChart,
  theme: DrawTheme,
  size: ChartSize,
  words: DocumentWords,
): string => chartSvg((pen) => drawFitChart(pen, chart, theme, size), theme, size, words, 'fit');
