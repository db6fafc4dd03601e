/** The thread in which readers are tried. What it does next lies in shared memory, so that a hang names its input. */
import './allocation.js';
import { parentPort, workerData } from 'node:worker_threads';
import { readers } from './readers.js';
import { coverageOf, search } from './search.js';
import { readKept } from './kept.js';

interface Task {
  readonly reader: string;
  readonly inputs: number;
  readonly seed: number;
  readonly script: string;
  /** Turn, length, then the bytes. */
  readonly shared: SharedArrayBuffer;
}

const { reader: name, inputs, seed, script, shared } = workerData as Task;
const numbers = new Int32Array(shared, 0, 2);
const room = new Uint8Array(shared, 8);

const reader = (await readers()).find((one) => one.name === name)!;
const fresh = coverageOf(script);
const before = (bytes: Uint8Array): void => {
  room.set(bytes);
  numbers[1] = bytes.length;
  Atomics.add(numbers, 0, 1);
};
const steps = search(reader, inputs, seed, fresh, readKept(name), before);
for (let found = 0; ;) {
  const step = steps.next();
  if (step.done) {
    const { codes, ...figures } = step.value;
    parentPort!.postMessage({ type: 'done', figures: { ...figures, codes: [...codes] } });
    break;
  }
  const { input, outcome } = step.value;
  if (!outcome.complaint) continue;
  parentPort!.postMessage({ type: 'found', input: input.slice(), complaint: outcome.complaint });
  if (++found >= 20) {
    parentPort!.postMessage({ type: 'given-up' });
    break;
  }
}
