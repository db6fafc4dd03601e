/**
 * The box of the surface and its perspective, as plain numbers: the shader, the pointer's ray, the labels and the
 * hidden-line drawing all use this one matrix, so none can disagree.
 *
 * The box: x along the columns (frequency, to the right), y up (value), z along the rows (time, towards the eye of
 * azimuth 0), its middle at the origin.
 */
import type { Box, Point } from './picture.js';
import type { OrbitView } from './types.js';

/** A 4 by 4 matrix in columns, as WebGL takes it. */
export type Matrix = Float64Array;

export interface Space {
  /** Half the box's sides. */
  readonly half: readonly [number, number, number];
  readonly eye: readonly [number, number, number];
  /** From box coordinates to clip space of the whole canvas. */
  readonly matrix: Matrix;
  readonly inverse: Matrix;
  readonly cssWidth: number;
  readonly cssHeight: number;
}

/** Distance of the eye in half-diagonals of the box: a long lens, so that far and near slices compare fairly. */
const EYE_DISTANCE = 4.2;

function multiply(a: Matrix, b: Matrix): Matrix {
  const product = new Float64Array(16);
  for (let column = 0; column < 4; column += 1)
    for (let row = 0; row < 4; row += 1) {
      let sum = 0;
      for (let k = 0; k < 4; k += 1) sum += a[k * 4 + row] * b[column * 4 + k];
      product[column * 4 + row] = sum;
    }
  return product;
}

/** Inverse by Gauss-Jordan with partial pivoting; throws RangeError on a singular matrix. */
export function invert(matrix: Matrix): Matrix {
  const rows = Array.from({ length: 4 }, (_, r) =>
    Array.from({ length: 8 }, (_, c) => (c < 4 ? matrix[c * 4 + r] : c - 4 === r ? 1 : 0)),
  );
  for (let k = 0; k < 4; k += 1) {
    let best = k;
    for (let r = k + 1; r < 4; r += 1) if (Math.abs(rows[r][k]) > Math.abs(rows[best][k])) best = r;
    [rows[k], rows[best]] = [rows[best], rows[k]];
    const pivot = rows[k][k];
    if (pivot === 0) throw new RangeError('A singular view has no inverse.');
    for (let c = 0; c < 8; c += 1) rows[k][c] /= pivot;
    for (let r = 0; r < 4; r += 1) {
      if (r === k) continue;
      const factor = rows[r][k];
      for (let c = 0; c < 8; c += 1) rows[r][c] -= factor * rows[k][c];
    }
  }
  const inverse = new Float64Array(16);
  for (let r = 0; r < 4; r += 1) for (let c = 0; c < 4; c += 1) inverse[c * 4 + r] = rows[r][c + 4]!;
  return inverse;
}

function apply(m: Matrix, x: number, y: number, z: number): [number, number, number, number] {
  return [
    m[0] * x + m[4] * y + m[8] * z + m[12],
    m[1] * x + m[5] * y + m[9] * z + m[13],
    m[2] * x + m[6] * y + m[10] * z + m[14],
    m[3] * x + m[7] * y + m[11] * z + m[15],
  ];
}

/** Times farther away: towards the plan view the lens grows so long that the picture becomes a true plan. */
function lensFor(elevationRadians: number): number {
  const part = Math.min(1, Math.max(0, (elevationRadians - 1.05) / (Math.PI / 2 - 1.05)));
  return 1 / (1 - 0.98 * part * part * (3 - 2 * part));
}

/** Sides of the box for the room the picture has: wide pictures get a wide box. */
function boxFor(plot: Box): readonly [number, number, number] {
  const aspect = (plot.right - plot.left) / Math.max(1, plot.bottom - plot.top);
  const wide = Math.min(1.7, Math.max(0.66, 0.6 * aspect));
  return [wide, 0.32, 0.62];
}

/**
 * The view of the box from an orbit, its eight corners fitted into `plot` (CSS pixels of the canvas), then zoomed about
 * the plot's middle. The box of a surface takes the shape of its plot; any other is given by `half` its sides.
 */
export function makeSpace(
  orbit: OrbitView,
  plot: Box,
  size: { readonly cssWidth: number; readonly cssHeight: number },
  half: Space['half'] = boxFor(plot),
): Space {
  const radius = Math.hypot(...half);
  const { azimuthRadians: azimuth, elevationRadians: elevation } = orbit;
  const distance = EYE_DISTANCE * radius * lensFor(elevation);
  const [sinA, cosA] = [Math.sin(azimuth), Math.cos(azimuth)];
  const [sinE, cosE] = [Math.sin(elevation), Math.cos(elevation)];
  // Rows: the eye's right, its up, and the direction from the middle of the box to it; then away from the eye.
  const look = Float64Array.of(
    ...[cosA, -sinA * sinE, sinA * cosE, 0],
    ...[0, cosE, sinE, 0],
    ...[-sinA, -cosA * sinE, cosA * cosE, 0],
    ...[0, 0, -distance, 1],
  );
  const near = distance - radius * 1.05;
  const far = distance + radius * 1.05;
  const lens = Float64Array.of(
    ...[1, 0, 0, 0],
    ...[0, 1, 0, 0],
    ...[0, 0, -(far + near) / (far - near), -1],
    ...[0, 0, (-2 * far * near) / (far - near), 0],
  );
  const raw = multiply(lens, look);
  let [minX, maxX, minY, maxY] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let corner = 0; corner < 8; corner += 1) {
    const [x, y, , w] = apply(
      raw,
      corner & 1 ? half[0] : -half[0],
      corner & 2 ? half[1] : -half[1],
      corner & 4 ? half[2] : -half[2],
    );
    [minX, maxX] = [Math.min(minX, x / w), Math.max(maxX, x / w)];
    [minY, maxY] = [Math.min(minY, y / w), Math.max(maxY, y / w)];
  }
  const scale =
    Math.min((plot.right - plot.left) / (maxX - minX), (plot.bottom - plot.top) / (maxY - minY)) * orbit.zoom;
  const middleX = (plot.left + plot.right) / 2;
  const middleY = (plot.top + plot.bottom) / 2;
  // From the lens's plane to clip space: pixels of the canvas, y up.
  const sx = (2 * scale) / size.cssWidth;
  const sy = (2 * scale) / size.cssHeight;
  const cx = (2 * middleX) / size.cssWidth - 1 - (sx * (minX + maxX)) / 2;
  const cy = 1 - (2 * middleY) / size.cssHeight - (sy * (minY + maxY)) / 2;
  const fit = Float64Array.of(...[sx, 0, 0, 0], ...[0, sy, 0, 0], ...[0, 0, 1, 0], ...[cx, cy, 0, 1]);
  const matrix = multiply(fit, raw);
  return {
    half,
    eye: [distance * sinA * cosE, distance * sinE, distance * cosA * cosE],
    matrix,
    inverse: invert(matrix),
    cssWidth: size.cssWidth,
    cssHeight: size.cssHeight,
  };
}

/** A point of the box on the canvas, CSS pixels. */
export function toScreen(space: Space, x: number, y: number, z: number): Point {
  const [cx, cy, , w] = apply(space.matrix, x, y, z);
  return { x: ((cx / w + 1) / 2) * space.cssWidth, y: ((1 - cy / w) / 2) * space.cssHeight };
}

/** Depth of a point of the box, 0 near to 1 far, for ordering. */
export function depthOf(space: Space, x: number, y: number, z: number): number {
  const [, , cz, w] = apply(space.matrix, x, y, z);
  return (cz / w + 1) / 2;
}

export interface Ray {
  readonly origin: readonly [number, number, number];
  readonly direction: readonly [number, number, number];
}

/** The ray from the eye through a CSS pixel; its parameter runs 0 on the near plane to 1 on the far one. */
export function rayAt(space: Space, xCss: number, yCss: number): Ray {
  const x = (2 * xCss) / space.cssWidth - 1;
  const y = 1 - (2 * yCss) / space.cssHeight;
  const point = (z: number): [number, number, number] => {
    const [px, py, pz, w] = apply(space.inverse, x, y, z);
    return [px / w, py / w, pz / w];
  };
  const origin = point(-1);
  const end = point(1);
  return { origin, direction: [end[0] - origin[0], end[1] - origin[1], end[2] - origin[2]] };
}
