import { RingdownError } from '../../signal/index.js';
import type { DecodedAudio } from '../../signal/index.js';
import { factoryOfPage, prefersInline } from '../pool.js';
import { workerFromText } from './from-text.js';
import { createScheduler, type Route } from './scheduler.js';

export interface SofaOptions {
  /** 1-based. */
  readonly measurement?: number | undefined;
  readonly signal?: AbortSignal | undefined;
  /** Instead of those of this page. */
  readonly routes?: readonly Route[];
  readonly mostMilliseconds?: number;
}

/** A file that takes longer is broken, or was made to keep the page busy. */
const defaultMostMilliseconds = 5000;

/** The worker beside these modules. Bundlers look for this very expression. */
const sibling: Route = {
  name: 'sibling',
  make: () => new Worker(new URL('../sofa-worker.js', import.meta.url), { type: 'module' }),
};
const inline: Route = {
  name: 'inline',
  make: async () => workerFromText((await import('../sofa-worker-inline.js')).default),
};

/**
 * Reads one AES69 (SOFA) file in a worker of its own, which ends with it and after five seconds at the latest.
 *
 * @throws RingdownError `sofa-slow`, `sofa-worker` where there can be no worker, `cancelled`, those of `sofaAudio`
 */
export async function readSofaApart(bytes: Uint8Array, options: SofaOptions = {}): Promise<DecodedAudio> {
  const { measurement, signal, mostMilliseconds = defaultMostMilliseconds } = options;
  const none = factoryOfPage() === null || typeof Worker === 'undefined';
  const usual = none ? [] : prefersInline() ? [inline, sibling] : [sibling, inline];
  const scheduler = createScheduler({
    routes: options.routes ?? usual,
    size: 1,
    start: () => {
      throw new RingdownError('sofa-worker');
    },
  });
  let late = false;
  const timer = setTimeout(() => {
    late = true;
    scheduler.dispose();
  }, mostMilliseconds);
  const stop = (): void => scheduler.dispose();
  signal?.addEventListener('abort', stop, { once: true });
  try {
    return (await scheduler.run({ type: 'sofa', params: { bytes, measurement } })) as DecodedAudio;
  } catch (thrown) {
    throw late ? new RingdownError('sofa-slow', { seconds: mostMilliseconds / 1000 }) : thrown;
  } finally {
    clearTimeout(timer);
    signal?.removeEventListener('abort', stop);
    scheduler.dispose();
  }
}
