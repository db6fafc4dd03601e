import type { Job, Note } from '../signal/types.js';
import { bandDecays, type BandDecay } from './band-decay.js';
import { bandRanges } from './band-range.js';
import { recordingNotes } from './checks.js';
import type { GridSource } from './grid.js';
import { recordingTrace, type RecordingTrace } from './trace.js';
import type { BandRange } from './types.js';

/** What decides whether one recording is fit to be read. */
export interface Examination {
  readonly trace: RecordingTrace;
  /** Usable decay range per third-octave. */
  readonly ranges: readonly BandRange[];
  /** Decay times and usable length per third-octave; the same bands. */
  readonly decays: readonly BandDecay[];
  /** Those that samples alone give. */
  readonly notes: readonly Note[];
}

export interface ExamineParams {
  readonly fromHz: number;
  readonly toHz: number;
}

/** Trace, usable range, band decays and notes of one recording, between two frequencies. */
export function* examine(source: GridSource, { fromHz, toHz }: ExamineParams): Job<Examination> {
  const trace = recordingTrace(source, fromHz, toHz);
  yield { stage: 'bands', fraction: 0.2 };
  const notes = recordingNotes(source, fromHz, toHz);
  yield { stage: 'bands', fraction: 0.4 };
  const ranges = bandRanges(source, fromHz, toHz);
  const job = bandDecays(source, { fromHz, toHz });
  for (;;) {
    const step = job.next();
    if (step.done) return { trace, ranges, decays: step.value, notes };
    yield { stage: 'bands', fraction: 0.5 + 0.5 * step.value.fraction };
  }
}
