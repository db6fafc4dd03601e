/** A room that is looked into: where its points stand on the canvas, its edges, seats, sources and cursor over the faces. */
import { drawLetters, type ChartSize } from './chart-frame.js';

import type { Label } from './letters.js';
import { limitOrbit } from './orbit.js';
import type { Pen } from './pen.js';
import type { Box, Point } from './picture.js';
import { drawPlace, placeLabel } from './plan.js';
import type { PressurePlace } from './pressure-picture.js';
import { makeSpace, toScreen, type Space } from './projection.js';
import type { DrawTheme, OrbitView } from './types.js';

export interface RoomPicture {
  readonly lengthMetres: number;
  readonly widthMetres: number;
  readonly heightMetres: number;
  /** Walls of the plan in turn, m. */
  readonly corners: readonly Point[];
  /** Points of the floor, evenly from wall to wall, row by row of x; NaN outside the walls. */
  readonly columns: number;
  readonly rows: number;
  /** Signed shape at the floor, -1 to 1, and its slope along the floor, 1/m. */
  readonly floor: Float32Array;
  readonly along: Float32Array;
  /** Of the wave in height, radians per metre. */
  readonly upright: number;
  /** Null for pressure; else the largest motion, which stands for 1. */
  readonly largestMotion: number | null;
  readonly cursor: { readonly x: number; readonly y: number; readonly z: number };
  readonly places: readonly PressurePlace[];
}

export interface RoomLayout {
  readonly space: Space;
  readonly toPixel: (x: number, y: number, z: number) => Point;
  placeAt(xCss: number, yCss: number): number | null;
}

/** Of the room's box, in metres about its middle: x along the length, up, and the width away from the eye. */
export const toBox = (
  { lengthMetres: l, widthMetres: w, heightMetres: h }: RoomPicture,
  x: number,
  y: number,
  z: number,
): [number, number, number] => [x - l / 2, z - h / 2, w / 2 - y];

const margin = 26;

export function layoutRoom(picture: RoomPicture, orbit: OrbitView, size: ChartSize): RoomLayout {
  const { cssWidth, cssHeight } = size;
  const plot: Box = { left: margin, right: cssWidth - margin, top: margin, bottom: cssHeight - margin };
  const half = [picture.lengthMetres / 2, picture.heightMetres / 2, picture.widthMetres / 2] as const;
  const space = makeSpace(limitOrbit(orbit), plot, size, half);
  const toPixel = (x: number, y: number, z: number): Point => toScreen(space, ...toBox(picture, x, y, z));
  return {
    space,
    toPixel,
    placeAt(xCss, yCss) {
      const near = picture.places
        .map((place, k) => {
          const at = toPixel(place.x, place.y, place.z);
          return { k, away: Math.hypot(at.x - xCss, at.y - yCss) };
        })
        .filter(({ away }) => away <= 11)
        .sort((a, b) => a.away - b.away)[0];
      return near ? near.k : null;
    },
  };
}

/** Twice the signed area: above 0 where the corners run to the left about the room. */
export const turnOf = (corners: readonly Point[]): number =>
  corners.reduce((sum, { x, y }, k) => {
    const next = corners[(k + 1) % corners.length];
    return sum + x * next.y - next.x * y;
  }, 0);

/** Whether a wall is seen from inside the room: those between the eye and the room are left out. */
export function wallsSeen(picture: RoomPicture, { eye }: Space): boolean[] {
  const { corners, lengthMetres: l, widthMetres: w } = picture;
  const turn = Math.sign(turnOf(corners));
  const [ex, ey] = [eye[0] + l / 2, w / 2 - eye[2]];
  return corners.map((a, k) => {
    const b = corners[(k + 1) % corners.length];
    return turn * ((b.x - a.x) * (ey - a.y) - (b.y - a.y) * (ex - a.x)) > 0;
  });
}

/** Everything over the faces. */
export function drawRoomLines(
  pen: Pen,
  picture: RoomPicture,
  orbit: OrbitView,
  theme: DrawTheme,
  size: ChartSize,
): RoomLayout {
  const layout = layoutRoom(picture, orbit, size);
  const { toPixel, space } = layout;
  const { corners, heightMetres: h, places, cursor } = picture;
  const seen = wallsSeen(picture, space);
  const edge = (a: Point, b: Point, strong: boolean): void =>
    pen.line([a.x, a.y, b.x, b.y], {
      colour: theme.text,
      width: strong ? 1.5 : 1,
      opacity: strong ? 0.85 : 0.28,
    });
  corners.forEach(({ x, y }, k) => {
    const next = corners[(k + 1) % corners.length];
    const before = seen[(k + corners.length - 1) % corners.length];
    edge(toPixel(x, y, 0), toPixel(next.x, next.y, 0), true);
    edge(toPixel(x, y, h), toPixel(next.x, next.y, h), seen[k]);
    edge(toPixel(x, y, 0), toPixel(x, y, h), seen[k] || before);
  });
  const drop = (x: number, y: number, z: number, colour: string): Point => {
    const [at, foot] = [toPixel(x, y, z), toPixel(x, y, 0)];
    pen.line([at.x, at.y, foot.x, foot.y], { colour, width: 1, opacity: 0.8, dash: [2, 3] });
    pen.circle(foot.x, foot.y, 1.75, colour, null);
    return at;
  };
  const at = drop(cursor.x, cursor.y, cursor.z, theme.accent);
  pen.circle(at.x, at.y, 5, null, { colour: theme.background, width: 4, opacity: 0.7 });
  pen.circle(at.x, at.y, 5, null, { colour: theme.accent, width: 2 });
  const labels: Label[] = [];
  const obstacles: Box[] = [];
  for (const place of places) {
    const point = drop(place.x, place.y, place.z, theme.text);
    drawPlace(pen, place, point, theme);
    obstacles.push({ left: point.x - 7, right: point.x + 7, top: point.y - 7, bottom: point.y + 7 });
    if (place.label) labels.push(placeLabel(place, point, theme));
  }
  drawLetters(pen, labels, theme, size, obstacles);
  return layout;
}
