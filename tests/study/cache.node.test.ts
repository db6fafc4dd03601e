import { describe, expect, it, vi } from 'vitest';
import { createResultCache } from '../../src/study/cache.js';

const soon = <T>(value: T): Promise<T> => new Promise((resolve) => setTimeout(() => resolve(value), 5));

describe('the cache of results', () => {
  it('computes what is asked for twice only once, at the same time and later', async () => {
    const cache = createResultCache();
    const start = vi.fn(() => soon('a'));
    const both = await Promise.all([cache.get('k', {}, start), cache.get('k', {}, start)]);
    expect(both).toEqual(['a', 'a']);
    expect(await cache.get('k', {}, start)).toBe('a');
    expect(start).toHaveBeenCalledTimes(1);
    expect(cache.peek('k')).toBe('a');
  });

  it('drops the least recently used beyond its limit', async () => {
    const cache = createResultCache(2);
    for (const key of ['a', 'b', 'a', 'c']) await cache.get(key, {}, () => soon(key));
    expect([cache.peek('a'), cache.peek('b'), cache.peek('c')]).toEqual(['a', undefined, 'c']);
  });

  it('stops a computation only when the last who waits has left', async () => {
    const cache = createResultCache();
    const [one, two] = [new AbortController(), new AbortController()];
    let stopped = false;
    const start = ({ signal }: { signal: AbortSignal }) =>
      new Promise<string>(() => signal.addEventListener('abort', () => (stopped = true)));
    const first = cache.get('k', { signal: one.signal }, start);
    const second = cache.get('k', { signal: two.signal }, start);
    one.abort();
    await expect(first).rejects.toMatchObject({ code: 'cancelled' });
    expect(stopped).toBe(false);
    two.abort();
    await expect(second).rejects.toMatchObject({ code: 'cancelled' });
    expect(stopped).toBe(true);
  });

  it('does not keep a failure', async () => {
    const cache = createResultCache();
    await expect(cache.get('k', {}, () => Promise.reject(new Error('no')))).rejects.toThrow('no');
    expect(await cache.get('k', {}, () => soon('yes'))).toBe('yes');
  });
});
