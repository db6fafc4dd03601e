import { RingdownError } from '../signal/errors.js';
import { checkedSize } from './bounds.js';
import type { PositionMetres, RoomSize } from './types.js';

const metresPerFoot = 0.3048;
const metresPerInch = 0.0254;

/** Digits with at most one point or comma, which is always a decimal sign: "4,50" is 4.5, and "1.234,5" is refused. */
const decimal = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;

/** @returns NaN where the text is not one plain number. */
export function parseDecimal(text: string): number {
  const value = decimal.test(text.trim()) ? Number(text.trim().replace(',', '.')) : NaN;
  // Three hundred digits and more are no double.
  return Number.isFinite(value) ? value : NaN;
}

/**
 * A length in metres from "4.5", "4,5 m", "450 cm", "14 ft 9 in", "14'9\"", "14.75 ft".
 *
 * @param unit What a bare number means.
 * @returns m; NaN where the text is no length
 */
export function parseLength(text: string, unit: 'm' | 'ft' = 'm'): number {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/[’′]/g, "'")
    .replace(/[”″]|''/g, '"');
  const metric = /^(.*?)\s*(cm|m)$/.exec(plain);
  if (metric) return parseDecimal(metric[1]) * (metric[2] === 'cm' ? 0.01 : 1);
  const imperial = /^(.*?)\s*(?:ft|feet|foot|')(?:\s*(.*?)\s*(?:in|inches|inch|")?)?$/.exec(plain);
  if (imperial) {
    const inches = imperial[2] ? parseDecimal(imperial[2]) : 0;
    return inches >= 0 && inches < 12
      ? parseDecimal(imperial[1]) * metresPerFoot + inches * metresPerInch
      : NaN;
  }
  return parseDecimal(plain) * (unit === 'ft' ? metresPerFoot : 1);
}

/**
 * "5.3x4.1x2.7", "5,3 × 4,1 × 2,7 m", "16x12x8 ft", "17'6\" x 13'5\" x 8'10\"": length, width, height. A unit behind the
 * last side holds for those that have none.
 *
 * @throws RingdownError `room-size-form` with `text`; `room-side-bounds`
 */
export function parseRoomSize(text: string): RoomSize {
  const parts = text.trim().split(/\s*[x×*]\s*/i);
  const feet = /(ft|feet|foot|')\s*$/i.test(parts[2] ?? '');
  const centimetres = /\dcm$|\d\s+cm$/i.test(parts[2] ?? '');
  const sides = parts.map((part) =>
    centimetres && decimal.test(part) ? parseDecimal(part) / 100 : parseLength(part, feet ? 'ft' : 'm'),
  );
  if (sides.length !== 3 || sides.some((side) => Number.isNaN(side)))
    throw new RingdownError('room-size-form', { text });
  return checkedSize({ lengthMetres: sides[0], widthMetres: sides[1], heightMetres: sides[2] });
}

/**
 * A place "x,y,z" or "x y z" in metres from the corner of walls x = 0, y = 0 and the floor. Between blanks or
 * semicolons the comma is a decimal sign.
 *
 * @throws RingdownError `place-form` with `text`
 */
export function parsePosition(text: string): PositionMetres {
  const plain = text.trim();
  const apart = /[\s;]/.test(plain.replace(/,\s+/g, ','));
  const parts = apart ? plain.split(/\s*;\s*|\s+/) : plain.split(/\s*,\s*/);
  const numbers = parts.map(parseDecimal);
  if (numbers.length !== 3 || numbers.some((value) => !Number.isFinite(value)))
    throw new RingdownError('place-form', { text });
  return { x: numbers[0], y: numbers[1], z: numbers[2] };
}

/**
 * A place must lie in its room, or every shape at it would be a wrong number.
 *
 * @throws RingdownError `place-outside` with `axis`, `value`, `to`
 */
export function checkedPosition(position: PositionMetres, size: RoomSize): PositionMetres {
  const bounds = { x: size.lengthMetres, y: size.widthMetres, z: size.heightMetres };
  for (const axis of ['x', 'y', 'z'] as const) {
    const value = position[axis];
    if (!(value >= 0 && value <= bounds[axis]))
      throw new RingdownError('place-outside', { axis, value, to: bounds[axis] });
  }
  return position;
}
