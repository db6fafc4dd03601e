import { RingdownError } from '../../study/inputs.js';
import { Scope } from '../scope.js';

export interface FetchOptions {
  /** Attribute that names the address, for the sentence. */
  readonly name: string;
  readonly signal: AbortSignal;
  /** As of `fetch`. */
  readonly credentials?: RequestCredentials | undefined;
  readonly mostBytes?: number;
  readonly silenceMilliseconds?: number;
}

/** The most that is held of a recording (`highestSampleCount`) as 64-bit floats, and room for headers. */
const defaultMostBytes = 2 ** 29 + 2 ** 20;
/** A server that sends nothing for so long will not send more. */
const defaultSilenceMilliseconds = 30_000;

const megabytes = (bytes: number): number => bytes / 2 ** 20;

/**
 * A file of the page's, counted while it arrives. A size in the answer's header is believed only where it is too large.
 *
 * @throws RingdownError `fetch-failed`, `fetch-status`, `fetch-page` where a web page came in its place, `fetch-large`,
 *   `fetch-slow`, `cancelled`
 */
export async function fetchFile(url: string, options: FetchOptions): Promise<ArrayBuffer> {
  const { name, signal, credentials = 'same-origin' } = options;
  const { mostBytes = defaultMostBytes, silenceMilliseconds = defaultSilenceMilliseconds } = options;
  const stopping = new AbortController();
  const stop = (): void => stopping.abort();
  if (signal.aborted) stop();
  const scope = new Scope();
  scope.listen(signal, 'abort', stop);
  const later = scope.debounce(silenceMilliseconds);
  let silent = false;
  const heard = (): void =>
    later(() => {
      silent = true;
      stop();
    });
  const large = (bytes: number): RingdownError =>
    new RingdownError('fetch-large', {
      ...{ url, name },
      ...{ megabytes: megabytes(bytes), mostMegabytes: megabytes(mostBytes) },
    });
  try {
    heard();
    const response = await fetch(url, { signal: stopping.signal, credentials });
    heard();
    if (!response.ok) throw new RingdownError('fetch-status', { url, name, status: response.status });
    // What a server that knows no such file often answers with.
    if (/^\s*(text\/html|application\/xhtml)/i.test(response.headers.get('content-type') ?? ''))
      throw new RingdownError('fetch-page', { url, name });
    const declared = Number(response.headers.get('content-length') ?? 0);
    if (declared > mostBytes) throw large(declared);
    return await received(response, (bytes) => {
      heard();
      if (bytes > mostBytes) throw large(bytes);
    });
  } catch (thrown) {
    if (silent) throw new RingdownError('fetch-slow', { url, name, seconds: silenceMilliseconds / 1000 });
    if (signal.aborted) throw new RingdownError('cancelled');
    throw thrown instanceof RingdownError ? thrown : new RingdownError('fetch-failed', { url, name });
  } finally {
    scope.dispose();
    // Of an answer that is not wanted, the rest need not come.
    stop();
  }
}

/** The bytes of an answer, whose number so far is told as they come. */
async function received(response: Response, count: (bytes: number) => void): Promise<ArrayBuffer> {
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = response.body?.getReader();
  while (reader) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    count(length);
    parts.push(value);
  }
  const all = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all.buffer;
}
