import type { Resonance } from '../resonance/types.js';

/** What a fit of the room rests on: a resonance whose frequency is well known. */
export interface HeardResonance {
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
}

/** Frequencies are asked to be known to this share: as well as the fitted box can be expected to meet them. */
const knownShare = 0.01;

/** Modes of a fit, and those clusters which hardly move whatever they stand for. */
export const heardResonances = (resonances: readonly Resonance[]): HeardResonance[] =>
  resonances
    .filter(
      ({ kind, frequencyHz, frequencySdHz }) =>
        (kind === 'resolved' || kind === 'cluster') && frequencySdHz < knownShare * frequencyHz,
    )
    .map(({ frequencyHz, frequencySdHz }) => ({ frequencyHz, frequencySdHz }));
