import type { PressurePicture, PressurePlace } from '../../draw/pressure-picture.js';
import type { RoomPicture } from '../../draw/room-picture.js';
import { placesOf } from '../../study/places.js';
import type { ShownPlace } from '../../study/places.js';
import { cornersOf } from '../../study/room-form.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { placeName } from '../../sheet/place-name.js';
import { motionAt, motionOf } from './motion.js';

type Room = NonNullable<StudySnapshot['room']>;
export type PressureMap = NonNullable<StudySnapshot['pressure']>;

export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Points of the section in height. */
const sectionRows = 33;

/** Ears of who sits, m; common practice. */
const earMetres = 1.2;

/** Where the cursor begins: at the first seat, else in the middle at the height of ears. */
export function firstSpot(snapshot: StudySnapshot): Spot {
  const seat = placesOf(snapshot).find(({ kind, inside }) => kind === 'seat' && inside);
  if (seat) return seat.at;
  const { lengthMetres, widthMetres, heightMetres } = snapshot.room!.size;
  return { x: lengthMetres / 2, y: widthMetres / 2, z: Math.min(earMetres, heightMetres / 2) };
}

const inHeight = ({ mode }: PressureMap, z: number, { size }: Room): number =>
  Math.cos((mode.order[2] * Math.PI * z) / size.heightMetres);

/** The shape at a point, linear between the points of the map; NaN outside the walls. */
export function shapeAt(map: PressureMap, room: Room, { x, y, z }: Spot): number {
  return floorAt(map, x, y) * inHeight(map, z, room);
}

export const floorAt = (map: PressureMap, x: number, y: number): number => sampled(map, map.floor, x, y);

function sampled(
  { columns, rows, lengthMetres, widthMetres }: PressureMap,
  floor: Float32Array,
  x: number,
  y: number,
): number {
  const column = Math.min(columns - 1, Math.max(0, (x / lengthMetres) * (columns - 1)));
  const row = Math.min(rows - 1, Math.max(0, (y / widthMetres) * (rows - 1)));
  const [c, r] = [Math.min(columns - 2, Math.floor(column)), Math.min(rows - 2, Math.floor(row))];
  const [s, t] = [column - c, row - r];
  let sum = 0;
  let weight = 0;
  for (const [k, w] of [
    [r * columns + c, (1 - s) * (1 - t)],
    [r * columns + c + 1, s * (1 - t)],
    [(r + 1) * columns + c, (1 - s) * t],
    [(r + 1) * columns + c + 1, s * t],
  ]) {
    // Beside a slanted wall a corner of the cell lies outside: the others speak for it.
    if (w === 0 || Number.isNaN(floor[k])) continue;
    sum += w * floor[k];
    weight += w;
  }
  return weight > 0 ? sum / weight : NaN;
}

interface Slices {
  readonly key: string;
  readonly plan: Float32Array;
  readonly section: Float32Array;
}

const slices = new WeakMap<PressureMap, Slices>();

/** What is drawn: signed pressure, or how far the air moves. */
export type Quantity = 'pressure' | 'motion';

/** What is drawn at a point of the room, re its largest; NaN outside the walls. */
export function valueAt(map: PressureMap, room: Room, { x, y, z }: Spot, quantity: Quantity): number {
  if (quantity === 'pressure') return shapeAt(map, room, { x, y, z });
  const field = motionOf(map, room.size.heightMetres);
  return motionAt(field, sampled(map, field.along, x, y), floorAt(map, x, y), z);
}

/** The plan at a height and the section at a depth; kept while the cursor stays on them. */
function slicesOf(map: PressureMap, room: Room, { y, z }: Spot, quantity: Quantity): Slices {
  const { heightMetres } = room.size;
  const key = `${quantity} ${y} ${z} ${heightMetres}`;
  const known = slices.get(map);
  if (known?.key === key) return known;
  const field = motionOf(map, heightMetres);
  const plan = map.floor.map((value, k) =>
    quantity === 'pressure' ? value * inHeight(map, z, room) : motionAt(field, field.along[k], value, z),
  );
  const section = new Float32Array(map.columns * sectionRows);
  for (let k = 0; k < map.columns; k += 1) {
    const x = (k / (map.columns - 1)) * map.lengthMetres;
    const pressure = floorAt(map, x, y);
    const along = quantity === 'pressure' ? 0 : sampled(map, field.along, x, y);
    for (let row = 0; row < sectionRows; row += 1) {
      const height = (row / (sectionRows - 1)) * heightMetres;
      section[row * map.columns + k] =
        quantity === 'pressure'
          ? pressure * inHeight(map, height, room)
          : motionAt(field, along, pressure, height);
    }
  }
  const made = { key, plan, section };
  slices.set(map, made);
  return made;
}

/** Places that were computed, in the order of the map: seats, then sources. */
export const placesInMap = (snapshot: StudySnapshot): ShownPlace[] =>
  placesOf(snapshot).filter(({ inside }) => inside);

/** dB re the loudest place of the room; null at a node. */
export const shapeDb = (shape: number): number | null =>
  Math.abs(shape) < 1e-4 ? null : 20 * Math.log10(Math.abs(shape));

/** The signed shape at each place of the map. */
export function shapesAtPlaces(
  snapshot: StudySnapshot,
): { place: ShownPlace; shape: number; node: boolean }[] {
  const map = snapshot.pressure!;
  const places = placesInMap(snapshot);
  const values = [...map.atSeats, ...map.atSources];
  const nodes = [...map.seatNodes, ...map.sourceNodes];
  // While a new map is on its way the old one may be of fewer places.
  return places.flatMap((place, k) =>
    values[k] === undefined ? [] : [{ place, shape: values[k], node: nodes[k] }],
  );
}

export function levelText(shape: number, node: boolean, speaker: Speaker): string {
  const db = shapeDb(shape);
  return node || db === null ? speaker.view('on-a-node') : speaker.n.decibels(db, 0);
}

/** dB re the largest motion in the room. */
export function motionText(value: number, speaker: Speaker): string {
  const db = shapeDb(value);
  return db === null ? speaker.view('no-motion') : speaker.n.decibels(db, 0);
}

const placesWithLevels = (snapshot: StudySnapshot, quantity: Quantity, speaker: Speaker): PressurePlace[] => {
  const map = snapshot.pressure!;
  const places = placesOf(snapshot);
  return shapesAtPlaces(snapshot).map(({ place, shape, node }): PressurePlace => ({
    kind: place.kind,
    ...place.at,
    label: `${placeName(place, places, speaker)} ${
      quantity === 'pressure'
        ? levelText(shape, node, speaker)
        : motionText(valueAt(map, snapshot.room!, place.at, quantity), speaker)
    }`,
    selected: false,
    sound: true,
  }));
};

/** The room with the shape upon its walls and its floor. */
export function roomPicture(
  snapshot: StudySnapshot,
  spot: Spot,
  quantity: Quantity,
  speaker: Speaker,
): RoomPicture {
  const room = snapshot.room!;
  const map = snapshot.pressure!;
  const { columns, rows, floor, lengthMetres, widthMetres } = map;
  const { heightMetres } = room.size;
  const { along, upright, largest } = motionOf(map, heightMetres);
  return {
    ...{ columns, rows, floor, along, upright, lengthMetres, widthMetres, heightMetres },
    corners: cornersOf(room),
    largestMotion: quantity === 'motion' ? largest : null,
    cursor: spot,
    places: placesWithLevels(snapshot, quantity, speaker),
  };
}

export function pressurePicture(
  snapshot: StudySnapshot,
  spot: Spot,
  quantity: Quantity,
  speaker: Speaker,
): PressurePicture {
  const { room, pressure } = snapshot;
  const map = pressure!;
  const { plan, section } = slicesOf(map, room!, spot, quantity);
  return {
    lengthMetres: map.lengthMetres,
    widthMetres: map.widthMetres,
    heightMetres: room!.size.heightMetres,
    corners: cornersOf(room!),
    plan: { columns: map.columns, rows: map.rows, values: plan },
    section: { columns: map.columns, rows: sectionRows, values: section },
    cursor: spot,
    places: placesWithLevels(snapshot, quantity, speaker),
    planLabel: speaker.view('plan-at', { z: spot.z }),
    sectionLabel: speaker.view('section-at', { y: spot.y }),
  };
}
