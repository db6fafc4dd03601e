import { logFrequencies } from '../decay/index.js';
import type { SourceSetting, TransferMatrix } from '../seats/index.js';
import { plainSetting } from '../seats/index.js';
import { reducedCopy } from '../seats/reduce.js';
import type { Room } from '../room/types.js';
import type { Recording } from '../signal/types.js';
import { diagnosisParamsOf, fitParamsOf, recordingKey } from './choices.js';
import type { FollowerRequest } from './follower.js';
import { nearFieldsFor, readNearFields } from './requests.js';
import type { Pool } from './pool.js';
import type { SystemDesign, SystemState } from './system-types.js';
import type { StudyChoices } from './types.js';

/** Shares of the time, re the reading of one file. */
const weights = { copy: 0.3, transfer: 2, state: 30 };
/** A hand that drags a filter rests this long before its decay is fitted anew. */
const restMilliseconds = 250;

type Grid = readonly (readonly Recording[])[];

const copies = new WeakMap<Recording, Recording>();
const idOf = ({ hash, channel, timeReference }: Recording): unknown[] => [hash, channel, timeReference];
const gridKey = (grid: Grid): unknown => grid.map((row) => row.map(idOf));

/** A low-frequency copy, made where it is not there yet. Cheap for a saved study, whose recordings are copies. */
export function copyRequest(pool: Pool, recording: Recording): FollowerRequest<Recording> {
  const known = recording.reduced ? recording : copies.get(recording);
  return {
    key: JSON.stringify(idOf(recording)),
    stage: 'reduce',
    weight: weights.copy,
    known,
    run: async (signal, onProgress) => {
      const copy = await pool.run('reduce', { recording }, { signal, onProgress });
      copies.set(recording, copy);
      return copy;
    },
  };
}

/** Where a copy lies already, or must not be made: of a file that is one already. */
export const knownCopy = (recording: Recording): Recording | null =>
  recording.reduced ? reducedCopy(recording) : (copies.get(recording) ?? null);

export function transferRequest(
  pool: Pool,
  grid: Grid,
  design: Pick<SystemDesign, 'fromHz' | 'toHz'>,
): FollowerRequest<TransferMatrix> {
  const { fromHz, toHz } = design;
  const key = JSON.stringify([gridKey(grid), fromHz, toHz]);
  return {
    key,
    stage: 'transfer',
    weight: weights.transfer,
    known: pool.peek('transfer', key),
    run: (signal, onProgress) =>
      pool.run(
        'transfer',
        { grid, frequenciesHz: systemFrequencies(fromHz, toHz) },
        { key, signal, onProgress },
      ),
  };
}

/** 1/24 octave: fine enough for what several seats share, and evenly spaced by octaves. */
export const systemFrequencies = (fromHz: number, toHz: number): Float64Array =>
  logFrequencies(fromHz, toHz, 24);

const rest = (signal: AbortSignal): Promise<void> =>
  new Promise((resolve) => {
    const id = setTimeout(resolve, restMilliseconds);
    signal.addEventListener('abort', () => {
      clearTimeout(id);
      resolve();
    });
  });

/** All seats with all sources playing through their settings, and what rings there. */
export function stateRequest(
  pool: Pool,
  grid: Grid,
  settings: readonly SourceSetting[] | null,
  {
    choices,
    room,
    recordings: all,
  }: {
    readonly choices: StudyChoices;
    readonly room: Room | null;
    /** Those close to a source are evidence. */
    readonly recordings: readonly Recording[];
  },
): FollowerRequest<SystemState> {
  const fit = fitParamsOf(choices, room);
  const diagnosis = diagnosisParamsOf(choices, room);
  const places = grid.map((row) =>
    row.map(({ seat, source, seatName, label }) => [seat, source, seatName, label]),
  );
  const combineKey = JSON.stringify([gridKey(grid), settings]);
  const fitKey = JSON.stringify([combineKey, fit]);
  const near = nearFieldsFor(
    grid.map((row) => row[0]),
    all,
  );
  const key = JSON.stringify([fitKey, places, diagnosis, near.map(recordingKey)]);
  const scaled =
    (from: number, to: number, report: (progress: { stage: string; fraction: number }) => void) =>
    ({ stage, fraction }: { stage: string; fraction: number }): void =>
      report({ stage, fraction: from + (to - from) * fraction });
  return {
    key,
    stage: 'combine',
    weight: weights.state,
    known: undefined,
    run: async (signal, onProgress) => {
      if (settings) await rest(signal);
      const through = settings ?? grid.map(() => plainSetting);
      const recordings = await pool.run(
        'combine',
        { grid, settings: through },
        { key: `${combineKey} ${JSON.stringify(places)}`, signal, onProgress: scaled(0, 0.05, onProgress) },
      );
      const fitted = await pool.run(
        'fit',
        { recordings, fit },
        { key: fitKey, signal, onProgress: scaled(0.05, 0.9, onProgress) },
      );
      const beside = await readNearFields(pool, near, fit, { signal });
      const found = await pool.run(
        'interpret',
        { recordings, fit: fitted, diagnosis, near: beside },
        { key, signal, onProgress: scaled(0.9, 1, onProgress) },
      );
      return { recordings, diagnosis: found };
    },
  };
}
