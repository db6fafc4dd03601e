import type { Job } from '../../src/signal/index.js';

/** Runs a job to its end. */
export function drain<T>(job: Job<T>): T {
  for (;;) {
    const step = job.next();
    if (step.done) return step.value;
  }
}
