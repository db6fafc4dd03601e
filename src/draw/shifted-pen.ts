/** A pen whose origin lies elsewhere: pictures that draw from their own corner stand beside each other on one canvas. */
import type { Pen } from './pen.js';
import type { Box } from './picture.js';

export function shiftedPen(pen: Pen, dx: number, dy: number): Pen {
  const moved = (points: ArrayLike<number>): number[] =>
    Array.from(points, (value, k) => value + (k % 2 === 0 ? dx : dy));
  const box = ({ left, right, top, bottom }: Box): Box => ({
    ...{ left: left + dx, right: right + dx, top: top + dy, bottom: bottom + dy },
  });
  return {
    line: (points, style) => pen.line(moved(points), style),
    area: (points, fill, opacity) => pen.area(moved(points), fill, opacity),
    circle: (x, y, radius, fill, edge) => pen.circle(x + dx, y + dy, radius, fill, edge),
    text: (text, x, y, style) => pen.text(text, x + dx, y + dy, style),
    measure: (text, style) => pen.measure(text, style),
    image: (pixels, at) => pen.image(pixels, box(at)),
    clipped: (at, draw) => pen.clipped(box(at), draw),
  };
}
