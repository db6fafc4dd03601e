import type { Grid, Examination } from '../decay/index.js';
import type { Diagnosis } from '../diagnosis/index.js';
import type { Room } from '../room/index.js';
import type { Recording } from '../signal/index.js';
import {
  diagnosisKey,
  diagnosisParamsOf,
  fitKey,
  fitParamsOf,
  gridKey,
  gridParamsOf,
  examinationKey,
} from './choices.js';
import type { FollowerRequest } from './follower.js';
import type { Pool, RunOptions } from './pool.js';
import type { StudyChoices } from './types.js';

/** Shares of the time that pieces of work take, re the reading of a file; measured on 2 s at 48 kHz. */
const weights = { grid: 1, diagnosis: 10 };
/** Share of the fit in a diagnosis. */
const fitShare = 0.9;

/** Whether a recording is fit to be read. */
export const examineRecording = (
  pool: Pool,
  recording: Recording,
  options: Omit<RunOptions, 'key'>,
): Promise<Examination> => pool.run('examine', { recording }, { ...options, key: examinationKey(recording) });

/** The picture of one recording. */
export function gridRequest(pool: Pool, recording: Recording, choices: StudyChoices): FollowerRequest<Grid> {
  const key = gridKey(recording, choices);
  return {
    key,
    stage: 'grid',
    weight: weights.grid,
    known: pool.peek('grid', key),
    run: (signal, onProgress) =>
      pool.run('grid', { recording, grid: gridParamsOf(choices) }, { key, signal, onProgress }),
  };
}

/** Its diagnosis: a fit, which is kept and serves every limit and every room of one volume, then what it means. */
export function diagnosisRequest(
  pool: Pool,
  recording: Recording,
  choices: StudyChoices,
  room: Room | null,
): FollowerRequest<Diagnosis> {
  const diagnosis = diagnosisParamsOf(choices, room);
  const key = diagnosisKey(recording, diagnosis);
  const fitParams = fitParamsOf(choices, room);
  const recordings = [recording];
  return {
    key,
    stage: 'fit',
    weight: weights.diagnosis,
    known: pool.peek('interpret', key),
    run: async (signal, onProgress) => {
      const fit = await pool.run(
        'fit',
        { recordings, fit: fitParams },
        {
          key: fitKey(recording, fitParams),
          signal,
          onProgress: ({ stage, fraction }) => onProgress({ stage, fraction: fitShare * fraction }),
        },
      );
      const examinations = [await examineRecording(pool, recording, { signal })];
      return pool.run(
        'interpret',
        { recordings, fit, diagnosis, examinations },
        {
          key,
          signal,
          onProgress: ({ stage, fraction }) =>
            onProgress({ stage, fraction: fitShare + (1 - fitShare) * fraction }),
        },
      );
    },
  };
}
