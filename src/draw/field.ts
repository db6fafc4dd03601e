/** Reading a field between its cells: by position, never by index. */
import type { Field } from './types.js';

/** Values below this stand for silence: keeps -Infinity out of interpolation. */
export const SILENCE = -1000;

/** Fractional index of `position` among ascending `positions`, clamped to the first and last. */
export function indexAt(positions: ArrayLike<number>, position: number): number {
  const last = positions.length - 1;
  if (last < 1 || !(position > positions[0])) return 0;
  if (position >= positions[last]) return last;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (positions[middle] <= position) low = middle;
    else high = middle;
  }
  return low + (position - positions[low]) / (positions[high] - positions[low]);
}

/** The position at a fractional index. */
export function positionAt(positions: ArrayLike<number>, index: number): number {
  const last = positions.length - 1;
  const k = Math.min(Math.max(0, last - 1), Math.max(0, Math.floor(index)));
  const next = Math.min(last, k + 1);
  return positions[k] + (positions[next] - positions[k]) * Math.min(1, Math.max(0, index - k));
}

/** A finite value: NaN and -Infinity are silence. */
export function finite(value: number): number {
  return value > SILENCE ? value : SILENCE;
}

/** The field between four cells, bilinear, at fractional indices. */
export function valueAt(field: Field, columnIndex: number, rowIndex: number): number {
  const { columns, rows, values } = field;
  const c = Math.min(columns - 1, Math.max(0, columnIndex));
  const r = Math.min(rows - 1, Math.max(0, rowIndex));
  const c0 = Math.floor(c);
  const r0 = Math.floor(r);
  const c1 = Math.min(columns - 1, c0 + 1);
  const r1 = Math.min(rows - 1, r0 + 1);
  const cf = c - c0;
  const rf = r - r0;
  const near = finite(values[r0 * columns + c0]) * (1 - cf) + finite(values[r0 * columns + c1]) * cf;
  const far = finite(values[r1 * columns + c0]) * (1 - cf) + finite(values[r1 * columns + c1]) * cf;
  return near * (1 - rf) + far * rf;
}

/** The field at positions (Hz and s): what a read-out says. */
export function sampleField(field: Field, column: number, row: number): number {
  return valueAt(field, indexAt(field.columnPositions, column), indexAt(field.rowPositions, row));
}

/** The noise floor at a fractional column; -Infinity without one. */
export function floorAt(field: Field, columnIndex: number): number {
  const floor = field.columnFloor;
  if (!floor) return -Infinity;
  const c0 = Math.min(field.columns - 1, Math.max(0, Math.floor(columnIndex)));
  const c1 = Math.min(field.columns - 1, c0 + 1);
  const part = Math.min(1, Math.max(0, columnIndex - c0));
  if (part === 0) return floor[c0];
  return finite(floor[c0]) * (1 - part) + finite(floor[c1]) * part;
}

/** The lowest position that means anything at a fractional row; -Infinity where all do. */
export function lowestAt(field: Field, rowIndex: number): number {
  return field.rowLowest ? positionAt(field.rowLowest, rowIndex) : -Infinity;
}

/** What a point of the field is: signal, noise, nothing (past the end), finer than the slice resolves, or the window's. */
export type PointKind = 'signal' | 'noise' | 'past-end' | 'unresolved' | 'fast';

/** Classifies a point at positions, with its value. */
export function kindAt(field: Field, column: number, row: number, value: number): PointKind {
  if (row > field.rowEnd) return 'past-end';
  if (value <= floorAt(field, indexAt(field.columnPositions, column))) return 'noise';
  if (column < lowestAt(field, indexAt(field.rowPositions, row))) return 'unresolved';
  return isFast(field, column, row) ? 'fast' : 'signal';
}

/** Whether the field falls no slower than the view's own window there; positions, as `kindAt`. */
function isFast(field: Field, column: number, row: number): boolean {
  const { aboveWindow, columnPositions, rowPositions } = field;
  if (!aboveWindow) return false;
  return (
    valueAt(
      { ...field, values: aboveWindow },
      indexAt(columnPositions, column),
      indexAt(rowPositions, row),
    ) <= 0
  );
}
