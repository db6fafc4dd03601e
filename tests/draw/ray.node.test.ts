import { describe, expect, it } from 'vitest';
import { limitOrbit, viewpoints } from '../../src/draw/orbit.js';
import { sampleField } from '../../src/draw/field.js';
import { layoutSurface, pickSurface, projectField, surfaceFlagAt } from '../../src/draw/surface-layout.js';
import { svgPen } from '../../src/draw/svg.js';
import { Rng } from '../../src/signal/random.js';
import { inventedField, inventedView, lightTheme } from './fields.js';

const size = { cssWidth: 900, cssHeight: 560, pixelRatio: 1 };

describe('picking on the surface', () => {
  it('gives a point that is drawn within a tenth of a pixel of where it was asked', () => {
    const random = new Rng(3);
    const field = inventedField();
    let hits = 0;
    for (let round = 0; round < 600; round += 1) {
      const orbit = limitOrbit({
        azimuthRadians: (random.uniform() - 0.5) * 6.2,
        elevationRadians: 0.1 + random.uniform() * 1.47,
        zoom: 0.8 + random.uniform(),
      });
      const scale = round % 2 ? ('log' as const) : ('linear' as const);
      const view = inventedView({
        field,
        columnScale: scale,
        columnRange: round % 3 ? [20, 200] : [33.3, 141],
      });
      const layout = layoutSurface(svgPen(), view, orbit, lightTheme, size);
      const [x, y] = [random.uniform() * 900, random.uniform() * 560];
      const hit = pickSurface(layout, x, y);
      if (!hit) continue;
      hits += 1;
      expect(hit.column).toBeGreaterThanOrEqual(view.columnRange[0] - 1e-6);
      expect(hit.column).toBeLessThanOrEqual(view.columnRange[1] + 1e-6);
      expect(hit.value).toBeCloseTo(sampleField(view.field, hit.column, hit.row), 6);
      const { relief } = layout;
      const again = projectField(layout, hit.column, hit.row)!;
      expect(Math.hypot(again.x - x, again.y - y)).toBeLessThan(0.1);
      expect(relief.x(hit.column)).toBeGreaterThan(-relief.half[0] - 1e-6);
    }
    expect(hits).toBeGreaterThan(150);
  });

  it('finds the very cell that was projected, unless something nearer hides it', () => {
    const view = inventedView();
    const layout = layoutSurface(svgPen(), view, viewpoints.high, lightTheme, size);
    let same = 0;
    let hidden = 0;
    for (let c = 1; c < 119; c += 3)
      for (let r = 1; r < 53; r += 3) {
        const [column, row] = [view.field.columnPositions[c], view.field.rowPositions[r]];
        const pixel = projectField(layout, column, row)!;
        const hit = pickSurface(layout, pixel.x, pixel.y);
        expect(hit).not.toBeNull();
        const back = projectField(layout, hit!.column, hit!.row)!;
        if (Math.hypot(back.x - pixel.x, back.y - pixel.y) < 1 && Math.abs(hit!.row - row) < 0.02) same += 1;
        else {
          // What is found instead lies nearer to the eye: later.
          expect(hit!.row).toBeGreaterThan(row - 0.02);
          hidden += 1;
        }
      }
    expect(same).toBeGreaterThan(10 * hidden);
  });

  it('finds nothing beside the surface, on its cut walls and past the ends of a field shorter than the axis', () => {
    const view = inventedView({ columnRange: [10, 400], rowRange: [0, 2] });
    const layout = layoutSurface(svgPen(), view, viewpoints.plan, lightTheme, size);
    expect(pickSurface(layout, 3, 3)).toBeNull();
    const { space, relief } = layout;
    const floor = (column: number, row: number): { x: number; y: number } =>
      projectField({ ...layout, space, relief }, column, row, -60)!;
    for (const [column, row] of [
      [12, 0.5],
      [300, 0.5],
      [60, 1.7],
    ]) {
      const { x, y } = floor(column, row);
      expect(pickSurface(layout, x, y)).toBeNull();
    }
    const front = layoutSurface(
      svgPen(),
      inventedView({ field: inventedField(120, 60, { rowEnd: 2 }) }),
      viewpoints.side,
      lightTheme,
      size,
    );
    const wall = projectField(front, 20, 0.05, -50)!;
    expect(pickSurface(front, wall.x, wall.y)).toBeNull();
  });

  it('knows the flag under its label and under its ridge', () => {
    const view = inventedView();
    const layout = layoutSurface(svgPen(), view, viewpoints.corner, lightTheme, size);
    for (const label of layout.labels.placed)
      expect(
        surfaceFlagAt(layout, label.x, layout.labelsBottom - 8 - label.row * layout.labels.rowHeight - 12),
      ).toBe(label.flag);
    view.flags.forEach((flag, k) => {
      const on = projectField(layout, flag.position, 0.3)!;
      expect(surfaceFlagAt(layout, on.x, on.y)).toBe(k);
    });
    expect(surfaceFlagAt(layout, 880, 540)).toBeNull();
  });
});
