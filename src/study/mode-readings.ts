import { crowding, nodeAt, nodeShape, transitionBand, type Crowding, type Mode } from '../room/index.js';
import { sameOrder, shownMode } from './room-part.js';
import type { StudySnapshot } from './types.js';
import * as maths from '../signal/maths.js';

export { sameOrder, shownMode };
export type { Crowding, Mode };

/** Third-octaves of the range shown, with how many modes lie in each. */
export const crowdingOf = ({ prediction, choices }: StudySnapshot): Crowding[] =>
  prediction ? crowding(prediction.modes, prediction.room, choices) : [];

/**
 * From where to where single modes give way to a crowd: by the walls where they are known, else by the decay that was
 * measured. Null where neither is.
 */
export function transitionOf({ prediction, diagnosis }: StudySnapshot): {
  readonly fromHz: number;
  readonly toHz: number;
  readonly measured: boolean;
} | null {
  const walls = prediction?.transitionFrequencyHz ?? null;
  const at = walls ?? diagnosis?.room?.transitionFrequencyHz ?? null;
  return at === null ? null : { ...transitionBand(at), measured: walls === null };
}

/**
 * Whether a point sits on or near a node of the mode in view, as for seats and sources. `floor` is the shape at the floor
 * under the point, which for a plan says what its waves do there.
 */
export function isNode(
  { room, pressure }: StudySnapshot,
  at: { readonly x: number; readonly y: number; readonly z: number },
  floor: number,
): boolean {
  if (!room || !pressure) return false;
  const { mode } = pressure;
  if (!room.plan) return nodeAt(mode, room, at) !== null;
  const inHeight = maths.cos((mode.order[2] * Math.PI * at.z) / room.size.heightMetres);
  return Math.abs(floor) < nodeShape || Math.abs(inHeight) < nodeShape;
}

/** A ridge and a mode that it may be. */
export interface ModeLink {
  /** Index into the ridges of the diagnosis. */
  readonly ridge: number;
  /** Index into the modes of the prediction. */
  readonly mode: number;
  readonly weight: number;
  readonly deviation: number;
}

/** Candidates below this are not drawn. */
const leastWeight = 0.05;

/** Which ridge may be which predicted mode. */
export function modeLinks({ prediction, diagnosis }: StudySnapshot): ModeLink[] {
  if (!prediction || !diagnosis) return [];
  return diagnosis.ridges.flatMap(({ candidates }, ridge) =>
    candidates.flatMap(({ order, weight, deviation }): ModeLink[] => {
      const mode = prediction.modes.findIndex((one) => sameOrder(one.order, order));
      return mode < 0 || weight < leastWeight ? [] : [{ ridge, mode, weight, deviation }];
    }),
  );
}
