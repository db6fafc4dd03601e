/** The surface as a vector document: the hidden-line drawing with axes, ridges, signs and caption. */
import { figureSvg, type FigureSize, type FigureWords } from './figure.js';
import { drawSurfaceLines } from './surface2d.js';
import type { DrawTheme, FieldView, OrbitView } from './types.js';

/** `size` is the picture's own; title, signs and caption add to its height. */
export function surfaceSvg(
  view: FieldView,
  orbit: OrbitView,
  theme: DrawTheme,
  size: FigureSize,
  words: FigureWords,
): string {
  return figureSvg(
    (pen) => drawSurfaceLines(pen, view, orbit, theme, { ...size, pixelRatio: 1 }),
    theme,
    size,
    words,
    'surface',
  );
}
