import type { ShownPlace } from '../study/places.js';
import type { Speaker } from '../words/index.js';

/** What a place is called: by its name, else by its kind and number. */
export function placeName(place: ShownPlace, places: readonly ShownPlace[], speaker: Speaker): string {
  if (place.name) return place.name;
  const { x, y, z } = place.at;
  // The list may have been made anew since: a place is the same where it stands in the same spot.
  const same = ({ at }: ShownPlace): boolean => at.x === x && at.y === y && at.z === z;
  const number = places.filter(({ kind }) => kind === place.kind).findIndex(same) + 1;
  return speaker.view(`${place.kind}-number`, { number });
}
