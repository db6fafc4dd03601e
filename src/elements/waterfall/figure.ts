import { figurePng } from '../../draw/figure-png.js';
import { canvasPen } from '../../draw/pen.js';
import { drawSurfaceLines } from '../../draw/surface2d.js';
import type { OrbitView } from '../../draw/types.js';
import type { SavedPicture } from '../shared/picture-element.js';
import type { SurfaceMaker } from './waterfall-base.js';

/** All that a saved waterfall is made of. */
export interface WaterfallFigure extends SavedPicture {
  readonly orbit: OrbitView;
}

/** As a PNG file so many pixels wide: by the surface where there is one (`maker`), else by lines. */
export function waterfallPng(
  { view, orbit, theme, size: cssSize, words }: WaterfallFigure,
  widthPixels: number,
  maker: SurfaceMaker | null,
): Promise<Blob> {
  const size = { ...cssSize, pixelRatio: widthPixels / cssSize.cssWidth };
  const paint = (context: CanvasRenderingContext2D): void => {
    if (!maker) {
      drawSurfaceLines(canvasPen(context, theme.fontFamily), view, orbit, theme, size);
      return;
    }
    const canvas = document.createElement('canvas');
    const surface = maker.create(canvas, { once: true });
    try {
      surface.update(view, orbit, theme, size);
      surface.drawAnyway();
      context.drawImage(canvas, 0, 0, size.cssWidth, size.cssHeight);
    } finally {
      surface.dispose();
    }
  };
  return figurePng(paint, theme, size, words);
}
