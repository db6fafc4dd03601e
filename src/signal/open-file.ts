import { hashOf } from './hash.js';
import { containerOf, sofaContainer } from './read-audio.js';
import { openRecording, recordingFromAudio, type OpenOptions } from './recording.js';
import { readSofa } from './sofa/read-sofa.js';
import type { Recording } from './types.js';

/**
 * Opens the bytes of a file as a recording, AES69 (SOFA) included, whose reader is loaded only then.
 *
 * @throws RingdownError those of `openRecording` and `readSofa`
 */
export async function openFile(bytes: Uint8Array, options: OpenOptions = {}): Promise<Recording> {
  if (containerOf(bytes) !== sofaContainer) return openRecording(bytes, options);
  const audio = await readSofa(bytes, options.measurement);
  return recordingFromAudio(audio, hashOf(bytes), options);
}
