import type { LegendItem } from '../draw/legend.js';
import type { PairSnapshot } from '../study/pair.js';
import type { StudySnapshot } from '../study/types.js';
import { gridCaption } from '../words/index.js';
import type { Speaker } from '../words/index.js';
import { differenceReachDb } from './pair-view.js';

/** What the colours of a difference mean. */
export const comparisonKey = (speaker: Speaker): LegendItem[] => [
  { sign: 'above', text: speaker.view('key-more') },
  { sign: 'below', text: speaker.view('key-less') },
  { sign: 'noise', text: speaker.view('key-neither') },
  { sign: 'past-end', text: speaker.view('key-no-data') },
];

/** How both pictures were made, whether their levels compare, and how far the difference is drawn. */
export function comparisonCaption(
  { choices }: StudySnapshot,
  { first, second, levels }: PairSnapshot,
  difference: boolean,
  speaker: Speaker,
): string {
  const of = (stage: PairSnapshot['first']): string =>
    stage?.grid ? gridCaption(speaker, stage.grid, choices.rangeDb, stage.recording ?? {}) : '';
  const said = of(first).split('; ');
  // Method, window and resolution are the same by construction: of the second only what differs is told.
  const other = of(second)
    .split('; ')
    .filter((part) => !said.includes(part));
  return [
    `${speaker.view('comparison-both')} ${said.join('; ')}`,
    ...(other.length > 0
      ? [`${speaker.view('comparison-second')} ${other.join('; ').replace(/\.?$/, '.')}`]
      : []),
    speaker.view(`compare-${levels}`),
    ...(difference ? [speaker.view('difference-caption', { reachDb: differenceReachDb })] : []),
  ].join(' ');
}
