/** Labels anywhere on a picture, none over another. */
import type { Pen, TextStyle } from './pen.js';
import type { Box, DrawSize, Point } from './picture.js';

export interface Label {
  readonly text: string;
  readonly at: Point;
  readonly style: TextStyle;
  /** Heavier ones are placed first. */
  readonly weight: number;
  /** Where it may stand instead. */
  readonly spare?: { readonly at: Point; readonly align: 'start' | 'middle' | 'end' };
}

/** The rectangle of a label whose `at.y` is the middle of its figures. */
export function labelBox(pen: Pen, { text, at, style }: Label): Box {
  const width = pen.measure(text, style);
  const left = style.align === 'middle' ? at.x - width / 2 : style.align === 'end' ? at.x - width : at.x;
  return { left, right: left + width, top: at.y - style.size * 0.62, bottom: at.y + style.size * 0.62 };
}

/**
 * Those that can stand: each where it touches none placed before it, covers no obstacle and lies wholly on the canvas.
 */
export function lettersWithoutOverlap(
  pen: Pen,
  labels: readonly Label[],
  size: DrawSize,
  gap = 5,
  obstacles: readonly Box[] = [],
): Label[] {
  const taken: Box[] = [];
  const stands = (box: Box): boolean =>
    box.left >= 0 &&
    box.right <= size.cssWidth &&
    box.top >= 0 &&
    box.bottom <= size.cssHeight &&
    obstacles.every(
      (other) =>
        box.left >= other.right ||
        box.right <= other.left ||
        box.top >= other.bottom ||
        box.bottom <= other.top,
    ) &&
    taken.every(
      (other) =>
        box.left - gap >= other.right ||
        box.right + gap <= other.left ||
        box.top - 1 >= other.bottom ||
        box.bottom + 1 <= other.top,
    );
  return [...labels]
    .sort((a, b) => b.weight - a.weight)
    .flatMap((label) => {
      const { spare } = label;
      const places = spare
        ? [label, { ...label, at: spare.at, style: { ...label.style, align: spare.align } }]
        : [label];
      const chosen = places.find((place) => stands(labelBox(pen, place)));
      if (chosen) taken.push(labelBox(pen, chosen));
      return chosen ? [chosen] : [];
    });
}
