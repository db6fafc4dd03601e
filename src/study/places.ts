import { roomPosition, type Room } from '../room/index.js';
import type { PositionMetres } from '../signal/index.js';
import type { StudyPlace, StudySnapshot } from './types.js';
import * as maths from '../signal/maths.js';

/** A place as views show it. */
export interface ShownPlace extends StudyPlace {
  /** Of the study itself; else of recordings that say where they were made. */
  readonly own: boolean;
  /** False where it lies outside the room, and nothing can be computed for it. */
  readonly inside: boolean;
}

/** Whether a place lies in a room. */
export function isInRoom(at: PositionMetres, room: Room): boolean {
  try {
    roomPosition(at, room);
    return true;
  } catch {
    return false;
  }
}

const samePlace = (a: PositionMetres, b: PositionMetres): boolean =>
  maths.hypot(a.x - b.x, a.y - b.y, a.z - b.z) < 1e-6;

type Known = Pick<StudySnapshot, 'places' | 'recordings' | 'room'>;

/** Seats and sources: those of the study by name, and those that only recordings name; each once. */
export function placesOf({ places, recordings, room }: Known): ShownPlace[] {
  const inside = (at: PositionMetres): boolean => room === null || isInRoom(at, room);
  const list: ShownPlace[] = places.map((place) => ({ ...place, own: true, inside: inside(place.at) }));
  for (const { seat, source, seatName, sourceName } of recordings)
    for (const [kind, at, name] of [
      ['seat', seat, seatName],
      ['source', source, sourceName],
    ] as const) {
      if (!at) continue;
      const known = list.some(
        (place) => place.kind === kind && ((name && place.name === name) || samePlace(place.at, at)),
      );
      if (!known) list.push({ kind, name: name ?? '', at, own: false, inside: inside(at) });
    }
  return [...list.filter(({ kind }) => kind === 'seat'), ...list.filter(({ kind }) => kind === 'source')];
}

/** What a recording says of its places once one of them has been moved; null where it does not stand there. */
export function recordingMoved(
  { seat, source, seatName, sourceName }: StudySnapshot['recordings'][number],
  { kind, name, at }: StudyPlace,
  to: PositionMetres,
): { readonly seat?: PositionMetres; readonly source?: PositionMetres } | null {
  const [stands, called] = kind === 'seat' ? [seat, seatName] : [source, sourceName];
  if (!(name && called === name) && !(stands && samePlace(stands, at))) return null;
  return kind === 'seat' ? { seat: to } : { source: to };
}
