import { RingdownError } from '../signal/index.js';
import type { Progress } from '../signal/index.js';

export interface Waiter {
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
}

interface Underway {
  readonly promise: Promise<unknown>;
  readonly controller: AbortController;
  readonly listeners: Set<(progress: Progress) => void>;
  waiting: number;
}

/**
 * Results by hash and parameters, the least recently used dropped first. Several who ask for the same result while it
 * is computed share one computation, which is stopped only when none of them waits any more. Failures are not kept.
 */
export interface ResultCache {
  get<T>(key: string, waiter: Waiter, start: (waiter: Required<Waiter>) => Promise<T>): Promise<T>;
  /** The result if it is there, without computing. */
  peek<T>(key: string): T | undefined;
  clear(): void;
}

/** @param limit Results kept; a default grid has 65 kB, a diagnosis less. */
export function createResultCache(limit = 64): ResultCache {
  const kept = new Map<string, unknown>();
  const underway = new Map<string, Underway>();

  const keep = (key: string, result: unknown): void => {
    kept.delete(key);
    kept.set(key, result);
    if (kept.size > limit) kept.delete(kept.keys().next().value!);
  };

  const begin = (key: string, start: (waiter: Required<Waiter>) => Promise<unknown>): Underway => {
    const controller = new AbortController();
    const listeners = new Set<(progress: Progress) => void>();
    const promise = start({
      signal: controller.signal,
      onProgress: (progress) => listeners.forEach((listener) => listener(progress)),
    }).then(
      (result) => {
        if (underway.get(key) === entry) underway.delete(key);
        keep(key, result);
        return result;
      },
      (thrown: unknown) => {
        if (underway.get(key) === entry) underway.delete(key);
        throw thrown;
      },
    );
    const entry: Underway = { promise, controller, listeners, waiting: 0 };
    underway.set(key, entry);
    return entry;
  };

  return {
    peek<T>(key: string) {
      return kept.get(key) as T | undefined;
    },
    clear: () => kept.clear(),
    get<T>(key: string, { signal, onProgress }: Waiter, start: (waiter: Required<Waiter>) => Promise<T>) {
      if (kept.has(key)) {
        const result = kept.get(key);
        keep(key, result);
        return Promise.resolve(result as T);
      }
      const entry = underway.get(key) ?? begin(key, start);
      entry.waiting++;
      if (onProgress) entry.listeners.add(onProgress);
      return new Promise<T>((resolve, reject) => {
        let here = true;
        const leave = (): void => {
          if (!here) return;
          here = false;
          signal?.removeEventListener('abort', stop);
          if (onProgress) entry.listeners.delete(onProgress);
          entry.waiting--;
        };
        const stop = (): void => {
          leave();
          if (entry.waiting === 0) {
            if (underway.get(key) === entry) underway.delete(key);
            entry.controller.abort();
          }
          reject(new RingdownError('cancelled'));
        };
        signal?.addEventListener('abort', stop, { once: true });
        entry.promise.finally(leave).then((result) => resolve(result as T), reject);
        if (signal?.aborted) stop();
      });
    },
  };
}
