import type { StudySnapshot } from './types.js';
import { engineVersion } from './version.js';

/** What made a picture, a sheet or a table, as plain data: which file, which parameters, which version. */
export interface Origin {
  readonly version: string;
  readonly label: string;
  /** SHA-256 of the file's bytes, lower-case hex. */
  readonly hash: string;
  readonly channel: number;
  readonly onsetSeconds: number;
  /** Hashes of what was given beside the file, and what full scale stands for, dB re 20 µPa; null where nothing was. */
  readonly microphone: string | null;
  readonly sweep: string | null;
  readonly fullScaleDb: number | null;
  readonly parameters: StudySnapshot['choices'];
  /** Length, width, height in metres and speed of sound in m/s; null where no room was given. */
  readonly room: { readonly sizeMetres: readonly number[]; readonly speedOfSound: number } | null;
}

/** Of the recording that is shown; null without one. */
export function originOf({ recordings, active, choices, room }: StudySnapshot): Origin | null {
  const recording = recordings[active];
  if (!recording) return null;
  const { label, hash, channel, onsetSeconds } = recording;
  const { size } = room ?? {};
  return {
    version: engineVersion,
    label,
    hash,
    channel,
    onsetSeconds,
    microphone: recording.microphone?.hash ?? null,
    sweep: recording.sweep?.hash ?? null,
    fullScaleDb: recording.fullScaleDb ?? null,
    parameters: choices,
    room:
      room && size
        ? {
            sizeMetres: [size.lengthMetres, size.widthMetres, size.heightMetres],
            speedOfSound: room.speedOfSoundMetresPerSecond,
          }
        : null,
  };
}
