/** Runs a job to its end. */
export { drain } from '../../src/signal/drain.js';
