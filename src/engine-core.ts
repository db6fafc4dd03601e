/**
 * `ringdown/engine/core`: what it takes to analyse one recording, and no more. A WAV file in; whether it is fit to be read,
 * its grid, its response, and its resonances with their uncertainty out. No room, no limits, no other kinds of file.
 */
export * from './signal/types.js';
export { RingdownError } from './signal/errors.js';
export { drain, drainSliced } from './signal/drain.js';
export { decodeWav } from './signal/wav.js';
export { recordingFromAudio, type OpenOptions } from './signal/recording.js';
export { computeGrid, computeResponse, examine, logFrequencies } from './decay/index.js';
export type { Examination, Grid, GridMethod, GridParams, Response, ResponseParams } from './decay/index.js';
export { fitResonances, type FitParams, type Resonance, type ResonanceFit } from './resonance/index.js';
