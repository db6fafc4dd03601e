import { describe, expect, it } from 'vitest';
import { drawRemedyChart, type RemedyChart } from '../../src/draw/remedy-chart.js';
import { svgPen } from '../../src/draw/svg.js';
import { looks } from '../../src/sheet/looks.js';

const positions = [20, 40, 80, 120];
const chart: RemedyChart = {
  ...{ columnScale: 'log', columnRange: [20, 120], levelRange: [-30, 10], gainRange: [-18, 6] },
  ...{ decayRange: [0, 2], columnLabel: 'Hz', levelLabel: 'level', gainLabel: 'gain', decayLabel: 'decay' },
  ...{ beforeLabel: 'without', afterLabel: 'with', positions, before: [0, 5, 2, 1], after: [0, -3, 2, 1] },
  ...{ spread: null, gainPositions: positions, gain: [0, -8, 0, 0], bandGains: [[0, -8, 0, 0]], held: 0 },
  decays: [
    { position: 40, before: 1.4, beforeSd: 0.02, after: 0.5, afterSd: 0.01, fitted: true, limit: 0.6 },
    { position: 300, before: 1, beforeSd: null, after: null, afterSd: null, fitted: false, limit: null },
    { position: 60, before: null, beforeSd: null, after: null, afterSd: null, fitted: false, limit: 0.5 },
  ],
  ...{ cursor: 50, formatNumber: (value, digits) => value.toFixed(digits) },
};
const size = { cssWidth: 800, cssHeight: 560 };

describe('the chart of filters', () => {
  const pen = svgPen('t');
  const layout = drawRemedyChart(pen, chart, looks.light, size);

  it('finds the band under a point again where it was drawn', () => {
    const { x, y } = layout.toPixel(40, -8);
    const found = layout.toBand(x, y);
    expect(found.position).toBeCloseTo(40, 6);
    expect(found.gain).toBeCloseTo(-8, 6);
    expect(layout.toPosition(x, y)).toBeCloseTo(40, 6);
  });

  it('holds a band within its scale, and reads no frequency beside the plots', () => {
    const far = layout.toBand(-500, 5000);
    expect(far.position).toBeCloseTo(20, 6);
    expect(far.gain).toBeCloseTo(-18, 6);
    expect(layout.toPosition(2, 100)).toBeNull();
  });

  it('draws only numbers, and no ridge beyond its axis', () => {
    const content = pen.content();
    expect(content).not.toMatch(/NaN|Infinity|undefined/);
    // One before and one after: neither the ridge beyond the axis nor the one that never decays.
    expect(content.match(/<circle/g)).toHaveLength(2);
    expect(content).toContain('without');
  });

  it('stands at 320 px as well', () => {
    const narrow = drawRemedyChart(svgPen('n'), chart, looks.dark, { cssWidth: 320, cssHeight: 480 });
    const { x } = narrow.toPixel(120, 0);
    expect(x).toBeLessThan(320);
    expect(x).toBeGreaterThan(200);
  });
});
