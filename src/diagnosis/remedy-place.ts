import type { ModeOrder } from '../room/types.js';
import type { PositionMetres } from '../signal/types.js';
import { believedDb, movesOf, secondSource } from './placement.js';
import type { RemedyEvidence } from './remedies.js';
import type { Remedy } from './types.js';
import * as maths from '../signal/maths.js';

/** The axis along which a mode changes most: that of its highest order. */
function axisOf(order: ModeOrder): 'x' | 'y' | 'z' {
  const most = Math.max(...order);
  return (['x', 'y', 'z'] as const)[order.indexOf(most)];
}

/** The place of the recording that hears the ridge loudest; null where places were not given. */
function placeOf(
  evidence: RemedyEvidence,
  places: readonly (PositionMetres | null)[],
): PositionMetres | null {
  const levels = evidence.resonance?.levelsDb ?? [];
  const loudest = levels.indexOf(Math.max(...levels));
  return places[loudest] ?? null;
}

/**
 * Another place for the seat or the source. A move changes how loud a mode is, not how long it rings; how far follows from
 * the pressure map of the candidate that is likely enough to be named.
 */
export function moveRemedy(
  kind: 'move-seat' | 'move-source',
  evidence: RemedyEvidence,
  order: ModeOrder | null,
  why: string,
): Remedy {
  const { ridge, room } = evidence;
  const params = {
    frequencyHz: ridge.frequencyHz,
    why,
    ...(order && { axis: axisOf(order), order: order.join(',') }),
    expectedSeconds: ridge.decayTimeSeconds,
  };
  const place = placeOf(evidence, kind === 'move-seat' ? evidence.seats : evidence.sources);
  if (!room || !order || !place) return { kind, params };
  const moves = movesOf(order, room.size, place, kind === 'move-seat' ? 'seat' : 'source');
  const [shortest] = [...moves].sort((a, b) => Math.abs(a.metres) - Math.abs(b.metres));
  if (!shortest) return { kind, params };
  const { axis, metres, changeDb } = shortest;
  return { kind, params: { ...params, axis, moveMetres: metres, expectedDb: changeDb } };
}

/** A further source where it would cancel the likely mode. */
export function addSourceRemedy(evidence: RemedyEvidence, order: ModeOrder | null, why: string): Remedy {
  const { ridge, room } = evidence;
  const params = { frequencyHz: ridge.frequencyHz, why, expectedSeconds: ridge.decayTimeSeconds };
  const place = placeOf(evidence, evidence.sources);
  const second = room && order && place ? secondSource(order, room.size, place) : null;
  if (!second) return { kind: 'add-source', params };
  const { axis, at, share } = second;
  return {
    kind: 'add-source',
    params: {
      ...params,
      ...{ axis, x: at.x, y: at.y, z: at.z },
      order: order!.join(','),
      expectedDb: Math.max(believedDb, 20 * maths.log10(Math.max(1e-9, Math.abs(share)))),
    },
  };
}
