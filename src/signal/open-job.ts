import { drain } from './drain.js';
import { refusal } from './error-codes.js';
import { hashOf } from './hash.js';
import { within } from './job.js';
import { microphoneNote, readMicrophone, withoutMicrophone } from './microphone.js';
import { onsetIndex } from './onset.js';
import { containerOf, readAudio, sofaContainer } from './read-audio.js';
import { recordingFromAudio, type OpenOptions } from './recording.js';
import { responsesOfSweep } from './swept.js';
import type { DecodedAudio, Job, Recording } from './types.js';

/** Levels at full scale that any microphone and input could have, dB re 20 µPa. */
const fullScaleBounds = [40, 200] as const;

/**
 * Opens a file with what is given beside it: where it is the recording of a sweep, its impulse response is worked out;
 * the response of the microphone is taken off; the calibration is noted.
 *
 * @param audio Of the file, decoded.
 * @throws RingdownError `calibration-range`, `measurement-none`, and those of `recordingFromAudio`, `responsesOfSweep`, `readMicrophone`
 */
export function* openJob(
  bytes: Uint8Array,
  audio: DecodedAudio | null,
  options: OpenOptions = {},
): Job<Recording> {
  yield { stage: 'open', fraction: 0 };
  const { fullScaleDb, measurement } = options;
  if (!audio && measurement !== undefined && containerOf(bytes) !== sofaContainer)
    throw refusal('measurement-none', { measurement });
  const [lowest, highest] = fullScaleBounds;
  if (fullScaleDb !== undefined && !(fullScaleDb >= lowest && fullScaleDb <= highest))
    throw refusal('calibration-range', { fullScaleDb, lowest, highest });
  const microphone = options.microphone && readMicrophone(options.microphone.bytes, options.microphone.label);
  const decoded = audio ?? readAudio(bytes, options.sampleRate ?? null);
  const opened = options.sweep
    ? yield* within(sweptRecording(bytes, decoded, options.sweep, options), 0.05, 0.8)
    : recordingFromAudio(decoded, hashOf(bytes), options);
  const calibrated: Recording =
    fullScaleDb === undefined
      ? opened
      : {
          ...opened,
          fullScaleDb,
          notes: [...opened.notes, { code: 'calibrated', params: { fullScaleDb } }],
        };
  if (!microphone) return calibrated;
  const { sampleRate } = calibrated;
  const samples = yield* within(withoutMicrophone(calibrated.samples, sampleRate, microphone), 0.8, 1);
  return {
    ...calibrated,
    samples,
    onsetSeconds: onsetIndex(samples, sampleRate) / sampleRate,
    microphone,
    notes: [...calibrated.notes, microphoneNote(microphone)],
  };
}

/** A file given beside another. */
export interface FileBeside {
  readonly label: string;
  readonly bytes: Uint8Array;
  /** Where it was decoded elsewhere. */
  readonly audio?: DecodedAudio | null;
}

/** All channels are worked out, so that the one that is read is chosen as of any file; the one alone where it is named. */
function* sweptRecording(
  bytes: Uint8Array,
  audio: DecodedAudio,
  sweep: FileBeside,
  options: OpenOptions,
): Job<Recording> {
  const played = sweep.audio ?? readAudio(sweep.bytes);
  const { channel } = options;
  const swept = yield* responsesOfSweep(audio, played, channel);
  const own = channel === undefined ? options : { ...options, channel: 1 };
  const recording = recordingFromAudio(swept.audio, hashOf(bytes), own);
  return {
    ...recording,
    channel: channel ?? recording.channel,
    channelCount: audio.channels.length,
    sweep: { label: sweep.label, hash: hashOf(sweep.bytes) },
  };
}

/** The same at once. */
export function openNow(bytes: Uint8Array, audio: DecodedAudio | null, options: OpenOptions = {}): Recording {
  return drain(openJob(bytes, audio, options));
}
