/** `ringdown/engine`: the engine and its types. No DOM; the same in a page, a worker and Node. */
export * from './signal/index.js';
export * from './decay/index.js';
export * from './resonance/index.js';
export * from './room/index.js';
export * from './seats/index.js';
export * from './diagnosis/index.js';
