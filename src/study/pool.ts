import { RingdownError } from '../signal/index.js';
import type { Progress } from '../signal/index.js';
import { createResultCache } from './cache.js';
import { hasMore, more } from './more.js';
import { startJob, type JobParams, type JobResult, type JobType } from './jobs.js';
import { workerFromText } from './pool/from-text.js';
import { createScheduler, type Request, type Route, type Scheduler } from './pool/scheduler.js';
import type { WorkerLike } from './pool/lane.js';

export type { WorkerLike } from './pool/lane.js';
export type WorkerFactory = () => WorkerLike | Promise<WorkerLike>;

export interface RunOptions {
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
  /** Hash and parameters as one text: under it the result is kept, and taken from there the next time. */
  readonly key?: string | undefined;
}

/** Runs jobs in workers where there are any, else on the main thread in slices of 8 ms. */
export interface Pool {
  /** @throws RingdownError `cancelled`, `worker-crashed`, and those of the job */
  run<T extends JobType>(type: T, params: JobParams<T>, options?: RunOptions): Promise<JobResult<T>>;
  /** A kept result, or undefined. */
  peek<T extends JobType>(type: T, key: string): JobResult<T> | undefined;
  /** How jobs run now: `factory`, `sibling`, `inline`, `main`; null before the first. */
  readonly way: string | null;
  dispose(): void;
}

export interface PoolOptions {
  /** Instead of the chain of this page. */
  readonly routes?: readonly Route[];
  readonly size?: number;
  readonly silenceMilliseconds?: number;
  /** Results kept. */
  readonly cacheLimit?: number;
}

/** The worker beside this module. Bundlers look for this very expression. */
function siblingWorker(): Worker {
  return new Worker(new URL('./worker.js', import.meta.url), { type: 'module' });
}

/** The same worker from its text. Fetched only then. */
const inlineWorker = async (): Promise<Worker | null> =>
  workerFromText((await import('./worker-inline.js')).default);

let factory: WorkerFactory | null | undefined;
let inlineFirst = false;
let shared: Pool | null = null;

/**
 * How this page makes its workers: a function of its own, tried before the usual ways; `null` for none at all, so that
 * all is computed on the main thread; `undefined` for the usual ways. Holds for jobs from now on.
 */
export function setWorkerFactory(own: WorkerFactory | null | undefined): void {
  factory = own;
  // Jobs under way end where they are; their workers end with the page or with their pool's owner.
  shared = null;
}

/**
 * For the library in one file: the worker's text is in it, and beside it lies no other file, so that asking for one
 * would be a request in vain on every page.
 */
export function preferInlineWorker(): void {
  inlineFirst = true;
}

/** How this page wishes its workers, for those that make one of their own. */
export const factoryOfPage = (): WorkerFactory | null | undefined => factory;
export const prefersInline = (): boolean => inlineFirst;

function pageRoutes(): Route[] {
  if (factory === null) return [];
  const routes: Route[] = [];
  if (factory) routes.push({ name: 'factory', make: factory });
  if (typeof Worker === 'undefined') return routes;
  const sibling = { name: 'sibling', make: siblingWorker };
  const inline = { name: 'inline', make: inlineWorker };
  return [...routes, ...(inlineFirst ? [inline, sibling] : [sibling, inline])];
}

/** One core is the page's own. More than two workers serve nobody: one file is two jobs. */
function pageSize(): number {
  const cores = typeof navigator === 'undefined' ? 2 : (navigator.hardwareConcurrency ?? 2);
  return Math.max(1, Math.min(2, cores - 1));
}

/** Of a page with many recordings the first picture comes before the last file is read, and before any long fit. */
const soonTypes: ReadonlySet<JobType> = new Set<JobType>(['examine', 'grid']);

export function createPool(options: PoolOptions = {}): Pool {
  const begin = (): Scheduler =>
    createScheduler({
      routes: options.routes ?? pageRoutes(),
      size: options.size ?? pageSize(),
      start: startJob,
      silenceMilliseconds: options.silenceMilliseconds,
    });
  let scheduler = begin();
  let partial = hasMore();
  /** A job that comes to what the page's file leaves to another begins anew with the whole engine. */
  const runWhole = async (request: Request): Promise<unknown> => {
    const used = scheduler;
    try {
      return await used.run(request);
    } catch (thrown) {
      if (!partial && scheduler === used) throw thrown;
      if (!(thrown instanceof RingdownError) || thrown.code !== 'more-missing') throw thrown;
      await more();
      if (scheduler === used) {
        scheduler = begin();
        partial = false;
        used.retire();
      }
      return scheduler.run(request);
    }
  };
  const cache = createResultCache(options.cacheLimit);
  return {
    get way() {
      return scheduler.way;
    },
    run<T extends JobType>(type: T, params: JobParams<T>, { key, signal, onProgress }: RunOptions = {}) {
      const soon = soonTypes.has(type);
      if (key === undefined)
        return runWhole({ type, params, soon, signal, onProgress }) as Promise<JobResult<T>>;
      return cache.get(
        `${type} ${key}`,
        { signal, onProgress },
        (waiter) => runWhole({ type, params, soon, ...waiter }) as Promise<JobResult<T>>,
      );
    },
    peek: <T extends JobType>(type: T, key: string) => cache.peek<JobResult<T>>(`${type} ${key}`),
    dispose: () => {
      scheduler.dispose();
      cache.clear();
    },
  };
}

/** The pool of this page, made at its first use. */
export function sharedPool(): Pool {
  return (shared ??= createPool());
}

/**
 * How the jobs of this page are computed: `factory`, `sibling` or `inline` in workers, `main` on the page's own thread in
 * slices; null before the first job.
 */
export const workerWay = (): string | null => shared?.way ?? null;
