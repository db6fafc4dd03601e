/** The field as a body in the box: what is drawn at each vertex, the same for shader, pointer and lines. */
import { makeAxis } from './axes.js';
import { floorAt, indexAt, positionAt, valueAt } from './field.js';
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

/** Whole cells at an even step, at most about `most`, from the first drawn: where slices stand. */
export function sliceIndices(
  range: readonly [number, number],
  most: number,
): { first: number; step: number } {
  const step = Math.max(1, Math.ceil((range[1] - range[0]) / Math.max(1, most)));
  return { first: Math.ceil(range[0] - 1e-9), step };
}

/** The slices as a list, the last edge included. */
export function sliceList(range: readonly [number, number], most: number): number[] {
  const { first, step } = sliceIndices(range, most);
  const list: number[] = [];
  for (let k = first; k < range[1] - 1e-9; k += step) list.push(k);
  list.push(range[1]);
  return list;
}
