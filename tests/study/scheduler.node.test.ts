import { describe, expect, it } from 'vitest';
import { RingdownError, type Job } from '../../src/signal/index.js';
import type { FromWorker, ToWorker } from '../../src/study/messages.js';
import type { WorkerLike } from '../../src/study/pool/lane.js';
import { createScheduler, type Route } from '../../src/study/pool/scheduler.js';
import { serve } from '../../src/study/worker-host.js';

type Listener = (event: never) => void;

/** The jobs of these tests. */
function start(type: string, params: unknown): Job<unknown> {
  return (function* () {
    if (type === 'fail') throw new RingdownError('too-short', { seconds: 1 });
    if (type === 'bug') throw new TypeError('x is undefined\n    at somewhere');
    const steps = type === 'endless' ? Infinity : 20;
    for (let i = 0; i < steps; i++) yield { stage: type, fraction: Math.min(1, i / 20) };
    return params;
  })();
}

/** A worker in this very thread, with the real host behind it; messages are copied as a real one's are. */
class LocalWorker {
  static made = 0;
  terminated = false;
  readonly #page = new Map<string, Listener[]>();
  #toHost: ((event: { data: unknown }) => void) | null = null;

  constructor(private readonly faults: { silent?: boolean; crashOn?: string; errorAtStart?: boolean } = {}) {
    LocalWorker.made++;
    if (faults.errorAtStart)
      queueMicrotask(() => this.#tell('error', { message: 'not found', preventDefault() {} }));
    if (faults.silent || faults.errorAtStart) return;
    queueMicrotask(() =>
      serve(
        {
          postMessage: (message: FromWorker) => {
            const data = structuredClone(message);
            setTimeout(() => this.#tell('message', { data }), 0);
          },
          addEventListener: (_, listener) => (this.#toHost = listener),
        },
        { start, transferables: () => [] },
      ),
    );
  }

  #tell(type: string, event: unknown): void {
    if (!this.terminated) for (const listener of this.#page.get(type) ?? []) listener(event as never);
  }

  postMessage(message: ToWorker): void {
    const data = structuredClone(message);
    if ('params' in data && this.faults.crashOn === data.type)
      return void setTimeout(() => this.#tell('error', { message: 'out of memory', preventDefault() {} }), 0);
    setTimeout(() => this.#toHost?.({ data }), 0);
  }

  addEventListener(type: string, listener: Listener): void {
    this.#page.set(type, [...(this.#page.get(type) ?? []), listener]);
  }

  terminate(): void {
    this.terminated = true;
  }
}

const route = (name: string, faults: ConstructorParameters<typeof LocalWorker>[0] = {}): Route => ({
  name,
  make: () => new LocalWorker(faults) as unknown as WorkerLike,
});

const scheduler = (routes: readonly Route[], size = 2) =>
  createScheduler({ routes, size, start, silenceMilliseconds: 60 });

describe('the scheduler', () => {
  it('runs jobs in workers and brings back results, progress and refusals with their parameters', async () => {
    const pool = scheduler([route('sibling')]);
    const fractions: number[] = [];
    const result = await pool.run({
      type: 'count',
      params: { a: [1, 2] },
      onProgress: ({ fraction }) => fractions.push(fraction),
    });
    expect(result).toEqual({ a: [1, 2] });
    expect(pool.way).toBe('sibling');
    expect(fractions).toEqual([...fractions].sort((a, b) => a - b));
    await expect(pool.run({ type: 'fail', params: 0 })).rejects.toMatchObject({
      code: 'too-short',
      params: { seconds: 1 },
    });
    await expect(pool.run({ type: 'bug', params: 0 })).rejects.toMatchObject({
      code: 'unexpected',
      params: { detail: 'x is undefined' },
    });
    pool.dispose();
  });

  it('takes the next way where the constructor throws, where loading fails, and where a worker stays silent', async () => {
    const throwing: Route = {
      name: 'throwing',
      make: () => {
        throw new Error('SecurityError');
      },
    };
    const absent: Route = { name: 'absent', make: () => null };
    const pool = scheduler([
      throwing,
      absent,
      route('broken', { errorAtStart: true }),
      route('silent', { silent: true }),
      route('last'),
    ]);
    expect(await pool.run({ type: 'count', params: 1 })).toBe(1);
    expect(pool.way).toBe('last');
    pool.dispose();
  });

  it('ends on the main thread where no way leads to a worker', async () => {
    const pool = scheduler([route('broken', { errorAtStart: true })]);
    expect(await Promise.all([1, 2, 3].map((params) => pool.run({ type: 'count', params })))).toEqual([
      1, 2, 3,
    ]);
    expect(pool.way).toBe('main');
  });

  it('starts no more workers than its size and never more than there are jobs', async () => {
    LocalWorker.made = 0;
    const pool = scheduler([route('sibling')], 2);
    await pool.run({ type: 'count', params: 0 });
    expect(LocalWorker.made).toBe(1);
    await Promise.all([1, 2, 3, 4, 5].map((params) => pool.run({ type: 'count', params })));
    expect(LocalWorker.made).toBe(2);
    pool.dispose();
  });

  it('sends long arrays in pieces, and stops sending where a job is called off', async () => {
    const pool = scheduler([route('sibling')], 1);
    const samples = Float64Array.from({ length: 2 ** 19 }, (_, n) => n % 1000);
    const got = (await pool.run({ type: 'count', params: { samples } })) as { samples: Float64Array };
    expect(got.samples.every((value, n) => value === samples[n])).toBe(true);
    expect(got.samples.length).toBe(samples.length);
    const turned = new AbortController();
    const off = pool.run({ type: 'count', params: { samples }, signal: turned.signal });
    const next = pool.run({ type: 'count', params: 'next' });
    await new Promise((resolve) => setTimeout(resolve, 0));
    turned.abort();
    await expect(off).rejects.toMatchObject({ code: 'cancelled' });
    expect(await next).toBe('next');
    pool.dispose();
  });

  it('brings what is wanted soon before what was asked for earlier, each in the order of asking', async () => {
    const pool = scheduler([route('sibling')], 1);
    const order: unknown[] = [];
    const ask = (name: string, soon: boolean): Promise<unknown> =>
      pool.run({ type: 'count', params: name, soon }).then((value) => order.push(value));
    await Promise.all([
      ...['file 1', 'file 2', 'file 3'].map((name) => ask(name, false)),
      ...['picture 1', 'picture 2'].map((name) => ask(name, true)),
    ]);
    expect(order).toEqual(['picture 1', 'picture 2', 'file 1', 'file 2', 'file 3']);
    pool.dispose();
  });

  it('replaces a worker that breaks down and tries its job once more', async () => {
    let first = true;
    const pool = scheduler(
      [
        {
          name: 'sibling',
          make: () => {
            const faults = first ? { crashOn: 'count' } : {};
            first = false;
            return new LocalWorker(faults) as unknown as WorkerLike;
          },
        },
      ],
      1,
    );
    expect(await pool.run({ type: 'count', params: 7 })).toBe(7);
    pool.dispose();
  });

  it('gives a worker up that took a job and says nothing more, as one that the browser ended', async () => {
    let made = 0;
    const pool = createScheduler({
      routes: [
        {
          name: 'sibling',
          make: () => {
            const worker = new LocalWorker();
            // The first takes what it is sent and is gone.
            if (made++ === 0) worker.postMessage = () => undefined;
            return worker as unknown as WorkerLike;
          },
        },
      ],
      ...{ size: 1, start, silenceMilliseconds: 60, stallMilliseconds: 120 },
    });
    expect(await pool.run({ type: 'count', params: 7 })).toBe(7);
    expect(made).toBe(2);
    pool.dispose();
  });

  it('gives a job up that breaks two workers, and serves the next', async () => {
    const pool = scheduler([route('sibling', { crashOn: 'count' })], 1);
    await expect(pool.run({ type: 'count', params: 7 })).rejects.toMatchObject({ code: 'worker-crashed' });
    expect(await pool.run({ type: 'other', params: 8 })).toBe(8);
    pool.dispose();
  });

  it('tells at once who cancels, and frees the worker for the next job', async () => {
    for (const routes of [[route('sibling')], []]) {
      const pool = scheduler(routes, 1);
      const controller = new AbortController();
      const running = pool.run({ type: 'endless', params: 0, signal: controller.signal });
      const waiting = pool.run({ type: 'endless', params: 0, signal: controller.signal });
      setTimeout(() => controller.abort(), 30);
      await expect(running).rejects.toMatchObject({ code: 'cancelled' });
      await expect(waiting).rejects.toMatchObject({ code: 'cancelled' });
      expect(await pool.run({ type: 'count', params: 5 })).toBe(5);
      pool.dispose();
    }
  });

  it('cancels everything when it is disposed of', async () => {
    const pool = scheduler([route('sibling')], 1);
    const jobs = [1, 2].map((params) => pool.run({ type: 'endless', params }));
    setTimeout(() => pool.dispose(), 30);
    for (const job of jobs) await expect(job).rejects.toMatchObject({ code: 'cancelled' });
    await expect(pool.run({ type: 'count', params: 1 })).rejects.toMatchObject({ code: 'cancelled' });
  });
});
