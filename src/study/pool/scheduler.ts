import { RingdownError } from '../../signal/index.js';
import type { Job, Progress } from '../../signal/index.js';
import { drainSliced } from '../../signal/drain.js';
import { LaneBroken, openLane, type Lane, type WorkerLike } from './lane.js';

/** One way to get a worker; `null` where it is not there at all, as an inline text that no build filled in. */
export interface Route {
  readonly name: string;
  readonly make: () => WorkerLike | null | Promise<WorkerLike | null>;
}

export interface SchedulerOptions {
  /** Tried in this order; one that fails is not tried again. After the last: the main thread, in slices. */
  readonly routes: readonly Route[];
  readonly size: number;
  readonly start: (type: string, params: unknown) => Job<unknown>;
  readonly silenceMilliseconds?: number | undefined;
  /** A worker at work that says nothing for so long is given up. */
  readonly stallMilliseconds?: number | undefined;
}

export interface Request {
  readonly type: string;
  readonly params: unknown;
  /** Goes before what only waits: a step that brings a picture somebody is looking for. */
  readonly soon?: boolean;
  readonly signal?: AbortSignal | undefined;
  readonly onProgress?: ((progress: Progress) => void) | undefined;
}

interface Task extends Request {
  readonly id: number;
  readonly resolve: (value: unknown) => void;
  readonly reject: (reason: unknown) => void;
  /** How many workers broke down under it. */
  crashes: number;
}

export interface Scheduler {
  run(request: Request): Promise<unknown>;
  /** The way jobs go now: a route's name, `main`, or null before the first job. */
  readonly way: string | null;
  /** Ends each worker once it has nothing to do; no more jobs come. */
  retire(): void;
  /** Ends the workers; waiting and running jobs are cancelled. */
  dispose(): void;
}

/** A worker that starts slowly on a loaded machine is up within this time; one that says nothing never will. */
const defaultSilenceMilliseconds = 5000;

export function createScheduler(options: SchedulerOptions): Scheduler {
  const { routes, start, silenceMilliseconds = defaultSilenceMilliseconds, stallMilliseconds } = options;
  const queue: Task[] = [];
  const running = new Map<number, Task>();
  const lanes = new Set<Lane>();
  let { size } = options;
  let route = 0;
  let opening = 0;
  let nextId = 1;
  let mainBusy = false;
  let disposed = false;
  let retired = false;
  let way: string | null = null;

  const pump = (): void => {
    if (disposed) return;
    if (route >= routes.length) {
      way = 'main';
      if (!mainBusy && lanes.size === 0) void runOnMain();
    }
    for (const lane of lanes) {
      if (queue.length === 0) break;
      if (!lane.busy) void runInLane(lane, queue.shift()!);
    }
    if (retired && queue.length === 0)
      for (const lane of lanes)
        if (!lane.busy) {
          lane.close();
          lanes.delete(lane);
        }
    while (route < routes.length && Math.min(size - lanes.size, queue.length) > opening) void addLane();
  };

  const addLane = async (): Promise<void> => {
    opening++;
    const tried = route;
    try {
      const worker = await routes[tried].make();
      if (!worker) throw new LaneBroken('absent');
      const lane = await openLane(worker, silenceMilliseconds, stallMilliseconds);
      if (disposed) lane.close();
      else lanes.add(lane);
      way = routes[tried].name;
    } catch {
      // Where the same route serves already, it is one worker too many for this machine, not a route to be given up.
      if (lanes.size > 0) size = lanes.size;
      else if (route === tried) route++;
    } finally {
      opening--;
      pump();
    }
  };

  const runInLane = async (lane: Lane, task: Task): Promise<void> => {
    running.set(task.id, task);
    const stop = () => lane.cancel(task.id);
    task.signal?.addEventListener('abort', stop, { once: true });
    try {
      task.resolve(await lane.run(task.id, task.type, task.params, (p) => report(task, p)));
    } catch (thrown) {
      if (!(thrown instanceof LaneBroken)) task.reject(thrown);
      else if (disposed || task.signal?.aborted) task.reject(new RingdownError('cancelled'));
      else if (++task.crashes < 2) queue.unshift(task);
      else task.reject(new RingdownError('worker-crashed'));
    } finally {
      task.signal?.removeEventListener('abort', stop);
      running.delete(task.id);
      if (lane.broken) lanes.delete(lane);
      pump();
    }
  };

  const runOnMain = async (): Promise<void> => {
    const task = queue.shift();
    if (!task) return;
    mainBusy = true;
    running.set(task.id, task);
    try {
      const { signal } = task;
      const job = start(task.type, task.params);
      task.resolve(await drainSliced(job, { signal, onProgress: (p) => report(task, p) }));
    } catch (thrown) {
      task.reject(thrown);
    } finally {
      mainBusy = false;
      running.delete(task.id);
      pump();
    }
  };

  const report = (task: Task, progress: Progress): void => {
    if (!task.signal?.aborted) task.onProgress?.(progress);
  };

  return {
    get way() {
      return way;
    },
    run: (request) =>
      new Promise((resolve, reject) => {
        if (disposed || request.signal?.aborted) return reject(new RingdownError('cancelled'));
        const task: Task = { ...request, id: nextId++, resolve, reject, crashes: 0 };
        // Whoever cancels is told at once; the worker stops at its next yield.
        request.signal?.addEventListener(
          'abort',
          () => {
            const index = queue.indexOf(task);
            if (index >= 0) queue.splice(index, 1);
            reject(new RingdownError('cancelled'));
          },
          { once: true },
        );
        const others = task.soon ? queue.findIndex(({ soon }) => !soon) : -1;
        queue.splice(others < 0 ? queue.length : others, 0, task);
        // Lets callers of one turn fill the queue, so that the number of workers is right from the start.
        queueMicrotask(pump);
      }),
    retire: () => {
      retired = true;
      pump();
    },
    dispose: () => {
      disposed = true;
      for (const lane of lanes) lane.close();
      for (const task of [...queue, ...running.values()]) task.reject(new RingdownError('cancelled'));
      queue.length = 0;
      lanes.clear();
    },
  };
}
