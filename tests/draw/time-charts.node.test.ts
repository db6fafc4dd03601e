import { describe, expect, it } from 'vitest';
import { drawFitChart, fitChartSvg, type FitChart } from '../../src/draw/fit-chart.js';
import type { LineStyle, Pen } from '../../src/draw/pen.js';
import {
  drawRecordingChart,
  recordingChartSvg,
  type RecordingChart,
} from '../../src/draw/recording-chart.js';
import { svgPen } from '../../src/draw/svg.js';
import { darkTheme, formatNumber, lightTheme } from './fields.js';

const size = { cssWidth: 800, cssHeight: 400 };

interface Stroke {
  readonly points: number[];
  readonly style: LineStyle;
}

/** A pen that remembers its lines and areas in their order. */
function watchingPen(): Pen & { lines: Stroke[]; areas: { points: number[]; after: number }[] } {
  const pen = svgPen();
  const lines: Stroke[] = [];
  const areas: { points: number[]; after: number }[] = [];
  return {
    ...pen,
    lines,
    areas,
    line: (points, style) => void lines.push({ points: Array.from(points), style }),
    area: (points) => void areas.push({ points: Array.from(points), after: lines.length }),
  };
}

const times = Float64Array.from({ length: 201 }, (_, k) => k * 0.005);
const fit: FitChart = {
  timeRange: [0, 1],
  levelRange: [-50, 0],
  times,
  recorded: times.map((t) => Math.max(-60 * t, -30)),
  fitted: times.map((t) => -60 * t),
  together: times.map((t) => -60 * t),
  residual: times.map(() => -45),
  floor: -30,
  sinks: 0.45,
  dataEnd: 0.9,
  fitFrom: 0.05,
  fitTo: 0.6,
  cursor: 0.2,
  labels: {
    time: 'Time, s',
    level: 'Level, dB',
    recorded: 'recording',
    fitted: 'fitted 1.00 s',
    together: 'all',
    residual: 'left over',
    floor: 'noise',
    window: 'fitted from 0.05 to 0.60 s',
  },
  formatNumber,
};

describe('the chart of one fit', () => {
  it('says what it shows, in either theme', () => {
    for (const theme of [lightTheme, darkTheme]) {
      const svg = fitChartSvg(fit, theme, size, { title: 'Fitted decay' });
      for (const word of ['Time, s', 'Level, dB', 'fitted 1.00 s', 'noise', 'fitted from 0.05 to 0.60 s'])
        expect(svg).toContain(`>${word}<`);
    }
  });

  it('draws the fitted decay from the start of its window to where it meets the floor, and no further', () => {
    const pen = watchingPen();
    const plot = drawFitChart(pen, fit, lightTheme, size);
    const fitted = pen.lines.find(({ style }) => style.width === 2.25)!;
    const xs = fitted.points.filter((_, k) => k % 2 === 0);
    expect(plot.columnAxis.atPixel(xs[0])).toBeCloseTo(0.05, 6);
    expect(plot.columnAxis.atPixel(xs[xs.length - 1])).toBeCloseTo(0.495, 2);
    const lowest = Math.max(...fitted.points.filter((_, k) => k % 2 === 1));
    expect(plot.valueAxis.atPixel(lowest)).toBeGreaterThan(-30.5);
  });

  it('covers what lies below the floor after every curve is drawn', () => {
    const pen = watchingPen();
    const plot = drawFitChart(pen, fit, lightTheme, size);
    const cover = pen.areas.find(({ points }) => Math.abs(points[1] - plot.valueAxis.pixel(-30)) < 1)!;
    expect(cover.points[5]).toBe(plot.box.bottom);
    const curves = pen.lines
      .map(({ points }, k) => ({ k, points }))
      .filter(({ points }) => points.length > 20)
      .map(({ k }) => k);
    expect(curves.length).toBeGreaterThan(3);
    expect(Math.max(...curves)).toBeLessThan(cover.after);
  });

  it('draws no fitted line where nothing was fitted, and no floor where there is none', () => {
    const pen = watchingPen();
    drawFitChart(pen, { ...fit, fitted: null, floor: -Infinity, dataEnd: 2 }, lightTheme, size);
    expect(pen.lines.some(({ style }) => style.width === 2.25)).toBe(false);
    expect(pen.areas.length).toBe(0);
  });
});

const columns = 400;
const recording: RecordingChart = {
  timeRange: [-0.1, 1],
  first: -0.1,
  step: 1.1 / columns,
  lowest: Float32Array.from({ length: columns }, (_, k) => -Math.exp(-k / 60)),
  highest: Float32Array.from({ length: columns }, (_, k) => Math.exp(-k / 60)),
  peak: 1,
  levels: Float32Array.from({ length: columns }, (_, k) => Math.max(-40, -k / 5)),
  levelRange: [-50, 0],
  noise: -40,
  usable: [0, 0.45],
  dataEnd: 0.9,
  marks: [
    { at: 0, label: 'onset' },
    { at: 0.45, label: 'noise from 0.45 s' },
  ],
  bars: [
    { from: 22.4, to: 28.2, value: 15, state: 'unread' },
    { from: 28.2, to: 35.5, value: 27, state: 'doubtful' },
    { from: 35.5, to: 44.7, value: 52, state: 'good' },
  ],
  barRange: [0, 60],
  barLimits: [{ value: 35, label: 'read from 35 dB' }],
  bandScale: 'log',
  bandRange: [22.4, 44.7],
  cursor: { time: 0.3, frequency: 30 },
  labels: {
    waveform: 'Samples',
    level: 'Level, dB',
    time: 'Time, s',
    range: 'Range, dB',
    frequency: 'Frequency, Hz',
    noise: 'noise',
  },
  formatNumber,
};

describe('the chart of one recording', () => {
  it('says what it shows, wide and narrow', () => {
    for (const cssWidth of [320, 1200]) {
      const svg = recordingChartSvg(recording, lightTheme, { cssWidth, cssHeight: 520 }, { title: 'x' });
      for (const word of ['Samples', 'Range, dB', 'Time, s', 'onset', 'noise', 'read from 35 dB'])
        expect(svg, `${cssWidth}`).toContain(`>${word}<`);
      expect(svg).not.toMatch(/NaN|Infinity/);
    }
  });

  it('finds time and frequency under a point, and neither between the plots', () => {
    const layout = drawRecordingChart(svgPen(), recording, lightTheme, { cssWidth: 1000, cssHeight: 420 });
    const { waveform, level, bands } = layout;
    const x = waveform.columnAxis.pixel(0.5);
    expect(layout.toField(x, waveform.box.top + 5)!.time).toBeCloseTo(0.5, 6);
    expect(layout.toField(x, level.box.bottom - 5)!.time).toBeCloseTo(0.5, 6);
    expect(layout.toField(bands.columnAxis.pixel(31), bands.box.top + 9)!.frequency).toBeCloseTo(31, 6);
    expect(layout.toField(x, waveform.box.bottom + 8)).toBeNull();
  });

  it('fills only the bands that are read; keeps every plot on the picture', () => {
    const pen = watchingPen();
    const layout = drawRecordingChart(pen, recording, lightTheme, { cssWidth: 1000, cssHeight: 420 });
    const { bands } = layout;
    const tops = pen.areas.map(({ points }) => points[3]);
    for (const { value } of recording.bars) expect(tops).toContain(bands.valueAxis.pixel(value));
    for (const { box } of [layout.waveform, layout.level, bands]) {
      expect(box.left).toBeGreaterThan(10);
      expect(box.right).toBeLessThanOrEqual(1000);
      expect(box.bottom).toBeLessThan(420);
      expect(box.bottom - box.top).toBeGreaterThan(50);
    }
    expect(layout.waveform.box.bottom).toBeLessThan(layout.level.box.top);
    expect(layout.level.box.right).toBeLessThan(bands.box.left);
  });

  it('draws the level beyond what is usable in another ink', () => {
    const pen = watchingPen();
    drawRecordingChart(pen, recording, lightTheme, { cssWidth: 1000, cssHeight: 420 });
    const inks = pen.lines.filter(({ points }) => points.length > 200).map(({ style }) => style.colour);
    expect(new Set(inks).size).toBe(2);
    expect(inks.filter((ink) => ink === lightTheme.accent).length).toBe(1);
  });
});
