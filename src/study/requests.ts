import type { Examination, Grid, Response } from '../decay/index.js';
import { concerns } from '../diagnosis/near-field.js';
import type { Diagnosis, NearField, RidgeFit, RidgeTarget } from '../diagnosis/index.js';
import type { Room } from '../room/index.js';
import type { FitParams } from '../resonance/index.js';
import type { Recording } from '../signal/index.js';
import {
  diagnosisKey,
  diagnosisParamsOf,
  examinationKey,
  fitKey,
  fitParamsOf,
  gridKey,
  gridParamsOf,
  recordingKey,
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

type NearSources = readonly Pick<Recording, 'source' | 'sourceName'>[];

/** Recordings close to a source that plays in these: evidence beside them. */
export const nearFieldsFor = (of: NearSources, all: readonly Recording[]): Recording[] =>
  all.filter(
    (one) =>
      one.nearFieldMetres !== undefined &&
      !of.includes(one) &&
      concerns({ source: one.source, sourceName: one.sourceName ?? null }, of),
  );

/** What they say; each is fitted once for all who ask. */
export async function readNearFields(
  pool: Pool,
  near: readonly Recording[],
  fit: FitParams,
  options: Omit<RunOptions, 'key'>,
): Promise<NearField[]> {
  const list: NearField[] = [];
  for (const recording of near) {
    const key = JSON.stringify([recordingKey(recording), fit]);
    list.push(await pool.run('near-field', { recording, fit }, { ...options, key }));
  }
  return list;
}

/**
 * Its diagnosis: a fit, which is kept and serves every limit and every room of one volume, then what it means.
 *
 * @param all Recordings of the study: those close to the source are evidence.
 */
export function diagnosisRequest(
  pool: Pool,
  recording: Recording,
  choices: StudyChoices,
  room: Room | null,
  all: readonly Recording[],
): FollowerRequest<Diagnosis> {
  const diagnosis = diagnosisParamsOf(choices, room);
  // A recording close to a source is looked at by itself.
  const near = recording.nearFieldMetres === undefined ? nearFieldsFor([recording], all) : [];
  const key = diagnosisKey(recording, diagnosis, near);
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
        { recordings, fit: { ...fitParams, draft: true } },
        {
          key: fitKey(recording, fitParams),
          signal,
          onProgress: (progress) => onProgress({ ...progress, fraction: fitShare * progress.fraction }),
        },
      );
      const examinations = [await examineRecording(pool, recording, { signal })];
      const beside = await readNearFields(pool, near, fitParams, { signal });
      return pool.run(
        'interpret',
        { recordings, fit, diagnosis, examinations, near: beside },
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
