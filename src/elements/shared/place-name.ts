import type { ShownPlace } from '../../study/places.js';
import type { Speaker } from '../../words/index.js';

/** What a place is called: by its name, else by its kind and number. */
export function placeName(place: ShownPlace, places: readonly ShownPlace[], speaker: Speaker): string {
  if (place.name) return place.name;
  const number = places.filter(({ kind }) => kind === place.kind).indexOf(place) + 1;
  return speaker.view(`${place.kind}-number`, { number });
}
