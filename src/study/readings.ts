/** What views say of an examined recording, as plain data. */
import { neededRangesDb } from '../decay/band-decay.js';
import { overNoiseDb } from '../decay/response.js';
import { expectedPrecision } from '../resonance/expected.js';
import { roomVolume } from '../room/index.js';
import type { Note } from '../signal/types.js';
import type { StudySnapshot } from './types.js';

/** Ranges below which a band is read with care (T20 asks for as much), and not at all (EDT does), dB. */
export const rangeBoundsDb = { doubtful: neededRangesDb.t20, least: neededRangesDb.edt } as const;

export const rangeState = (rangeDb: number): 'good' | 'doubtful' | 'unread' =>
  rangeDb >= rangeBoundsDb.doubtful ? 'good' : rangeDb >= rangeBoundsDb.least ? 'doubtful' : 'unread';

export { overNoiseDb };

/** `fit` to be read; with `care`, since a note says what may mislead; `unfit`, since no decay can be read from it. */
export type Verdict = 'fit' | 'care' | 'unfit';

/** Notes that say what was done, and not what is wrong. */
const harmless = new Set([
  ...['channel-chosen', 'measurement-chosen', 'dc', 'size-guessed', 'node', 'two-slopes', 'boundary'],
  ...['positions', 'swept', 'microphone', 'calibrated', 'aligned'],
]);

/** Of one recording, as far as it is known. */
export function verdictOf(snapshot: StudySnapshot, index: number): Verdict {
  const notes = notesOf(snapshot, index);
  const { fromHz, toHz } = snapshot.choices;
  const noBand = (snapshot.examinations[index]?.ranges ?? [])
    .filter((band) => band.toHz > fromHz && band.fromHz < toHz && band.centreHz <= toHz)
    .every(({ rangeDb }) => rangeState(rangeDb) === 'unread');
  if (noBand || notes.some(({ code }) => code === 'no-range')) return 'unfit';
  return notes.some(({ code }) => !harmless.has(code)) ? 'care' : 'fit';
}

/** Everything noted about one recording: by its diagnosis where it is shown, else by its reader and its samples. */
export function notesOf(
  { recordings, examinations, active, diagnosis }: StudySnapshot,
  index: number,
): readonly Note[] {
  const diagnosed = index === active ? diagnosis?.files[0]?.notes : undefined;
  return diagnosed ?? [...(recordings[index]?.notes ?? []), ...(examinations[index]?.notes ?? [])];
}

/**
 * What a fit of one recording can tell at best, known before it is fitted; null while its samples are still looked through.
 */
export function expectedOf(
  { examinations, room }: StudySnapshot,
  index: number,
): { spacingHz: number | null; decayShare: number | null } | null {
  const examination = examinations[index];
  if (!examination) return null;
  const { leastSpacingHz, decayShare } = expectedPrecision(
    examination.decays,
    room ? roomVolume(room) : null,
  );
  return { spacingHz: leastSpacingHz, decayShare };
}
