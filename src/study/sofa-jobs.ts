import { RingdownError, sofaAudio } from '../signal/index.js';
import type { DecodedAudio, Job } from '../signal/index.js';
import { openHdf5 } from '../signal/vendor/hdf5.js';

export interface SofaParams {
  readonly bytes: Uint8Array;
  readonly measurement: number | undefined;
}

/** The one job of the worker that reads AES69 (SOFA) files. It holds the HDF5 reader, which the other worker does not. */
export function* startSofaJob(type: string, params: unknown): Job<DecodedAudio> {
  if (type !== 'sofa') throw new RingdownError('unexpected', { detail: `no job “${type}”` });
  const { bytes, measurement } = params as SofaParams;
  yield { stage: 'open', fraction: 0 };
  return sofaAudio(openHdf5, bytes, measurement);
}

export const sofaTransferables = (result: unknown): ArrayBuffer[] =>
  (result as DecodedAudio).channels.map(({ buffer }) => buffer as ArrayBuffer);
