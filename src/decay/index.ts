export * from './types.js';
export * from './frequencies.js';
export * from './grid.js';
export * from './band-range.js';
