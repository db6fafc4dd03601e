import { describe, expect, it } from 'vitest';
import { floorAt, indexAt, kindAt, positionAt, sampleField, SILENCE } from '../../src/draw/field.js';
import { sliceList, vertexIndices } from '../../src/draw/relief.js';
import { sameParts } from '../../src/draw/same.js';
import type { Field } from '../../src/draw/types.js';
import { inventedField, inventedView } from './fields.js';

const plane: Field = {
  columns: 4,
  rows: 3,
  values: Float32Array.from(
    { length: 12 },
    (_, k) => [20, 30, 60, 100][k % 4] * 2 - 5 * [0, 1, 4][Math.floor(k / 4)],
  ),
  columnPositions: Float64Array.of(20, 30, 60, 100),
  rowPositions: Float64Array.of(0, 1, 4),
  columnFloor: Float32Array.of(0, 10, -Infinity, -Infinity),
  rowEnd: 3,
  rowLowest: Float32Array.of(50, 20, 20),
};

describe('reading a field', () => {
  it('is exact between unevenly spaced cells for a field that is a plane', () => {
    for (const [column, row] of [
      [20, 0],
      [25, 0.5],
      [47, 2.2],
      [99, 3.9],
      [100, 4],
    ])
      expect(sampleField(plane, column, row)).toBeCloseTo(column * 2 - 5 * row, 5);
  });

  it('holds the outermost cell outside the field', () => {
    expect(indexAt(plane.columnPositions, 5)).toBe(0);
    expect(indexAt(plane.columnPositions, 500)).toBe(3);
    expect(indexAt(plane.columnPositions, NaN)).toBe(0);
    expect(positionAt(plane.columnPositions, indexAt(plane.columnPositions, 44))).toBeCloseTo(44, 9);
  });

  it('takes silence for what is not finite, instead of spreading it', () => {
    const broken = {
      ...plane,
      values: plane.values.map((value, k) => (k === 5 ? NaN : k === 6 ? -Infinity : value)),
    };
    expect(sampleField(broken, 30, 1)).toBe(SILENCE);
    expect(Number.isFinite(sampleField(broken, 25, 0.3))).toBe(true);
  });

  it('tells signal, noise, the past of the end and the unresolved apart', () => {
    expect(kindAt(plane, 80, 2, 100)).toBe('signal');
    expect(kindAt(plane, 30, 2, 9)).toBe('noise');
    expect(kindAt(plane, 80, 3.5, 100)).toBe('past-end');
    expect(kindAt(plane, 30, 0, 60)).toBe('unresolved');
    expect(floorAt(plane, 0.5)).toBeCloseTo(5, 9);
  });
});

describe('vertices', () => {
  it('stand on every whole cell between two ends that may lie between cells', () => {
    expect(vertexIndices([0.25, 3.5])).toEqual([0.25, 1, 2, 3, 3.5]);
    expect(vertexIndices([0, 3])).toEqual([0, 1, 2, 3]);
    expect(vertexIndices([2, 2])).toEqual([2]);
  });

  it('of slices stand at round positions and both ends, never more than wished beside the ends', () => {
    const positions = Float64Array.from({ length: 101 }, (_, k) => k * 0.0137);
    for (const most of [5, 12, 40]) {
      const { slices, step } = sliceList(positions, [0.5, 99], most);
      expect(slices.length).toBeLessThanOrEqual(most + 2);
      expect(slices[0].at).toBe(0.5);
      expect(slices[slices.length - 1].at).toBe(99);
      for (const { at } of slices.slice(1, -1)) {
        const steps = (at * 0.0137) / step;
        expect(steps).toBeCloseTo(Math.round(steps), 6);
      }
      expect([1, 2, 5]).toContainEqual(Number((step / 10 ** Math.floor(Math.log10(step) + 1e-9)).toFixed(6)));
    }
  });
});

describe('two views', () => {
  it('are the same when all parts are equal by value, and not when one differs', () => {
    const field = inventedField();
    const view = inventedView({ field, cursor: { column: 50, row: 0.2 } });
    expect(sameParts(view, inventedView({ field, cursor: { column: 50, row: 0.2 } }), 2)).toBe(true);
    expect(sameParts(view, inventedView({ field, cursor: { column: 50, row: 0.3 } }), 2)).toBe(false);
    expect(sameParts(view, inventedView({ field, columnRange: [20, 100], cursor: view.cursor }), 2)).toBe(
      false,
    );
    expect(sameParts(view, inventedView({ field: inventedField(), cursor: view.cursor }), 2)).toBe(false);
    const flags = view.flags.map((flag, k) => ({ ...flag, selected: k === 0 }));
    expect(sameParts(view, { ...view, flags }, 2)).toBe(false);
  });
});
