/** The colours of a shape as pixels, for a picture that is saved: in one layer with its lines. */
import type { GridValues } from './contours.js';
import type { Pen, Pixels } from './pen.js';
import type { Box, Point } from './picture.js';
import { pressureLayout, sectionRuns, type PressurePicture } from './pressure-picture.js';
import type { ChartSize } from './chart-frame.js';
import { filled, signedTable } from './signed-image.js';
import { cssBytes } from './tones.js';
import type { DrawTheme } from './types.js';

/** Pixels per CSS pixel: enough for print, since nothing in it has an edge. */
const fineness = 2;

export function drawPressurePixels(
  pen: Pen,
  picture: PressurePicture,
  theme: DrawTheme,
  size: ChartSize,
): void {
  const { plan, section } = pressureLayout(picture, size);
  const { corners, lengthMetres: l, widthMetres: w } = picture;
  const runs = sectionRuns(picture);
  const inPlan = (x: number, y: number): boolean => insideCorners(corners, x * l, y * w);
  const inSection = (x: number): boolean => runs.some(({ from, to }) => x * l >= from && x * l <= to);
  pen.image(pixelsOf(picture.plan, plan, theme, inPlan), plan);
  pen.image(pixelsOf(picture.section, section, theme, inSection), section);
}

function pixelsOf(
  { columns, rows, values }: GridValues & { readonly values: Float32Array },
  box: Box,
  theme: DrawTheme,
  inside: (x: number, y: number) => boolean,
): Pixels {
  const width = Math.max(1, Math.round((box.right - box.left) * fineness));
  const height = Math.max(1, Math.round((box.bottom - box.top) * fineness));
  const data = new Uint8ClampedArray(width * height * 4);
  const table = signedTable(theme);
  const steps = (table.length / 4 - 1) / 2;
  const ground = cssBytes(theme.background);
  const whole = filled(values, columns);
  const at = (c: number, r: number): number => whole[r * columns + c] || 0;
  for (let py = 0; py < height; py += 1)
    for (let px = 0; px < width; px += 1) {
      const [x, y] = [(px + 0.5) / width, 1 - (py + 0.5) / height];
      const [c, r] = [x * (columns - 1), y * (rows - 1)];
      const [c0, r0] = [Math.min(columns - 2, Math.floor(c)), Math.min(rows - 2, Math.floor(r))];
      const [s, t] = [c - c0, r - r0];
      const value =
        (1 - t) * ((1 - s) * at(c0, r0) + s * at(c0 + 1, r0)) +
        t * ((1 - s) * at(c0, r0 + 1) + s * at(c0 + 1, r0 + 1));
      const entry = 4 * (Math.round(Math.max(-1, Math.min(1, value)) * steps) + steps);
      const to = 4 * (py * width + px);
      data.set(inside(x, y) ? table.subarray(entry, entry + 3) : ground, to);
      data[to + 3] = 255;
    }
  return { data, width, height };
}

/** By the walls that a ray to the right crosses. */
export function insideCorners(corners: readonly Point[], x: number, y: number): boolean {
  let inside = false;
  corners.forEach((a, k) => {
    const b = corners[(k + 1) % corners.length];
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside;
  });
  return inside;
}
