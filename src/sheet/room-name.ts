import type { StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';

type Room = NonNullable<StudySnapshot['room']>;

/** A room in a few words: its sides, or that it is a plan. */
export function roomName({ size, plan }: Room, speaker: Speaker): string {
  const [length, width, height] = [size.lengthMetres, size.widthMetres, size.heightMetres].map((side) =>
    speaker.n.significant(side, 3),
  );
  return plan
    ? speaker.view('room-of-plan', { corners: plan.corners.length, height: plan.heightMetres })
    : speaker.view('room-of-sides', { length, width, height });
}
