/** A picture as a figure that stands alone: its title above it, its signs, caption and origin below. */
import { drawSign, layoutLegend, SIGN_HEIGHT, SIGN_WIDTH, type LegendItem } from './legend.js';
import type { Pen, TextStyle } from './pen.js';
import type { DrawSize } from './picture.js';
import { svgDocument, svgPen, type DocumentWords } from './svg.js';
import type { DrawTheme } from './types.js';

export interface FigureWords extends DocumentWords {
  /** Paragraphs below the picture: method, window, resolution, time and level reference. */
  readonly caption?: readonly string[];
  readonly legend?: readonly LegendItem[];
}

export type FigureSize = Omit<DrawSize, 'pixelRatio'>;

export interface FigureLayout {
  /** Height above the picture, and of the whole. */
  readonly top: number;
  readonly cssHeight: number;
  /** Draws all but the picture. */
  readonly draw: (pen: Pen) => void;
}

const EDGE = 10;
const LINE = 15;
const TITLE = 30;

/** Words in lines no wider than `width`; a longer word stands alone. */
export function wrapText(pen: Pen, text: string, width: number, style: TextStyle): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/[ \n]+/)) {
    const longer = line ? `${line} ${word}` : word;
    if (line && pen.measure(longer, style) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line ? [...lines, line] : lines;
}

export function layoutFigure(pen: Pen, theme: DrawTheme, size: FigureSize, words: FigureWords): FigureLayout {
  const small: TextStyle = { colour: theme.faint, size: 11 };
  const width = Math.max(80, size.cssWidth - 2 * EDGE);
  const legend = layoutLegend(pen, words.legend ?? [], width, small);
  const lines = (words.caption ?? []).flatMap((paragraph) => wrapText(pen, paragraph, width, small));
  const foot = TITLE + size.cssHeight;
  const text = foot + 6 + legend.lines * (LINE + 3) + (legend.lines ? 5 : 0);
  return {
    top: TITLE,
    cssHeight: text + lines.length * LINE + (lines.length ? 12 : 4),
    draw(on) {
      on.text(words.title, EDGE, 21, { colour: theme.text, size: 14, weight: 600 });
      for (const { sign, text: word, x, line } of legend.placed) {
        const y = foot + 6 + line * (LINE + 3);
        drawSign(on, theme, sign, EDGE + x, y);
        on.text(word, EDGE + x + SIGN_WIDTH + 6, y + SIGN_HEIGHT / 2, { ...small, vertical: 'middle' });
      }
      lines.forEach((line, k) => on.text(line, EDGE, text + (k + 1) * LINE - 4, small));
    },
  };
}

/** The figure as a document; `drawPicture` draws from the pen's origin, `size` is the picture's own. */
export function figureSvg(
  drawPicture: (pen: Pen) => void,
  theme: DrawTheme,
  size: FigureSize,
  words: FigureWords,
  idPrefix: string,
): string {
  const [picture, around] = [svgPen(idPrefix), svgPen(`${idPrefix}-words`)];
  drawPicture(picture);
  const { top, cssHeight, draw } = layoutFigure(around, theme, size, words);
  draw(around);
  const content = `${around.content()}\n<g transform="translate(0 ${top})">\n${picture.content()}\n</g>`;
  return svgDocument(content, { cssWidth: size.cssWidth, cssHeight }, theme, words);
}
