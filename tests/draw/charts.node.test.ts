import { describe, expect, it } from 'vitest';
import { decayChartSvg, drawDecayChart, type DecayChart } from '../../src/draw/decay-chart.js';
import {
  drawResponseChart,
  responseChartSvg,
  shareWithin,
  type ResponseChart,
} from '../../src/draw/response-chart.js';
import { svgPen } from '../../src/draw/svg.js';
import { darkTheme, formatNumber, lightTheme } from './fields.js';

const size = { cssWidth: 800, cssHeight: 400 };
const axes = {
  columnScale: 'log' as const,
  columnRange: [20, 200] as const,
  columnLabel: 'Frequency, Hz',
  marks: [{ position: 60, strokes: 2 as const, title: 'x' }],
  cursor: 63,
  formatNumber,
};
const positions = Float64Array.from({ length: 91 }, (_, k) => 20 + 2 * k);

const decay: DecayChart = {
  ...axes,
  valueRange: [0, 2],
  valueLabel: 'Decay time, s',
  points: [
    { position: 24.3, value: 1.9, sd: 0.1, label: '24.3 Hz', flagged: true, selected: false },
    { position: 48.2, value: 1.3, sd: null, label: '48.2 Hz', flagged: true, selected: true },
    { position: 90, value: 0.3, sd: 0.05, label: '90 Hz', flagged: false, selected: false },
  ],
  bands: [
    { from: 44.7, to: 56.2, value: 0.9, believed: true },
    { from: 22.4, to: 28.2, value: 1.4, believed: false },
  ],
  limits: [
    {
      label: 'audibility',
      positions,
      low: positions.map((f) => (f < 32 ? NaN : 0.2)),
      high: positions.map((f) => (f < 32 ? NaN : 0.6)),
    },
  ],
};

describe('the chart of decay times', () => {
  it('says what it shows and draws one circle per mode, full above the limit and hollow below', () => {
    const svg = decayChartSvg(decay, lightTheme, size, { title: 'Decay times' });
    for (const word of [
      'Decay times',
      '24.3 Hz',
      '48.2 Hz',
      '90 Hz',
      'audibility',
      'Frequency, Hz',
      'Decay time, s',
    ])
      expect(svg).toContain(`>${word}<`);
    const circles = [...svg.matchAll(/<circle [^>]*fill="([^"]+)"/g)].map(([, fill]) => fill);
    expect(circles).toEqual([lightTheme.text, lightTheme.accent, lightTheme.background]);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('draws the unbelieved band dashed, the believed one whole', () => {
    const svg = decayChartSvg({ ...decay, limits: [], cursor: null }, darkTheme, size, { title: 'x' });
    expect(svg.match(/stroke-dasharray="3 3"/g)!.length).toBe(1);
  });

  it('finds a mode within reach of the pointer only', () => {
    const layout = drawDecayChart(svgPen(), decay, lightTheme, size);
    const at = layout.toPixel(48.2, 1.3);
    expect(layout.pointAt(at.x + 6, at.y - 6)).toBe(1);
    expect(layout.pointAt(at.x + 20, at.y)).toBeNull();
    expect(layout.toField(at.x, at.y)!.position).toBeCloseTo(48.2, 6);
    expect(layout.toField(1, 1)).toBeNull();
  });
});

describe('the chart of the response', () => {
  const slope = positions.map((f) => 10 * Math.log10(f / 63.25));
  const chart: ResponseChart = {
    ...axes,
    valueRange: [-12, 12],
    valueLabel: 'Level, dB',
    curves: [
      { label: 'Seat 1', positions, values: slope, main: true },
      { label: 'Seat 2', positions, values: slope.map((v) => v - 0.2), main: false },
      { label: 'Seat <3>', positions, values: slope.map((v, k) => (k === 30 ? NaN : v + 0.2)), main: false },
    ],
    spread: { positions, low: slope.map((v) => v - 1), high: slope.map((v) => v + 1) },
    tolerance: { from: 30, to: 150, low: -2.5, high: 2.5, label: 'within 2.5 dB' },
    extremes: [{ position: 48, value: 2, kind: 'peak', label: '48 Hz' }],
  };

  it('names every seat beside its curve, none over another', () => {
    const svg = responseChartSvg(chart, lightTheme, size, { title: 'Response' });
    const names = [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)"[^>]*>(Seat [^<]+)</g)];
    expect(names.map(([, , , name]) => name).sort()).toEqual(['Seat &lt;3&gt;', 'Seat 1', 'Seat 2']);
    const heights = names.map(([, , y]) => Number(y)).sort((a, b) => a - b);
    expect(heights[1] - heights[0]).toBeGreaterThan(10);
    expect(heights[2] - heights[1]).toBeGreaterThan(10);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  it('leaves a gap where a curve has no value', () => {
    const count = (svg: string): number => svg.match(/<path/g)!.length;
    const whole = { ...chart, curves: [chart.curves[0]] };
    const broken = {
      ...chart,
      curves: [{ ...chart.curves[0], values: slope.map((v, k) => (k === 30 ? NaN : v)) }],
    };
    const words = { title: 'x' };
    expect(count(responseChartSvg(broken, lightTheme, size, words))).toBe(
      count(responseChartSvg(whole, lightTheme, size, words)) + 1,
    );
    expect(drawResponseChart(svgPen(), whole, lightTheme, size).plot.right).toBe(size.cssWidth - 12);
  });

  it('counts how much of a range fits inside a window, by octaves', () => {
    // A line of 10 dB per decade through 0 dB at the middle: within 2.5 dB it spends half a decade of the whole one.
    const fine = Float64Array.from({ length: 400 }, (_, k) => 20 * 10 ** (k / 399));
    const line = fine.map((f) => 10 * Math.log10(f / (20 * Math.SQRT1_2 * Math.sqrt(20))));
    const window = { from: 20, to: 200, low: -2.5, high: 2.5 };
    expect(shareWithin(fine, line, window)).toBeCloseTo(0.5, 3);
    // The same with three points only: straight pieces are cut, not counted whole.
    const few = Float64Array.of(20, 63.2455532, 200);
    expect(shareWithin(few, Float64Array.of(-5, 0, 5), window)).toBeCloseTo(0.5, 6);
    expect(shareWithin(few, Float64Array.of(1, 1, 1), window)).toBe(1);
    expect(shareWithin(few, Float64Array.of(NaN, NaN, NaN), window)).toBeNull();
  });
});
