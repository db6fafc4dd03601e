import { nodeAt } from '../room/levels.js';
import type { Mode, Room } from '../room/types.js';
import type { Note, PositionMetres } from '../signal/types.js';

/** Higher modes lie so densely that one more or less of them is not missed. */
const mostNotes = 8;

/** Whether a place lies at or near a nodal plane of a mode. */
export const atNode = (mode: Mode, room: Room, position: PositionMetres): boolean =>
  nodeAt(mode, room, position) !== null;

/**
 * Notes for the lowest predicted modes that a seat cannot hear or a source not excite: where no ridge does not mean no
 * mode. At most eight per place.
 */
export function nodeNotes(
  room: Room,
  modes: readonly Mode[],
  places: { readonly seat: PositionMetres | null; readonly source: PositionMetres | null },
): Note[] {
  return (['seat', 'source'] as const).flatMap((place) => {
    const position = places[place];
    if (!position) return [];
    return modes
      .filter((mode) => atNode(mode, room, position))
      .slice(0, mostNotes)
      .map(({ order, frequencyHz }): Note => ({
        code: 'node',
        params: { place, order: `(${order.join(',')})`, frequencyHz },
      }));
  });
}
