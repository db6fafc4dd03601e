import { RingdownError } from './errors.js';
import type { Job, Progress } from './types.js';

export interface SliceOptions {
  /** Longest stretch of work between two turns of the event loop; 8 ms leaves a page half of a 60 Hz frame. */
  readonly sliceMilliseconds?: number;
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
}

/** Runs a job to its end at once: in the command, and where nobody waits for the thread. */
export function drain<T>(job: Job<T>, onProgress?: (progress: Progress) => void): T {
  for (;;) {
    const step = job.next();
    if (step.done) return step.value;
    onProgress?.(step.value);
  }
}

/**
 * Runs a job in slices, so that the thread stays free for its user between them, and so that it can be stopped there.
 *
 * @throws RingdownError `cancelled` where the signal is aborted; the job's own errors
 */
export async function drainSliced<T>(job: Job<T>, options: SliceOptions = {}): Promise<T> {
  const { sliceMilliseconds = 8, signal, onProgress } = options;
  for (;;) {
    const begin = performance.now();
    let last: Progress;
    do {
      if (signal?.aborted) {
        // Runs the generator's `finally`, so that what it holds is let go.
        job.return(undefined as never);
        throw new RingdownError('cancelled');
      }
      const step = job.next();
      if (step.done) return step.value;
      last = step.value;
      // A first answer is shown at once.
    } while (last.draft === undefined && performance.now() - begin < sliceMilliseconds);
    onProgress?.(last);
    await nextTurn();
  }
}

/** The next turn of the event loop. A message, since nested timers of a page are held back by 4 ms each. */
export function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}
