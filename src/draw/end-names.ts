/** Names of curves at their right ends, moved apart: the edge turned upright, with heights for widths. */
import { placeLabels } from './axes.js';
import { wrapText } from './figure.js';
import type { Pen, TextStyle } from './pen.js';
import type { Box } from './picture.js';
import type { DrawTheme } from './types.js';

export interface EndName {
  readonly text: string;
  /** Where its curve ends, px. */
  readonly y: number;
  readonly main: boolean;
}

const SIZE = 11;
const LINE = SIZE + 3;
/** From the plot to the names. */
const GAP = 8;
/** Most of a picture's width that names may take from its plot. */
const SHARE = 0.3;

const styleOf = (theme: DrawTheme, main: boolean): TextStyle => ({
  colour: main ? theme.accent : theme.text,
  size: SIZE,
  weight: main ? 600 : 400,
  vertical: 'middle',
});

/** The room that names need beside a plot, px. */
export function endNamesMargin(
  pen: Pen,
  theme: DrawTheme,
  names: readonly Omit<EndName, 'y'>[],
  cssWidth: number,
): number {
  const widths = names.map(({ text, main }) => pen.measure(text, styleOf(theme, main)));
  return Math.min(cssWidth * SHARE, Math.max(...widths) + GAP + 10);
}

/** A text no wider than `width`; what is left out is shown as an ellipsis. */
export function shortened(pen: Pen, text: string, width: number, style: TextStyle): string {
  let short = text;
  for (let n = text.length; n > 0 && pen.measure(short, style) > width; n -= 1)
    short = `${text.slice(0, n - 1).trimEnd()}…`;
  return short;
}

/** Draws those that can stand between the plot and the edge of the picture: long ones in lines, where there is room. */
export function drawEndNames(
  pen: Pen,
  theme: DrawTheme,
  ends: readonly EndName[],
  { top, bottom, right }: Box,
  cssWidth: number,
): void {
  const width = cssWidth - right - GAP - 1;
  const names = ends.map(({ text, main }) => wrapText(pen, text, width, styleOf(theme, main)));
  const tooTall = names.flat().length * LINE > bottom - top;
  const spans = ends.map(({ y, main }, k) => ({
    at: Math.min(bottom, Math.max(top, y)),
    width: (tooTall ? 1 : names[k].length) * LINE,
    weight: Number(main),
  }));
  placeLabels(spans, [top, bottom], 1, 0, bottom).forEach((place, k) => {
    const { text, main } = ends[k];
    const style = styleOf(theme, main);
    const lines = tooTall ? [text] : names[k];
    if (place)
      lines.forEach((line, n) =>
        pen.text(
          shortened(pen, line, width, style),
          right + GAP,
          place.at + (n - (lines.length - 1) / 2) * LINE,
          style,
        ),
      );
  });
}
