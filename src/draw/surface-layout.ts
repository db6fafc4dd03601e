/** Where a surface stands on its canvas: room for labels, the box fitted into the rest. */
import { indexAt } from './field.js';
import { labelAt, layoutFlags, rowHeightOf, rowsNeeded, shortened, type FlagLabels } from './flags.js';
import { limitOrbit } from './orbit.js';
import type { Pen } from './pen.js';
import type { Box, DrawSize, Pick, Point } from './picture.js';
import { makeSpace, toScreen, type Space } from './projection.js';
import { pickRelief } from './ray.js';
import { drawnHeight, makeRelief, type Relief } from './relief.js';
import type { DrawTheme, FieldView, OrbitView } from './types.js';

export interface SurfaceLayout {
  readonly plot: Box;
  readonly space: Space;
  readonly relief: Relief;
  readonly labels: FlagLabels;
  readonly labelsBottom: number;
  /** Where each flag's ridge begins. */
  readonly anchors: readonly Point[];
}

/** A point on the drawn surface, CSS pixels; null where the field is not drawn. */
export function projectField(
  layout: SurfaceLayout,
  column: number,
  row: number,
  value?: number,
): Point | null {
  const { relief, space } = layout;
  const { view } = relief;
  const inside = (at: number, [low, high]: readonly [number, number]): boolean => at >= low && at <= high;
  if (!inside(column, view.columnRange) || !inside(row, view.rowRange)) return null;
  return toScreen(
    space,
    relief.x(column),
    value === undefined ? drawnHeight(relief, column, row) : relief.y(value),
    relief.z(row),
  );
}

export function layoutSurface(
  pen: Pen,
  view: FieldView,
  orbit: OrbitView,
  theme: DrawTheme,
  size: DrawSize,
): SurfaceLayout {
  const { cssWidth, cssHeight } = size;
  const narrow = cssWidth < 520;
  const flags = cssWidth < 420 || cssHeight < 280 ? shortened(view.flags, 2) : view.flags;
  const inView = flags.filter(
    ({ position }) => position >= view.columnRange[0] && position <= view.columnRange[1],
  );
  const { labelRoom } = view;
  const lines = labelRoom?.lines ?? Math.max(1, ...inView.map((flag) => flag.label.split('\n').length));
  // At most a third of the height for labels. The strip is kept whatever stands in it: the box must not jump while it
  // is turned.
  const mostRows = Math.max(1, Math.min(3, Math.floor(cssHeight / 3 / rowHeightOf(lines))));
  const rows = labelRoom?.rows ?? rowsNeeded(pen, theme, inView, cssWidth - 4, mostRows);
  const strip = rows === 0 ? 12 : rows * rowHeightOf(lines) + 8;
  const labelsBottom = strip + 2;
  // A narrow picture needs a line of its own for the key below the axis's title.
  const foot = (view.marks.length ? 60 : 48) + (narrow ? 18 : 0);
  const plot: Box = {
    left: narrow ? 34 : 58,
    right: Math.max(narrow ? 50 : 74, cssWidth - (narrow ? 34 : 58)),
    top: labelsBottom + 4,
    bottom: Math.max(labelsBottom + 20, cssHeight - foot),
  };
  const space = makeSpace(limitOrbit(orbit), plot, size);
  const relief = makeRelief(view, space.half);
  const anchors = view.flags.map((flag) => {
    const column = indexAt(view.field.columnPositions, flag.position);
    const [x, y, z] = relief.point(column, relief.rows[0]);
    return toScreen(space, x, y, z);
  });
  const drawn = view.flags.map(
    (flag, k) =>
      flag.position >= view.columnRange[0] &&
      flag.position <= view.columnRange[1] &&
      anchors[k].x > 0 &&
      anchors[k].x < cssWidth,
  );
  const labels = layoutFlags(
    pen,
    theme,
    flags,
    anchors.map(({ x }, k) => (drawn[k] ? x : null)),
    [2, cssWidth - 2],
    rows,
  );
  return { plot, space, relief, labels, labelsBottom, anchors };
}

export function pickSurface(layout: SurfaceLayout, xCss: number, yCss: number): Pick | null {
  return pickRelief(layout.space, layout.relief, xCss, yCss);
}

/** Whether a point of the surface, drawn at `at`, can be seen, or lies behind something nearer. */
export function isSeen(layout: SurfaceLayout, column: number, row: number, at: Point): boolean {
  const hit = pickSurface(layout, at.x, at.y);
  if (!hit) return true;
  const there = projectField(layout, hit.column, hit.row);
  const { relief } = layout;
  // The ray may touch the neighbour of a cell: near in the field is the same place.
  const away = Math.hypot(relief.x(hit.column) - relief.x(column), relief.z(hit.row) - relief.z(row));
  return there === null || away < 0.06;
}

function distanceToSegment(x: number, y: number, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length = dx * dx + dy * dy;
  const t = length === 0 ? 0 : Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / length));
  return Math.hypot(x - a.x - t * dx, y - a.y - t * dy);
}

/** Index among the view's flags of the label or ridge line under a point, or null. */
export function surfaceFlagAt(layout: SurfaceLayout, x: number, y: number): number | null {
  const label = labelAt(layout.labels, layout.labelsBottom, x, y);
  if (label !== null) return label;
  let best: { flag: number; away: number } | null = null;
  const { view, rows, point } = layout.relief;
  view.flags.forEach((flag, k) => {
    if (flag.position < view.columnRange[0] || flag.position > view.columnRange[1]) return;
    const column = indexAt(view.field.columnPositions, flag.position);
    const last = Math.min(rows[1], indexAt(view.field.rowPositions, flag.until));
    const pieces = 24;
    let before: Point | null = null;
    for (let n = 0; n <= pieces; n += 1) {
      const [px, py, pz] = point(column, rows[0] + ((last - rows[0]) * n) / pieces);
      const here = toScreen(layout.space, px, py, pz);
      if (before) {
        const away = distanceToSegment(x, y, before, here);
        if (away <= 7 && (!best || away < best.away)) best = { flag: k, away };
      }
      before = here;
    }
  });
  return (best as { flag: number; away: number } | null)?.flag ?? null;
}
