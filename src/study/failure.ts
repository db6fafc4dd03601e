import { RingdownError } from '../signal/index.js';
import type { ParamValue } from '../signal/index.js';

export interface Failure {
  readonly code: string;
  readonly params: Readonly<Record<string, ParamValue>>;
}

/** What the engines of browsers say where an array finds no room; a length beyond any array is one of these. */
const outOfMemory = /memory|allocat|array (buffer )?(length|size)/i;

/** Any thrown value as a code and parameters. What is not ours becomes `unexpected` with its first line, no stack. */
export function failureOf(thrown: unknown): Failure {
  if (thrown instanceof RingdownError) return { code: thrown.code, params: thrown.params };
  // Two copies of the library on one page: the class differs, the shape does not.
  if (thrown instanceof Error && thrown.name === 'RingdownError' && 'code' in thrown && 'params' in thrown)
    return { code: String(thrown.code), params: thrown.params as Failure['params'] };
  if (thrown instanceof RangeError && outOfMemory.test(thrown.message))
    return { code: 'out-of-memory', params: {} };
  const text = thrown instanceof Error ? thrown.message || thrown.name : String(thrown);
  return { code: 'unexpected', params: { detail: text.split('\n')[0].slice(0, 200) } };
}
