/**
 * What a drawing of lines shows between its slices besides the curtain: noise as a grey ground, and strokes over what is
 * no slower than the window and over what lies past the data, as the shader draws them.
 */
import { kindAt, positionAt, valueAt, type PointKind } from './field.js';
import type { Pen } from './pen.js';
import type { Relief } from './relief.js';
import { cssOf, tonesOf } from './tones.js';
import type { DrawTheme } from './types.js';

/** Pixels between two strokes. */
const pitches: Partial<Record<PointKind, number>> = { fast: 5, unresolved: 6, 'past-end': 9 };

export type BetweenDrawer = (from: number, to: number) => void;

/** `screen` takes an index along the slices and one across them. */
export function betweenDrawer(
  pen: Pen,
  theme: DrawTheme,
  relief: Relief,
  indices: readonly number[],
  alongTime: boolean,
  screen: (own: number, other: number) => readonly [number, number],
): BetweenDrawer {
  const { field } = relief.view;
  const tones = tonesOf(theme);
  const [noise, hatch] = [cssOf(tones.noise), cssOf(tones.hatch)];
  const kind = (own: number, other: number): PointKind => {
    const [c, r] = alongTime ? [other, own] : [own, other];
    return kindAt(
      field,
      positionAt(field.columnPositions, c),
      positionAt(field.rowPositions, r),
      valueAt(field, c, r),
    );
  };
  return (from, to) => {
    const middle = (from + to) / 2;
    let run: number[] = [];
    const ground = (): void => {
      if (run.length > 1) {
        // The ground is smooth: every third point will do.
        const points = run.filter((_, k) => k % 3 === 0 || k === run.length - 1);
        const far = points.flatMap((own) => screen(own, from));
        const near = [...points].reverse().flatMap((own) => screen(own, to));
        pen.area([...far, ...near], noise);
      }
      run = [];
    };
    let travelled = 0;
    indices.forEach((own, k) => {
      const here = kind(own, middle);
      if (here === 'noise') run.push(own);
      else ground();
      const pitch = pitches[here];
      const next = indices[k + 1];
      if (pitch === undefined || next === undefined) return;
      const [a, b] = [screen(own, from), screen(next, from)];
      travelled += Math.hypot(b[0] - a[0], b[1] - a[1]);
      if (travelled < pitch) return;
      travelled = 0;
      pen.line([...a, ...screen(next, to)], { colour: hatch, width: 0.9 });
    });
    ground();
  };
}
