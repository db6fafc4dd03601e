/**
 * The surface as a hidden-line drawing, slice by slice from the farthest to the nearest, each covering what is behind
 * it. It needs no WebGL, and drawn by an SVG pen it is the vector export.
 */
import { betweenDrawer } from './between2d.js';
import { scaleColour } from './colours.js';
import { curtainDrawer } from './curtain2d.js';
import { indexAt, kindAt, positionAt, valueAt } from './field.js';
import { drawBefore, drawBehind } from './frame.js';
import { canvasPen, type LineStyle, type Pen } from './pen.js';
import { fitCanvas, isDrawable, type DrawSize } from './picture.js';
import { toScreen } from './projection.js';
import { mostSlices, sliceList, vertexIndices } from './relief.js';
import { layoutSurface, type SurfaceLayout } from './surface-layout.js';
import { mixCss } from './tones.js';
import type { DrawTheme, FieldView, OrbitView } from './types.js';

/** Levels of colour along a slice: enough to read as continuous, few enough to keep a vector file small. */
const COLOUR_LEVELS = 24;

/** A line on the surface besides the slices: along the slices or across them. */
interface Extra {
  /** Across: at this fractional index of the slice's own axis; along: standing at this index of the other. */
  readonly fixed: number;
  readonly from: number;
  readonly to: number;
  readonly along: boolean;
  readonly style: LineStyle;
}

/** Slices run along frequency; seen from the side, where those would stand edge-on, along time. */
const slicesAlongTime = (orbit: OrbitView): boolean =>
  Math.abs(Math.sin(orbit.azimuthRadians)) > 0.88 && orbit.elevationRadians < 1.2;

function extrasOf(view: FieldView, theme: DrawTheme, layout: SurfaceLayout, alongTime: boolean): Extra[] {
  const { columns, rows } = layout.relief;
  const extras: Extra[] = view.flags
    .filter(({ position }) => position >= view.columnRange[0] && position <= view.columnRange[1])
    .map((flag) => ({
      fixed: indexAt(view.field.columnPositions, flag.position),
      from: rows[0],
      to: Math.min(rows[1], indexAt(view.field.rowPositions, flag.until)),
      along: alongTime,
      style: {
        colour: flag.selected ? theme.accent : theme.text,
        width: flag.selected ? 2.5 : 1.75,
        opacity: flag.selected ? 1 : 0.6 + 0.4 * flag.weight,
      },
    }));
  if (view.cursor) {
    const style = { colour: theme.accent, width: 1.25 };
    const c = indexAt(view.field.columnPositions, view.cursor.column);
    const r = indexAt(view.field.rowPositions, view.cursor.row);
    extras.push({ fixed: c, from: rows[0], to: rows[1], along: alongTime, style });
    extras.push({ fixed: r, from: columns[0], to: columns[1], along: !alongTime, style });
  }
  return extras;
}

function drawSlices(
  pen: Pen,
  view: FieldView,
  orbit: OrbitView,
  theme: DrawTheme,
  layout: SurfaceLayout,
): void {
  const { relief, space, plot } = layout;
  const { field } = view;
  const alongTime = slicesAlongTime(orbit);
  const [own, other] = alongTime ? [relief.rows, relief.columns] : [relief.columns, relief.rows];
  if (!(own[1] > own[0] && other[1] > other[0])) return;
  const spot = (ownIndex: number, otherIndex: number): readonly [number, number, number] =>
    alongTime ? relief.point(otherIndex, ownIndex) : relief.point(ownIndex, otherIndex);
  const screen = (ownIndex: number, otherIndex: number): [number, number] => {
    const { x, y } = toScreen(space, ...spot(ownIndex, otherIndex));
    return [x, y];
  };
  const extras = extrasOf(view, theme, layout, alongTime);
  const most = Math.min(64, mostSlices(plot));
  // Along time, slices stand at frequencies: evenly over the columns, as those are over the axis.
  const stacked = alongTime ? Float64Array.from(field.columnPositions, (_, k) => k) : field.rowPositions;
  const stations = sliceList(stacked, other, most).slices.map(({ at, round }) => ({
    at,
    width: round ? 1.35 : 0.9,
    extra: null as Extra | null,
  }));
  for (const extra of extras) if (extra.along) stations.push({ at: extra.fixed, width: 0, extra });
  const eye = alongTime ? space.eye[0] : space.eye[2];
  const away = (at: number): number => {
    const [x, , z] = spot(own[0], at);
    return Math.abs(eye - (alongTime ? x : z));
  };
  // Where two stand at the same place the plain slice comes first, so that it cannot cover the line upon it.
  stations.sort((a, b) => away(b.at) - away(a.at) || Number(a.extra !== null) - Number(b.extra !== null));

  const indices = vertexIndices(own, Math.max(1, Math.round((own[1] - own[0]) / (plot.right - plot.left))));
  const noise = mixCss(theme.background, theme.text, 0.3);
  const nothing = mixCss(theme.background, theme.text, 0.14);
  const quiet = mixCss(theme.background, theme.text, 0.17);
  const grounded = mixCss(theme.background, theme.text, 0.26);
  const drawCurtain = curtainDrawer(pen, theme, layout, alongTime ? 'columns' : 'rows');
  const paper = mixCss(theme.background, theme.text, theme.dark ? 0.02 : 0);
  const drawBetween = betweenDrawer(pen, theme, relief, indices, alongTime, screen);
  let before: number | null = null;
  for (const { at, width, extra } of stations) {
    if (before !== null && before !== at) {
      drawBetween(before, at);
      drawCurtain(before, at);
    }
    if (before !== null && before !== at)
      for (const cross of extras) if (!cross.along) drawCross(pen, cross, before, at, screen);
    before = at;
    if (extra) {
      const run = vertexIndices([extra.from, extra.to]);
      pen.line(
        run.flatMap((k) => screen(k, at)),
        extra.style,
      );
      continue;
    }
    const points = indices.map((k) => screen(k, at));
    const ground = (k: number): [number, number] => {
      const [x, , z] = spot(k, at);
      const { x: sx, y: sy } = toScreen(space, x, -relief.half[1], z);
      return [sx, sy];
    };
    // The strip below the slice hides what is behind; the ground before it is drawn with the next one.
    pen.area([...points.flat(), ...ground(indices[indices.length - 1]), ...ground(indices[0])], paper);
    let run: number[] = [...points[0]];
    let colour = '';
    for (let n = 1; n < points.length; n += 1) {
      const middle = (indices[n - 1] + indices[n]) / 2;
      const [c, r] = alongTime ? [at, middle] : [middle, at];
      const value = valueAt(field, c, r);
      const kind = kindAt(
        field,
        positionAt(field.columnPositions, c),
        positionAt(field.rowPositions, r),
        value,
      );
      const [bottom, top] = view.valueRange;
      const level = Math.round(((value - bottom) / (top - bottom)) * COLOUR_LEVELS) / COLOUR_LEVELS;
      // A line must be seen on its paper: the quietest colours are drawn a little stronger than the surface has them.
      // What falls no slower than the window is paler, what lies on the floor is grey.
      let ink =
        kind === 'past-end'
          ? nothing
          : level <= 0
            ? kind === 'noise'
              ? grounded
              : quiet
            : kind === 'noise'
              ? noise
              : mixCss(scaleColour(theme.scale, Math.min(1, level), [0, 1]), theme.text, 0.22);
      if (kind === 'fast' && level > 0) ink = mixCss(ink, theme.background, 0.5);
      if (ink !== colour && run.length > 2) {
        pen.line(run, { colour, width });
        run = run.slice(-2);
      }
      colour = ink;
      run.push(...points[n]);
    }
    pen.line(run, { colour, width });
  }
}

/** The part of a line across the slices between two of them. */
function drawCross(
  pen: Pen,
  line: Extra,
  before: number,
  at: number,
  screen: (own: number, other: number) => [number, number],
): void {
  const low = Math.max(Math.min(before, at), line.from);
  const high = Math.min(Math.max(before, at), line.to);
  if (high <= low) return;
  pen.line(
    vertexIndices([low, high]).flatMap((k) => screen(line.fixed, k)),
    line.style,
  );
}

/** The whole drawing with any pen; its background is the caller's. */
export function drawSurfaceLines(
  pen: Pen,
  view: FieldView,
  orbit: OrbitView,
  theme: DrawTheme,
  size: DrawSize,
): SurfaceLayout {
  const layout = layoutSurface(pen, view, orbit, theme, size);
  drawBehind(pen, theme, layout);
  drawSlices(pen, view, orbit, theme, layout);
  drawBefore(pen, theme, layout, size);
  return layout;
}

/** The whole drawing on a canvas, which is brought to its size. */
export function drawSurface2d(
  context: CanvasRenderingContext2D,
  view: FieldView,
  orbit: OrbitView,
  theme: DrawTheme,
  size: DrawSize,
): SurfaceLayout {
  fitCanvas(context.canvas, size);
  const ratio = size.pixelRatio;
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  context.fillStyle = theme.background;
  context.fillRect(0, 0, size.cssWidth, size.cssHeight);
  const pen = canvasPen(context, theme.fontFamily);
  if (!isDrawable(size)) return layoutSurface(pen, view, orbit, theme, size);
  return drawSurfaceLines(pen, view, orbit, theme, size);
}
