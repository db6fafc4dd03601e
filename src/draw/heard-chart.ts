/** Levels of several sounds over time, the one that is heard in front; shaded while a note is played. */
import type { ChartSize } from './chart-frame.js';
import type { Pen } from './pen.js';
import { drawPlot, FOOT, valueMargin, type Plot } from './plot.js';
import type { DrawTheme } from './types.js';

export interface HeardCurve {
  /** dB re the loudest, of blocks that together last as long as the whole. */
  readonly levels: ArrayLike<number>;
  readonly line: 'solid' | 'dash' | 'dots' | 'faint';
  readonly chosen: boolean;
}

export interface HeardChart {
  readonly seconds: number;
  /** Lowest level shown, dB re the loudest. */
  readonly lowestDb: number;
  readonly notes: readonly { readonly startSeconds: number; readonly seconds: number }[];
  readonly curves: readonly HeardCurve[];
  readonly timeLabel: string;
  readonly levelLabel: string;
  readonly formatNumber: (value: number, digits: number) => string;
}

const TOP = 26;
const RIGHT = 12;

export function drawHeardChart(pen: Pen, chart: HeardChart, theme: DrawTheme, size: ChartSize): Plot {
  const { seconds, lowestDb, formatNumber } = chart;
  const valueRange = [lowestDb, 0] as const;
  const left = valueMargin(pen, theme, [{ valueRange, formatNumber }]);
  const bottom = Math.max(TOP + 40, size.cssHeight - FOOT);
  const plot = drawPlot(pen, theme, {
    box: { left, right: Math.max(left + 60, size.cssWidth - RIGHT), top: TOP, bottom },
    ...{ columnScale: 'linear', columnRange: [0, seconds], valueRange, formatNumber },
    ...{ columnLabel: chart.timeLabel, valueLabel: chart.levelLabel },
  });
  pen.clipped(plot.box, () => {
    for (const { startSeconds, seconds: length } of chart.notes) {
      const [from, to] = [startSeconds, startSeconds + length].map((time) => plot.columnAxis.pixel(time));
      pen.area([from, TOP, to, TOP, to, bottom, from, bottom], theme.text, 0.08);
    }
    const sorted = [...chart.curves].sort((a, b) => Number(a.chosen) - Number(b.chosen));
    for (const { levels, line, chosen } of sorted) {
      const step = seconds / Math.max(1, levels.length - 1);
      const points: number[] = [];
      // What is silent runs out of the picture, and no further than a pen can follow.
      for (let k = 0; k < levels.length; k += 1) {
        const { x, y } = plot.toPixel(k * step, Math.max(lowestDb - 20, levels[k]));
        points.push(x, y);
      }
      const dash = { solid: [], faint: [], dash: [6, 3], dots: [2, 3] }[line];
      const faint = line === 'faint' || line === 'dots';
      pen.line(
        points,
        chosen
          ? { colour: theme.accent, width: 2 }
          : { colour: faint ? theme.faint : theme.text, width: 1.25, dash },
      );
    }
  });
  return plot;
}
