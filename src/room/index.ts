export * from './types.js';
export * from './air.js';
export * from './box.js';
export * from './damping.js';
export * from './parse.js';
export * from './predict.js';
