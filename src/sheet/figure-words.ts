import type { FigureWords } from '../draw/figure.js';
import type { LegendItem } from '../draw/legend.js';
import { originOf } from '../study/origin.js';
import type { StudySnapshot } from '../study/types.js';
import { gridCaption } from '../words/index.js';
import type { Speaker } from '../words/index.js';

/** Letters of a hash that are printed; the whole of it is in the file. */
const printedHash = 12;

/** What a saved picture of a grid says beside itself; null while there is nothing to save. */
export function figureWords(
  snapshot: StudySnapshot,
  speaker: Speaker,
  pictureName: string,
  label: string,
  legend: readonly LegendItem[],
): FigureWords | null {
  const origin = originOf(snapshot);
  if (!origin || !snapshot.grid) return null;
  return {
    title: speaker.view('figure-title', { label, picture: speaker.view(pictureName) }),
    description: speaker.view(`${pictureName}-name`, { label }),
    legend,
    caption: [
      gridCaption(speaker, snapshot.grid, snapshot.choices.rangeDb, snapshot.recordings[snapshot.active]),
      speaker.view('figure-origin', { hash: origin.hash.slice(0, printedHash), version: origin.version }),
    ],
    origin: { ...origin, picture: pictureName },
  };
}

/** A file name that every system takes. */
export const fileNameOf = (label: string, pictureName: string, kind: string): string =>
  `${`${label} ${pictureName}`
    .normalize('NFKC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()}.${kind}`;
