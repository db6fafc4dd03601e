/** What views say of sources and seats, as plain data: each is computed from a snapshot, and kept for it. */
import type { Diagnosis, Ridge } from '../diagnosis/types.js';
import {
  chainGainDb,
  filterSampleRate,
  hangSeconds,
  ownDecaySeconds,
  sectionsOf,
  seatSpread,
  sumSources,
  plainSetting,
  type RidgeToCut,
  type SeatSpread,
} from '../seats/index.js';
import { factorOnDecay } from '../seats/ridge-levels.js';
import { settingsOf, weightsOf } from './system-design.js';
import type { SystemDesign, SystemSnapshot } from './system-types.js';
import * as maths from '../signal/maths.js';

/** A ridge that lies further below the loudest resonance makes no peak, and a cut there changes little. dB. */
const noPeakDb = -15;

/** The ridges of a joint diagnosis within a band as the automatic proposal takes them, worst first. */
export function ridgesToCut(
  { ridges, resonances }: Diagnosis,
  { fromHz, toHz }: Pick<SystemDesign, 'fromHz' | 'toHz'>,
): RidgeToCut[] {
  const sound = resonances.filter(({ kind }) => kind !== 'source' && kind !== 'hum');
  const loudest = Math.max(...sound.map(({ levelDb }) => levelDb));
  return ridges.flatMap((ridge) => {
    const { resonance, frequencyHz, decayTimeSeconds, decayTimeSdSeconds, limitSeconds, seats } = ridge;
    if (decayTimeSeconds === null || resonance === null) return [];
    if (frequencyHz < fromHz || frequencyHz > toHz) return [];
    const { kind, levelDb } = resonances[resonance];
    if (levelDb < loudest + noPeakDb) return [];
    const single = kind === 'resolved';
    return [{ frequencyHz, decayTimeSeconds, decayTimeSdSeconds, limitSeconds, seats, single }];
  });
}

export interface Spreads {
  /** All sources alike, as measured. */
  readonly before: SeatSpread;
  /** Through the design. */
  readonly designed: SeatSpread;
}

const spreads = new WeakMap<object, { key: string; value: Spreads }>();

/** Spread over the seats before and through the design; null without responses. Kept until something of it changes. */
export function spreadsOf(snapshot: SystemSnapshot): Spreads | null {
  const { matrix } = snapshot;
  if (!matrix) return null;
  const settings = settingsOf(snapshot);
  const weights = weightsOf(snapshot);
  const key = JSON.stringify([settings, [...weights]]);
  const known = spreads.get(matrix);
  if (known?.key === key) return known.value;
  const plain = settings.map(() => plainSetting);
  const heard = weights.some((weight) => weight > 0) ? weights : new Float64Array(weights.length).fill(1);
  const value = {
    before: seatSpread(sumSources(matrix, plain), heard),
    designed: seatSpread(sumSources(matrix, settings), heard),
  };
  spreads.set(matrix, { key, value });
  return value;
}

/** Spread of the later stage as measured, all its sources alike; null where there is none. */
export function afterSpreadOf({ afterMatrix }: SystemSnapshot): SeatSpread | null {
  if (!afterMatrix) return null;
  return seatSpread(
    sumSources(
      afterMatrix,
      Array.from({ length: afterMatrix.sourceCount }, () => plainSetting),
    ),
  );
}

/** One ridge at every seat. */
export interface SeatRidge {
  readonly ridge: Ridge;
  /** Level of its resonance at each seat re the loudest of all, dB; null where it is not a resonance. */
  readonly levelsDb: readonly (number | null)[];
  readonly heard: readonly boolean[];
  /** How long until it lies 30 dB below the seat's own loudest resonance, s; null where it has no decay time. */
  readonly hangSeconds: readonly (number | null)[];
  readonly where: 'everywhere' | 'most' | 'some' | 'one';
}

/** Share of the seats from which a ridge is said to be heard at most of them. */
const mostShare = 2 / 3;

export function seatRidges(diagnosis: Diagnosis): SeatRidge[] {
  const count = diagnosis.files.length;
  const loudest = Array.from({ length: count }, (_, seat) =>
    Math.max(-Infinity, ...diagnosis.resonances.map(({ levelsDb }) => levelsDb[seat] ?? -Infinity)),
  );
  return diagnosis.ridges.map((ridge): SeatRidge => {
    const resonance = ridge.resonance === null ? null : diagnosis.resonances[ridge.resonance];
    const levelsDb = Array.from({ length: count }, (_, seat) => resonance?.levelsDb[seat] ?? null);
    const heard = Array.from({ length: count }, (_, seat) => ridge.seats.includes(seat));
    const seats = ridge.seats.length;
    return {
      ridge,
      levelsDb,
      heard,
      hangSeconds: levelsDb.map((level, seat) =>
        level === null || ridge.decayTimeSeconds === null
          ? null
          : hangSeconds(ridge.decayTimeSeconds, level, loudest[seat]),
      ),
      where:
        seats === count ? 'everywhere' : seats >= mostShare * count ? 'most' : seats > 1 ? 'some' : 'one',
    };
  });
}

/** A ridge before and after: by the nearest in frequency within 2 %, or gone. */
export interface RidgePair {
  readonly before: Ridge | null;
  readonly after: Ridge | null;
  /** The resonance at that frequency afterwards, also below the limit; null where none is left. */
  readonly afterSeconds: number | null;
  readonly afterSdSeconds: number | null;
  readonly changeSeconds: number | null;
  /** Of the change, from both uncertainties. */
  readonly changeSdSeconds: number | null;
  /** Whether the change is larger than two of its standard deviations; null where that is not known. */
  readonly sure: boolean | null;
}

const pairWithin = 0.02;

function nearest<T extends { readonly frequencyHz: number }>(
  list: readonly T[],
  frequencyHz: number,
): T | null {
  let best: T | null = null;
  for (const one of list) {
    const off = Math.abs(one.frequencyHz / frequencyHz - 1);
    if (off <= pairWithin && (!best || off < Math.abs(best.frequencyHz / frequencyHz - 1))) best = one;
  }
  return best;
}

/** Every ridge of two diagnoses beside each other, the worst before first; new ones last. */
export function pairRidges(before: Diagnosis, after: Diagnosis): RidgePair[] {
  const taken = new Set<Ridge>();
  const pairs = before.ridges.map((ridge): RidgePair => {
    const left = after.ridges.filter((other) => !taken.has(other));
    const match = nearest(left, ridge.frequencyHz);
    if (match) taken.add(match);
    const resonance = nearest(
      after.resonances.filter(({ kind }) => kind !== 'hum' && kind !== 'source'),
      ridge.frequencyHz,
    );
    const afterSeconds = match?.decayTimeSeconds ?? resonance?.decayTimeSeconds ?? null;
    const afterSd = match?.decayTimeSdSeconds ?? resonance?.decayTimeSdSeconds ?? null;
    const change =
      afterSeconds === null || ridge.decayTimeSeconds === null ? null : afterSeconds - ridge.decayTimeSeconds;
    const sd =
      afterSd === null || ridge.decayTimeSdSeconds === null
        ? null
        : maths.hypot(afterSd, ridge.decayTimeSdSeconds);
    return {
      before: ridge,
      after: match,
      afterSeconds,
      afterSdSeconds: afterSd,
      changeSeconds: change,
      changeSdSeconds: sd,
      sure: change === null || sd === null ? null : Math.abs(change) > 2 * sd,
    };
  });
  const fresh = after.ridges
    .filter((ridge) => !taken.has(ridge))
    .map((ridge): RidgePair => {
      const { decayTimeSeconds, decayTimeSdSeconds } = ridge;
      const [afterSeconds, afterSdSeconds] = [decayTimeSeconds, decayTimeSdSeconds];
      return {
        before: null,
        after: ridge,
        afterSeconds,
        afterSdSeconds,
        changeSeconds: null,
        changeSdSeconds: null,
        sure: null,
      };
    });
  return [...pairs, ...fresh];
}

/** What the filters over all sources do to one ridge, at once: before anything is fitted anew. */
export interface RidgeThrough {
  readonly ridge: Ridge;
  /** Of the mode's own sine, dB; below about -20 its zero has taken it away. */
  readonly changeDb: number;
  /** Decay that is then left: the filter's where the mode is taken away, else the mode's own. */
  readonly expectedSeconds: number | null;
}

/** Below this what is left of a mode lies under the filter's own ringing, dB. */
const takenAwayDb = -20;

export function ridgesThrough(
  diagnosis: Diagnosis,
  bands: SystemSnapshot['design']['bands'],
): RidgeThrough[] {
  const setting = { ...plainSetting, bands };
  return diagnosis.ridges.map((ridge): RidgeThrough => {
    const { frequencyHz, decayTimeSeconds } = ridge;
    const damping = decayTimeSeconds === null ? 0 : maths.log(1000) / decayTimeSeconds;
    const [re, im] = factorOnDecay(setting, frequencyHz, damping);
    const changeDb = 20 * maths.log10(Math.max(1e-9, maths.hypot(re, im)));
    const steady = chainGainDb(sectionsOf(bands, filterSampleRate), [frequencyHz], filterSampleRate)[0];
    // The one whose zero lies on the mode rings on in its place.
    const taker = bands
      .filter(({ kind, gainDb }) => kind === 'peaking' && gainDb < 0)
      .sort((x, y) => Math.abs(x.frequencyHz - frequencyHz) - Math.abs(y.frequencyHz - frequencyHz))[0];
    const taken = changeDb < takenAwayDb && decayTimeSeconds !== null && taker !== undefined;
    return {
      ridge,
      changeDb: taken ? steady : changeDb,
      expectedSeconds: taken ? ownDecaySeconds(taker) : decayTimeSeconds,
    };
  });
}
