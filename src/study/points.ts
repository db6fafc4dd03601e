import { readPointName } from '../seats/index.js';
import type { RecordingAbout } from './types.js';

/** Source, seat and stage as a file's name tells them; null where it tells nothing. A guess, to be shown and corrected. */
export function guessedPoint(label: string): RecordingAbout | null {
  const { source, seat, stage } = readPointName(label);
  if (source === null && seat === null && stage === null) return null;
  return {
    ...(source !== null && { sourceName: source }),
    ...(seat !== null && { seatName: seat }),
    ...(stage !== null && { stage }),
  };
}
