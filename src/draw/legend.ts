/** The signs of a picture with their words, as they stand below it on the page and in an export. */
import {
  drawChartSign,
  isChartSign,
  SIGN_HEIGHT,
  SIGN_WIDTH,
  type ChartSign,
  type Inks,
} from './chart-signs.js';
import type { Pen, Strokes, TextStyle } from './pen.js';

/** Signs of the pictures of a field. */
export type Sign = 'ridge' | 'noise' | 'fast' | 'past-end' | 'curtain' | 'axial' | 'tangential' | 'oblique';

export interface LegendItem {
  readonly sign: Sign | ChartSign;
  readonly text: string;
}

export { SIGN_HEIGHT, SIGN_WIDTH, type Inks } from './chart-signs.js';

const strokes: Partial<Record<Sign, number>> = { axial: 1, tangential: 2, oblique: 3 };

/** Slanted strokes within the sign's box, downwards to the right as on the surface. */
function hatch(pen: Strokes, ink: string, x: number, y: number, pitch: number): void {
  for (let from = pitch / 2 - SIGN_HEIGHT; from < SIGN_WIDTH; from += pitch) {
    const start = Math.max(0, from);
    const end = Math.min(SIGN_WIDTH, from + SIGN_HEIGHT);
    if (end > start)
      pen.line([x + start, y + start - from, x + end, y + end - from], {
        colour: ink,
        width: 1,
        opacity: 0.5,
      });
  }
  const [right, low] = [x + SIGN_WIDTH, y + SIGN_HEIGHT];
  pen.line([x, y, right, y, right, low, x, low, x, y], { colour: ink, width: 1, opacity: 0.4 });
}

/** One sign with its upper left corner at a point. Those of a field are of one colour, so that they follow any text. */
export function drawSign(pen: Strokes, inks: Inks, sign: LegendItem['sign'], x: number, y: number): void {
  if (isChartSign(sign)) {
    drawChartSign(pen, inks, sign, x, y);
    return;
  }
  const ink = inks.text;
  const area = (height: number, opacity: number): void =>
    pen.area([x, y, x + SIGN_WIDTH, y, x + SIGN_WIDTH, y + height, x, y + height], ink, opacity);
  const count = strokes[sign] ?? 0;
  for (let k = 0; k < count; k += 1) {
    const top = y + (SIGN_HEIGHT - 5 * count + 1.5) / 2 + 5 * k;
    pen.line([x + SIGN_WIDTH / 2, top, x + SIGN_WIDTH / 2, top + 3.5], { colour: ink, width: 1.5 });
  }
  if (sign === 'noise') area(SIGN_HEIGHT, 0.2);
  if (sign === 'fast') hatch(pen, ink, x, y, 4);
  if (sign === 'past-end') hatch(pen, ink, x, y, 8);
  if (sign === 'ridge') {
    pen.line([x + 1, y + 6, x + 16, y + 6], { colour: ink, width: 1.75 });
    pen.circle(x + 17.5, y + 6, 2.5, ink, null);
  }
  if (sign === 'curtain') {
    area(SIGN_HEIGHT - 2, 0.14);
    pen.line([x, y + SIGN_HEIGHT - 1.5, x + SIGN_WIDTH, y + SIGN_HEIGHT - 1.5], { colour: ink, width: 1.5 });
  }
}

export interface PlacedItem extends LegendItem {
  readonly x: number;
  /** Line, from 0. */
  readonly line: number;
}

/** Items in lines no wider than `width`, in their order. */
export function layoutLegend(
  pen: Pen,
  items: readonly LegendItem[],
  width: number,
  style: TextStyle,
): { readonly placed: readonly PlacedItem[]; readonly lines: number } {
  let [x, line] = [0, 0];
  const placed = items.map((item): PlacedItem => {
    const wide = SIGN_WIDTH + 6 + pen.measure(item.text, style);
    if (x > 0 && x + wide > width) [x, line] = [0, line + 1];
    const at = { ...item, x, line };
    x += wide + 16;
    return at;
  });
  return { placed, lines: items.length === 0 ? 0 : line + 1 };
}
