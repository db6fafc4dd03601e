import type { ResonanceFit } from '../resonance/types.js';
import { withDecay } from '../room/room.js';
import type { Room } from '../room/types.js';
import { candidateModes, matchObservations, type Observation } from './candidates.js';
import { rings } from './ridges.js';
import { measuredShape, type Place } from './shapes.js';
import type { Candidate } from './types.js';
import * as maths from '../signal/maths.js';

/**
 * Candidates of every resonance of a fit that the room may have made, by its index: all together, for one mode makes
 * one.
 *
 * @param places Of the recordings that the fit was made from, in its order.
 */
export function matchResonances(
  { resonances, resolvableSpacingHz }: ResonanceFit,
  places: readonly Place[],
  room: Room,
  toHz: number,
): Map<number, Candidate[]> {
  const modes = candidateModes(room, toHz).map((mode) => withDecay(mode, room));
  const indices = [...resonances.keys()].filter((index) => rings(resonances[index]));
  const observations = indices.map((index): Observation => ({
    ...resonances[index],
    levelDb: rmsDb(resonances[index].amplitudes),
    shape: measuredShape(resonances[index], room, places),
    cluster: resonances[index].kind !== 'resolved',
  }));
  const found = matchObservations(observations, { room, modes, resolvableSpacingHz, places });
  return new Map(indices.map((index, i) => [index, found[i]]));
}

const rmsDb = (values: readonly number[]): number =>
  10 * maths.log10(values.reduce((sum, value) => sum + value * value, 1e-30) / values.length);
