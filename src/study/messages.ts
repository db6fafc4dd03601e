import type { ParamValue, Progress } from '../signal/index.js';
import type { PieceMessage } from './pool/pieces.js';

/** What a page sends to a worker: pieces of long arrays, the job that they belong to, or the wish to stop it. */
export type ToWorker =
  | { readonly id: number; readonly type: 'piece'; readonly piece: PieceMessage }
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
