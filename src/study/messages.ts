import type { ParamValue, Progress } from '../signal/index.js';

/** What a page sends to a worker: a job, or the wish to stop one. */
export type ToWorker =
  | { readonly id: number; readonly type: string; readonly params: unknown }
  | { readonly id: number; readonly type: 'cancel' };

/** What a worker sends: `ready` once, then for each job any number of `progress` and one `result` or `error`. */
export type FromWorker =
  | { readonly type: 'ready' }
  | { readonly id: number; readonly type: 'progress'; readonly progress: Progress }
  | { readonly id: number; readonly type: 'result'; readonly result: unknown }
  | {
      readonly id: number;
      readonly type: 'error';
      readonly code: string;
      readonly params: Readonly<Record<string, ParamValue>>;
    };
