/** What the hand does to a room and its places, as plain data. */
import type { ShownPlace } from '../../study/places.js';
import { readLength, withinRoom } from '../../study/room-form.js';
import type { RoomForm } from '../../study/room-form.js';
import type { StudyPlace, StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';

type Room = NonNullable<StudySnapshot['room']>;

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Ears of who sits, and the middle of a loudspeaker on a stand, m; common practice. */
const heights = { seat: 1.2, source: 1 } as const;

/** The corners of a form in metres; null where one of them cannot be read: its field says so. */
export function cornersOfForm({ corners, unit }: RoomForm): Point[] | null {
  try {
    return corners.map(({ x, y }) => ({ x: readLength(x, unit), y: readLength(y, unit) }));
  } catch {
    return null;
  }
}

/** Where a plan begins; places keep their distance from walls that were drawn beyond 0. */
export function originOf(corners: readonly Point[]): Point {
  return { x: Math.min(...corners.map(({ x }) => x)), y: Math.min(...corners.map(({ y }) => y)) };
}

/** The longest wall, and its middle, where one more corner can be pulled out. */
export function middleOfLongest(corners: readonly Point[]): { readonly wall: number; readonly at: Point } {
  const ends = corners.map((a, k) => [a, corners[(k + 1) % corners.length]] as const);
  const lengths = ends.map(([a, b]) => Math.hypot(b.x - a.x, b.y - a.y));
  const wall = lengths.indexOf(Math.max(...lengths));
  const [a, b] = ends[wall];
  return { wall, at: { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 } };
}

/** What walls, floor and ceiling are made of where their number changed: what all have in common, new walls have too. */
export function wallsFor(walls: readonly string[], count: number): string[] {
  const [floor, ceiling] = walls.slice(-2);
  const upright = walls.slice(0, -2);
  const same = upright.every((name) => name === upright[0]) ? (upright[0] ?? '') : '';
  return [...Array.from({ length: count - 2 }, (_, k) => upright[k] ?? same), floor ?? '', ceiling ?? ''];
}

/** One more seat or source, with a name and a place that no other has. */
export function newPlace(
  kind: StudyPlace['kind'],
  room: Room | null,
  places: readonly ShownPlace[],
  speaker: Speaker,
): StudyPlace {
  const same = places.filter((place) => place.kind === kind).length;
  const size = room?.size ?? { lengthMetres: 4, widthMetres: 3, heightMetres: 2.5 };
  const [along, across] = kind === 'seat' ? [0.62, 0.4] : [0.1, 0.12];
  const wanted = {
    x: Math.min(size.lengthMetres, size.lengthMetres * along + 0.3 * same),
    y: size.widthMetres * across,
    z: Math.min(heights[kind], size.heightMetres),
  };
  const taken = new Set(places.map(({ name }) => name));
  let number = same + 1;
  while (taken.has(speaker.view(`${kind}-number`, { number }))) number++;
  const at = (room && withinRoom(wanted, room)) ?? wanted;
  return { kind, name: speaker.view(`${kind}-number`, { number }), at };
}
