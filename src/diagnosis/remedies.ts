import type { ModeOrder } from '../room/types.js';
import { matchedCut } from '../seats/biquad.js';
import type { FlaggedRidge } from './ridges.js';
import type { Candidate, Cause, Remedy } from './types.js';
import type { Resonance } from '../resonance/types.js';

export interface RemedyEvidence {
  readonly ridge: FlaggedRidge;
  readonly resonance: Resonance | null;
  readonly cause: Cause;
  readonly candidates: readonly Candidate[];
  /** Number of recordings of the diagnosis. */
  readonly seatCount: number;
  readonly speedOfSoundMetresPerSecond: number;
}

/** Excess up to which a ridge that is only "possibly" audible may be left. */
const littleExcess = 1.25;
/** Relative sd of a decay time from which it is not worth acting on. */
const uncertain = 0.3;
/** A cut deeper than this asks more of one filter than a match of frequency and decay can hold (common practice). */
const deepestCutDb = -12;
/** Weight from which a candidate may lend its axis to a remedy. */
const namedWeight = 0.25;
/** A resonance further below the loudest than this makes no peak: equalisation will not see it. */
const noPeakDb = -15;

/** The axis along which a mode changes most: that of its highest order. */
function axisOf(order: ModeOrder): 'x' | 'y' | 'z' {
  const most = Math.max(...order);
  return (['x', 'y', 'z'] as const)[order.indexOf(most)];
}

const axisParam = ([first]: readonly Candidate[]): { axis?: string } =>
  first && first.weight >= namedWeight ? { axis: axisOf(first.order) } : {};

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
  const placing = seatCount > 1 && !everywhere ? placement(evidence) : [];
  const cut = cutOf(evidence);
  remedies.push(...placing, absorb(evidence), ...(cut ? [cut] : []));
  // From one seat nobody knows whether another would do better; it is offered after what works everywhere.
  if (seatCount === 1) remedies.push(...placement(evidence).slice(0, 2));
  return remedies;
}

const again = (reason: string): Remedy => ({ kind: 'measure-again', params: { reason } });

function placement({ ridge, candidates }: RemedyEvidence): Remedy[] {
  const params = { frequencyHz: ridge.frequencyHz, ...axisParam(candidates) };
  return [
    { kind: 'move-seat', params },
    { kind: 'move-source', params },
    { kind: 'add-source', params: {} },
  ];
}

const absorb = ({ ridge, speedOfSoundMetresPerSecond }: RemedyEvidence): Remedy => ({
  kind: 'absorb',
  params: {
    frequencyHz: ridge.frequencyHz,
    quarterWaveMetres: speedOfSoundMetresPerSecond / (4 * ridge.frequencyHz),
  },
});

/** A matched cut, only for one mode that rings alone, stands out, and is known well enough to be met. */
function cutOf({ ridge, resonance }: RemedyEvidence): Remedy | null {
  const { limitSeconds } = ridge.verdict;
  const { decayTimeSeconds, frequencyHz } = ridge;
  if (limitSeconds === null || decayTimeSeconds === null || decayTimeSeconds <= limitSeconds) return null;
  if (resonance?.kind !== 'resolved' || resonance.levelDb < noPeakDb) return null;
  const target = Math.max(limitSeconds, decayTimeSeconds * 10 ** (deepestCutDb / 20));
  const {
    frequencyHz: centreHz,
    gainDb,
    q,
    targetSeconds,
  } = matchedCut(frequencyHz, decayTimeSeconds, target);
  return { kind: 'cut', params: { frequencyHz: centreHz, gainDb, q, targetSeconds } };
}
