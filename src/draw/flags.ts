/** Labels of ridges along the top of a picture: in rows, without overlap, each with a leader to its ridge. */
import { placeInRows } from './label-rows.js';
import type { Pen, TextStyle } from './pen.js';
import type { DrawTheme, Flag } from './types.js';

export const LABEL_SIZE = 11.5;
const LINE_HEIGHT = 14;
const PAD = 5;

export interface FlagLabel {
  readonly flag: number;
  /** First line stands out, the rest is quieter. */
  readonly lines: readonly string[];
  readonly x: number;
  readonly row: number;
  /** Where its leader passes the rows below. */
  readonly lanes: readonly number[];
  readonly width: number;
}

export interface FlagLabels {
  readonly placed: readonly FlagLabel[];
  readonly rows: number;
  readonly rowHeight: number;
}

const headStyle = (theme: DrawTheme, selected: boolean): TextStyle => ({
  colour: selected ? theme.accent : theme.text,
  size: LABEL_SIZE,
  weight: 600,
  align: 'middle',
});
const restStyle = (theme: DrawTheme): TextStyle => ({
  colour: theme.faint,
  size: LABEL_SIZE,
  align: 'middle',
});

const linesOf = (flag: Flag): string[] => flag.label.split('\n');

/** The labels cut to so many lines, for pictures with little room. */
export const shortened = (flags: readonly Flag[], lines: number): Flag[] =>
  flags.map((flag) => ({ ...flag, label: linesOf(flag).slice(0, lines).join('\n') }));

const widthOf = (pen: Pen, theme: DrawTheme, flag: Flag): number =>
  2 * PAD +
  Math.max(
    ...linesOf(flag).map((line, n) =>
      pen.measure(line, n === 0 ? headStyle(theme, false) : restStyle(theme)),
    ),
  );

/** Height of a row of labels of so many lines. */
export const rowHeightOf = (lines: number): number => lines * LINE_HEIGHT + 5;

/** Rows that the labels need, whatever the picture is turned to: its size must not change while it turns. */
export function rowsNeeded(
  pen: Pen,
  theme: DrawTheme,
  flags: readonly Flag[],
  width: number,
  mostRows: number,
): number {
  const all = flags.reduce((sum, flag) => sum + (flag.label ? widthOf(pen, theme, flag) + 8 : 0), 0);
  return Math.min(mostRows, Math.ceil((all * 1.3) / width));
}

/** Which labels stand where, from where their ridges begin; null anchors are off the picture. */
export function layoutFlags(
  pen: Pen,
  theme: DrawTheme,
  flags: readonly Flag[],
  anchors: readonly (number | null)[],
  bounds: readonly [number, number],
  mostRows: number,
): FlagLabels {
  const present = flags.map((_, k) => k).filter((k) => anchors[k] !== null && flags[k].label !== '');
  const spans = present.map((k) => ({
    at: anchors[k]!,
    width: widthOf(pen, theme, flags[k]),
    weight: flags[k].weight + (flags[k].selected ? 10 : 0),
  }));
  const places = placeInRows(spans, bounds, mostRows, 3);
  const placed = present.flatMap((k, n): FlagLabel[] => {
    const place = places[n];
    if (!place) return [];
    const { at: x, row, lanes } = place;
    return [{ flag: k, lines: linesOf(flags[k]), x, row, lanes, width: spans[n].width }];
  });
  const tallest = Math.max(1, ...placed.map(({ lines }) => lines.length));
  return {
    placed,
    rows: placed.length ? 1 + Math.max(...placed.map(({ row }) => row)) : 0,
    rowHeight: rowHeightOf(tallest),
  };
}

/** Height the labels take above the picture, leaders included. */
export const flagsHeight = (labels: FlagLabels): number =>
  labels.rows === 0 ? 0 : labels.rows * labels.rowHeight + 8;

const topOf = (labels: FlagLabels, label: FlagLabel, bottom: number): number =>
  bottom - 8 - (label.row + 1) * labels.rowHeight;

/** Draws leaders and labels; `bottom` is the lower end of their strip, `target` where each ridge begins. */
export function drawFlags(
  pen: Pen,
  theme: DrawTheme,
  flags: readonly Flag[],
  labels: FlagLabels,
  bottom: number,
  target: (flag: number) => { readonly x: number; readonly y: number },
): void {
  const within = (label: FlagLabel, x: number): number =>
    Math.min(label.x + label.width / 2 - PAD, Math.max(label.x - label.width / 2 + PAD, x));
  for (const label of labels.placed) {
    const end = target(label.flag);
    const below = topOf(labels, label, bottom) + label.lines.length * LINE_HEIGHT + 3;
    const selected = flags[label.flag].selected;
    const path: number[] = [];
    const down = (x: number, fromY: number, toY: number): void => void path.push(x, fromY, x, toY);
    down(
      within(label, label.lanes[label.row - 1] ?? end.x),
      below,
      bottom - 8 - label.row * labels.rowHeight,
    );
    for (let row = label.row - 1; row >= 0; row -= 1)
      down(label.lanes[row], bottom - 6 - (row + 1) * labels.rowHeight, bottom - 8 - row * labels.rowHeight);
    down(end.x, Math.min(bottom, end.y), end.y);
    pen.line(path, {
      colour: selected ? theme.accent : theme.faint,
      width: selected ? 1.5 : 1,
      opacity: selected ? 1 : 0.75,
    });
  }
  for (const label of labels.placed) {
    const top = topOf(labels, label, bottom);
    const left = label.x - label.width / 2;
    const right = label.x + label.width / 2;
    const low = top + label.lines.length * LINE_HEIGHT + 3;
    pen.area([left, top, right, top, right, low, left, low], theme.background, 0.88);
    label.lines.forEach((line, n) => {
      const style = n === 0 ? headStyle(theme, flags[label.flag].selected) : restStyle(theme);
      pen.text(line, label.x, top + (n + 1) * LINE_HEIGHT - 2.5, style);
    });
  }
}

/** The flag whose label is under a point, or null. */
export function labelAt(labels: FlagLabels, bottom: number, x: number, y: number): number | null {
  for (const label of labels.placed) {
    const top = topOf(labels, label, bottom);
    if (Math.abs(x - label.x) <= label.width / 2 && y >= top && y <= top + labels.rowHeight)
      return label.flag;
  }
  return null;
}
