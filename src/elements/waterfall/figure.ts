import { figurePng } from '../../draw/figure-png.js';
import type { FigureSize, FigureWords } from '../../draw/figure.js';
import { canvasPen } from '../../draw/pen.js';
import { drawSurfaceLines } from '../../draw/surface2d.js';
import type { DrawTheme, FieldView, OrbitView } from '../../draw/types.js';
import type { SurfaceMaker } from './waterfall-base.js';

/** All that a saved waterfall is made of. */
export interface WaterfallFigure {
  readonly view: FieldView;
  readonly orbit: OrbitView;
  readonly theme: DrawTheme;
  readonly size: FigureSize;
  readonly words: FigureWords;
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
