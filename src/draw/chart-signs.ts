/** The signs of charts, as they stand in the pictures: lines, areas and dots in the inks of a theme. */
import type { LineStyle, Strokes } from './pen.js';

export type ChartSign =
  | 'text-line'
  | 'text-dash'
  | 'accent-line'
  | 'accent-dash'
  | 'dots'
  | 'faint-line'
  | 'tie'
  | 'above'
  | 'below'
  | 'ring'
  | 'square'
  | 'grey'
  | 'band'
  | 'hatch'
  | 'full'
  | 'hollow'
  | 'bar'
  | 'faint-bar'
  | 'stroke-1'
  | 'stroke-2'
  | 'stroke-3';

/** Any colour that the pen takes; in a page also `currentColor`. */
export interface Inks {
  readonly text: string;
  readonly accent: string;
  readonly faint: string;
  /** Of a signed value; only pictures of one have them. */
  readonly above?: string;
  readonly below?: string;
}

type Ink = 'text' | 'accent' | 'faint';

/** Width and height of a sign's box, CSS pixels. */
export const SIGN_WIDTH = 22;
export const SIGN_HEIGHT = 12;

const widths: Readonly<Record<Ink, number>> = { text: 1.75, accent: 2, faint: 1.25 };

/** Lines along the middle, by their ink and dash. */
const lines: Partial<Record<ChartSign, readonly [Ink, number | null, readonly number[]]>> = {
  'text-line': ['text', null, []],
  'text-dash': ['text', null, [6, 3]],
  'accent-line': ['accent', null, []],
  'accent-dash': ['accent', null, [6, 3]],
  dots: ['faint', null, [2, 3]],
  'faint-line': ['faint', null, []],
  bar: ['text', 2.5, []],
  'faint-bar': ['faint', null, [3, 3]],
};

const strokes: Partial<Record<ChartSign, number>> = { 'stroke-1': 1, 'stroke-2': 2, 'stroke-3': 3 };

/** One sign with its upper left corner at a point. */
export function drawChartSign(pen: Strokes, inks: Inks, sign: ChartSign, x: number, y: number): void {
  const style = (ink: Ink, width = widths[ink], dash: readonly number[] = []): LineStyle => ({
    colour: inks[ink],
    width,
    ...(dash.length > 0 && { dash }),
  });
  const [right, low, middle] = [x + SIGN_WIDTH, y + SIGN_HEIGHT, y + SIGN_HEIGHT / 2];
  const box = [x, y, right, y, right, low, x, low];
  const area = (ink: Ink): void => pen.area(box, inks[ink], 0.14);
  const line = lines[sign];
  if (line) {
    const [ink, width, dash] = line;
    pen.line([x + 1, middle, right - 1, middle], style(ink, width ?? widths[ink], dash));
  }
  for (let k = 0; k < (strokes[sign] ?? 0); k += 1)
    pen.line([x + 11, y + 0.5 + 4 * k, x + 11, y + 3.5 + 4 * k], style('text'));
  if (sign === 'tie') pen.line([x + 4, y + 1, x + 18, y + 11], style('text'));
  if (sign === 'above') pen.area(box, inks.above ?? inks.accent);
  if (sign === 'below') pen.area(box, inks.below ?? inks.faint);
  if (sign === 'ring') pen.circle(x + 11, middle, 4.5, null, style('text'));
  if (sign === 'square') pen.area([x + 7, y + 2, x + 15, y + 2, x + 15, y + 10, x + 7, y + 10], inks.text);
  if (sign === 'grey') area('text');
  if (sign === 'band') {
    area('accent');
    for (const edge of [y + 0.5, low - 0.5]) pen.line([x, edge, right, edge], style('accent', 1));
  }
  if (sign === 'hatch')
    for (const from of [0, 7, 14])
      pen.line([x + from, low, x + Math.min(SIGN_WIDTH, from + 8), y + 4], style('faint'));
  if (sign === 'full') pen.circle(x + 11, middle, 4, inks.text, null);
  if (sign === 'hollow') pen.circle(x + 11, middle, 4, null, style('text'));
}

export const isChartSign = (sign: string): sign is ChartSign =>
  sign in lines ||
  sign in strokes ||
  ['tie', 'above', 'below', 'ring', 'square', 'grey', 'band', 'hatch', 'full', 'hollow'].includes(sign);
