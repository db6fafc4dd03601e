/** What every picture of a field is to its owner: a canvas that is told what to show, and asked what is under a point. */
import type { DrawTheme, FieldView, OrbitView } from './types.js';

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

/** A flat picture: heat map. Coordinates are CSS pixels from the canvas's top left corner. */
export interface FieldPicture {
  /** Tells what to show; a draw is requested only if something changed. */
  update(view: FieldView, theme: DrawTheme, size: DrawSize): void;
  /** While not visible nothing is drawn; what was asked for meanwhile is drawn when it is visible again. */
  setVisible(visible: boolean): void;
  requestDraw(reason: string): void;
  /** Draws at once if anything is to be drawn, for print and export. */
  drawNow(): void;
  pick(xCss: number, yCss: number): Pick | null;
  project(column: number, row: number, value?: number): Point | null;
  /** Index among `view.flags` of the flag whose label or line is under the point, or null. */
  flagAt(xCss: number, yCss: number): number | null;
  dispose(): void;
}

/** A picture in space: the same, seen from an orbit. */
export interface OrbitPicture extends Omit<FieldPicture, 'update'> {
  /** `webgl`: the shaded surface; `lines`: the hidden-line drawing where WebGL is missing or lost. */
  readonly mode: 'webgl' | 'lines';
  update(view: FieldView, orbit: OrbitView, theme: DrawTheme, size: DrawSize): void;
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
