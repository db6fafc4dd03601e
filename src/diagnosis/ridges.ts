import type { Resonance } from '../resonance/types.js';
import type { Room } from '../room/types.js';
import { audibleAt, judge, type DecayAt, type Verdict } from './limits.js';
import type { Audible, LimitName } from './types.js';

/** A ridge before its cause is known. */
export interface FlaggedRidge {
  readonly resonance: number | null;
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
  readonly decayTimeSeconds: number | null;
  readonly decayTimeSdSeconds: number | null;
  readonly verdict: Verdict;
  readonly excess: number | null;
  readonly audible: Audible;
  readonly seats: readonly number[];
}

/**
 * A bare click falls 60 dB in 0.49 of the length of a sliding Hann window: 0.147 s for the 0.3 s that pictures use.
 * What falls faster is not seen to hang in any of them.
 */
export const windowDecaySeconds = 0.49 * 0.3;

/**
 * Relative sd of a decay time from which it is not known to within a factor of two (two sd): whether it is above a limit
 * cannot be said, so it is told among the resonances and is no ridge.
 */
const unknownDecay = 0.4;

/**
 * So far below the loudest resonance nobody hears one ring: where that reads 90 dB, this is 25 dB, the threshold of hearing
 * at 120 Hz and far below it lower down (22 dB at 125 Hz, 44 dB at 50 Hz: ISO 226, from memory).
 */
export const inaudibleDb = 65;

/** Hum that lies this far below the loudest resonance covers no decay that could be heard, dB. */
export const faintHumDb = 90;

/** At a seat where a resonance is this far below its loudest, or within three of its own sd of nothing, it is not heard. */
const heardDb = 20;
const heardSd = 3;

/** Whether a resonance is one that the room, or a boost, may let ring: hum never decays, and the source is told apart. */
export const rings = ({ kind }: Resonance): boolean => kind !== 'hum' && kind !== 'source';

/** Decays of the resonances that may be neighbours of another. */
export const decaysOf = (resonances: readonly Resonance[], without = -1): DecayAt[] =>
  resonances.flatMap((resonance, index) =>
    index !== without && rings(resonance) && resonance.decayTimeSeconds !== null
      ? [{ frequencyHz: resonance.frequencyHz, decayTimeSeconds: resonance.decayTimeSeconds }]
      : [],
  );

/** Indices of the recordings in which a resonance stands out of its own uncertainty. */
export function seatsOf({ amplitudes, amplitudeSd, levelsDb }: Resonance): number[] {
  const loudest = Math.max(...levelsDb);
  const heard = [...levelsDb.keys()].filter(
    (i) => levelsDb[i] > loudest - heardDb && !(amplitudes[i] < heardSd * amplitudeSd[i]),
  );
  return heard.length > 0 ? heard : [levelsDb.indexOf(loudest)];
}

/**
 * The resonances above the chosen limit, and every hum line (it never decays, so no limit applies). The loudspeaker's
 * own resonances are never ridges, nor is what falls faster than the window of the pictures, nor what is too faint to be
 * heard, nor a decay that is not known.
 */
export function flagResonances(
  resonances: readonly Resonance[],
  limit: LimitName,
  room: Room | null,
): FlaggedRidge[] {
  return resonances.flatMap((resonance, index): FlaggedRidge[] => {
    const { frequencyHz, frequencySdHz, decayTimeSeconds, decayTimeSdSeconds, kind, levelDb } = resonance;
    const common = { resonance: index, frequencyHz, frequencySdHz, seats: seatsOf(resonance) };
    if (kind === 'hum') {
      if (levelDb < -faintHumDb) return [];
      const verdict: Verdict = { limitName: limit, limitSeconds: null, above: true };
      return [
        {
          ...common,
          decayTimeSeconds: null,
          decayTimeSdSeconds: null,
          verdict,
          excess: null,
          audible: 'unknown',
        },
      ];
    }
    if (!rings(resonance) || decayTimeSeconds === null || decayTimeSeconds <= windowDecaySeconds) return [];
    if (levelDb < -inaudibleDb) return [];
    if (decayTimeSdSeconds !== null && decayTimeSdSeconds > unknownDecay * decayTimeSeconds) return [];
    const verdict = judge(
      { frequencyHz, decayTimeSeconds, decayTimeSdSeconds },
      decaysOf(resonances, index),
      limit,
      room,
    );
    if (!verdict.above) return [];
    return [
      {
        ...common,
        decayTimeSeconds,
        decayTimeSdSeconds,
        verdict,
        excess: verdict.limitSeconds === null ? null : decayTimeSeconds / verdict.limitSeconds,
        audible: audibleAt(frequencyHz, decayTimeSeconds),
      },
    ];
  });
}
