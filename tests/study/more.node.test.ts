import { afterEach, describe, expect, it } from 'vitest';
import { RingdownError } from '../../src/signal/errors.js';
import type { Job } from '../../src/signal/types.js';
import type { FromWorker, ToWorker } from '../../src/study/messages.js';
import { fromMore, hasMore, setMore } from '../../src/study/more.js';
import type { WorkerLike } from '../../src/study/pool/lane.js';
import { createPool, type Pool } from '../../src/study/pool.js';
import { serve } from '../../src/study/worker-host.js';

let whole = false;
const workers: { whole: boolean; ended: boolean }[] = [];

/** A worker of what the page's file holds when it is made: without the other file every job wants more. */
function makeWorker(): WorkerLike {
  const made = { whole, ended: false };
  workers.push(made);
  let page: ((event: { data: unknown }) => void) | null = null;
  let host: ((event: { data: unknown }) => void) | null = null;
  function* start(type: string): Job<string> {
    yield { stage: type, fraction: 0 };
    if (!made.whole) throw new RingdownError('more-missing');
    return type;
  }
  setTimeout(() =>
    serve(
      {
        postMessage: (data: FromWorker) => setTimeout(() => page?.({ data })),
        addEventListener: (_, listener) => (host = listener),
      },
      { start, transferables: () => [] },
    ),
  );
  return {
    postMessage: (data: ToWorker) => setTimeout(() => host?.({ data })),
    addEventListener: (type: string, listener: never) => {
      if (type === 'message') page = listener;
    },
    terminate: () => {
      made.ended = true;
    },
  };
}

describe('what a single file leaves to the one beside it', () => {
  const pools: Pool[] = [];
  const pool = (): Pool => {
    const made = createPool({ routes: [{ name: 'inline', make: makeWorker }], size: 1 });
    pools.push(made);
    return made;
  };
  afterEach(() => {
    for (const one of pools) one.dispose();
    whole = false;
    workers.length = 0;
  });

  it('is fetched by the first job that comes to it, which runs again in a worker that has it; the other ends', async () => {
    let fetched = 0;
    setMore('more.js', () => {
      fetched++;
      whole = true;
      return Promise.resolve({ modules: { 'a.ts': { answer: 42 } } });
    });
    expect(hasMore()).toBe(true);
    const one = pool();
    const both = await Promise.all([one.run('predict', {} as never), one.run('pressure', {} as never)]);
    expect(both).toEqual(['predict', 'pressure']);
    expect(hasMore()).toBe(false);
    expect(workers.filter((worker) => worker.whole)).toHaveLength(1);
    await expect.poll(() => workers.filter((worker) => !worker.whole).every(({ ended }) => ended)).toBe(true);
    expect(fetched).toBeGreaterThan(0);
    expect(await fromMore<{ answer: number }>('a.ts')).toEqual({ answer: 42 });
  });

  it('is a refusal with the name of the file where it does not come, and is asked for again', async () => {
    let tries = 0;
    setMore('more.js', () => Promise.reject(new TypeError(`404 number ${++tries}`)));
    const one = pool();
    const refused = { code: 'more-missing', params: { name: 'more.js', detail: '404 number 1' } };
    await expect(one.run('predict', {} as never)).rejects.toMatchObject(refused);
    await expect(one.run('predict', {} as never)).rejects.toMatchObject({
      ...refused,
      params: { detail: '404 number 2' },
    });
  });
});
