import type { Examination, Grid, Response } from '../decay/index.js';
import type { Diagnosis, RidgeFit, RidgeTarget } from '../diagnosis/index.js';
import type { Room } from '../room/index.js';
import type { Recording } from '../signal/index.js';
import {
  diagnosisKey,
  diagnosisParamsOf,
  examinationKey,
  fitKey,
  fitParamsOf,
  gridKey,
  gridParamsOf,
  responseParamsOf,
  samplesKey,
} from './choices.js';
import type { FollowerRequest } from './follower.js';
import type { Pool, RunOptions } from './pool.js';
import type { StudyChoices } from './types.js';

/** Shares of the time that pieces of work take, re the reading of a file; measured on 2 s at 48 kHz. */
const weights = { grid: 1, diagnosis: 10, response: 0.5, ridge: 0.5 };
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

/** Magnitude response of one recording. */
export function responseRequest(
  pool: Pool,
  recording: Recording,
  choices: StudyChoices,
): FollowerRequest<Response> {
  const response = responseParamsOf(choices);
  const key = samplesKey(recording, response);
  return {
    key,
    stage: 'response',
    weight: weights.response,
    known: pool.peek('response', key),
    run: (signal, onProgress) => pool.run('response', { recording, response }, { key, signal, onProgress }),
  };
}

/**
 * The resonance that is looked at: the selected one, else the worst ridge, else the longest decay. Null where there is
 * neither ridge nor resonance.
 */
export function ridgeTarget(
  { ridges, resonances }: Diagnosis,
  selectedRidge: number | null,
  selectedResonance: number | null,
): RidgeTarget | null {
  const ridge = ridges[selectedRidge ?? (selectedResonance === null ? 0 : -1)];
  if (ridge) {
    const { frequencyHz, resonance, decayTimeSeconds, decayTimeSdSeconds } = ridge;
    return { frequencyHz, resonance, decayTimeSeconds, decayTimeSdSeconds };
  }
  const longest = resonances.reduce(
    (best, { decayTimeSeconds }, k) =>
      decayTimeSeconds !== null && decayTimeSeconds > (resonances[best]?.decayTimeSeconds ?? 0) ? k : best,
    -1,
  );
  const chosen = selectedResonance ?? longest;
  if (!resonances[chosen]) return null;
  const { frequencyHz, decayTimeSeconds, decayTimeSdSeconds } = resonances[chosen];
  return { frequencyHz, resonance: chosen, decayTimeSeconds, decayTimeSdSeconds };
}

/** That resonance beside its sound. */
export function ridgeRequest(
  pool: Pool,
  recording: Recording,
  diagnosis: Diagnosis,
  fitParams: object,
  target: RidgeTarget,
): FollowerRequest<RidgeFit> {
  const key = samplesKey(recording, { ...fitParams, target });
  return {
    key,
    stage: 'fit',
    weight: weights.ridge,
    known: pool.peek('ridge', key),
    run: (signal, onProgress) =>
      pool.run('ridge', { recording, fit: diagnosis.fit, target }, { key, signal, onProgress }),
  };
}
