import type { Resonance } from '../resonance/types.js';
import type { ModeOrder, Room } from '../room/types.js';
import { matchedCut } from '../seats/biquad.js';
import type { PositionMetres } from '../signal/types.js';
import { absorbRemedy } from './remedy-absorb.js';
import { addSourceRemedy, moveRemedy } from './remedy-place.js';
import type { FlaggedRidge } from './ridges.js';
import type { Candidate, Cause, Remedy } from './types.js';
import * as maths from '../signal/maths.js';

export interface RemedyEvidence {
  readonly ridge: FlaggedRidge;
  readonly resonance: Resonance | null;
  readonly cause: Cause;
  readonly candidates: readonly Candidate[];
  /** Number of recordings of the diagnosis. */
  readonly seatCount: number;
  readonly speedOfSoundMetresPerSecond: number;
  readonly room: Room | null;
  /** Of the recordings, in their order; null where not given. */
  readonly seats: readonly (PositionMetres | null)[];
  readonly sources: readonly (PositionMetres | null)[];
}

/** Excess up to which a ridge that is only "possibly" audible may be left. */
const littleExcess = 1.25;
/** Relative sd of a decay time from which it is not worth acting on. */
const uncertain = 0.3;
/** A cut deeper than this asks more of one filter than a match of frequency and decay can hold (common practice). */
const deepestCutDb = -12;
/** Weight from which a candidate may lend its shape to a remedy. */
const namedWeight = 0.25;
/** A resonance further below the loudest than this makes no peak: equalisation will not see it. */
const noPeakDb = -15;

/** What must be shown beside each kind of remedy: codes of the cautions. */
export const cautionsOf: Readonly<Record<Remedy['kind'], readonly string[]>> = {
  'move-seat': ['licensed'],
  'move-source': ['licensed'],
  'add-source': ['levels', 'licensed'],
  absorb: ['fire', 'panels', 'licensed'],
  cut: ['boost', 'levels', 'licensed'],
  leave: [],
  'measure-again': ['levels'],
};

/** The shape that a remedy may rest on: that of the candidate that is likely enough to be named. */
export const namedOrder = ([first]: readonly Candidate[]): ModeOrder | null =>
  first && first.weight >= namedWeight ? first.order : null;

/** What might help a ridge, the most fitting first (the table of practice is common in the trade, without a source). */
export function remediesFor(evidence: RemedyEvidence): Remedy[] {
  const { ridge, cause, seatCount } = evidence;
  if (cause === 'hum') return [again('hum')];
  if (cause === 'source' || cause === 'equaliser') return [again('source')];
  if (ridge.resonance === null) return [again('unexplained')];
  const remedies: Remedy[] = [];
  const { decayTimeSeconds: decay, decayTimeSdSeconds: sd } = ridge;
  if (decay !== null && sd !== null && sd > uncertain * decay) remedies.push(again('noise'));
  if (ridge.audible !== 'yes' && ridge.excess !== null && ridge.excess < littleExcess)
    remedies.push({ kind: 'leave', params: {} });
  if (seatCount === 1) remedies.push(again('seats'));
  const everywhere = seatCount > 1 && ridge.seats.length === seatCount;
  const why = seatCount === 1 ? 'one-seat' : everywhere ? 'everywhere' : 'some-seats';
  const order = namedOrder(evidence.candidates);
  const placing = seatCount > 1 && !everywhere ? placement(evidence, order, why) : [];
  const cut = cutOf(evidence, why);
  remedies.push(...placing, absorbRemedy(evidence, order, why), ...(cut ? [cut] : []));
  // From one seat nobody knows whether another would do better; it is offered after what works everywhere.
  if (seatCount === 1) remedies.push(...placement(evidence, order, why).slice(0, 2));
  return remedies;
}

const again = (reason: string): Remedy => ({ kind: 'measure-again', params: { reason } });

function placement(evidence: RemedyEvidence, order: ModeOrder | null, why: string): Remedy[] {
  return [
    moveRemedy('move-seat', evidence, order, why),
    moveRemedy('move-source', evidence, order, why),
    addSourceRemedy(evidence, order, why),
  ];
}

/** A matched cut, only for one mode that rings alone, stands out, and is known well enough to be met. */
function cutOf({ ridge, resonance, seatCount }: RemedyEvidence, why: string): Remedy | null {
  const { limitSeconds } = ridge.verdict;
  const { decayTimeSeconds, frequencyHz } = ridge;
  if (limitSeconds === null || decayTimeSeconds === null || decayTimeSeconds <= limitSeconds) return null;
  if (resonance?.kind !== 'resolved' || resonance.levelDb < noPeakDb) return null;
  const target = Math.max(limitSeconds, decayTimeSeconds * maths.power(10, deepestCutDb / 20));
  const {
    frequencyHz: centreHz,
    gainDb,
    q,
    targetSeconds,
  } = matchedCut(frequencyHz, decayTimeSeconds, target);
  return {
    kind: 'cut',
    params: {
      ...{ frequencyHz: centreHz, gainDb, q, targetSeconds, why },
      expectedSeconds: targetSeconds,
      expectedDb: gainDb,
      // Seats that do not hear the ridge lose the level all the same.
      otherSeats: seatCount - ridge.seats.length,
    },
  };
}
