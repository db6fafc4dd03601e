import type { SystemSnapshot } from '../study/system-types.js';
import type { Speaker } from '../words/index.js';

type Point = SystemSnapshot['arrangement']['seats'][number];

/** A seat or a source: by its name, else where it is, else that nobody said. */
export function pointName({ name, at }: Point, kind: 'seat' | 'source', speaker: Speaker): string {
  if (name) return name;
  if (!at) return speaker.view(`${kind}-unnamed`);
  const [x, y, z] = [at.x, at.y, at.z].map((value) => speaker.n.number(value, 2));
  return speaker.view('point-at', { x, y, z });
}

export const seatNames = ({ arrangement, grid }: SystemSnapshot, speaker: Speaker): string[] =>
  grid.seats.map((seat) => pointName(arrangement.seats[seat], 'seat', speaker));

export const sourceNames = ({ arrangement, grid }: SystemSnapshot, speaker: Speaker): string[] =>
  grid.sources.map((source) => pointName(arrangement.sources[source], 'source', speaker));
