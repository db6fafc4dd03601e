/** The limit's curtain in a drawing of lines: in pieces that lie between two slices, so that nearer slices cover it. */
import { floorAt, indexAt, positionAt } from './field.js';
import type { Pen } from './pen.js';
import { toScreen } from './projection.js';
import { vertexIndices } from './relief.js';
import type { SurfaceLayout } from './surface-layout.js';
import type { DrawTheme } from './types.js';

/** Height of the curtain as a share of the box's. */
export const CURTAIN = 0.3;

interface Hem {
  readonly column: number;
  /** Fractional index of the row. */
  readonly row: number;
  /** Where the sheet stands on the floor, where its hem lies upon the surface, its upper edge. */
  readonly foot: readonly [number, number];
  readonly hem: readonly [number, number];
  readonly top: readonly [number, number];
}

/** Hems by columns; null where there is no limit, or none within what is shown. */
function hemsOf(layout: SurfaceLayout, limits: Float32Array): (Hem | null)[] {
  const { relief, space } = layout;
  const { view, half } = relief;
  const { field, rowRange } = view;
  return vertexIndices(relief.columns).map((column) => {
    const limit = positionAt(limits, column);
    if (!(limit >= rowRange[0] && limit <= rowRange[1])) return null;
    const x = relief.x(positionAt(field.columnPositions, column));
    const low = relief.y(Math.min(view.valueRange[1], Math.max(view.valueRange[0], floorAt(field, column))));
    const z = relief.z(limit);
    const foot = toScreen(space, x, low, z);
    const top = toScreen(space, x, low + CURTAIN * 2 * half[1], z);
    const row = indexAt(field.rowPositions, limit);
    const hem = toScreen(space, x, relief.y(relief.shown(column, row)), z);
    return {
      column,
      row,
      foot: [foot.x, foot.y],
      hem: [hem.x, hem.y],
      top: [top.x, top.y],
    };
  });
}

/** Draws the part between two places on the axis along which slices are stacked. */
export type CurtainDrawer = (from: number, to: number) => void;

export function curtainDrawer(
  pen: Pen,
  theme: DrawTheme,
  layout: SurfaceLayout,
  stackedBy: 'rows' | 'columns',
): CurtainDrawer {
  const { curtain } = layout.relief.view;
  if (!curtain) return () => undefined;
  const near = hemsOf(layout, curtain.at);
  const further = curtain.further ? hemsOf(layout, curtain.further) : [];
  /** Runs of neighbours whose middle lies within. */
  const runs = (hems: readonly (Hem | null)[], from: number, to: number): Hem[][] => {
    const [low, high] = from < to ? [from, to] : [to, from];
    const found: Hem[][] = [];
    let run: Hem[] = [];
    hems.forEach((hem, k) => {
      const next = hems[k + 1];
      const middle =
        hem && next ? (stackedBy === 'rows' ? hem.row + next.row : hem.column + next.column) / 2 : NaN;
      if (hem && next && middle >= low && middle < high) {
        if (run.length === 0) run.push(hem);
        run.push(next);
      } else if (run.length > 0) {
        found.push(run);
        run = [];
      }
    });
    return found;
  };
  return (from, to) => {
    for (const run of runs(further, from, to))
      pen.line(
        run.flatMap(({ hem }) => hem),
        { colour: theme.text, width: 1, opacity: 0.5 },
      );
    for (const run of runs(near, from, to)) {
      const feet = run.flatMap(({ foot }) => foot);
      const tops = run.map(({ top }) => top);
      pen.area([...feet, ...[...tops].reverse().flat()], theme.text, theme.dark ? 0.16 : 0.12);
      pen.line(tops.flat(), { colour: theme.text, width: 1, opacity: 0.45 });
      pen.line(
        run.flatMap(({ hem }) => hem),
        { colour: theme.text, width: 1.5, opacity: 0.8 },
      );
    }
  };
}
