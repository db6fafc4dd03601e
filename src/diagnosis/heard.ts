import type { Resonance } from '../resonance/types.js';

/** What a fit of the room rests on: a resonance that is one mode. */
export interface HeardResonance {
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
}

/** The resonances of a fit that are single modes. */
export const heardResonances = (resonances: readonly Resonance[]): HeardResonance[] =>
  resonances
    .filter(({ kind }) => kind === 'resolved')
    .map(({ frequencyHz, frequencySdHz }) => ({ frequencyHz, frequencySdHz }));
