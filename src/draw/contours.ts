/** Lines of equal value through a grid: marching squares, linear along the edges of each cell. */

export interface GridValues {
  readonly columns: number;
  readonly rows: number;
  /** Row by row; where a corner of a cell is NaN the cell has no line. */
  readonly values: ArrayLike<number>;
}

/** Segments as x0, y0, x1, y1 in columns and rows of the grid. */
export function contourSegments({ columns, rows, values }: GridValues, level: number): Float64Array {
  const found: number[] = [];
  const cut = (a: number, b: number): number => (level - a) / (b - a);
  for (let row = 0; row + 1 < rows; row += 1)
    for (let column = 0; column + 1 < columns; column += 1) {
      const at = row * columns + column;
      const [a, b, c, d] = [values[at], values[at + 1], values[at + columns + 1], values[at + columns]];
      if (!(Number.isFinite(a) && Number.isFinite(b) && Number.isFinite(c) && Number.isFinite(d))) continue;
      const ends: number[] = [];
      // Round the cell: a point on every edge whose ends lie on different sides.
      if (a < level !== b < level) ends.push(column + cut(a, b), row);
      if (b < level !== c < level) ends.push(column + 1, row + cut(b, c));
      if (c < level !== d < level) ends.push(column + 1 - cut(c, d), row + 1);
      if (d < level !== a < level) ends.push(column, row + 1 - cut(d, a));
      if (ends.length === 4) found.push(...ends);
      else if (ends.length === 8) {
        // A saddle: its middle says which two corners are joined; where that lies on the line, both lines cross there.
        const middle = (a + b + c + d) / 4 - level;
        const crossing =
          Math.abs(middle) < 0.05 * Math.max(...[a, b, c, d].map((one) => Math.abs(one - level)));
        const joined = middle < 0 === a < level;
        const order = crossing ? [0, 2, 1, 3] : joined ? [0, 1, 2, 3] : [3, 0, 1, 2];
        for (const pair of [order.slice(0, 2), order.slice(2)])
          for (const end of pair) found.push(ends[2 * end], ends[2 * end + 1]);
      }
    }
  return Float64Array.from(found);
}
