import { RingdownError } from '../../study/inputs.js';
import type { RecordingOptions } from '../../study/types.js';
import { fetchFile } from './fetch-file.js';
import { nameOf, type RecordingSettings } from './settings.js';

/** A file by its address or its bytes; none where both are null. */
export interface PageFile {
  readonly url: string | null;
  readonly data: Blob | ArrayBuffer | null;
  /** With which the address is fetched; those of the same origin where not given. */
  readonly credentials?: RequestCredentials | undefined;
}

/** One recording that the page asks for. */
export interface PageSource extends PageFile {
  /** Tells it from the others across changes: the element it stands for. */
  readonly id: object;
  /** The sweep that was played, where the file is the recording of it. */
  readonly sweep?: PageFile;
  /** The response of the microphone. */
  readonly microphone?: PageFile;
  readonly settings: RecordingSettings;
}

export type Places = ReadonlyMap<string, NonNullable<RecordingOptions['seat']>>;

export interface Arrived {
  readonly bytes: ArrayBuffer;
  readonly beside?: Pick<RecordingOptions, 'sweep' | 'microphone'>;
}

/** Changes when anything changes that would give another recording. */
export function signatureOf(source: PageSource, places: Places): string {
  const { settings, sweep, microphone } = source;
  const named = [settings.seat, settings.source].map((place) => places.get(String(place)) ?? null);
  const files = [source, sweep, microphone].map((file) => [
    file?.url ?? null,
    file?.data ? dataNumber(file.data) : null,
    file?.credentials ?? null,
  ]);
  return JSON.stringify([files, settings, named]);
}

const numbers = new WeakMap<object, number>();
let lastNumber = 0;
function dataNumber(data: object): number {
  if (!numbers.has(data)) numbers.set(data, (lastNumber += 1));
  return numbers.get(data)!;
}

/** A recording with the files given beside it, fetched together. */
export async function arrive(
  { sweep, microphone, ...file }: PageSource,
  signal: AbortSignal,
): Promise<Arrived> {
  const besideOf = async (name: 'sweep' | 'microphone', one: PageFile | undefined) =>
    one && (one.url !== null || one.data !== null)
      ? {
          label: one.url === null ? '' : nameOf(one.url),
          bytes: new Uint8Array(await fileBytes(one, name, signal)),
        }
      : null;
  const [bytes, played, heard] = await Promise.all([
    fileBytes(file, 'src', signal),
    besideOf('sweep', sweep),
    besideOf('microphone', microphone),
  ]);
  return { bytes, beside: { ...(played && { sweep: played }), ...(heard && { microphone: heard }) } };
}

const fileBytes = (
  { url, data, credentials }: PageFile,
  name: string,
  signal: AbortSignal,
): Promise<ArrayBuffer> => (data === null ? fetchFile(url!, { name, signal, credentials }) : bytesOf(data));

export async function bytesOf(data: Blob | ArrayBuffer): Promise<ArrayBuffer> {
  if (data instanceof ArrayBuffer) return data.slice(0);
  try {
    return await data.arrayBuffer();
  } catch (error) {
    throw new RingdownError('file-read', { detail: error instanceof Error ? error.message : String(error) });
  }
}
