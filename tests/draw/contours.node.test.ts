import { describe, expect, it } from 'vitest';
import { contourSegments } from '../../src/draw/contours.js';

const grid = (columns: number, rows: number, value: (x: number, y: number) => number) => ({
  columns,
  rows,
  values: Float64Array.from({ length: columns * rows }, (_, k) =>
    value(k % columns, Math.floor(k / columns)),
  ),
});

describe('lines of equal value', () => {
  it('lie on a circle where the values are those of a cone', () => {
    const segments = contourSegments(
      grid(41, 41, (x, y) => Math.hypot(x - 20, y - 20)),
      12,
    );
    expect(segments.length).toBeGreaterThan(100);
    let length = 0;
    for (let k = 0; k < segments.length; k += 4) {
      expect(Math.hypot(segments[k] - 20, segments[k + 1] - 20)).toBeCloseTo(12, 1);
      length += Math.hypot(segments[k + 2] - segments[k], segments[k + 3] - segments[k + 1]);
    }
    expect(length).toBeCloseTo(2 * Math.PI * 12, 0);
  });

  it('run straight across a plane, and cross where a saddle does', () => {
    const plane = contourSegments(
      grid(5, 4, (x) => x - 1.25),
      0,
    );
    expect(plane.length).toBe(3 * 4);
    for (let k = 0; k < plane.length; k += 2) expect(plane[k]).toBeCloseTo(1.25, 12);
    const saddle = contourSegments(
      grid(2, 2, (x, y) => (x - 0.5) * (y - 0.5)),
      0,
    );
    expect([...saddle]).toEqual([0.5, 0, 0.5, 1, 1, 0.5, 0, 0.5]);
  });

  it('leave out what is no number', () => {
    expect(
      contourSegments(
        grid(3, 3, (x, y) => (x === 1 && y === 1 ? NaN : x - 0.5)),
        0,
      ),
    ).toHaveLength(0);
  });
});
