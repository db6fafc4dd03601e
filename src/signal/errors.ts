import type { ParamValue } from './types.js';

/**
 * The one error type of ringdown. `code` is stable and made into a sentence by `words/`; `params` are the numbers
 * and names of that sentence. The `message` is only for consoles.
 */
export class RingdownError extends Error {
  readonly code: string;
  readonly params: Readonly<Record<string, ParamValue>>;

  constructor(code: string, params: Record<string, ParamValue> = {}) {
    super(`${code} ${JSON.stringify(params)}`);
    this.name = 'RingdownError';
    this.code = code;
    this.params = params;
  }
}
