import { describe, expect, it } from 'vitest';
import type { Job, Progress } from '../../src/signal/index.js';
import { drain, drainSliced } from '../../src/signal/drain.js';

function* counting(steps: number, onEnd = () => {}): Job<number> {
  try {
    for (let i = 0; i < steps; i++) yield { stage: 'count', fraction: i / steps };
    return steps;
  } finally {
    onEnd();
  }
}

/** Keeps the thread for about a millisecond between its yields. */
function* busy(steps: number): Job<number> {
  for (let i = 0; i < steps; i++) {
    const end = performance.now() + 1;
    while (performance.now() < end);
    yield { stage: 'busy', fraction: i / steps };
  }
  return steps;
}

describe('draining a job', () => {
  it('gives its result and every step of its progress', () => {
    const seen: Progress[] = [];
    expect(drain(counting(5), (progress) => seen.push(progress))).toBe(5);
    expect(seen.map(({ fraction }) => fraction)).toEqual([0, 0.2, 0.4, 0.6, 0.8]);
  });

  it('in slices tells a first answer at once, whatever is left of the slice', async () => {
    const seen: unknown[] = [];
    function* job(): Job<number> {
      yield { stage: 'begin', fraction: 0 };
      yield { stage: 'first', fraction: 0.1, draft: 'about 40' };
      yield { stage: 'rest', fraction: 0.9 };
      return 42;
    }
    const options = { sliceMilliseconds: 1000, onProgress: ({ draft }: Progress) => seen.push(draft) };
    expect(await drainSliced(job(), options)).toBe(42);
    expect(seen).toEqual(['about 40']);
  });

  it('in slices leaves the thread free between them', async () => {
    let turns = 0;
    const timer = setInterval(() => turns++, 1);
    const done = await drainSliced(busy(60), { sliceMilliseconds: 8 });
    clearInterval(timer);
    expect(done).toBe(60);
    // 60 ms of work in slices of 8 ms: at least five turns of others between them.
    expect(turns).toBeGreaterThanOrEqual(5);
  });

  it('stops between two yields when it is cancelled, and lets go of what the job holds', async () => {
    const controller = new AbortController();
    let ended = false;
    const result = drainSliced(
      counting(1e9, () => (ended = true)),
      { signal: controller.signal },
    );
    setTimeout(() => controller.abort(), 20);
    await expect(result).rejects.toMatchObject({ code: 'cancelled' });
    expect(ended).toBe(true);
  });
});
