import type { Job } from './types.js';

/** Runs one part of a job and places its progress between `from` and `to`. */
export function* within<T>(part: Job<T>, from: number, to: number): Job<T> {
  let reached = 0;
  for (;;) {
    const step = part.next();
    if (step.done) return step.value;
    // Parts begin again at 0; what the user sees never falls.
    reached = Math.max(reached, step.value.fraction);
    yield { ...step.value, fraction: from + (to - from) * reached };
  }
}
