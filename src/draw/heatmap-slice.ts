/** The slice beside a heat map: the field along time at one column, on the heat map's own time axis. */
import { axisTicks, makeAxis } from './axes.js';
import { kindAt, sampleField } from './field.js';
import type { HeatMapLayout } from './heatmap.js';
import type { Pen, TextStyle } from './pen.js';
import type { Box } from './picture.js';
import type { DrawTheme, FieldView } from './types.js';

/** Width of the slice, and the least width of a picture that has room for it, CSS pixels. */
export const SLICE_WIDTH = 96;
export const LEAST_WIDTH_WITH_SLICE = 620;

/** The column shown: the cursor's, else that of the selected flag, else of the first; null without any. */
export function sliceColumn({ cursor, flags }: FieldView): number | null {
  if (cursor) return cursor.column;
  const flag = flags.find(({ selected }) => selected) ?? flags[0];
  return flag ? flag.position : null;
}

/** Rows at which the slice is sampled: those of the field within the range shown. */
function sliceRows({ field, rowRange }: FieldView): number[] {
  return Array.from(field.rowPositions).filter((row) => row >= rowRange[0] && row <= rowRange[1]);
}

/**
 * Level to the right, time downwards as in the map. Solid where it is signal; dotted where it is noise, without data or
 * the window's own decay.
 */
export function drawSlice(
  pen: Pen,
  view: FieldView,
  theme: DrawTheme,
  layout: HeatMapLayout,
  box: Box,
): void {
  const column = sliceColumn(view);
  const edge = { colour: theme.line, width: 1 };
  pen.line(
    [box.left, box.top, box.right, box.top, box.right, box.bottom, box.left, box.bottom, box.left, box.top],
    edge,
  );
  const axis = makeAxis('linear', view.valueRange, box.left, box.right);
  const tick: TextStyle = { colour: theme.faint, size: 11, align: 'middle' };
  for (const at of axisTicks('linear', view.valueRange, 3)) {
    const x = axis.pixel(at.value);
    pen.line([x, box.top, x, box.bottom], { ...edge, opacity: 0.6 });
    pen.line([x, box.bottom, x, box.bottom + 4], { ...edge, colour: theme.faint });
    const near = x < box.left + 10 ? 'start' : x > box.right - 10 ? 'end' : 'middle';
    pen.text(view.formatNumber(at.value, at.digits), x, box.bottom + 15, { ...tick, align: near });
  }
  if (column === null) return;
  const [lowest, highest] = view.valueRange;
  const points = sliceRows(view).map((row) => {
    const value = sampleField(view.field, column, row);
    return {
      x: axis.pixel(Math.min(highest, Math.max(lowest, value))),
      y: layout.rowAxis.pixel(row),
      heard: kindAt(view.field, column, row, value) === 'signal',
    };
  });
  pen.clipped(box, () => {
    let from = 0;
    for (let k = 1; k <= points.length; k += 1) {
      if (k < points.length && points[k].heard === points[from].heard) continue;
      const run = points.slice(from, Math.min(points.length, k + 1)).flatMap(({ x, y }) => [x, y]);
      const style = points[from].heard
        ? { colour: theme.text, width: 1.5 }
        : { colour: theme.faint, width: 1, dash: [2, 3] };
      if (run.length > 2) pen.line(run, style);
      from = k;
    }
    if (!view.cursor) return;
    const y = layout.rowAxis.pixel(view.cursor.row);
    pen.line([box.left, y, box.right, y], { colour: theme.accent, width: 1 });
    const value = sampleField(view.field, column, view.cursor.row);
    pen.circle(axis.pixel(Math.min(highest, Math.max(lowest, value))), y, 3, theme.accent, null);
  });
  pen.text(
    view.formatColumn?.(column) ?? view.formatNumber(column, 1),
    (box.left + box.right) / 2,
    box.top - 6,
    {
      ...tick,
      colour: theme.text,
      weight: 600,
    },
  );
}
