/** What is told of two stages: their ridges beside each other, and what the differences come to. */
import type { Diagnosis, Ridge } from '../diagnosis/types.js';
import { pairRidges, type RidgePair } from './system-readings.js';
import type { PairSnapshot } from './pair.js';

export type { RidgePair };

/** Why nothing was read of what rings: no ridge then means nothing. Empty where something was. */
export const refusalsOf = ({ fit, resonances }: Diagnosis): Diagnosis['fit']['notes'] =>
  resonances.length === 0 ? fit.notes : [];

/** How one ridge of the first fares in the second. */
export type PairVerdict = 'shorter' | 'longer' | 'unsure' | 'not-found' | 'new';

export interface PairRow extends RidgePair {
  readonly verdict: PairVerdict;
  /** Above its limit in the second. */
  readonly above: boolean;
}

const verdictOf = ({ before, changeSeconds, sure, afterSeconds }: RidgePair): PairVerdict => {
  if (!before) return 'new';
  if (afterSeconds === null || changeSeconds === null) return 'not-found';
  if (!sure) return 'unsure';
  return changeSeconds < 0 ? 'shorter' : 'longer';
};

/** Every ridge of both, the worst of the first before others; null until both are found. */
export function pairRows({ first, second }: PairSnapshot): PairRow[] | null {
  if (!first?.diagnosis || !second?.diagnosis) return null;
  return pairRidges(first.diagnosis, second.diagnosis).map((pair) => ({
    ...pair,
    verdict: verdictOf(pair),
    above: pair.after !== null,
  }));
}

export interface PairSummary {
  readonly ridges: number;
  readonly shorter: number;
  readonly longer: number;
  readonly unsure: number;
  readonly gone: number;
  readonly fresh: number;
  /** Ridges of the first that stand above no limit in the second. */
  readonly within: number;
}

export function pairSummary(rows: readonly PairRow[]): PairSummary {
  const count = (wanted: PairVerdict): number => rows.filter(({ verdict }) => verdict === wanted).length;
  const old = rows.filter(({ before }) => before !== null);
  return {
    ridges: old.length,
    shorter: count('shorter'),
    longer: count('longer'),
    unsure: count('unsure'),
    gone: count('not-found'),
    fresh: count('new'),
    within: old.filter(({ above, afterSeconds }) => !above && afterSeconds !== null).length,
  };
}

export const ridgeOfRow = ({ before, after }: RidgePair): Ridge => (before ?? after)!;
