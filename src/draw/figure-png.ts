/** A figure as a PNG file that carries what made it. */
import { layoutFigure, type FigureWords } from './figure.js';
import { canvasPen } from './pen.js';
import type { DrawSize } from './picture.js';
import { pngWithText } from './png.js';
import type { DrawTheme } from './types.js';

/**
 * @param paint draws the picture from the origin of a context that maps CSS pixels; `size` is the picture's own
 * @throws RangeError where the browser makes no canvas that large
 */
export async function figurePng(
  paint: (context: CanvasRenderingContext2D) => void,
  theme: DrawTheme,
  size: DrawSize,
  words: FigureWords,
): Promise<Blob> {
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d')!;
  const layout = layoutFigure(canvasPen(context, theme.fontFamily), theme, size, words);
  canvas.width = Math.round(size.cssWidth * size.pixelRatio);
  canvas.height = Math.round(layout.cssHeight * size.pixelRatio);
  context.scale(size.pixelRatio, size.pixelRatio);
  context.fillStyle = theme.background;
  context.fillRect(0, 0, size.cssWidth, layout.cssHeight);
  context.save();
  context.translate(0, layout.top);
  paint(context);
  context.restore();
  layout.draw(canvasPen(context, theme.fontFamily));
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob)
    throw new RangeError(`No picture of ${canvas.width} by ${canvas.height} pixels can be made here.`);
  const bytes = pngWithText(new Uint8Array(await blob.arrayBuffer()), {
    Title: words.title,
    ...(words.description ? { Description: words.description } : {}),
    Software: 'ringdown',
    ...(words.origin ? { Origin: JSON.stringify(words.origin) } : {}),
  });
  return new Blob([bytes], { type: 'image/png' });
}
