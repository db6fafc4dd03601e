import type { Job } from '../signal/index.js';
import { drainSliced } from '../signal/drain.js';
import { failureOf } from './failure.js';
import type { FromWorker, ToWorker } from './messages.js';
import { Gathered } from './pool/pieces.js';

/** Where messages come from and go to: the global scope of a worker, or one end of a channel in a test. */
export interface HostPort {
  postMessage(message: FromWorker, transfer: ArrayBuffer[]): void;
  addEventListener(type: 'message', listener: (event: { data: unknown }) => void): void;
}

export interface Host {
  start(type: string, params: unknown): Job<unknown>;
  /** Buffers of a result that the worker has no more use for. */
  transferables(type: string, result: unknown): ArrayBuffer[];
}

/** A stop is seen this often; longer than the page's slices, as nobody waits for this thread. */
const sliceMilliseconds = 16;

/** Serves jobs, one after the other. Each answer bears the id of its question. */
export function serve(port: HostPort, host: Host): void {
  const running = new Map<number, AbortController>();
  /** What came of a job that is not begun yet. */
  const gathered = new Map<number, Gathered>();
  const work = async (id: number, type: string, params: unknown): Promise<void> => {
    const controller = new AbortController();
    running.set(id, controller);
    try {
      const result = await drainSliced(host.start(type, params), {
        sliceMilliseconds,
        signal: controller.signal,
        onProgress: (progress) => port.postMessage({ id, type: 'progress', progress }, []),
      });
      port.postMessage({ id, type: 'result', result }, host.transferables(type, result));
    } catch (thrown) {
      port.postMessage({ id, type: 'error', ...failureOf(thrown) }, []);
    } finally {
      running.delete(id);
    }
  };
  port.addEventListener('message', ({ data }) => {
    const message = data as ToWorker;
    const { id, type } = message;
    if (type === 'cancel') {
      gathered.delete(id);
      running.get(id)?.abort();
    } else if ('piece' in message) {
      if (!gathered.has(id)) gathered.set(id, new Gathered());
      gathered.get(id)!.add(message.piece);
    } else if ('params' in message) {
      const params = gathered.get(id)?.into(message.params) ?? message.params;
      gathered.delete(id);
      void work(id, type, params);
    }
  });
  port.postMessage({ type: 'ready' }, []);
}
