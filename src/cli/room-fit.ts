import type { RoomFit } from '../diagnosis/index.js';
import { roomFitHeads, roomFitRows, roomFitSentences } from '../sheet/room-fit.js';
import type { Speaker } from '../words/index.js';
import { table, wrap } from './table.js';

/** A fit of the sides, or why there is none. */
export type RoomFitOutcome = { readonly fit: RoomFit } | { readonly code: string; readonly message: string };

export function roomFitText(outcome: RoomFitOutcome, speaker: Speaker): string {
  const heading = speaker.view('room-fit-heading');
  if (!('fit' in outcome)) return `${heading}\n${wrap(outcome.message)}`;
  const heads = roomFitHeads.map((head, k) => ({ head: speaker.view(head), right: k !== 1 }));
  return [
    heading,
    ...roomFitSentences(outcome.fit, speaker).map((sentence) => wrap(sentence)),
    table(heads, roomFitRows(outcome.fit, speaker)),
  ].join('\n');
}

/** Lengths in metres, frequencies in Hz, shares as fractions; null where nothing is known. */
export function roomFitDocument(outcome: RoomFitOutcome): object {
  if (!('fit' in outcome)) return { error: outcome };
  const { fit } = outcome;
  const { rival } = fit;
  return {
    sides: fit.sides.map(({ metres, sdMetres, typedMetres, atBound }) => ({
      ...{ fitted: metres, sd: sdMetres, typed: typedMetres, atBound },
    })),
    tolerance: { side: fit.sideTolerance, air: fit.airTolerance },
    common: { share: fit.commonShare, temperature: fit.airCelsius, within: fit.airWithin },
    explained: fit.explained,
    explainedAsTyped: fit.explainedAsTyped,
    rms: fit.rmsShare,
    rmsAsTyped: fit.rmsShareAsTyped,
    chance: fit.chance,
    trials: fit.trials,
    rival: rival && [rival.lengthMetres, rival.widthMetres, rival.heightMetres],
    to: fit.toHz,
    above: fit.above,
    resonances: fit.resonances.map(({ frequencyHz, order, fittedHz, typedHz }) => ({
      ...{ frequency: frequencyHz, order, fitted: fittedHz, typed: typedHz },
    })),
  };
}
