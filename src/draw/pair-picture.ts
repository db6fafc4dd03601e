/** Two pictures of a field on one scale, side by side, with their difference where it is asked for. */
import { drawDifference, type DifferenceView } from './difference.js';
import { shortened } from './end-names.js';
import { drawHeatMapWith, heatMapTop } from './heatmap.js';
import { viewpoints } from './orbit.js';
import type { Pen } from './pen.js';
import type { Box, DrawSize, Pick } from './picture.js';
import { shiftedPen } from './shifted-pen.js';
import { drawSurfaceLines } from './surface2d.js';
import type { DrawTheme, FieldView } from './types.js';

export type PairForm = 'spectrogram' | 'waterfall';

export interface PairPicture {
  readonly form: PairForm;
  readonly first: { readonly title: string; readonly view: FieldView };
  readonly second: { readonly title: string; readonly view: FieldView };
  readonly difference: { readonly title: string; readonly view: DifferenceView } | null;
}

export interface PairLayout {
  /** The field under a point of either picture or of the difference; null outside, and on a surface. */
  toField(xCss: number, yCss: number): Pick | null;
  /** Index of the ridge under a point and on which side it lies, or null. */
  flagAt(xCss: number, yCss: number): { readonly side: 'first' | 'second'; readonly flag: number } | null;
}

/** Width from which all stand in one row, and from which two do. */
const ROW_OF_ALL = 1050;
const ROW_OF_TWO = 620;
const TITLE = 24;
const GAP = 18;
/** Room for the marks of predicted modes below a heat map. */
const MARKS = 16;

/** How many rows of pictures stand at a width: the page gives the canvas its height by it. */
export function pairRows(cssWidth: number, withDifference: boolean): number {
  if (cssWidth >= ROW_OF_ALL) return 1;
  if (cssWidth >= ROW_OF_TWO) return withDifference ? 2 : 1;
  return withDifference ? 3 : 2;
}

function boxesOf({ cssWidth, cssHeight }: DrawSize, withDifference: boolean): Box[] {
  const rows = pairRows(cssWidth, withDifference);
  const count = withDifference ? 3 : 2;
  const perRow = Math.ceil(count / rows);
  const width = (cssWidth - (perRow - 1) * GAP) / perRow;
  const height = (cssHeight - (rows - 1) * GAP) / rows;
  return Array.from({ length: count }, (_, k) => {
    const [row, column] = [Math.floor(k / perRow), k % perRow];
    const left = column * (width + GAP);
    const top = row * (height + GAP);
    return { left, top, right: left + width, bottom: top + height };
  });
}

export function drawPair(pen: Pen, picture: PairPicture, theme: DrawTheme, size: DrawSize): PairLayout {
  const boxes = boxesOf(size, picture.difference !== null);
  const sizeOf = ({ left, right, top, bottom }: Box): DrawSize => ({
    cssWidth: right - left,
    cssHeight: bottom - top - TITLE,
    pixelRatio: size.pixelRatio,
  });
  const titled = (k: number, title: string): Pen => {
    const { left, top, right } = boxes[k];
    const style = { colour: theme.text, size: 12, weight: 600 } as const;
    pen.text(shortened(pen, title, right - left - 4, style), left + 2, top + 14, style);
    return shiftedPen(pen, left, top + TITLE);
  };
  const top = picture.form === 'waterfall' ? 0 : commonTop(picture, theme, sizeOf(boxes[0]), pen);
  const sides = (['first', 'second'] as const).map((side, k) => {
    const { title, view } = picture[side];
    const own = titled(k, title);
    if (picture.form === 'waterfall') {
      drawSurfaceLines(own, view, viewpoints.corner, theme, sizeOf(boxes[k]));
      return null;
    }
    return drawHeatMapWith(own, view, theme, sizeOf(boxes[k]), top);
  });
  const { difference } = picture;
  // Beside them it leaves what they leave, so that their times stand on one line; below them nothing is to be left.
  const least =
    boxes[2]?.top === boxes[0].top
      ? { top, below: picture.form === 'spectrogram' && picture.first.view.marks.length > 0 ? MARKS : 0 }
      : undefined;
  const between = difference
    ? drawDifference(titled(2, difference.title), difference.view, theme, sizeOf(boxes[2]), least)
    : null;
  const inside = (x: number, y: number): number =>
    boxes.findIndex(({ left, right, top, bottom }) => x >= left && x <= right && y >= top && y <= bottom);
  return {
    toField(x, y) {
      const k = inside(x, y);
      const layout = k === 2 ? between : (sides[k] ?? null);
      return layout ? layout.toField(x - boxes[k].left, y - boxes[k].top - TITLE) : null;
    },
    flagAt(x, y) {
      const k = inside(x, y);
      const flag =
        k < 0 || k > 1 ? null : (sides[k]?.flagAt(x - boxes[k].left, y - boxes[k].top - TITLE) ?? null);
      return flag === null ? null : { side: k === 0 ? 'first' : 'second', flag };
    },
  };
}

/** Where both maps begin: below the labels of the one that has more. */
const commonTop = ({ first, second }: PairPicture, theme: DrawTheme, size: DrawSize, pen: Pen): number =>
  Math.max(...[first, second].map(({ view }) => heatMapTop(pen, view, theme, size)));
