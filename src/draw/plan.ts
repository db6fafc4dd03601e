/** A floor plan to scale: walls with their lengths, seats and sources; and where everything stands on it. */
import { CHART_TEXT, drawLetters, type ChartSize } from './chart-frame.js';
import type { Label } from './letters.js';
import type { Pen } from './pen.js';
import type { Box, Point } from './picture.js';
import type { DrawTheme } from './types.js';

export interface PlanPlace {
  readonly kind: 'seat' | 'source';
  readonly x: number;
  readonly y: number;
  readonly label: string;
  readonly selected: boolean;
  /** Whether it can be computed with; else it is crossed out. */
  readonly sound: boolean;
}

export interface PlanView {
  /** In turn, m. */
  readonly corners: readonly Point[];
  /** Whether they enclose a room; else they are drawn as the draft that they are. */
  readonly sound: boolean;
  readonly places: readonly PlanPlace[];
  /** Length of a wall, in words. */
  readonly lengthText: (metres: number) => string;
  /** Length of the scale under the plan, m. */
  readonly rulerMetres: number;
  /** Room for what stands beside the plan, px. */
  readonly margin?: Partial<Box>;
}

export interface PlanLayout {
  /** The rectangle that the plan stands in, px. */
  readonly box: Box;
  readonly pixelsPerMetre: number;
  /** y runs upwards on the paper, as on every drawing of a building. */
  readonly toPixel: (x: number, y: number) => Point;
  readonly toMetres: (xCss: number, yCss: number) => Point;
}

const margins: Box = { left: 58, right: 58, top: 30, bottom: 30 };

/** Where a plan stands: as large as fits, in the middle. */
export function planLayout(
  corners: readonly Point[],
  size: ChartSize,
  margin: Partial<Box> = {},
): PlanLayout {
  const m = { ...margins, ...margin };
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const [x0, x1] = [Math.min(...xs), Math.max(...xs)];
  const [y0, y1] = [Math.min(...ys), Math.max(...ys)];
  const room = {
    width: Math.max(40, size.cssWidth - m.left - m.right),
    height: Math.max(40, size.cssHeight - m.top - m.bottom),
  };
  const scale = Math.min(room.width / Math.max(0.1, x1 - x0), room.height / Math.max(0.1, y1 - y0));
  const left = m.left + (room.width - scale * (x1 - x0)) / 2;
  const top = m.top + (room.height - scale * (y1 - y0)) / 2;
  const bottom = top + scale * (y1 - y0);
  return {
    box: { left, right: left + scale * (x1 - x0), top, bottom },
    pixelsPerMetre: scale,
    toPixel: (x, y) => ({ x: left + (x - x0) * scale, y: bottom - (y - y0) * scale }),
    toMetres: (x, y) => ({ x: x0 + (x - left) / scale, y: y0 + (bottom - y) / scale }),
  };
}

const outline = (corners: readonly Point[], { toPixel }: PlanLayout): number[] =>
  corners.flatMap(({ x, y }) => {
    const at = toPixel(x, y);
    return [at.x, at.y];
  });

/** Walls with their lengths. */
export function drawWalls(pen: Pen, view: PlanView, theme: DrawTheme, layout: PlanLayout): Label[] {
  const { corners, sound } = view;
  const points = outline(corners, layout);
  const closed = [...points, points[0], points[1], points[2], points[3]];
  pen.line(closed, {
    colour: sound ? theme.text : theme.faint,
    width: sound ? 2.5 : 1.5,
    ...(sound ? {} : { dash: [5, 4] }),
  });
  const turn = Math.sign(
    corners.reduce((sum, { x, y }, k) => {
      const next = corners[(k + 1) % corners.length];
      return sum + x * next.y - next.x * y;
    }, 0),
  );
  return corners.map(({ x, y }, k): Label => {
    const next = corners[(k + 1) % corners.length];
    const metres = Math.hypot(next.x - x, next.y - y);
    const middle = layout.toPixel((x + next.x) / 2, (y + next.y) / 2);
    // Outwards, to the right of the way round.
    const [nx, ny] = [(turn * (next.y - y)) / (metres || 1), (turn * (next.x - x)) / (metres || 1)];
    const across = Math.abs(nx) > 0.7;
    return {
      text: view.lengthText(metres),
      at: { x: middle.x + nx * 8, y: middle.y + ny * 13 },
      style: {
        colour: theme.faint,
        size: CHART_TEXT,
        align: across ? (nx > 0 ? 'start' : 'end') : 'middle',
      },
      weight: metres / 1000,
    };
  });
}

/** A seat is a ring, a source a square: told apart without colour. */
export function drawPlace(pen: Pen, place: PlanPlace, at: Point, theme: DrawTheme): void {
  const colour = place.selected ? theme.accent : theme.text;
  const edge = { colour, width: place.selected ? 2.5 : 2 };
  const { x, y } = at;
  const r = 6;
  if (place.kind === 'seat') pen.circle(x, y, r, theme.background, edge);
  else {
    const square = [x - r, y - r, x + r, y - r, x + r, y + r, x - r, y + r];
    pen.area(square, colour);
    pen.line([...square, x - r, y - r], { colour: theme.background, width: 1 });
  }
  if (!place.sound)
    for (const s of [1, -1]) pen.line([x - 9, y - 9 * s, x + 9, y + 9 * s], { colour: theme.text, width: 2 });
}

export function drawPlan(pen: Pen, view: PlanView, theme: DrawTheme, size: ChartSize): PlanLayout {
  const layout = planLayout(view.corners, size, view.margin);
  const points = outline(view.corners, layout);
  if (view.sound) pen.area(points, theme.text, theme.dark ? 0.05 : 0.03);
  const { box, pixelsPerMetre } = layout;
  // A scale that can be laid on the paper.
  const ruler = { left: box.left, y: Math.min(size.cssHeight - 8, box.bottom + 24) };
  const labels = drawWalls(pen, view, theme, layout);
  const rulerPixels = pixelsPerMetre * view.rulerMetres;
  if (rulerPixels < (size.cssWidth - 20) / 2) {
    const end = ruler.left + rulerPixels;
    pen.line([ruler.left, ruler.y - 3, ruler.left, ruler.y, end, ruler.y, end, ruler.y - 3], {
      colour: theme.faint,
      width: 1,
    });
    labels.push({
      text: view.lengthText(view.rulerMetres),
      at: { x: end + 6, y: ruler.y - 3 },
      style: { colour: theme.faint, size: CHART_TEXT, align: 'start' },
      weight: 0.5,
    });
  }
  const obstacles: Box[] = [];
  for (const place of view.places) {
    const at = layout.toPixel(place.x, place.y);
    drawPlace(pen, place, at, theme);
    obstacles.push({ left: at.x - 7, right: at.x + 7, top: at.y - 7, bottom: at.y + 7 });
  }
  view.places.forEach((place) => {
    const at = layout.toPixel(place.x, place.y);
    if (place.label) labels.push(placeLabel(place, at, theme));
  });
  drawLetters(pen, labels, theme, size, obstacles);
  return layout;
}

/** The name of a place beside it. */
export const placeLabel = (place: PlanPlace, at: Point, theme: DrawTheme): Label => ({
  text: place.label,
  at: { x: at.x + 11, y: at.y },
  style: {
    colour: place.selected ? theme.accent : theme.text,
    size: CHART_TEXT,
    weight: 600,
    align: 'start',
  },
  weight: 3 + (place.selected ? 1 : 0),
  spare: { at: { x: at.x - 11, y: at.y }, align: 'end' },
});
