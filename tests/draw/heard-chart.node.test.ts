import { describe, expect, it } from 'vitest';
import { drawHeardChart, type HeardChart } from '../../src/draw/heard-chart.js';
import { svgPen } from '../../src/draw/svg.js';
import { looks } from '../../src/sheet/looks.js';

const chart: HeardChart = {
  ...{ seconds: 4, lowestDb: -50, notes: [{ startSeconds: 0, seconds: 0.5 }] },
  curves: [
    { levels: [0, -10, -30, -1000, -Infinity], line: 'dots', chosen: true },
    { levels: [-5, -15, -20, -25, -30], line: 'dash', chosen: false },
  ],
  ...{ timeLabel: 'Time, s', levelLabel: 'Level, dB' },
  formatNumber: (value, digits) => value.toFixed(digits),
};

describe('the chart of what is heard', () => {
  const pen = svgPen('t');
  const plot = drawHeardChart(pen, chart, looks.light, { cssWidth: 600, cssHeight: 220 });
  const paths = pen.content().match(/<path[^>]*>/g)!;

  it('puts the loudest at the top and the end of the sound at the right edge', () => {
    expect(plot.toPixel(4, 0)).toEqual({ x: 588, y: 26 });
    expect(plot.columnAxis.pixel(0)).toBe(plot.box.left);
    expect(paths.some((path) => path.includes(`M${plot.box.left} 26`))).toBe(true);
  });

  it('draws the chosen sound last, solid and in the accent, the others with their dash', () => {
    const last = paths.at(-1)!;
    expect(last).toContain(looks.light.accent);
    expect(last).not.toContain('dasharray');
    expect(paths.at(-2)).toContain('stroke-dasharray="6 3"');
  });

  it('lets silence run out of the picture by numbers that a pen can follow', () => {
    expect(pen.content()).not.toMatch(/NaN|Infinity/);
    const below = plot.valueAxis.pixel(-70);
    expect(paths.at(-1)).toContain(` ${Math.round(below * 10) / 10}`);
  });

  it('shades the time of each note over the whole height', () => {
    const shade = paths.find((path) => path.includes('fill-opacity'))!;
    const [from, to] = [0, 0.5].map((time) => Math.round(plot.columnAxis.pixel(time) * 10) / 10);
    expect(shade).toContain(`M${from} 26L${to} 26L${to} 180L${from} 180Z`);
  });

  it('stands at 320 px as well', () => {
    const narrow = drawHeardChart(svgPen('n'), chart, looks.dark, { cssWidth: 288, cssHeight: 192 });
    expect(narrow.box.right).toBe(276);
    expect(narrow.box.bottom).toBeGreaterThan(narrow.box.top + 100);
  });
});
