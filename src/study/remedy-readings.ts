/** What views say of filters over all sources and of what may help, as plain data; kept for the snapshot it is made from. */
import { remedyOptions, type OptionPlaces, type RemedyOption } from '../diagnosis/remedy-options.js';
import type { Diagnosis, Ridge } from '../diagnosis/types.js';
import {
  allowedBand,
  changedBand,
  chainGainDb,
  filterSampleRate,
  headroomGained,
  hangSeconds,
  judgeBoost,
  narrowestBoostQ,
  ownDecaySeconds,
  levelsOf,
  sectionsOf,
  spreadOfLevels,
  sumSources,
  type AllowedBand,
  type Band,
  type BandChange,
  type SeatLevels,
  type SeatSpread,
} from '../seats/index.js';
import { settingsOf, weightsOf } from './system-design.js';
import { pairRidges, ridgesThrough, ridgesToCut, seatRidges, type RidgePair } from './system-readings.js';
import type { SystemSnapshot } from './system-types.js';
import * as maths from '../signal/maths.js';

export { ownDecaySeconds as ownDecay };
export { biquadCsv, biquadDocument, bandCsv } from '../seats/export.js';
export { bandBoundsOf } from '../seats/biquad.js';
export { deepestMatchDb, matchedBand } from '../seats/bands.js';
export { mostBandsOfAll } from '../seats/equalise.js';
export { optionKinds } from '../diagnosis/remedy-options.js';
export type { AllowedBand, Band, BandChange, RemedyOption };

/** Fine enough for a band of Q 30. */
const perOctave = 192;

interface Kept<T> {
  readonly key: string;
  readonly value: T;
}

const bare = new WeakMap<object, Kept<SeatLevels>>();

/** Levels at the seats through the settings of the sources, without the bands over all of them; null without responses. */
export function bareLevels(snapshot: SystemSnapshot): SeatLevels | null {
  const { matrix, design } = snapshot;
  if (!matrix) return null;
  const settings = settingsOf({ ...snapshot, design: { ...design, bands: [] } });
  const key = JSON.stringify(settings);
  const known = bare.get(matrix);
  if (known?.key === key) return known.value;
  const value = { frequenciesHz: matrix.frequenciesHz, levelsDb: levelsOf(sumSources(matrix, settings)) };
  bare.set(matrix, { key, value });
  return value;
}

export interface BandCost {
  /** Highest gain that would be let pass there, dB. */
  readonly mostDb: number;
  /** Times the power and the cone's excursion at its centre; 1 where it cuts. */
  readonly powerTimes: number;
  readonly excursionTimes: number;
}

/** Filters over all sources: what they do, at every seat, at once. */
export interface RemedyReading {
  /** Ascending, Hz, and the gain of all bands together, dB. */
  readonly frequenciesHz: Float64Array;
  readonly gainDb: Float64Array;
  /** Of each band alone, over the same frequencies. */
  readonly bandGainsDb: readonly Float64Array[];
  readonly costs: readonly BandCost[];
  /** The seats without and with the bands. */
  readonly before: SeatSpread;
  readonly after: SeatSpread;
  /** By how much the highest point of the mean response falls, dB; negative where the bands raise it. */
  readonly headroomDb: number;
}

const readings = new WeakMap<SeatLevels, Kept<RemedyReading>>();

/** Null without responses. */
export function remedyReading(snapshot: SystemSnapshot): RemedyReading | null {
  const levels = bareLevels(snapshot);
  if (!levels) return null;
  const { bands } = snapshot.design;
  const weights = weightsOf(snapshot);
  const key = JSON.stringify([bands, [...weights]]);
  const known = readings.get(levels);
  if (known?.key === key) return known.value;
  const { frequenciesHz: read, levelsDb } = levels;
  const [from, to] = [read[0], read[read.length - 1]];
  const count = Math.ceil(maths.log2(to / from) * perOctave);
  const frequenciesHz = Float64Array.from(
    { length: count + 1 },
    (_, k) => from * maths.power(to / from, k / count),
  );
  const gainOf = (list: readonly Band[], at: Float64Array): Float64Array =>
    chainGainDb(sectionsOf(list, filterSampleRate), at, filterSampleRate);
  const heard = weights.some((weight) => weight > 0) ? weights : new Float64Array(weights.length).fill(1);
  const coarse = gainOf(bands, read);
  const before = spreadOfLevels(levelsDb, read.length, heard);
  const value: RemedyReading = {
    frequenciesHz,
    gainDb: gainOf(bands, frequenciesHz),
    bandGainsDb: bands.map((band) => gainOf([band], frequenciesHz)),
    costs: bands.map((band) => {
      const { mostDb, powerTimes, excursionTimes } = judgeBoost(band, levels);
      return { mostDb, powerTimes, excursionTimes };
    }),
    before,
    after: spreadOfLevels(
      levelsDb.map((level, k) => level + coarse[k % read.length]),
      read.length,
      heard,
    ),
    headroomDb: headroomGained(before.meanDb, read, bands),
  };
  readings.set(levels, { key, value });
  return value;
}

/** One ridge without the bands, as they are expected to leave it, and as the samples through them were fitted. */
export interface RidgeAfter {
  readonly ridge: Ridge;
  readonly expectedSeconds: number | null;
  readonly expectedDb: number;
  /** Fitted to the samples through the design; null while that is under way. */
  readonly fitted: RidgePair | null;
}

/** Ridges as measured, the worst first; null before they are found. */
export function ridgesAfter({ before, designed, design }: SystemSnapshot): RidgeAfter[] | null {
  if (!before) return null;
  const pairs = designed && designed !== before ? pairRidges(before.diagnosis, designed.diagnosis) : null;
  return ridgesThrough(before.diagnosis, design.bands).map(({ ridge, expectedSeconds, changeDb }) => ({
    ...{ ridge, expectedSeconds, expectedDb: changeDb },
    fitted: pairs?.find((pair) => pair.before === ridge) ?? null,
  }));
}

/** A decay that is longer by less than this is the same: only its limit, or its neighbours, are others. */
const sameDecay = 1.1;
const sameFrequency = 0.02;

/** Ridges that the bands made, or made longer, and that stood above no limit without them. */
export function freshRidges({ before, designed }: SystemSnapshot): Ridge[] {
  if (!before || !designed || designed === before) return [];
  const wasThere = ({ frequencyHz, decayTimeSeconds }: Ridge): boolean =>
    before.diagnosis.resonances.some(
      (one) =>
        Math.abs(one.frequencyHz / frequencyHz - 1) < sameFrequency &&
        one.decayTimeSeconds !== null &&
        sameDecay * one.decayTimeSeconds >= (decayTimeSeconds ?? Infinity),
    );
  return pairRidges(before.diagnosis, designed.diagnosis).flatMap((pair) =>
    pair.before === null && pair.after && !wasThere(pair.after) ? [pair.after] : [],
  );
}

/** One ridge at every seat: how long it hangs without the filters and with them, s; null where it is not heard. */
export interface RidgeHangs {
  readonly ridge: Ridge;
  readonly seats: readonly { readonly before: number | null; readonly after: number | null }[];
}

/** How long every ridge hangs at every seat, until it lies 30 dB below the loudest resonance there; null until both are found. */
export function ridgeHangs({ before, designed }: SystemSnapshot): RidgeHangs[] | null {
  if (!before || !designed || designed === before) return null;
  const { resonances } = designed.diagnosis;
  const loudest = (seat: number): number =>
    Math.max(-Infinity, ...resonances.map(({ levelsDb }) => levelsDb[seat] ?? -Infinity));
  return seatRidges(before.diagnosis).map(({ ridge, heard, hangSeconds: without }) => {
    const [near] = resonances
      .filter(({ kind }) => kind !== 'hum' && kind !== 'source')
      .map((one) => ({ one, off: Math.abs(one.frequencyHz / ridge.frequencyHz - 1) }))
      .filter(({ off }) => off < sameFrequency)
      .sort((a, b) => a.off - b.off);
    return {
      ridge,
      seats: without.map((value, seat) => ({
        before: heard[seat] ? value : null,
        after:
          near && near.one.decayTimeSeconds !== null
            ? hangSeconds(near.one.decayTimeSeconds, near.one.levelsDb[seat], loudest(seat))
            : null,
      })),
    };
  });
}

/** Where seats and sources of the grid stand, with the levels there. */
export function placesOfOptions(snapshot: SystemSnapshot): OptionPlaces {
  const { arrangement, grid } = snapshot;
  return {
    seats: grid.seats.map((seat) => arrangement.seats[seat].at),
    sources: grid.sources.map((source) => arrangement.sources[source].at),
    levels: bareLevels(snapshot),
  };
}

interface KeptOptions {
  readonly levels: SeatLevels | null;
  readonly lists: Map<string, RemedyOption[]>;
}

const options = new WeakMap<Diagnosis, KeptOptions>();

/** Everything that can be done about a ridge as measured, by its index. */
export function optionsOf(snapshot: SystemSnapshot, ridge: number): RemedyOption[] {
  const { before } = snapshot;
  if (!before?.diagnosis.ridges[ridge]) return [];
  const places = placesOfOptions(snapshot);
  const key = JSON.stringify([ridge, places.seats, places.sources]);
  let known = options.get(before.diagnosis);
  if (known?.levels !== places.levels) known = undefined;
  if (!known) options.set(before.diagnosis, (known = { levels: places.levels, lists: new Map() }));
  let list = known.lists.get(key);
  if (!list) known.lists.set(key, (list = remedyOptions(before.diagnosis, ridge, places)));
  return list;
}

/** A band after a change, as far as it is let pass with the others and at these seats. */
export function bandAfter(snapshot: SystemSnapshot, index: number, change: BandChange): AllowedBand {
  const { bands } = snapshot.design;
  const others = bands.filter((_, k) => k !== index);
  return allowedBand(bands[index], changedBand(bands[index], change), others, bareLevels(snapshot));
}

/** The sum of before and after at one seat, dB, over the frequencies of the responses. */
export const levelsOfSeat = ({ levelsDb, meanDb }: SeatSpread, seat: number): Float64Array =>
  levelsDb.subarray(seat * meanDb.length, (seat + 1) * meanDb.length);

/** Why a change was not taken as it was wished, as a code with numbers; null where it was. */
export const bandRefusal = ({ refused, mostDb }: AllowedBand) =>
  refused && { code: `refused-${refused}`, params: { mostDb, q: narrowestBoostQ } };

/** What the automatic proposal came to, with the ridges that it speaks of; null where none was made. */
export function proposalOf({ equaliser, before, design }: SystemSnapshot) {
  if (!equaliser || !before) return null;
  const ridges = ridgesToCut(before.diagnosis, design);
  return {
    cuts: equaliser.cuts.flatMap(({ ridge, band, partial }) =>
      ridges[ridge]
        ? [
            {
              ...{ frequencyHz: ridges[ridge].frequencyHz, gainDb: band.gainDb, q: band.q, partial },
              ...{ beforeSeconds: ridges[ridge].decayTimeSeconds, targetSeconds: band.targetSeconds },
            },
          ]
        : [],
    ),
    skipped: equaliser.skipped.flatMap(({ ridge, code }) =>
      ridges[ridge] ? [{ frequencyHz: ridges[ridge].frequencyHz, code }] : [],
    ),
  };
}
