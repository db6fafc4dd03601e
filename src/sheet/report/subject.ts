import type { PairSide, SheetPair } from '../../study/sheet-pair.js';
import { decisionFor } from '../../study/sheet-texts.js';
import type { Decision } from '../../study/sheet-texts.js';
import { pairRidges, seatRidges } from '../../study/system-readings.js';
import type { RidgePair, SeatRidge } from '../../study/system-readings.js';
import type { SystemSnapshot } from '../../study/system-types.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { pointName } from '../point-name.js';
import { ridgeRows } from '../ridges.js';
import type { RidgeRow } from '../ridges.js';

/** What a sheet is made of. */
export interface SheetInput {
  readonly study: StudySnapshot;
  readonly system: SystemSnapshot;
  readonly pair: SheetPair;
}

export type Diagnosis = NonNullable<PairSide['diagnosis']>;

/** One ridge as the sheet tells it. */
export interface SheetRidge {
  readonly row: RidgeRow;
  /** Seats, where the ridges of several were fitted together. */
  readonly heard: SeatRidge | null;
  readonly decision: Decision | null;
  /** Held against the later stage or the design; null without one. */
  readonly change: RidgePair | null;
}

/** What the sheet is about, looked up once for all its sections. */
export interface Subject extends SheetInput {
  readonly diagnosis: Diagnosis | null;
  readonly after: Diagnosis | null;
  readonly ridges: readonly SheetRidge[];
  /** Ridges that only the later stage has. */
  readonly fresh: readonly RidgePair[];
  /** Names of the seats of a joint fit, in its order. */
  readonly seatNames: readonly string[];
  readonly sourceCount: number;
  readonly seatCount: number;
}

export function subjectOf(input: SheetInput, speaker: Speaker): Subject {
  const { study, system, pair } = input;
  const diagnosis = pair.before?.diagnosis ?? null;
  const after = pair.after?.diagnosis ?? null;
  const joint = diagnosis !== null && diagnosis.files.length > 1 ? seatRidges(diagnosis) : null;
  const pairs = diagnosis && after ? pairRidges(diagnosis, after) : [];
  const ridges = (diagnosis ? ridgeRows(diagnosis) : []).map((row): SheetRidge => ({
    row,
    heard: joint?.find(({ ridge }) => ridge === row.ridge) ?? null,
    decision: decisionFor(study.sheet, row.ridge.frequencyHz),
    change: pairs.find(({ before }) => before === row.ridge) ?? null,
  }));
  const { arrangement, grid } = system;
  return {
    ...input,
    ...{ diagnosis, after, ridges },
    fresh: pairs.filter(({ before }) => before === null),
    seatNames: grid.seats.map((seat) => pointName(arrangement.seats[seat], 'seat', speaker)),
    // Of the stage that is designed on: what was measured later may be all of them together.
    sourceCount: grid.sources.length || Math.max(1, arrangement.sources.length),
    seatCount: grid.seats.length || Math.max(1, arrangement.seats.length),
  };
}

/** What one side of the comparison shows, in words. */
export function sideName({ kind, stage, recording }: PairSide, speaker: Speaker): string {
  const seat = recording.seatName || recording.label || speaker.view('this-recording');
  return speaker.view(`side-${kind}`, { stage, seat });
}
