/** The field as a body in the box: what is drawn at each vertex, the same for shader, pointer and lines. */
import { makeAxis } from './axes.js';
import { floorAt, indexAt, positionAt, valueAt } from './field.js';
import type { Box } from './picture.js';
import type { FieldView } from './types.js';

export interface Relief {
  readonly view: FieldView;
  readonly half: readonly [number, number, number];
  /** Fractional indices of the first and last column and row drawn. */
  readonly columns: readonly [number, number];
  readonly rows: readonly [number, number];
  /** Box coordinates of positions and values; not clamped. */
  readonly x: (column: number) => number;
  readonly y: (value: number) => number;
  readonly z: (row: number) => number;
  readonly column: (x: number) => number;
  readonly row: (z: number) => number;
  /** The value drawn at fractional indices: never below the noise floor nor outside the range; the bottom past the end. */
  readonly shown: (columnIndex: number, rowIndex: number) => number;
  readonly point: (columnIndex: number, rowIndex: number) => readonly [number, number, number];
}

export function makeRelief(view: FieldView, half: readonly [number, number, number]): Relief {
  const { field, valueRange } = view;
  const [bottom, top] = valueRange;
  const columnAxis = makeAxis(view.columnScale, view.columnRange, -half[0], half[0]);
  const valueAxis = makeAxis('linear', valueRange, -half[1], half[1]);
  const rowAxis = makeAxis('linear', view.rowRange, -half[2], half[2]);
  const shown = (columnIndex: number, rowIndex: number): number => {
    if (positionAt(field.rowPositions, rowIndex) > field.rowEnd) return bottom;
    const value = Math.max(valueAt(field, columnIndex, rowIndex), floorAt(field, columnIndex));
    return Math.min(top, Math.max(bottom, value));
  };
  return {
    view,
    half,
    columns: [
      indexAt(field.columnPositions, view.columnRange[0]),
      indexAt(field.columnPositions, view.columnRange[1]),
    ],
    rows: [indexAt(field.rowPositions, view.rowRange[0]), indexAt(field.rowPositions, view.rowRange[1])],
    x: columnAxis.pixel,
    y: valueAxis.pixel,
    z: rowAxis.pixel,
    column: columnAxis.atPixel,
    row: rowAxis.atPixel,
    shown,
    point: (columnIndex, rowIndex) => [
      columnAxis.pixel(positionAt(field.columnPositions, columnIndex)),
      valueAxis.pixel(shown(columnIndex, rowIndex)),
      rowAxis.pixel(positionAt(field.rowPositions, rowIndex)),
    ],
  };
}

/** Fractional indices of the vertices from `first` to `last`: both ends and every whole cell (or every nth) between. */
export function vertexIndices([first, last]: readonly [number, number], stride = 1): number[] {
  const indices = [first];
  for (let k = Math.floor(first) + stride; k < last; k += stride) indices.push(k);
  if (last > first) indices.push(last);
  return indices;
}

/** The vertices before and after a fractional index, and how far between them a coordinate lies. */
function bracket(
  [first, last]: readonly [number, number],
  index: number,
  coordinate: (index: number) => number,
  at: number,
): readonly [number, number, number] {
  const low = Math.max(first, Math.floor(index));
  const high = Math.min(last, Math.floor(index) + 1);
  const [from, to] = [coordinate(low), coordinate(high)];
  return [low, high, to > from ? Math.min(1, Math.max(0, (at - from) / (to - from))) : 0];
}

/** Height of the drawn triangles at a position of the field, box coordinates. */
export function drawnHeight(relief: Relief, column: number, row: number): number {
  const { columnPositions, rowPositions } = relief.view.field;
  const x = (index: number): number => relief.x(positionAt(columnPositions, index));
  const z = (index: number): number => relief.z(positionAt(rowPositions, index));
  const [c0, c1, u] = bracket(relief.columns, indexAt(columnPositions, column), x, relief.x(column));
  const [r0, r1, v] = bracket(relief.rows, indexAt(rowPositions, row), z, relief.z(row));
  const y = (c: number, r: number): number => relief.y(relief.shown(c, r));
  // The cell's diagonal runs from (c1, r0) to (c0, r1), as in the index list of the body.
  const [b, d] = [y(c1, r0), y(c0, r1)];
  if (u + v <= 1) {
    const a = y(c0, r0);
    return a + u * (b - a) + v * (d - a);
  }
  const e = y(c1, r1);
  return e + (1 - u) * (d - e) + (1 - v) * (b - e);
}

/** Slices for which a plot has room. */
export const mostSlices = (plot: Box): number => Math.max(12, (plot.bottom - plot.top) / 7);

/** Where a slice stands: its fractional index, and whether it stands at one of the rounder positions. */
export interface Slice {
  readonly at: number;
  readonly round: boolean;
}

/**
 * Slices at round positions (1, 2 or 5 times a power of ten apart), at most about `most` of them, and at both ends of
 * what is drawn; every fifth (or, at a step of 2, every fifth as well) is a round one, as an axis has them.
 */
export function sliceList(
  positions: ArrayLike<number>,
  range: readonly [number, number],
  most: number,
): { readonly slices: readonly Slice[]; readonly step: number } {
  const [first, last] = [positionAt(positions, range[0]), positionAt(positions, range[1])];
  if (!(last > first)) return { slices: [{ at: range[1], round: true }], step: 0 };
  const least = (last - first) / Math.max(1, most);
  const decade = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 5, 10].map((k) => k * decade).find((wide) => wide >= least * (1 - 1e-9)) ?? 10 * decade;
  const slices: Slice[] = [{ at: range[0], round: true }];
  const margin = step * 0.05;
  for (let k = Math.ceil(first / step - 1e-9); k * step < last - margin; k += 1)
    if (k * step > first + margin) slices.push({ at: indexAt(positions, k * step), round: k % 5 === 0 });
  slices.push({ at: range[1], round: true });
  return { slices, step };
}
