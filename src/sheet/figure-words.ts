import type { FigureWords } from '../draw/figure.js';
import type { LegendItem } from '../draw/legend.js';
import { originOf } from '../study/origin.js';
import type { StudySnapshot } from '../study/types.js';
import { engineVersion } from '../study/version.js';
import { gridCaption } from '../words/index.js';
import type { Speaker } from '../words/index.js';

export interface FigureAbout {
  /** Name of the recording. */
  readonly label: string;
  readonly legend: readonly LegendItem[];
  readonly caption: string;
}

/** Letters of a hash that are printed; the whole of it is in the file. */
const printedHash = 12;

/** What a saved picture says beside itself. Of a room alone there is no file, and its origin is the room and the version. */
export function figureWords(
  snapshot: StudySnapshot,
  speaker: Speaker,
  name: string,
  { label, legend, caption }: FigureAbout,
): FigureWords {
  const { room, choices } = snapshot;
  const origin = originOf(snapshot) ?? { version: engineVersion, hash: null, parameters: choices, room };
  const { hash, version } = origin;
  const short = hash && hash.slice(0, printedHash);
  return {
    title: speaker.view('figure-title', { label, picture: speaker.view(name) }),
    description: speaker.view(`${name}-name`, { label }),
    legend,
    caption: [caption, speaker.view(hash ? 'figure-origin' : 'figure-origin-room', { hash: short, version })],
    origin: { ...origin, picture: name },
  };
}

/** The caption of a picture of the grid; null without one. */
export function fieldCaption(
  { grid, choices, recordings, active }: StudySnapshot,
  speaker: Speaker,
): string | null {
  return grid && gridCaption(speaker, grid, choices.rangeDb, recordings[active]);
}

/** A file name that every system takes. */
export const fileNameOf = (label: string, pictureName: string, kind: string): string =>
  `${`${label} ${pictureName}`
    .normalize('NFKC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()}.${kind}`;
