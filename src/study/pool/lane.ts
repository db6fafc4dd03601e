import { RingdownError } from '../../signal/index.js';
import type { Progress } from '../../signal/index.js';
import { nextTurn } from '../../signal/drain.js';
import type { FromWorker, ToWorker } from '../messages.js';
import { inPieces } from './pieces.js';

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
 * A worker tells of its progress some sixty times a second, and its longest step without any, the reading of the largest
 * file, takes half a minute on a slow machine. One that says nothing for so long was ended without a word.
 */
const defaultStallMilliseconds = 180_000;
/** Counted and not timed: a page that is put to sleep counts no more than its worker works. */
const stallTicks = 6;

/**
 * Waits until a worker says that it is ready. Three shapes of failure end alike: a throw of the constructor (the
 * caller's), an `error` event (not found, forbidden by the page's policy, a broken file), and silence.
 */
export function openLane(
  worker: WorkerLike,
  silenceMilliseconds: number,
  stallMilliseconds = defaultStallMilliseconds,
): Promise<Lane> {
  return new Promise((resolve, reject) => {
    let open = true;
    let broken = false;
    let current: {
      id: number;
      resolve: (value: unknown) => void;
      reject: (reason: unknown) => void;
      onProgress: (progress: Progress) => void;
      /** Its long arrays are still on their way. */
      sending: boolean;
    } | null = null;

    const breakDown = (reason: string): void => {
      if (broken) return;
      broken = true;
      clearTimeout(timer);
      clearInterval(watch);
      worker.terminate();
      const error = new LaneBroken(reason);
      if (open) reject(error);
      current?.reject(error);
      current = null;
    };
    const timer = setTimeout(() => breakDown('silent'), silenceMilliseconds);
    let watch: ReturnType<typeof setInterval> | undefined;
    let quiet = 0;
    const watchJob = (on: boolean): void => {
      clearInterval(watch);
      quiet = 0;
      if (on)
        watch = setInterval(
          () => ++quiet >= stallTicks && breakDown('stalled'),
          stallMilliseconds / stallTicks,
        );
    };

    const lane: Lane = {
      get busy() {
        return current !== null;
      },
      get broken() {
        return broken;
      },
      async run(id, type, params, onProgress) {
        const answer = new Promise((resolve, reject) => {
          current = { id, resolve, reject, onProgress, sending: true };
        });
        // Who waits for it is told by `answer`; until then nobody listens there.
        answer.catch(() => undefined);
        const mine = current!;
        try {
          const { params: short, pieces } = inPieces(params);
          for (const piece of pieces) {
            worker.postMessage({ id, type: 'piece', piece } satisfies ToWorker, [
              piece.part.buffer as ArrayBuffer,
            ]);
            await nextTurn();
            // Cancelled meanwhile, or the worker is gone.
            if (current !== mine) return answer;
          }
          worker.postMessage({ id, type, params: short } satisfies ToWorker);
          mine.sending = false;
          watchJob(true);
        } catch (thrown) {
          current = null;
          throw thrown;
        }
        return answer;
      },
      cancel: (id) => {
        if (broken || current?.id !== id) return;
        worker.postMessage({ id, type: 'cancel' } satisfies ToWorker);
        if (!current.sending) return;
        // The worker knows of no job that it could stop.
        const { reject } = current;
        current = null;
        reject(new RingdownError('cancelled'));
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
      quiet = 0;
      if (data.type === 'progress') return onProgress(data.progress);
      current = null;
      watchJob(false);
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
