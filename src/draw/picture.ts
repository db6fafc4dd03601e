/** Sizes and points of a picture: CSS pixels from the canvas's top left corner. */

/** Size on the page and device pixels per CSS pixel (1, 1.5, 2, or whatever the zoom makes of it). */
export interface DrawSize {
  readonly cssWidth: number;
  readonly cssHeight: number;
  readonly pixelRatio: number;
}

/** A point of the field under the pointer: positions on both axes (Hz, s) and the value there. */
export interface Pick {
  readonly column: number;
  readonly row: number;
  readonly value: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Brings a canvas to its size in device pixels; true if that changed (and so cleared) it. */
export function fitCanvas(canvas: HTMLCanvasElement, size: DrawSize): boolean {
  const width = Math.max(1, Math.round(size.cssWidth * size.pixelRatio));
  const height = Math.max(1, Math.round(size.cssHeight * size.pixelRatio));
  if (canvas.width === width && canvas.height === height) return false;
  canvas.width = width;
  canvas.height = height;
  return true;
}

/** Whether there is anything to draw on. */
export function isDrawable(size: DrawSize): boolean {
  return size.cssWidth >= 16 && size.cssHeight >= 16 && size.pixelRatio > 0;
}
