import { existsSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe } from 'vitest';

/**
 * Real recordings for outside checks. They are not part of the project: where the folder is absent these tests are
 * skipped and counted so; on CI (CI=true) its absence is a failure.
 */
const root = fileURLToPath(new URL('../../', import.meta.url));
const folder = resolve(root, process.env.RINGDOWN_SHARED_DATA ?? '../shared/data');

export const hasRecordings = existsSync(folder);

if (!hasRecordings) {
  const sentence =
    'The recordings for the outside checks are missing; RINGDOWN_SHARED_DATA names their folder.';
  if (process.env.CI) throw new Error(sentence);
  console.warn(`${sentence} Their tests are skipped.`);
}

/** A group of tests that needs the recordings. */
export const describeWithRecordings = describe.skipIf(!hasRecordings);

export const recordingPath = (name: string): string => resolve(folder, name);

export const recordingBytes = (name: string): Uint8Array => new Uint8Array(readFileSync(recordingPath(name)));

export const recordingNames = {
  corner1: 'r3vival-9.70x5.50x2.70/r3vival_abs000_SBG1_M50.wav',
  corners: [1, 2, 3, 4].map((n) => `r3vival-9.70x5.50x2.70/r3vival_abs000_SBG${n}_M50.wav`),
  sevenChannels: 'r3vival-9.70x5.50x2.70/RLRVarAcLab_Absorptive_000_SBG4_R1_FRL10cm.wav',
  absorbentCorners: [1, 2, 3, 4].map((n) => `r3vival-9.70x5.50x2.70/r3vival_abs100_SBG${n}_M50.wav`),
  frl: 'frl-example-room/ExampleRoom_S1_R1_M50.wav',
  livingRoom: 'openair-living-room/pa_living_room_1.wav',
  coupled: 'aalto-coupled-rooms/doubleslope_RIR_200cm_W.wav',
  clap: 'rostock-clap-negative/rir_clap.wav',
  office: 'surrey-roomA-5.72x6.64x2.31/surreyA_az000_16k.wav',
} as const;
