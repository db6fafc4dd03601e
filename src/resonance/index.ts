export * from './types.js';
export { fitResonances } from './fit.js';
export { defaultVolumeCubicMetres, modalDensity, modelError } from './density.js';
export { resolvableBandwidths } from './resolution.js';
export type { FitRecording } from './reverse-decimation.js';
export { expectedPrecision, type ExpectedBand, type ExpectedPrecision } from './expected.js';
