import { openNow } from './open-job.js';
import { containerOf, sofaContainer } from './read-audio.js';
import type { OpenOptions } from './recording.js';
import { readSofa } from './sofa/read-sofa.js';
import type { Recording } from './types.js';

/**
 * Opens the bytes of a file as a recording: WAV, or text of one or two columns.
 *
 * @throws RingdownError those of `readAudio` and of `openJob`
 */
export function openRecording(bytes: Uint8Array, options: OpenOptions = {}): Recording {
  return openNow(bytes, null, options);
}

/**
 * Opens the bytes of a file as a recording, AES69 (SOFA) included, whose reader is loaded only then.
 *
 * @throws RingdownError those of `openRecording` and `readSofa`
 */
export async function openFile(bytes: Uint8Array, options: OpenOptions = {}): Promise<Recording> {
  if (containerOf(bytes) !== sofaContainer) return openRecording(bytes, options);
  return openNow(bytes, await readSofa(bytes, options.measurement), options);
}
