import { RingdownError } from '../../signal/index.js';
import type { Progress } from '../../signal/index.js';
import type { FromWorker, ToWorker } from '../messages.js';

/** The part of a Worker that is used; a page's own factory may return anything that has it. */
export type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>;

/** The worker ended or could not be understood: not a failure of its job, which may be tried again. */
export class LaneBroken extends Error {}

/** One started worker with at most one job. */
export interface Lane {
  readonly busy: boolean;
  readonly broken: boolean;
  run(id: number, type: string, params: unknown, onProgress: (progress: Progress) => void): Promise<unknown>;
  /** Asks the worker to stop a job at its next yield. */
  cancel(id: number): void;
  close(): void;
}

/**
 * Waits until a worker says that it is ready. Three shapes of failure end alike: a throw of the constructor (the
 * caller's), an `error` event (not found, forbidden by the page's policy, a broken file), and silence.
 */
export function openLane(worker: WorkerLike, silenceMilliseconds: number): Promise<Lane> {
  return new Promise((resolve, reject) => {
    let open = true;
    let broken = false;
    let current: {
      id: number;
      resolve: (value: unknown) => void;
      reject: (reason: unknown) => void;
      onProgress: (progress: Progress) => void;
    } | null = null;

    const breakDown = (reason: string): void => {
      if (broken) return;
      broken = true;
      clearTimeout(timer);
      worker.terminate();
      const error = new LaneBroken(reason);
      if (open) reject(error);
      current?.reject(error);
      current = null;
    };
    const timer = setTimeout(() => breakDown('silent'), silenceMilliseconds);

    const lane: Lane = {
      get busy() {
        return current !== null;
      },
      get broken() {
        return broken;
      },
      async run(id, type, params, onProgress) {
        const answer = new Promise((resolve, reject) => {
          current = { id, resolve, reject, onProgress };
        });
        try {
          worker.postMessage({ id, type, params } satisfies ToWorker);
        } catch (thrown) {
          current = null;
          throw thrown;
        }
        return answer;
      },
      cancel: (id) => {
        if (!broken && current?.id === id) worker.postMessage({ id, type: 'cancel' } satisfies ToWorker);
      },
      close: () => breakDown('closed'),
    };

    worker.addEventListener('message', (event: MessageEvent<FromWorker>) => {
      const { data } = event;
      if (broken) return;
      if (data.type === 'ready') {
        clearTimeout(timer);
        open = false;
        resolve(lane);
        return;
      }
      if (!current || data.id !== current.id) return;
      const { resolve: done, reject: fail, onProgress } = current;
      if (data.type === 'progress') return onProgress(data.progress);
      current = null;
      if (data.type === 'result') done(data.result);
      else fail(new RingdownError(data.code, { ...data.params }));
    });
    worker.addEventListener('error', (event) => {
      event.preventDefault();
      breakDown(event.message || 'failed to load');
    });
    worker.addEventListener('messageerror', () => breakDown('unreadable message'));
  });
}
