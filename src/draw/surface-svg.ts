/** The surface as a vector document: the hidden-line drawing with axes, ridges and caption. */
import type { DrawSize } from './picture.js';
import { svgDocument, svgPen, type DocumentWords } from './svg.js';
import { drawSurfaceLines } from './surface2d.js';
import type { DrawTheme, FieldView, OrbitView } from './types.js';

const CAPTION_SIZE = 11;
const CAPTION_LINE = 15;

export interface FigureWords extends DocumentWords {
  /** Lines below the picture: method, window, resolution, time and level reference. */
  readonly caption?: readonly string[];
}

/** `size` is the picture's own; the caption adds to its height. */
export function surfaceSvg(
  view: FieldView,
  orbit: OrbitView,
  theme: DrawTheme,
  size: Omit<DrawSize, 'pixelRatio'>,
  words: FigureWords,
): string {
  const pen = svgPen('surface');
  drawSurfaceLines(pen, view, orbit, theme, { ...size, pixelRatio: 1 });
  const caption = words.caption ?? [];
  caption.forEach((line, k) =>
    pen.text(line, 8, size.cssHeight + 6 + (k + 1) * CAPTION_LINE - 4, {
      colour: theme.faint,
      size: CAPTION_SIZE,
    }),
  );
  const height = size.cssHeight + (caption.length ? caption.length * CAPTION_LINE + 14 : 0);
  return svgDocument(pen.content(), { cssWidth: size.cssWidth, cssHeight: height }, theme, words);
}
