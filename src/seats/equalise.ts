import { chainGainDb, matchedCut, sectionsOf, type Band, type MatchedCut } from './biquad.js';
import type { SeatLevels } from './boost.js';
import { filterSampleRate } from './sum.js';
import * as maths from '../signal/maths.js';

/** What a proposal knows of a ridge. */
export interface RidgeToCut {
  readonly frequencyHz: number;
  readonly decayTimeSeconds: number;
  readonly decayTimeSdSeconds: number | null;
  /** Where its decay should be; null where there is no limit. */
  readonly limitSeconds: number | null;
  /** One mode told apart from its neighbours: only then does a cut fit. */
  readonly single: boolean;
  /** Seats it is heard at. */
  readonly seats: readonly number[];
}

export interface EqualiseParams {
  readonly seatCount: number;
  /** No more bands than these. */
  readonly mostBands?: number;
  /** No band cuts deeper, dB (negative). */
  readonly deepestDb?: number;
  /** At no seat may the level in the sixth-octave about a cut come to lie further below that seat's mean, dB (negative). */
  readonly lowestSeatDb?: number;
  /** A ridge is shared where it is heard at this share of the seats. */
  readonly sharedFrom?: number;
  readonly levels: SeatLevels | null;
}

export type SkipCode =
  'cut-band-limit' | 'cut-seats' | 'cut-not-single' | 'cut-no-limit' | 'cut-uncertain' | 'cut-seat-dip';

export interface ProposedCut {
  readonly ridge: number;
  readonly band: MatchedCut;
  /** The limit was out of reach within the depth allowed, so the cut only goes part of the way. */
  readonly partial: boolean;
}

export interface EqualiserProposal {
  readonly cuts: readonly ProposedCut[];
  /** Ridges left alone, and why. */
  readonly skipped: readonly { readonly ridge: number; readonly code: SkipCode }[];
}

/** Relative sd of a decay time from which no filter can be matched to it. */
const uncertain = 0.2;
/** Decay above the target by less than this is not worth a band. */
const leastGain = 1.05;
/** More bands than this no processor of the trade has for one output, and no ear asks for. */
export const mostBandsOfAll = 20;
/** Depths are tried in such steps where a seat would be left with a dip. dB. */
const stepDb = 0.5;

/** Level about a frequency at a seat re the seat's own mean, dB. */
export function standingDb(
  { frequenciesHz, levelsDb }: SeatLevels,
  seat: number,
  frequencyHz: number,
): number {
  const at = seat * frequenciesHz.length;
  const reach = maths.power(2, 1 / 12);
  let [near, count, all] = [0, 0, 0];
  frequenciesHz.forEach((f, k) => {
    all += levelsDb[at + k] / frequenciesHz.length;
    if (f < frequencyHz / reach || f > frequencyHz * reach) return;
    near += levelsDb[at + k];
    count++;
  });
  return count > 0 ? near / count - all : 0;
}

/** Mean gain of a chain over the sixth-octave about a frequency, dB. */
function meanGain(bands: readonly Band[], frequencyHz: number): number {
  const reach = maths.power(2, 1 / 12);
  const about = Array.from({ length: 9 }, (_, k) => frequencyHz * maths.power(reach, (k - 4) / 4));
  return chainGainDb(sectionsOf(bands, filterSampleRate), about, filterSampleRate).reduce(
    (a, b) => a + b / 9,
    0,
  );
}

/**
 * Matched cuts for the ridges that most seats share, the worst first, up to a number of bands. What would leave any single
 * seat with a dip is cut less, or not at all; what only some seats hear is left to placement. Nothing is ever boosted.
 *
 * @param ridges Worst first.
 */
export function proposeCuts(ridges: readonly RidgeToCut[], params: EqualiseParams): EqualiserProposal {
  const { seatCount, levels, mostBands = 5, deepestDb = -12, lowestSeatDb = -6, sharedFrom = 2 / 3 } = params;
  const cuts: ProposedCut[] = [];
  const skipped: { ridge: number; code: SkipCode }[] = [];
  ridges.forEach((ridge, index) => {
    const skip = (code: SkipCode): void => void skipped.push({ ridge: index, code });
    const { decayTimeSeconds: decay, decayTimeSdSeconds: sd, limitSeconds, frequencyHz } = ridge;
    if (!ridge.single) return skip('cut-not-single');
    if (limitSeconds === null || decay <= leastGain * limitSeconds) return skip('cut-no-limit');
    if (sd !== null && sd > uncertain * decay) return skip('cut-uncertain');
    if (ridge.seats.length < sharedFrom * seatCount - 1e-9) return skip('cut-seats');
    if (cuts.length >= mostBands) return skip('cut-band-limit');
    const wanted = 20 * maths.log10(limitSeconds / decay);
    let gainDb = Math.max(deepestDb, wanted);
    let band = matchedCut(frequencyHz, decay, decay * maths.power(10, gainDb / 20));
    if (levels) {
      const seats = Array.from({ length: levels.levelsDb.length / levels.frequenciesHz.length }, (_, k) => k);
      const lowest = Math.min(...seats.map((seat) => standingDb(levels, seat, frequencyHz)));
      // Neighbouring cuts add up: a seat is left with what all of them take there.
      const others = cuts.map((cut) => cut.band);
      while (gainDb < -1 && lowest + meanGain([...others, band], frequencyHz) < lowestSeatDb) {
        gainDb += stepDb;
        band = matchedCut(frequencyHz, decay, decay * maths.power(10, gainDb / 20));
      }
      if (gainDb >= -1) return skip('cut-seat-dip');
    }
    cuts.push({ ridge: index, band, partial: gainDb > wanted + 1e-9 });
  });
  return { cuts, skipped };
}

/**
 * What a chain of cuts gives back: how far it lowers the highest point of the mean response, dB. By so much the system may
 * be turned up until the same peak stands there again; the sources need that much less at these frequencies.
 */
export function headroomGained(
  meanDb: ArrayLike<number>,
  frequenciesHz: ArrayLike<number>,
  bands: readonly Band[],
): number {
  const gain = chainGainDb(sectionsOf(bands, filterSampleRate), frequenciesHz, filterSampleRate);
  let [before, after] = [-Infinity, -Infinity];
  for (let k = 0; k < meanDb.length; k++) {
    before = Math.max(before, meanDb[k]);
    after = Math.max(after, meanDb[k] + gain[k]);
  }
  return before - after;
}
