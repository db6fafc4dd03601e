/** Decay time over frequency: each fitted mode with its uncertainty, third-octave decay times, limits as bands. */
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
import type { Label } from './letters.js';
import type { Pen } from './pen.js';
import type { DocumentWords } from './svg.js';
import { mixCss } from './tones.js';
import type { DrawTheme } from './types.js';

/** One fitted mode. */
export interface DecayPoint {
  readonly position: number;
  readonly value: number;
  /** One standard deviation, or null where unknown. */
  readonly sd: number | null;
  readonly label: string;
  /** Above its limit: drawn full, others hollow. */
  readonly flagged: boolean;
  readonly selected: boolean;
}

/** The decay time of a band; `believed` false where the decay is too short or too noisy to be read: greyed and dashed. */
export interface DecayBand {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  readonly believed: boolean;
}

/** Below this value nothing in a band can be believed: the filter itself rings as long. */
export interface DecayFloor {
  readonly from: number;
  readonly to: number;
  readonly value: number;
}

/** A limit over positions; low and high differ where the limit is a band; NaN where there is none. */
export interface LimitBand {
  readonly label: string;
  readonly positions: ArrayLike<number>;
  readonly low: ArrayLike<number>;
  readonly high: ArrayLike<number>;
}

export interface DecayChart extends ChartAxes {
  readonly points: readonly DecayPoint[];
  readonly bands: readonly DecayBand[];
  readonly floors?: readonly DecayFloor[];
  readonly limits: readonly LimitBand[];
}

export interface DecayChartLayout extends ChartLayout {
  /** Index of the point within reach of a place, or null. */
  pointAt(xCss: number, yCss: number): number | null;
}

const dashes = [[], [7, 4], [2, 3]] as const;

export function drawDecayChart(
  pen: Pen,
  chart: DecayChart,
  theme: DrawTheme,
  size: ChartSize,
): DecayChartLayout {
  const layout = drawChartFrame(pen, chart, theme, size);
  const { plot, toPixel } = layout;
  const labels: Label[] = [];
  pen.clipped(plot, () => {
    const grey = mixCss(theme.background, theme.text, theme.dark ? 0.13 : 0.08);
    for (const { from, to, value } of chart.floors ?? []) {
      const [left, right] = [from, to].map((at) =>
        Math.min(plot.right, Math.max(plot.left, layout.columnAxis.pixel(at))),
      );
      const y = layout.valueAxis.pixel(value);
      if (right <= left) continue;
      pen.area([left, y, right, y, right, plot.bottom, left, plot.bottom], grey);
      pen.line([left, y, right, y], { colour: theme.faint, width: 1, opacity: 0.4 });
    }
    chart.limits.forEach((limit, k) => {
      for (const run of bandRuns(layout, chart, limit.positions, limit.low, limit.high))
        pen.area(run, theme.accent, 0.12);
      for (const values of [limit.low, limit.high])
        for (const run of curveRuns(layout, chart, limit.positions, values))
          pen.line(run, { colour: theme.accent, width: 1, opacity: 0.75, dash: dashes[k % dashes.length] });
    });
    for (const band of chart.bands) {
      const from = Math.max(plot.left, layout.columnAxis.pixel(band.from) + 1);
      const to = Math.min(plot.right, layout.columnAxis.pixel(band.to) - 1);
      const y = layout.valueAxis.pixel(band.value);
      if (!Number.isFinite(y) || to <= from) continue;
      const style = band.believed
        ? { colour: theme.text, width: 2, opacity: 0.55 }
        : { colour: theme.faint, width: 1.5, opacity: 0.45, dash: [3, 3] };
      pen.line([from, y, to, y], style);
    }
    for (const point of chart.points) {
      const { x, y } = toPixel(point.position, point.value);
      if (x < plot.left - 4 || x > plot.right + 4) continue;
      const colour = point.selected ? theme.accent : theme.text;
      if (point.sd !== null) {
        const high = layout.valueAxis.pixel(point.value + point.sd);
        const low = layout.valueAxis.pixel(point.value - point.sd);
        pen.line([x, high, x, low], { colour, width: 1.25 });
        for (const end of [high, low]) pen.line([x - 3, end, x + 3, end], { colour, width: 1.25 });
      }
      // Beyond the scale: an arrow at its end.
      if (y < plot.top) pen.area([x, plot.top + 2, x - 5, plot.top + 11, x + 5, plot.top + 11], colour);
      else
        pen.circle(x, y, point.selected ? 5 : 4, point.flagged ? colour : theme.background, {
          colour,
          width: 1.5,
        });
    }
  });
  for (const limit of chart.limits) {
    // Named at its last point in view, just above; else at its first.
    const runs = curveRuns(layout, chart, limit.positions, limit.high);
    const run = runs.at(-1);
    if (!run) continue;
    const place = (x: number, y: number) => ({ x, y: Math.max(plot.top + 8, y - 9) });
    labels.push({
      text: limit.label,
      at: place(run[run.length - 2] - 2, run[run.length - 1]),
      style: { colour: theme.accent, size: CHART_TEXT, align: 'end' },
      weight: 2,
      spare: { at: place(runs[0][0] + 4, runs[0][1]), align: 'start' },
    });
  }
  for (const point of chart.points) {
    const { x, y } = toPixel(point.position, point.value);
    if (point.label === '' || x < plot.left || x > plot.right || y > plot.bottom) continue;
    const above = layout.valueAxis.pixel(point.value + (point.sd ?? 0)) - 11;
    labels.push({
      text: point.label,
      at: { x, y: Math.max(y < plot.top ? plot.top + 19 : plot.top - 6, above) },
      style: {
        colour: point.selected ? theme.accent : theme.text,
        size: CHART_TEXT,
        weight: point.flagged ? 600 : 400,
        align: 'middle',
      },
      weight: (point.selected ? 4 : 0) + (point.flagged ? 3 : 1) + point.value / 1000,
      spare: { at: { x: x + 9, y }, align: 'start' },
    });
  }
  const dots = chart.points.map(({ position, value }) => {
    const { x, y } = toPixel(position, value);
    return { left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 };
  });
  drawLetters(pen, labels, theme, size, [...dots, titleBox(pen, chart)]);
  drawChartCursor(pen, chart, theme, layout);
  return {
    ...layout,
    pointAt(x, y) {
      const near = chart.points
        .map(({ position, value }, k) => {
          const at = toPixel(position, value);
          return { k, away: Math.hypot(at.x - x, at.y - y) };
        })
        .filter(({ away }) => away <= 10)
        .sort((a, b) => a.away - b.away)[0];
      return near ? near.k : null;
    },
  };
}

export const decayChartSvg = (
  chart: DecayChart,
  theme: DrawTheme,
  size: ChartSize,
  words: DocumentWords,
): string => chartSvg((pen) => drawDecayChart(pen, chart, theme, size), theme, size, words, 'decay');
