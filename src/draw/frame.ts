/**
 * What stands around the surface, in two parts: floor and back walls, over which the surface is drawn, and the axes with
 * their labels, which are drawn over it. Seen from above the floor the order is exact.
 * Both parts place their letters by the same edges, which is why they are one file.
 */
import { axisTicks, type Tick } from './axes.js';
import { scaleColour } from './colours.js';
import { drawFlags } from './flags.js';
import { lettersWithoutOverlap, type Label } from './letters.js';
import type { Pen, TextStyle } from './pen.js';
import type { DrawSize, Point } from './picture.js';
import { toScreen } from './projection.js';
import { isSeen, projectField, type SurfaceLayout } from './surface-layout.js';
import { mixCss } from './tones.js';
import type { AxisScale, DrawTheme } from './types.js';

const TICK_SIZE = 11;

interface Sides {
  /** Signs of the sides nearest to the eye. */
  readonly x: 1 | -1;
  readonly z: 1 | -1;
}

function sidesOf(layout: SurfaceLayout): Sides {
  const [x, y, z] = layout.space.eye;
  // Seen nearly from the front, perspective shows the inside of the left wall: it counts as a back wall until the eye
  // has gone well round to that side.
  return { x: x > -0.1 * Math.hypot(x, y, z) ? 1 : -1, z: z >= -1e-6 ? 1 : -1 };
}

const spread = (points: readonly Point[]): number[] => points.flatMap(({ x, y }) => [x, y]);

const on = (layout: SurfaceLayout, x: number, y: number, z: number): Point => toScreen(layout.space, x, y, z);

function ticksAlong(
  scale: AxisScale,
  range: readonly [number, number],
  length: number,
  pitch: number,
): Tick[] {
  return axisTicks(scale, range, Math.max(2, length / pitch)).filter(({ major }) => major);
}

const lengthOf = (a: Point, b: Point): number => Math.hypot(b.x - a.x, b.y - a.y);

/** Floor and back walls with their grid. */
export function drawBehind(pen: Pen, theme: DrawTheme, layout: SurfaceLayout): void {
  const { relief } = layout;
  const { view } = relief;
  const [hx, hy, hz] = relief.half;
  const near = sidesOf(layout);
  const grid = { colour: theme.line, width: 1, opacity: 0.75 };
  const edge = { colour: theme.line, width: 1 };
  const floor = [
    on(layout, -hx, -hy, -hz),
    on(layout, hx, -hy, -hz),
    on(layout, hx, -hy, hz),
    on(layout, -hx, -hy, hz),
  ];
  const [fx, fz] = [-near.x * hx, -near.z * hz];
  const wallX = [
    on(layout, fx, -hy, -hz),
    on(layout, fx, hy, -hz),
    on(layout, fx, hy, hz),
    on(layout, fx, -hy, hz),
  ];
  const wallZ = [
    on(layout, -hx, -hy, fz),
    on(layout, -hx, hy, fz),
    on(layout, hx, hy, fz),
    on(layout, hx, -hy, fz),
  ];
  const shade = mixCss(theme.background, theme.text, theme.dark ? 0.04 : 0.025);
  pen.area(spread(floor), mixCss(theme.background, theme.text, theme.dark ? 0.055 : 0.04));
  pen.area(spread(wallX), shade);
  pen.area(spread(wallZ), shade);
  const columnLength = Math.max(lengthOf(floor[0], floor[1]), lengthOf(floor[3], floor[2]));
  const rowLength = Math.max(lengthOf(floor[0], floor[3]), lengthOf(floor[1], floor[2]));
  for (const { value } of ticksAlong(view.columnScale, view.columnRange, columnLength, 42)) {
    const x = relief.x(value);
    pen.line(spread([on(layout, x, hy, fz), on(layout, x, -hy, fz), on(layout, x, -hy, -fz)]), grid);
  }
  for (const { value } of ticksAlong('linear', view.rowRange, rowLength, 34)) {
    const z = relief.z(value);
    pen.line(spread([on(layout, fx, hy, z), on(layout, fx, -hy, z), on(layout, -fx, -hy, z)]), grid);
  }
  const upright = lengthOf(on(layout, fx, -hy, -fz), on(layout, fx, hy, -fz));
  for (const { value } of ticksAlong('linear', view.valueRange, upright, 30)) {
    const y = relief.y(value);
    pen.line(spread([on(layout, fx, y, -fz), on(layout, fx, y, fz), on(layout, -fx, y, fz)]), grid);
  }
  pen.line([...spread(floor), floor[0].x, floor[0].y], edge);
  for (const wall of [wallX, wallZ]) pen.line(spread([...wall, wall[0]]), edge);
}

/** Away from the box across an edge, on the screen, one pixel long. */
function outward(a: Point, b: Point, middle: Point): Point {
  const length = lengthOf(a, b) || 1;
  const normal = { x: (b.y - a.y) / length, y: -(b.x - a.x) / length };
  const mid = { x: (a.x + b.x) / 2 - middle.x, y: (a.y + b.y) / 2 - middle.y };
  const sign = normal.x * mid.x + normal.y * mid.y < 0 ? -1 : 1;
  return { x: normal.x * sign, y: normal.y * sign };
}

const alignOf = (away: Point): 'start' | 'middle' | 'end' =>
  Math.abs(away.x) < 0.4 ? 'middle' : away.x > 0 ? 'start' : 'end';

interface EdgeAxis {
  readonly from: Point;
  readonly to: Point;
  readonly ticks: readonly Tick[];
  readonly at: (value: number) => Point;
  readonly title: string;
  /** Free pixels between the edge and its labels. */
  readonly gap: number;
  /** Where the title may stand where it has no room beside its edge. */
  readonly spare?: Label['spare'];
}

function edgeLabels(pen: Pen, theme: DrawTheme, layout: SurfaceLayout, axis: EdgeAxis): Label[] {
  const { view } = layout.relief;
  const middle = on(layout, 0, 0, 0);
  const away = outward(axis.from, axis.to, middle);
  const style: TextStyle = { colour: theme.faint, size: TICK_SIZE, vertical: 'middle', align: alignOf(away) };
  const labels: Label[] = axis.ticks.map(({ value, digits }, k) => {
    const foot = axis.at(value);
    pen.line([foot.x, foot.y, foot.x + away.x * axis.gap, foot.y + away.y * axis.gap], {
      colour: theme.faint,
      width: 1,
      opacity: axis.gap > 8 ? 0.5 : 1,
    });
    const reach = axis.gap + 4 + Math.abs(away.y) * 6;
    return {
      text: view.formatNumber(value, digits),
      at: { x: foot.x + away.x * reach, y: foot.y + away.y * reach },
      style,
      weight: k === 0 || k === axis.ticks.length - 1 ? 2 : 1,
    };
  });
  const widest = Math.max(0, ...labels.map(({ text }) => pen.measure(text, style)));
  const reach = axis.gap + 10 + Math.abs(away.x) * (widest + 6) + Math.abs(away.y) * 20;
  const halfway = { x: (axis.from.x + axis.to.x) / 2, y: (axis.from.y + axis.to.y) / 2 };
  return [
    ...labels,
    {
      text: axis.title,
      at: { x: halfway.x + away.x * reach, y: halfway.y + away.y * reach },
      spare: axis.spare,
      style: { ...style, colour: theme.text },
      weight: 3,
    },
  ];
}

/** Predicted modes before the near edge of the floor: one, two or three strokes in a row, away from the box. */
function drawFloorMarks(pen: Pen, theme: DrawTheme, layout: SurfaceLayout, away: Point): void {
  const { relief, space } = layout;
  const { view, half } = relief;
  const z = sidesOf(layout).z * half[2];
  const marks = view.marks
    .filter(({ position }) => position >= view.columnRange[0] && position <= view.columnRange[1])
    .map(({ position, strokes }) => ({
      strokes,
      foot: toScreen(space, relief.x(position), -half[1], z),
    }))
    .sort((a, b) => a.foot.x - b.foot.x || a.foot.y - b.foot.y);
  marks.forEach(({ strokes, foot }, k) => {
    // Where they crowd they are drawn finer, so that they stay strokes.
    const next = [marks[k - 1], marks[k + 1]].map((other) => (other ? lengthOf(foot, other.foot) : 99));
    const width = Math.min(1.5, Math.max(0.6, 0.45 * Math.min(...next)));
    for (let n = 0; n < strokes; n += 1) {
      const [near, far] = [3 + n * 5, 6.5 + n * 5];
      pen.line(
        [foot.x + away.x * near, foot.y + away.y * near, foot.x + away.x * far, foot.y + away.y * far],
        { colour: theme.text, width, opacity: 0.85 },
      );
    }
  });
}

/** A dot where a ridge sinks, where that place is not behind something. */
function drawSinks(pen: Pen, theme: DrawTheme, layout: SurfaceLayout): void {
  const { view } = layout.relief;
  for (const flag of view.flags) {
    if (!flag.sinks || flag.until > view.rowRange[1]) continue;
    const at = projectField(layout, flag.position, flag.until);
    if (!at || !isSeen(layout, flag.position, flag.until, at)) continue;
    pen.circle(at.x, at.y, flag.selected ? 3.25 : 2.5, flag.selected ? theme.accent : theme.text, {
      colour: theme.background,
      width: 1,
    });
  }
}

/** The limit's name beside its curtain, at the end that is nearer to the eye. */
function curtainLabel(theme: DrawTheme, layout: SurfaceLayout): Label[] {
  const { relief } = layout;
  const { view, half } = relief;
  const { curtain } = view;
  if (!curtain?.label || layout.space.cssWidth < 520) return [];
  const [first, last] = relief.columns.map(Math.round);
  const order = Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => first + k);
  if (sidesOf(layout).x > 0) order.reverse();
  const { columnPositions } = view.field;
  const end = order.find((k) => curtain.at[k] >= view.rowRange[0] && curtain.at[k] <= view.rowRange[1]);
  if (end === undefined) return [];
  const foot = on(layout, relief.x(columnPositions[end]), -half[1], relief.z(curtain.at[end]));
  const right = foot.x > on(layout, 0, -half[1], 0).x;
  return [
    {
      text: curtain.label,
      at: { x: foot.x + (right ? 8 : -8), y: foot.y },
      style: { colour: theme.text, size: TICK_SIZE, vertical: 'middle', align: right ? 'start' : 'end' },
      weight: 1.2,
    },
  ];
}

/** The key along an upright edge of the box, or lying in the corner where the box is seen from above. */
function drawKey(pen: Pen, theme: DrawTheme, layout: SurfaceLayout, low: Point, high: Point): void {
  const [bottom, top] = layout.relief.view.valueRange;
  const steps = 48;
  for (let k = 0; k < steps; k += 1) {
    const [a, b] = [k / steps, Math.min(1, (k + 1.2) / steps)];
    pen.line(
      [
        low.x + (high.x - low.x) * a,
        low.y + (high.y - low.y) * a,
        low.x + (high.x - low.x) * b,
        low.y + (high.y - low.y) * b,
      ],
      {
        colour: scaleColour(theme.scale, bottom + ((top - bottom) * (k + 0.5)) / steps, [bottom, top]),
        width: 5,
      },
    );
  }
}

/** Axes, key, marks, flags' labels and the cursor's ring. */
export function drawBefore(pen: Pen, theme: DrawTheme, layout: SurfaceLayout, size: DrawSize): void {
  const { relief } = layout;
  const { view } = relief;
  const [hx, hy, hz] = relief.half;
  const near = sidesOf(layout);
  const labels: Label[] = curtainLabel(theme, layout);

  const [left, right] = [on(layout, -hx, -hy, near.z * hz), on(layout, hx, -hy, near.z * hz)];
  const away = outward(left, right, on(layout, 0, 0, 0));
  if (view.marks.length) drawFloorMarks(pen, theme, layout, away);
  labels.push(
    ...edgeLabels(pen, theme, layout, {
      from: left,
      to: right,
      ticks: ticksAlong(view.columnScale, view.columnRange, lengthOf(left, right), 42),
      at: (value) => on(layout, relief.x(value), -hy, near.z * hz),
      title: view.columnLabel,
      gap: view.marks.length ? 20 : 6,
    }),
  );
  const [back, front] = [on(layout, near.x * hx, -hy, -hz), on(layout, near.x * hx, -hy, hz)];
  labels.push(
    ...edgeLabels(pen, theme, layout, {
      from: back,
      to: front,
      ticks: ticksAlong('linear', view.rowRange, lengthOf(back, front), 34),
      at: (value) => on(layout, near.x * hx, -hy, relief.z(value)),
      title: view.rowLabel,
      gap: 6,
      spare: {
        at: {
          x: near.x > 0 ? size.cssWidth - 2 : 2,
          y: Math.min(size.cssHeight - 10, front.y + (view.marks.length ? 52 : 37)),
        },
        align: near.x > 0 ? 'end' : 'start',
      },
    }),
  );

  // The upright edge at the free end of a back wall, whichever stands further left.
  const ends = [
    [near.x * hx, -near.z * hz],
    [-near.x * hx, near.z * hz],
  ].map(([x, z]) => ({ low: on(layout, x, -hy, z), high: on(layout, x, hy, z), x, z }));
  const upright = ends[0].low.x <= ends[1].low.x ? ends[0] : ends[1];
  const height = lengthOf(upright.low, upright.high);
  const tick: TextStyle = { colour: theme.faint, size: TICK_SIZE, vertical: 'middle', align: 'end' };
  if (height >= 56) {
    drawKey(pen, theme, layout, upright.low, upright.high);
    for (const { value, digits } of ticksAlong('linear', view.valueRange, height, 30)) {
      const at = on(layout, upright.x, relief.y(value), upright.z);
      labels.push({
        text: view.formatNumber(value, digits),
        at: { x: at.x - 8, y: at.y },
        style: tick,
        weight: 1.5,
      });
    }
    labels.push({
      text: view.valueLabel,
      at: { x: Math.max(2, upright.high.x - 34), y: upright.high.y - 15 },
      style: { ...tick, align: 'start', colour: theme.text },
      weight: 3,
    });
  } else {
    const y = size.cssHeight - 10;
    const [bottom, top] = view.valueRange.map((value) => view.formatNumber(value, 0));
    const start = 4 + pen.measure(bottom, tick) + 6;
    const width = Math.min(96, size.cssWidth * 0.2);
    drawKey(pen, theme, layout, { x: start, y }, { x: start + width, y });
    labels.push(
      { text: bottom, at: { x: 4, y }, style: { ...tick, align: 'start' }, weight: 4 },
      {
        text: `${top}  ${view.valueLabel}`,
        at: { x: start + width + 6, y },
        style: { ...tick, align: 'start' },
        weight: 4,
      },
    );
  }
  for (const { text, at, style } of lettersWithoutOverlap(pen, labels, size))
    pen.text(text, at.x, at.y, { ...style, halo: theme.background });

  drawSinks(pen, theme, layout);
  drawFlags(pen, theme, view.flags, layout.labels, layout.labelsBottom, (flag) => layout.anchors[flag]);
  if (view.cursor) {
    const at = projectField(layout, view.cursor.column, view.cursor.row);
    if (at) {
      pen.circle(at.x, at.y, 4.5, theme.background, { colour: theme.accent, width: 2 });
    }
  }
}
