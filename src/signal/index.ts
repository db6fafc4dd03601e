export * from './types.js';
export * from './errors.js';
