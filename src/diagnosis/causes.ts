import type { Resonance, ResonanceKind } from '../resonance/types.js';
import { chanceOfAny } from './candidates.js';
import { rings } from './ridges.js';
import type { Candidate, Cause, Evidence } from './types.js';

/** What is known of a ridge when its cause is asked for. */
export interface CauseEvidence {
  /** Null where no resonance explains the ridge. */
  readonly kind: ResonanceKind | null;
  readonly candidates: readonly Candidate[];
  /** The response shows this resonance and next to nothing else: see `ringsAlone`. */
  readonly alone: boolean;
  /** That every seat hears it alike: see `oneShape`. */
  readonly shape?: Evidence | null;
  /** What recordings close to the source say of it: see `nearFieldEvidence`. */
  readonly beside?: Evidence | null;
  /** Whether modes were predicted at all: without, a mode that is alike at all seats cannot be told from the source. */
  readonly hasRoom?: boolean;
}

/** Cause of a ridge, `room-mode` only where a predicted mode is more likely than not. */
export function causeOf({ kind, candidates, alone, shape, beside, hasRoom }: CauseEvidence): Cause {
  if (kind === 'hum') return 'hum';
  if (kind === 'source') return 'source';
  if (kind === null) return 'unknown';
  if (alone) return 'equaliser';
  if (beside?.kind === 'near-field') return 'source';
  if (kind === 'two-slopes') return 'coupled';
  if (chanceOfAny(candidates) >= 0.5) return 'room-mode';
  return hasRoom && shape && beside?.kind !== 'not-near-field' ? 'source' : 'unknown';
}

/** A room has at least this many modes in the range before a single one is found odd. */
const manyModes = 8;

/**
 * Whether a response rings at one frequency alone where a room would ring at many: what a boost, or another resonant
 * device, does to a click. Said only where the range holds enough modes that a room could not have hidden them all.
 *
 * @param expectedModes Number of modes that the room, or one of 60 m3, has in the range.
 */
export function ringsAlone(resonances: readonly Resonance[], expectedModes: number): boolean {
  const ringing = resonances.filter(rings);
  return ringing.length === 1 && ringing[0].kind === 'resolved' && expectedModes >= manyModes;
}
