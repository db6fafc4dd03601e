/** A room as a form holds it, field by field; each text read by itself, so that a slip is told where it was made. */
import {
  createPlan,
  createRoom,
  isInside,
  parseDecimal,
  parseHeight,
  parseLength,
  roomVolume,
  sideBounds,
  wallCount,
  wallsFromNames,
  type AbsorptionGiven,
  type Plan,
  type Room,
} from '../room/index.js';
import { constructions } from '../room/constructions.js';
import { RingdownError } from '../signal/errors.js';
import type { PositionMetres } from '../signal/types.js';
import { failureOf, type Failure } from './failure.js';

export type LengthUnit = 'm' | 'ft';

export interface RoomForm {
  readonly shape: 'box' | 'plan';
  readonly unit: LengthUnit;
  readonly length: string;
  readonly width: string;
  readonly height: string;
  readonly corners: readonly { readonly x: string; readonly y: string }[];
  /** °C, %; empty where not given. */
  readonly temperature: string;
  readonly humidity: string;
  /** What walls, floor and ceiling are made of, in turn: a name, or a coefficient; empty where unknown. */
  readonly walls: readonly string[];
  /** What no field holds: it stays as it is while nothing is said in its place. */
  readonly kept: { readonly speed: number | null; readonly absorption: AbsorptionGiven | null };
}

/** What a form does not show of a room. */
export const keptOf = (room: Room | null): RoomForm['kept'] => ({
  speed: room && room.temperatureCelsius === null ? room.speedOfSoundMetresPerSecond : null,
  absorption:
    room && wallsOfRoom(room).every((name) => name === '') ? (room.absorptionBands ?? room.absorption) : null,
});

/** Which field was refused, and why. */
export interface FormFailure {
  readonly field: 'length' | 'width' | 'height' | 'corners' | 'temperature' | 'humidity' | 'walls';
  readonly failure: Failure;
}

export const wallNames: readonly string[] = constructions.map(({ name }) => name);

/** Whether a wall is given by a coefficient. */
export const isOwnWall = (wall: string): boolean => wall !== '' && !wallNames.includes(wall);

export { constructions };

/** Reads a form; the room is null where anything was refused. */
export function readRoomForm(form: RoomForm): {
  readonly room: Room | null;
  readonly failures: readonly FormFailure[];
} {
  const failures: FormFailure[] = [];
  const attempt = <T>(field: FormFailure['field'], read: () => T): T | null => {
    try {
      return read();
    } catch (error) {
      failures.push({ field, failure: failureOf(error) });
      return null;
    }
  };
  const side = (field: 'length' | 'width' | 'height'): number | null =>
    attempt(field, () => {
      const value =
        field === 'height' ? parseHeight(form.height, form.unit) : readLength(form[field], form.unit);
      const [from, to] = sideBounds;
      if (!(value >= from && value <= to))
        throw new RingdownError('room-side-bounds', { side: field, value, from, to });
      return value;
    });
  const number = (field: 'temperature' | 'humidity'): number | null =>
    form[field].trim() === ''
      ? null
      : attempt(field, () => {
          const value = parseDecimal(form[field]);
          if (Number.isNaN(value)) throw new RingdownError('number-form', { text: form[field] });
          createRoom({ size: someSize, [`${field}${field === 'humidity' ? 'Percent' : 'Celsius'}`]: value });
          return value;
        });
  const height = side('height');
  const [length, width] = form.shape === 'box' ? [side('length'), side('width')] : [null, null];
  const plan =
    form.shape === 'plan' && height !== null ? attempt('corners', () => readPlan(form, height)) : null;
  const temperatureCelsius = number('temperature');
  const humidityPercent = number('humidity');
  const named = form.walls.filter((name) => name !== '').length;
  const { speed, absorption } = form.kept;
  const count = form.walls.length;
  if (named > 0 && named < count)
    attempt('walls', () => {
      throw new RingdownError('walls-partly', { missing: count - named });
    });
  if (failures.length > 0 || height === null) return { room: null, failures };
  const room = attempt('walls', () =>
    createRoom({
      ...(plan ? { plan } : { size: { lengthMetres: length!, widthMetres: width!, heightMetres: height } }),
      ...{ temperatureCelsius, humidityPercent },
      speedOfSoundMetresPerSecond: temperatureCelsius === null ? speed : null,
      absorption:
        named > 0 ? wallsFromNames(form.walls, wallCount({ plan })) : absorptionFor(absorption, count),
    }),
  );
  return { room, failures };
}

/** Coefficients of other walls say nothing of these. */
function absorptionFor(given: AbsorptionGiven | null, count: number): AbsorptionGiven | null {
  if (given === null || typeof given === 'number') return given;
  const [first] = given;
  const walls = typeof first === 'object' ? first.absorption : (given as readonly number[]);
  return typeof walls === 'object' && walls.length !== count ? null : given;
}

/** Any room that is none of the form's: its air is checked alone. */
const someSize = { lengthMetres: 5, widthMetres: 4, heightMetres: 3 };

/** @throws RingdownError `length-form` with `text` */
export function readLength(text: string, unit: LengthUnit): number {
  const value = parseLength(text, unit);
  if (!Number.isFinite(value)) throw new RingdownError('length-form', { text });
  return value;
}

const readPlan = ({ corners, unit }: RoomForm, height: number): Plan =>
  createPlan(
    corners.map(({ x, y }) => ({ x: readLength(x, unit), y: readLength(y, unit) })),
    height,
  );

/** The nearest place within a room: a hand that drags beyond a wall means the wall. Null in the notch of a plan. */
export function withinRoom({ x, y, z }: PositionMetres, { size, plan }: Room): PositionMetres | null {
  const clamp = (value: number, to: number): number => Math.min(to, Math.max(0, value));
  const at = {
    x: clamp(x, size.lengthMetres),
    y: clamp(y, size.widthMetres),
    z: clamp(z, size.heightMetres),
  };
  return plan && !isInside(plan, at) ? null : at;
}

export { roomVolume };

/** The corners of any room, in turn. */
export const cornersOf = ({ plan, size }: Room): readonly { readonly x: number; readonly y: number }[] =>
  plan?.corners ?? [
    { x: 0, y: 0 },
    { x: size.lengthMetres, y: 0 },
    { x: size.lengthMetres, y: size.widthMetres },
    { x: 0, y: size.widthMetres },
  ];

/** What the walls are made of, where the absorption is that of a construction; a coefficient that is one's own; else empty. */
export function wallsOfRoom(room: Room): string[] {
  const count = wallCount(room);
  const { absorptionBands: bands } = room;
  if (!bands) return Array.from({ length: count }, () => '');
  return Array.from({ length: count }, (_, wall) => {
    const found = constructions.find(({ name }) =>
      wallsFromNames([name]).every(({ absorption }, k) => absorption[0] === bands[k]?.absorption[wall]),
    );
    const [first] = bands;
    const own = bands.every(({ absorption }) => absorption[wall] === first.absorption[wall]);
    return found?.name ?? (own ? String(first.absorption[wall]) : '');
  });
}
