/** The jobs that a worker, the command and the main thread drain alike: generators over plain transferable data. */
import {
  computeGrid,
  computeResponse,
  examine,
  type Examination,
  type Grid,
  type GridParams,
  type Response,
  type ResponseParams,
} from '../decay/index.js';
import {
  fitRoom,
  interpret,
  readNearField,
  ridgeFit,
  type HeardResonance,
  type RoomFit,
  type Diagnosis,
  type DiagnosisParams,
  type NearField,
  type RidgeFit,
  type RidgeTarget,
} from '../diagnosis/index.js';
import {
  predictRoomJob,
  pressureMap,
  type PressureMap,
  type PressureParams,
  type Room,
  synthesiseJob,
  type RoomPrediction,
  type SynthParams,
} from '../room/index.js';
import { fitResonances, type FitParams, type ResonanceFit } from '../resonance/index.js';
import {
  combineAll,
  listenJob,
  optimiseSources,
  reducedCopy,
  ridgesOfSources,
  transferMatrix,
  type Listened,
  type ListenParams,
  type OptimiseParams,
  type Proposal,
  type SharedRidge,
  type SourceSetting,
  type TransferMatrix,
} from '../seats/index.js';
import type { Resonance } from '../resonance/index.js';
import { openJob, RingdownError } from '../signal/index.js';
import { within } from '../signal/job.js';
import type { DecodedAudio, Job, OpenOptions, Recording } from '../signal/index.js';

export { drain, drainSliced, nextTurn, type SliceOptions } from '../signal/drain.js';

export interface JobTable {
  /** The bytes of a file to a recording; `audio` where they were decoded elsewhere. */
  open: {
    params: {
      readonly bytes: Uint8Array;
      readonly audio?: DecodedAudio | null;
      readonly options: OpenOptions;
    };
    result: Recording;
  };
  /** What its samples alone say of one recording: whether it is fit to be read. */
  examine: { params: { readonly recording: Recording }; result: Examination };
  /** The picture of one recording. */
  grid: { params: { readonly recording: Recording; readonly grid: GridParams }; result: Grid };
  /** What rings in recordings of one room: the long part of a diagnosis. */
  fit: {
    params: { readonly recordings: readonly Recording[]; readonly fit: FitParams };
    result: ResonanceFit;
  };
  /** What a fit means against limits and a room: the short part. */
  interpret: {
    params: {
      readonly recordings: readonly Recording[];
      readonly fit: ResonanceFit;
      readonly diagnosis: DiagnosisParams;
      /** In the order of the recordings; made where they are not given. */
      readonly examinations?: readonly Examination[];
      /** What recordings close to the sources say. */
      readonly near?: readonly NearField[];
    };
    result: Diagnosis;
  };
  /** A recording close to a source: what rings there. */
  'near-field': {
    params: { readonly recording: Recording; readonly fit: FitParams };
    result: NearField;
  };
  response: {
    params: { readonly recording: Recording; readonly response: ResponseParams };
    result: Response;
  };
  /** One resonance beside its sound. */
  ridge: {
    params: { readonly recording: Recording; readonly fit: ResonanceFit; readonly target: RidgeTarget };
    result: RidgeFit;
  };
  /** Modes of a room; of one given by a plan a second's work. */
  predict: { params: { readonly room: Room; readonly toHz: number }; result: RoomPrediction };
  /** Where one of them is loud. */
  pressure: { params: { readonly room: Room; readonly pressure: PressureParams }; result: PressureMap };
  /** Sides fitted to resonances, and to random ones. */
  'fit-room': {
    params: { readonly room: Room; readonly resonances: readonly HeardResonance[] };
    result: RoomFit;
  };
  /** The bass of a recording, some 10 kB. */
  reduce: { params: { readonly recording: Recording }; result: Recording };
  /** Responses of sources at seats on one clock: `grid[source][seat]`. */
  transfer: {
    params: { readonly grid: readonly (readonly Recording[])[]; readonly frequenciesHz: Float64Array };
    result: TransferMatrix;
  };
  /** Every seat with all sources playing. */
  combine: {
    params: {
      readonly grid: readonly (readonly Recording[])[];
      readonly settings: readonly SourceSetting[];
    };
    result: Recording[];
  };
  /** How each source drives each resonance at each seat. */
  residues: {
    params: {
      readonly grid: readonly (readonly Recording[])[];
      readonly resonances: readonly Resonance[];
    };
    result: SharedRidge[];
  };
  /** Better settings of the sources. */
  optimise: {
    params: { readonly matrix: TransferMatrix; readonly optimise: OptimiseParams };
    result: Proposal;
  };
  /** What is heard of a response: that of `listen`, or one predicted first. */
  listen: {
    params: { readonly listen: ListenParams; readonly predicted: SynthParams | null };
    result: Listened;
  };
}

export type JobType = keyof JobTable;
export type JobParams<T extends JobType> = JobTable[T]['params'];
export type JobResult<T extends JobType> = JobTable[T]['result'];

type Starters = { readonly [T in JobType]: (params: JobParams<T>) => Job<JobResult<T>> };

const starters: Starters = {
  open: ({ bytes, audio, options }) => openJob(bytes, audio ?? null, options),
  examine: ({ recording }) => examine(recording),
  grid: ({ recording, grid }) => computeGrid(recording, grid),
  fit: ({ recordings, fit }) => fitResonances(recordings, fit),
  interpret: ({ recordings, fit, diagnosis, examinations, near }) =>
    interpret(recordings, fit, diagnosis, examinations ?? null, near),
  'near-field': ({ recording, fit }) => readNearField(recording, fit),
  response: ({ recording, response }) => computeResponse(recording, response),
  ridge: ({ recording, fit, target }) => ridgeFit(recording, fit, target),
  predict: ({ room, toHz }) => predictRoomJob(room, { toHz }),
  pressure: ({ room, pressure }) => pressureMap(room, pressure),
  'fit-room': ({ room, resonances }) => fitRoom(room, resonances),
  *reduce({ recording }) {
    yield { stage: 'reduce', fraction: 0 };
    return reducedCopy(recording);
  },
  transfer: ({ grid, frequenciesHz }) => transferMatrix(grid, frequenciesHz),
  combine: ({ grid, settings }) => combineAll(grid, settings),
  residues: ({ grid, resonances }) => ridgesOfSources(resonances, grid),
  optimise: ({ matrix, optimise }) => optimiseSources(matrix, optimise),
  *listen({ listen, predicted }) {
    if (!predicted) return yield* listenJob(listen);
    const { samples, sampleRate, onsetSeconds } = yield* within(synthesiseJob(predicted), 0, 0.5);
    return yield* within(listenJob({ ...listen, response: { samples, sampleRate, onsetSeconds } }), 0.5, 1);
  },
};

/**
 * A job by its name, not yet begun.
 *
 * @throws RingdownError `unexpected` where there is no such job: a page and a worker of different versions
 */
export function startJob<T extends JobType>(type: T, params: JobParams<T>): Job<JobResult<T>>;
export function startJob(type: string, params: unknown): Job<unknown>;
export function startJob(type: string, params: unknown): Job<unknown> {
  if (!Object.hasOwn(starters, type)) throw new RingdownError('unexpected', { detail: `no job “${type}”` });
  return starters[type as JobType](params as never);
}

/** Buffers of a result that its maker gives away rather than copies. */
export function transferables(type: string, result: unknown): ArrayBuffer[] {
  const arrays: ArrayBufferView[] = [];
  if (type === 'open') arrays.push((result as Recording).samples);
  if (type === 'grid') {
    const { levelsDb, timesSeconds } = result as Grid;
    arrays.push(levelsDb, timesSeconds);
  }
  if (type === 'listen') arrays.push(...(result as Listened).heard.map(({ samples }) => samples));
  return [...new Set(arrays.map(({ buffer }) => buffer))].filter(
    (buffer): buffer is ArrayBuffer => buffer instanceof ArrayBuffer,
  );
}
