/** A room drawn by the page's one WebGL context, for one owner who gives it back. */
import type { Pen } from './pen.js';
import { fitCanvas, type DrawSize } from './picture.js';
import { acquireRenderer, releaseRenderer, type Quality, type SharedRenderer } from './renderer.js';
import { drawRoomLines, layoutRoom, type RoomPicture } from './room-picture.js';
import { drawRoomFaces } from './room-scene.js';
import { drawCounters } from './schedule.js';
import type { DrawTheme, OrbitView } from './types.js';

export class RoomView {
  #renderer: SharedRenderer | null = acquireRenderer();
  #stop: (() => void) | null;

  /** @param changed is told when the context is lost, and when it is back */
  constructor(changed: () => void) {
    this.#stop = this.#renderer?.listen(changed) ?? null;
  }

  /** Whether anything can be drawn now. */
  get available(): boolean {
    return this.canCome && !this.#renderer!.lost;
  }

  /** Whether it may be drawn later, once a lost context is back. */
  get canCome(): boolean {
    return this.#renderer !== null && !this.#renderer.broken;
  }

  /** The faces onto a canvas of their own, `factor` times the shape; false where that cannot be done now. */
  draw(
    context: CanvasRenderingContext2D,
    picture: RoomPicture,
    orbit: OrbitView,
    theme: DrawTheme,
    size: DrawSize,
    factor: number,
    quality: Quality,
  ): boolean {
    if (!this.#renderer) return false;
    fitCanvas(context.canvas, size);
    context.setTransform(1, 0, 0, 1, 0, 0);
    context.fillStyle = theme.background;
    context.fillRect(0, 0, context.canvas.width, context.canvas.height);
    drawCounters.frames += 1;
    const layout = layoutRoom(picture, orbit, size);
    return drawRoomFaces(this.#renderer, { picture, layout, theme, size, factor }, context, quality);
  }

  /** Faces and lines for a file: the faces as pixels, two to a CSS pixel at least. */
  paint(pen: Pen, picture: RoomPicture, orbit: OrbitView, theme: DrawTheme, size: DrawSize): void {
    const context = document.createElement('canvas').getContext('2d', { willReadFrequently: true })!;
    const fine = { ...size, pixelRatio: Math.max(2, size.pixelRatio) };
    if (this.draw(context, picture, orbit, theme, fine, 1, 'fine')) {
      const { width, height } = context.canvas;
      const { data } = context.getImageData(0, 0, width, height);
      const box = { left: 0, top: 0, right: size.cssWidth, bottom: size.cssHeight };
      pen.image({ data, width, height }, box);
    }
    drawRoomLines(pen, picture, orbit, theme, size);
  }

  dispose(): void {
    this.#stop?.();
    this.#stop = null;
    if (this.#renderer) releaseRenderer();
    this.#renderer = null;
  }
}
