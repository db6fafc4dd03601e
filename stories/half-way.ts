import { startJob, transferables } from '../src/study/jobs.js';
import type { FromWorker, ToWorker } from '../src/study/messages.js';
import { serve } from '../src/study/worker-host.js';

/** In the place of a worker: does every job but the fit, of which it only ever tells the progress. */
export class HalfWay extends EventTarget {
  readonly #inside = new EventTarget();

  constructor() {
    super();
    const port = {
      postMessage: (message: FromWorker) => this.#say(message),
      addEventListener: (type: 'message', listener: (event: { data: unknown }) => void) =>
        this.#inside.addEventListener(type, (event) => listener(event as MessageEvent<unknown>)),
    };
    // As a worker does: after whoever made it has begun to listen.
    queueMicrotask(() => serve(port, { start: startJob, transferables }));
  }

  postMessage(message: ToWorker): void {
    if (message.type === 'fit')
      this.#say({ id: message.id, type: 'progress', progress: { stage: 'fit', fraction: 0.4 } });
    else this.#inside.dispatchEvent(new MessageEvent('message', { data: message }));
  }

  terminate(): void {}

  #say(data: FromWorker): void {
    queueMicrotask(() => this.dispatchEvent(new MessageEvent('message', { data })));
  }
}
