import { canvasPen, type Pen } from './pen.js';
import { fitCanvas, isDrawable, type DrawSize } from './picture.js';
import type { DrawTheme } from './types.js';

/** Brings the canvas to its size, paints the ground and lends a pen in CSS pixels; nothing where there is no room. */
export function paintCanvas<T>(
  context: CanvasRenderingContext2D,
  theme: DrawTheme,
  size: DrawSize,
  draw: (pen: Pen) => T,
): T | null {
  fitCanvas(context.canvas, size);
  context.setTransform(size.pixelRatio, 0, 0, size.pixelRatio, 0, 0);
  context.fillStyle = theme.background;
  context.fillRect(0, 0, size.cssWidth, size.cssHeight);
  return isDrawable(size) ? draw(canvasPen(context, theme.fontFamily)) : null;
}
