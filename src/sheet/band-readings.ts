import type { StudySnapshot } from '../study/types.js';
import type { Speaker } from '../words/index.js';

/** Decay times after ISO 3382 of a third-octave, by the name of their field. */
export type Reading = 'edt' | 't20' | 't30';
export const readings: readonly Reading[] = ['edt', 't20', 't30'];
export const usualReading: Reading = 't20';

export type BandReadings = NonNullable<StudySnapshot['examinations'][number]>['decays'][number];

/** A reading of a band, or why there is none. */
export function readingText(band: BandReadings, reading: Reading, speaker: Speaker): string {
  const { seconds, refused } = band[reading];
  if (seconds !== null) return speaker.n.seconds(seconds);
  return refused === 'filter'
    ? speaker.view('decay-too-short', { shortestSeconds: band.shortestSeconds })
    : refused === 'end'
      ? speaker.view('decays-to-end')
      : speaker.view('decay-no-range', { rangeDb: band.rangeDb });
}
