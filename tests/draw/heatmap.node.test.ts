import { describe, expect, it } from 'vitest';
import { makeAxis } from '../../src/draw/axes.js';
import { scaleEntry, scaleTable } from '../../src/draw/colours.js';
import { sampleField } from '../../src/draw/field.js';
import { heatMapPixels, resample } from '../../src/draw/heatmap-pixels.js';
import { tonesOf } from '../../src/draw/tones.js';
import type { Field, FieldView } from '../../src/draw/types.js';
import { inventedField, inventedView, lightTheme } from './fields.js';

const tones = tonesOf(lightTheme);

function pixelsOf(view: FieldView, width: number, height: number): (x: number, y: number) => number[] {
  const axes = {
    column: makeAxis(view.columnScale, view.columnRange),
    row: makeAxis('linear', view.rowRange),
  };
  const bytes = heatMapPixels(view, axes, 'dawn', tones, width, height, 1);
  return (x, y) => [...bytes.subarray((y * width + x) * 4, (y * width + x) * 4 + 4)];
}

describe('the pixels of the heat map', () => {
  it('have the colour of the field at the position under their middle, on both scales', () => {
    const clean: Field = { ...inventedField(120, 60, { rowEnd: 9 }), columnFloor: null };
    for (const columnScale of ['log', 'linear'] as const) {
      const view = inventedView({ field: clean, columnScale });
      const [width, height] = [700, 300];
      const pixel = pixelsOf(view, width, height);
      const axis = makeAxis(columnScale, view.columnRange);
      for (const [x, y] of [
        [0, 0],
        [699, 299],
        [123, 45],
        [350, 150],
        [611, 7],
      ]) {
        const value = sampleField(clean, axis.value((x + 0.5) / width), (y + 0.5) / height);
        const [r, g, b, a] = pixel(x, y);
        const near = [-1, 0, 1].some((step) => {
          const at = Math.min(255, Math.max(0, scaleEntry(value, view.valueRange) + step)) * 4;
          return [...scaleTable('dawn').subarray(at, at + 3)].join() === [r, g, b].join();
        });
        expect(near, `${x},${y}`).toBe(true);
        expect(a).toBe(255);
      }
    }
  });

  it('keep the height of a peak narrower than a pixel', () => {
    const columns = 1000;
    const values = new Float32Array(columns * 2).fill(-50);
    values[503] = -3;
    values[columns + 503] = -3;
    const field: Field = {
      columns,
      rows: 2,
      values,
      columnPositions: Float64Array.from({ length: columns }, (_, k) => k),
      rowPositions: Float64Array.of(0, 1),
      columnFloor: null,
      rowEnd: 1,
      rowLowest: null,
    };
    const seen = resample(field, makeAxis('linear', [0, 999]), makeAxis('linear', [0, 1]), 40, 4);
    expect(Math.max(...seen)).toBe(-3);
    expect(seen.filter((value) => value > -50).length).toBe(4);
  });

  it('are one grey below the noise floor, and that grey is in no scale', () => {
    const view = inventedView({ field: { ...inventedField(), columnFloor: new Float32Array(120).fill(10) } });
    expect(pixelsOf(view, 80, 60)(30, 10)).toEqual([...tones.noise, 255]);
    const table = scaleTable('dawn');
    for (let k = 0; k < 256; k += 1)
      expect(Math.max(...tones.noise.map((byte, c) => Math.abs(byte - table[k * 4 + c])))).toBeGreaterThan(8);
  });

  it('are hatched past the end, hatched otherwise where unresolved, and bare outside the field', () => {
    const field = {
      ...inventedField(120, 60, { rowEnd: 0.5 }),
      columnFloor: null,
      rowLowest: new Float32Array(60).fill(40),
    };
    const pixel = pixelsOf(inventedView({ field, columnRange: [10, 200], rowRange: [0, 1] }), 200, 100);
    const allowed = (bytes: number[]): boolean =>
      bytes
        .slice(0, 3)
        .every(
          (byte, k) =>
            byte >= Math.min(tones.hatch[k], tones.background[k]) &&
            byte <= Math.max(tones.hatch[k], tones.background[k]),
        );
    const kinds = new Set<string>();
    for (let x = 150; x < 190; x += 1) {
      expect(allowed(pixel(x, 80))).toBe(true);
      kinds.add(pixel(x, 80).join());
    }
    expect(kinds.size).toBeGreaterThan(1);
    expect(allowed(pixel(60, 20)) && allowed(pixel(61, 20))).toBe(true);
    expect(pixel(5, 20).slice(0, 3)).toEqual([...tones.background]);
    expect(allowed(pixel(120, 20))).toBe(false);
  });
});
