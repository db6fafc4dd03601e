/** Bands as they are edited: what a change makes of one, and what it may not become. */
import {
  bandBoundsOf,
  chainGainDb,
  matchedCut,
  sectionsOf,
  type Band,
  type BandKind,
  type BandMatch,
} from './biquad.js';
import {
  highestBoostDb,
  highestRollOffBoostDb,
  judgeBoost,
  narrowestBoostQ,
  nullSeatsAt,
  rollOffHz,
  type BoostCode,
  type SeatLevels,
} from './boost.js';
import { filterSampleRate } from './sum.js';
import * as maths from '../signal/maths.js';

/** A cut deeper than this asks more of one filter than a match of frequency and decay can hold (common practice). dB. */
export const deepestMatchDb = -18;

/** The exact cut of one mode as a band that knows what it was made for. */
export function matchedBand({ frequencyHz, decayTimeSeconds, targetSeconds }: BandMatch): Band {
  const shortest = decayTimeSeconds * maths.power(10, deepestMatchDb / 20);
  const target = Math.min(decayTimeSeconds, Math.max(shortest, targetSeconds));
  const cut = matchedCut(frequencyHz, decayTimeSeconds, target);
  return {
    kind: cut.kind,
    frequencyHz: cut.frequencyHz,
    gainDb: cut.gainDb,
    q: cut.q,
    match: { frequencyHz, decayTimeSeconds, targetSeconds: target },
  };
}

export interface BandChange {
  readonly kind?: BandKind;
  readonly frequencyHz?: number;
  readonly gainDb?: number;
  readonly q?: number;
  /** Of a matched cut: where the decay is to be. */
  readonly targetSeconds?: number;
}

const within = (value: number, [from, to]: readonly [number, number]): number =>
  Math.min(to, Math.max(from, value));

/**
 * A band after one change. A matched cut stays matched where its gain or its target is changed: the other and its Q follow.
 * Changed in frequency, Q or kind it is a free band. What is beyond the bounds becomes the bound; no cut may turn into a
 * boost of a matched band.
 */
export function changedBand(band: Band, change: BandChange): Band {
  const { match } = band;
  if (match && change.targetSeconds !== undefined)
    return matchedBand({ ...match, targetSeconds: change.targetSeconds });
  if (match && change.gainDb !== undefined)
    return matchedBand({
      ...match,
      targetSeconds: match.decayTimeSeconds * maths.power(10, Math.min(0, change.gainDb) / 20),
    });
  const { kind = band.kind, frequencyHz = band.frequencyHz, gainDb = band.gainDb, q = band.q } = change;
  // A shelf with more Q than 1 overshoots: it would boost where it is to cut.
  const qBounds = kind === 'peaking' || kind === 'all-pass' ? bandBoundsOf.q : ([0.3, 1] as const);
  return {
    kind,
    frequencyHz: within(frequencyHz, bandBoundsOf.frequencyHz),
    gainDb: kind === 'all-pass' ? 0 : within(gainDb, bandBoundsOf.gainDb),
    q: within(q, qBounds),
  };
}

/** Why a change was not taken as it was wished: `boost-sum` where bands together boost more than one may. */
export type BandRefusal = BoostCode | 'boost-sum';

export interface AllowedBand {
  readonly band: Band;
  readonly refused: BandRefusal | null;
  /** Highest gain there, dB; seats (index) with a null there. */
  readonly mostDb: number;
  readonly nullSeats: readonly number[];
}

/** So much of a boost reaches a null only by the skirt of a band, dB: not worth a refusal. */
const skirtDb = 1;

interface Ceiling {
  readonly frequenciesHz: Float64Array;
  /** Highest gain of the whole chain, dB, and whether a null at some seat is why. */
  readonly mostDb: Float64Array;
  readonly isNull: readonly boolean[];
}

function ceilingOf(levels: SeatLevels | null): Ceiling {
  const frequenciesHz =
    levels?.frequenciesHz ?? Float64Array.from({ length: 121 }, (_, k) => 15 * maths.power(20, k / 120));
  const roll = levels && rollOffHz(levels);
  const isNull = Array.from(frequenciesHz, (f) => levels !== null && nullSeatsAt(levels, f).length > 0);
  return {
    frequenciesHz,
    isNull,
    mostDb: frequenciesHz.map((f, k) =>
      isNull[k] ? skirtDb : roll !== null && f <= 1.25 * roll ? highestRollOffBoostDb : highestBoostDb,
    ),
  };
}

/** Where a chain lifts more than is let pass; null where it does not. */
function excessOf(bands: readonly Band[], { frequenciesHz, mostDb, isNull }: Ceiling): BandRefusal | null {
  const gain = chainGainDb(sectionsOf(bands, filterSampleRate), frequenciesHz, filterSampleRate);
  const over = [...gain.keys()].filter((k) => gain[k] > mostDb[k] + 0.01);
  if (over.length === 0) return null;
  return over.some((k) => isNull[k]) ? 'boost-null' : 'boost-sum';
}

/**
 * What of a change may be: the band as wished where it only cuts or boosts as far as is let pass, else the nearest to it.
 * Broad boosts of 3 dB, 4 dB at the natural roll-off, none into a null (common practice); the chain as a whole is held to
 * the same.
 *
 * @param others The other bands of the chain.
 */
export function allowedBand(
  before: Band,
  wanted: Band,
  others: readonly Band[],
  levels: SeatLevels | null,
): AllowedBand {
  const { refused, mostDb, nullSeats } = judgeBoost(wanted, levels);
  if (refused === 'boost-high') {
    // What else stands in the way at the highest gain is the nearer reason.
    const most = allowedBand(before, { ...wanted, gainDb: mostDb }, others, levels);
    return { ...most, refused: most.refused ?? refused, mostDb };
  }
  if (refused === 'boost-narrow' && before.gainDb > 0 && wanted.gainDb === before.gainDb)
    return { band: { ...wanted, q: narrowestBoostQ }, refused, mostDb, nullSeats };
  if (refused) return { band: { ...wanted, gainDb: 0 }, refused, mostDb, nullSeats };
  const asWished = { band: wanted, refused: null, mostDb, nullSeats };
  // One that only cuts may stand whatever the others do: bands that were there before are not its fault.
  if (wanted.gainDb <= 0 || wanted.kind === 'all-pass') return asWished;
  const ceiling = ceilingOf(levels);
  const excess = excessOf([...others, wanted], ceiling);
  if (!excess) return asWished;
  let [low, high] = [0, wanted.gainDb];
  for (let k = 0; k < 12; k++) {
    const middle = (low + high) / 2;
    if (excessOf([...others, { ...wanted, gainDb: middle }], ceiling)) high = middle;
    else low = middle;
  }
  // Whole tenths, rounded down: what is typed and what is refused read alike.
  return {
    band: { ...wanted, gainDb: Math.floor(low * 10 + 0.01) / 10 },
    refused: excess,
    mostDb,
    nullSeats,
  };
}
