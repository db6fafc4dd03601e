import type { Mode, PressureMap, RoomPrediction } from '../room/index.js';
import { createFollower } from './follower.js';
import { placesOf } from './places.js';
import type { Pool } from './pool.js';
import type { Round } from './round.js';
import type { Part, StudyFailure, StudySnapshot } from './types.js';

/** Shares of the time, re the reading of a file. */
const weights = { predict: 0.5, pressure: 0.5 };

type Order = Mode['order'];
export const sameOrder = (a: Order | null, b: Order | null): boolean =>
  a === b || (a !== null && b !== null && a.every((number, axis) => number === b[axis]));

/**
 * The mode that is looked at: the chosen one, else the likeliest of the selected ridge, else of the worst, else the
 * lowest. Null before the modes are known.
 */
export function shownMode({
  prediction,
  selectedMode,
  diagnosis,
  selectedRidge,
}: StudySnapshot): Mode | null {
  if (!prediction) return null;
  const of = (order: Order | null | undefined): Mode | undefined =>
    order ? prediction.modes.find((mode) => sameOrder(mode.order, order)) : undefined;
  const ridge = diagnosis?.ridges[selectedRidge ?? 0];
  const likeliest = ridge?.candidates.reduce<(typeof ridge.candidates)[number] | null>(
    (best, one) => (one.weight > (best?.weight ?? 0) ? one : best),
    null,
  );
  return of(selectedMode) ?? of(likeliest?.order) ?? prediction.modes[0] ?? null;
}

/** What a study knows of its room alone: the modes, and the pressure of the one that is looked at. */
export function createRoomPart(round: Round, quiet: Round, pool: () => Pool, onChange: () => void) {
  const prediction = createFollower<RoomPrediction>(round, onChange);
  // A mode is looked at as fast as it is chosen: that is no work to wait for.
  const pressure = createFollower<PressureMap>(quiet, onChange);
  return {
    /** @param needed Whether somebody needs a part. */
    follow(next: StudySnapshot, needed: (part: Part) => boolean): Partial<StudySnapshot> {
      const { room, choices } = next;
      const { toHz } = choices;
      const wanted = room !== null && (needed('prediction') || needed('pressure'));
      if (!wanted) {
        prediction.follow(null);
        pressure.follow(null);
        return { prediction: null, pressure: null };
      }
      const key = JSON.stringify([room, toHz]);
      prediction.follow({
        ...{ key, stage: 'plan', weight: weights.predict, known: pool().peek('predict', key) },
        run: (signal, onProgress) => pool().run('predict', { room, toHz }, { key, signal, onProgress }),
      });
      const mode = needed('pressure') ? shownMode({ ...next, prediction: prediction.value }) : null;
      const places = placesOf(next).filter(({ inside }) => inside);
      const at = (kind: 'seat' | 'source') =>
        places.filter((place) => place.kind === kind).map((place) => place.at);
      const params = mode && { mode, toHz, seats: at('seat'), sources: at('source') };
      const mapKey = JSON.stringify([room, params]);
      pressure.follow(
        params && {
          ...{ key: mapKey, stage: 'plan', weight: weights.pressure, known: pool().peek('pressure', mapKey) },
          run: (signal, onProgress) =>
            pool().run('pressure', { room, pressure: params }, { key: mapKey, signal, onProgress }),
        },
      );
      return { prediction: prediction.value, pressure: pressure.value };
    },
    get failures(): StudyFailure[] {
      return [prediction, pressure].flatMap(({ failure }) => (failure ? [{ ...failure, label: null }] : []));
    },
    stop(): void {
      prediction.follow(null);
      pressure.follow(null);
    },
  };
}
