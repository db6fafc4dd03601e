import type { FilePlaces, PositionMetres } from '../types.js';
import type { Hdf5Dataset } from '../vendor/hdf5.js';
import * as maths from '../maths.js';

type Vector = readonly [number, number, number];

/** The variables of AES69 that say where things were. */
export interface PlaceVariables {
  readonly listener: Hdf5Dataset | null;
  readonly view: Hdf5Dataset | null;
  readonly up: Hdf5Dataset | null;
  readonly receiver: Hdf5Dataset | null;
  readonly source: Hdf5Dataset | null;
  readonly sourceView: Hdf5Dataset | null;
  readonly sourceUp: Hdf5Dataset | null;
  readonly emitter: Hdf5Dataset | null;
  readonly cornerA: Hdf5Dataset | null;
  readonly cornerB: Hdf5Dataset | null;
}

const textOf = (value: unknown, otherwise: string): string => (typeof value === 'string' ? value : otherwise);

/**
 * One row of a position variable, [rows, C] or [rows, C, measurements], as metres along x, y, z. Spherical coordinates are
 * azimuth, elevation (degrees) and radius (AES69). Null where the variable is missing or its units are not these.
 */
function vectorOf(variable: Hdf5Dataset | null, row: number, measurement: number): Vector | null {
  if (!variable) return null;
  const { shape, value, attrs } = variable;
  if (shape.length < 2 || shape[1] !== 3) return null;
  const depth = shape[2] ?? 1;
  const base = shape[0] === 1 ? 0 : row;
  const layer = depth === 1 ? 0 : measurement;
  const [a, b, c] = [0, 1, 2].map((axis) => Number(value[(base * 3 + axis) * depth + layer]));
  if (![a, b, c].every(Number.isFinite)) return null;
  const units = textOf(attrs.Units, 'metre')
    .toLowerCase()
    .split(',')
    .map((unit) => unit.trim());
  const metres = /^met(re|er)s?$/.test(units[units.length - 1] ?? '');
  const kind = textOf(attrs.Type, 'cartesian').toLowerCase();
  if (!metres) return null;
  if (kind.startsWith('cartesian')) return [a, b, c];
  if (!kind.startsWith('spherical') || !/^degrees?$/.test(units[0])) return null;
  const [azimuth, elevation] = [(a * Math.PI) / 180, (b * Math.PI) / 180];
  const flat = c * maths.cos(elevation);
  return [flat * maths.cos(azimuth), flat * maths.sin(azimuth), c * maths.sin(elevation)];
}

const add = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
const times = (a: Vector, s: number): Vector => [a[0] * s, a[1] * s, a[2] * s];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vector): Vector | null => {
  const length = maths.hypot(...a);
  return length > 0 ? times(a, 1 / length) : null;
};

/** A place given in the frame of a body: x along its view, z along its up. */
function fromBody(local: Vector, view: Vector | null, up: Vector | null): Vector {
  const x = unit(view ?? [1, 0, 0]);
  const z = unit(up ?? [0, 0, 1]);
  if (!x || !z) return local;
  const y = cross(z, x);
  return add(add(times(x, local[0]), times(y, local[1])), times(z, local[2]));
}

const position = ([x, y, z]: Vector): PositionMetres => ({ x, y, z });

export interface PlaceOf {
  readonly measurement: number;
  readonly receiver: number;
  readonly emitter: number;
}

/** Where one receiver and one emitter were in one measurement; null where the file does not say. */
export function placesOf(
  variables: PlaceVariables,
  { measurement, receiver, emitter }: PlaceOf,
): FilePlaces | null {
  const at = (variable: Hdf5Dataset | null, row = measurement) => vectorOf(variable, row, measurement);
  const listener = at(variables.listener);
  const source = at(variables.source);
  if (!listener || !source) return null;
  const origin: Vector = [0, 0, 0];
  const seat = add(
    listener,
    fromBody(at(variables.receiver, receiver) ?? origin, at(variables.view), at(variables.up)),
  );
  const place = add(
    source,
    fromBody(at(variables.emitter, emitter) ?? origin, at(variables.sourceView), at(variables.sourceUp)),
  );
  const [a, b] = [at(variables.cornerA, 0), at(variables.cornerB, 0)];
  if (a && b) {
    const low = a.map((value, axis) => Math.min(value, b[axis])) as unknown as Vector;
    const sides = a.map((value, axis) => Math.abs(value - b[axis])) as unknown as Vector;
    const [seatIn, sourceIn] = [add(seat, times(low, -1)), add(place, times(low, -1))];
    const inside = [seatIn, sourceIn].every((p) => p.every((v, axis) => v >= 0 && v <= sides[axis]));
    if (inside)
      return {
        origin: 'corner',
        seat: position(seatIn),
        source: position(sourceIn),
        roomMetres: position(sides),
      };
  }
  return { origin: 'file', seat: position(seat), source: position(place), roomMetres: null };
}
