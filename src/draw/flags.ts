/** Labels of ridges along the top of a picture: in rows, without overlap, each with a leader to its ridge. */
import { placeLabels } from './axes.js';
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

/** Which labels stand where, from where their ridges begin; null anchors are off the picture. */
export function layoutFlags(
  pen: Pen,
  theme: DrawTheme,
  flags: readonly Flag[],
  anchors: readonly (number | null)[],
  bounds: readonly [number, number],
  mostRows: number,
): FlagLabels {
  const lines = flags.map((flag) => flag.label.split('\n'));
  const present = flags.map((_, k) => k).filter((k) => anchors[k] !== null && flags[k].label !== '');
  const spans = present.map((k) => ({
    at: anchors[k]!,
    width:
      2 * PAD +
      Math.max(
        ...lines[k].map((line, n) => pen.measure(line, n === 0 ? headStyle(theme, false) : restStyle(theme))),
      ),
    weight: flags[k].weight + (flags[k].selected ? 10 : 0),
  }));
  const places = placeLabels(spans, bounds, mostRows, 3);
  const placed = present.flatMap((k, n): FlagLabel[] => {
    const place = places[n];
    return place ? [{ flag: k, lines: lines[k], x: place.at, row: place.row, width: spans[n].width }] : [];
  });
  const tallest = Math.max(1, ...placed.map(({ lines: own }) => own.length));
  return {
    placed,
    rows: placed.length ? 1 + Math.max(...placed.map(({ row }) => row)) : 0,
    rowHeight: tallest * LINE_HEIGHT + 5,
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
  for (const label of labels.placed) {
    const end = target(label.flag);
    const top = topOf(labels, label, bottom);
    const below = top + label.lines.length * LINE_HEIGHT + 3;
    const from = Math.min(label.x + label.width / 2 - PAD, Math.max(label.x - label.width / 2 + PAD, end.x));
    const selected = flags[label.flag].selected;
    pen.line([from, below, from, bottom - 8, end.x, Math.min(bottom, end.y), end.x, end.y], {
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
