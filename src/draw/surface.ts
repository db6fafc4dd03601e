/**
 * A surface on a canvas: drawn by the page's one WebGL context where there is one, as a hidden-line drawing where there
 * is none or while it is lost. It is drawn only when something changed and the canvas can be seen. Long because
 * both ways share one state of what is dirty, visible, quick or lost.
 */
import { indexAt } from './field.js';
import { drawBefore, drawBehind } from './frame.js';
import { canvasPen } from './pen.js';
import { fitCanvas, isDrawable, type DrawSize, type Pick, type Point } from './picture.js';
import { uploadCurtain, uploadField, type FieldTextures } from './field-textures.js';
import { acquireRenderer, releaseRenderer, type Quality, type SharedRenderer } from './renderer.js';
import { sameParts } from './same.js';
import { drawCounters, dropDraw, dropRefine, queueDraw, refineSoon } from './schedule.js';
import { surfaceScene, type Ribbon, type SurfaceJob } from './surface-scene.js';
import { drawSurface2d } from './surface2d.js';
import {
  layoutSurface,
  pickSurface,
  projectField,
  surfaceFlagAt,
  type SurfaceLayout,
} from './surface-layout.js';
import { cssBytes } from './tones.js';
import type { Curtain, DrawTheme, Field, FieldView, OrbitView } from './types.js';

export interface SurfaceOptions {
  /** Value between iso-level lines (dB); 0 for none. */
  readonly isoStep?: number;
  /** False where the owner tells visibility by `setVisible`; by default the view watches its own canvas. */
  readonly watchVisibility?: boolean;
  /** Drawn once, perhaps much larger than what is seen: its memory is given back on disposal. */
  readonly once?: boolean;
}

/** Makes context and programs ready for a surface that is to come, until the returned function is called. */
export function prepareSurface(): () => void {
  const renderer = acquireRenderer();
  if (!renderer) return () => undefined;
  // In a turn of its own: the context alone takes half of what a page may be held up.
  const later = setTimeout(() => surfaceScene(renderer).prepare(renderer));
  let held = true;
  return () => {
    clearTimeout(later);
    if (held) releaseRenderer();
    held = false;
  };
}

/** So often a picture gives way to one beside it that is drawn all the time. */
const MOST_PUT_OFF = 3;

interface Wanted {
  readonly view: FieldView;
  readonly orbit: OrbitView;
  readonly theme: DrawTheme;
  readonly size: DrawSize;
}

export class SurfaceView {
  private readonly canvas: HTMLCanvasElement;
  private readonly context: CanvasRenderingContext2D;
  private readonly observer: IntersectionObserver | null = null;
  private readonly isoStep: number;
  private readonly once: boolean;
  private renderer: SharedRenderer | null;
  private stopListening: (() => void) | null = null;
  private textures: FieldTextures | null = null;
  private uploaded: Field | null = null;
  private curtain: { readonly of: Curtain; readonly texture: ReturnType<typeof uploadCurtain> } | null = null;
  private wanted: Wanted | null = null;
  private layout: SurfaceLayout | null = null;
  private dirty = false;
  /** Drawn quickly, and still to be drawn with care. */
  private quick = false;
  /** The picture that the GPU works at. */
  private underway: object | null = null;
  /** How often it was put off for other pictures. */
  private putOff = 0;
  private visible: boolean;
  private disposed = false;
  private drawnMode: 'webgl' | 'lines';
  private readonly invalidate = (): void => {
    this.dirty = true;
    this.ask();
  };

  constructor(canvas: HTMLCanvasElement, options: SurfaceOptions = {}) {
    const renderer = acquireRenderer();
    // What a processor draws is kept where it draws: a browser would take it to another process and back.
    const context = canvas.getContext('2d', { willReadFrequently: renderer?.inSoftware === true });
    if (!context) {
      if (renderer) releaseRenderer();
      throw new RangeError('A surface needs a canvas that has no other context than 2D.');
    }
    this.canvas = canvas;
    this.context = context;
    this.isoStep = options.isoStep ?? 10;
    this.once = options.once === true;
    this.renderer = renderer;
    this.drawnMode = this.renderer ? 'webgl' : 'lines';
    this.stopListening = this.renderer?.listen(this.invalidate) ?? null;
    canvas.addEventListener('contextrestored', this.invalidate);
    this.visible = options.watchVisibility === false;
    if (options.watchVisibility !== false) {
      // A margin, so that scrolling never meets a blank.
      this.observer = new IntersectionObserver(
        (entries) => this.setVisible(entries[entries.length - 1].isIntersecting),
        { rootMargin: '160px' },
      );
      this.observer.observe(canvas);
    }
    drawCounters.pictures += 1;
  }

  /** How the picture is drawn: by WebGL, or as lines where that is missing or lost. */
  get mode(): 'webgl' | 'lines' {
    return this.drawnMode;
  }

  /** Tells what to show; what is equal to what is shown draws nothing. */
  update(view: FieldView, orbit: OrbitView, theme: DrawTheme, size: DrawSize): void {
    if (this.disposed) return;
    const { wanted } = this;
    const same =
      wanted !== null &&
      sameParts(wanted.view, view, 2) &&
      sameParts(wanted.orbit, orbit) &&
      sameParts(wanted.theme, theme) &&
      sameParts(wanted.size, size);
    if (same) return;
    this.wanted = { view, orbit, theme, size };
    this.layout = null;
    this.invalidate();
  }

  setVisible(visible: boolean): void {
    this.visible = visible;
    if (visible && this.quick) refineSoon(this);
    this.ask();
  }

  /** Whether a picture would hold the page up, since what draws it is not ready yet or still at work. */
  get held(): boolean {
    return this.renderer?.busy === true;
  }

  /** Draws if dirty and visible, quickly where this machine is slow, and then with care. */
  drawNow(): void {
    if (this.visible) this.draw(this.renderer && surfaceScene(this.renderer).isFast ? 'fine' : 'quick');
  }

  /** Called by the queue, which waits for nothing: the first picture of a context comes once the GPU has it. */
  drawSoon(): void {
    const { renderer } = this;
    if (!renderer || renderer.lost || renderer.broken || surfaceScene(renderer).warm) return this.drawNow();
    if (!this.visible || !this.dirty || !this.wanted || !isDrawable(this.wanted.size)) return;
    fitCanvas(this.canvas, this.wanted.size);
    this.drawLater('quick');
  }

  /** Called by the queue once everything rests. */
  refine(): void {
    if (this.quick && !this.dirty && this.visible) this.drawLater('fine');
  }

  /** Draws what is wanted even unseen, with care, for print and export; nothing if it is drawn so already. */
  drawAnyway(): void {
    if (this.quick || this.underway) this.dirty = true;
    this.draw('fine');
  }

  /** Draws while the page goes on; what stands on the canvas stands until all of the other is there. */
  private drawLater(quality: Quality): void {
    const { wanted, renderer, context } = this;
    if (this.disposed || !wanted || !renderer) return;
    if (this.putOff >= MOST_PUT_OFF) return this.drawAtOnce(quality);
    this.dirty = false;
    drawCounters.frames += 1;
    const job = this.job(wanted);
    const mine = (this.underway = {});
    surfaceScene(renderer).drawLater(renderer, job, context, quality, (outcome) => {
      if (this.disposed || this.underway !== mine) return;
      this.underway = null;
      if (this.wanted !== wanted || this.dirty) return;
      if (outcome === 'failed') return this.drawAtOnce('quick');
      if (outcome === 'put-off') {
        this.putOff += 1;
        if (this.quick) refineSoon(this);
        else this.invalidate();
        return;
      }
      this.putOff = 0;
      this.paint(wanted, job.layout, () => renderer.copy(context));
      this.drawn(quality);
    });
  }

  private drawAtOnce(quality: Quality): void {
    this.dirty = true;
    this.draw(quality);
  }

  private drawn(quality: Quality): void {
    this.drawnMode = 'webgl';
    this.quick = quality === 'quick';
    if (this.quick) refineSoon(this);
  }

  private draw(quality: Quality): void {
    if (this.disposed || !this.dirty || !this.wanted || !isDrawable(this.wanted.size)) return;
    this.dirty = false;
    this.quick = false;
    this.underway = null;
    this.putOff = 0;
    dropRefine(this);
    drawCounters.frames += 1;
    if (this.drawByWebGl(this.wanted, quality)) return this.drawn(quality);
    const { view, orbit, theme, size } = this.wanted;
    this.layout = drawSurface2d(this.context, view, orbit, theme, size);
    this.drawnMode = 'lines';
  }

  /** The field under a point of the canvas, CSS pixels; null beside the surface. */
  pick(xCss: number, yCss: number): Pick | null {
    const layout = this.layoutNow();
    return layout && pickSurface(layout, xCss, yCss);
  }

  /** Where a point of the field is drawn, CSS pixels; it may be hidden behind a ridge. */
  project(column: number, row: number, value?: number): Point | null {
    const layout = this.layoutNow();
    return layout && projectField(layout, column, row, value);
  }

  /** Index among the view's flags of the label or ridge line under a point, or null. */
  flagAt(xCss: number, yCss: number): number | null {
    const layout = this.layoutNow();
    return layout && surfaceFlagAt(layout, xCss, yCss);
  }

  dispose(): void {
    if (this.disposed) return;
    this.disposed = true;
    dropDraw(this);
    this.observer?.disconnect();
    this.canvas.removeEventListener('contextrestored', this.invalidate);
    this.stopListening?.();
    this.textures?.dispose();
    this.textures = null;
    this.curtain?.texture.dispose();
    this.curtain = null;
    if (this.once) this.renderer?.shrink();
    if (this.renderer) releaseRenderer();
    this.renderer = null;
    this.wanted = null;
    this.layout = null;
    drawCounters.pictures -= 1;
  }

  private ask(): void {
    if (!this.dirty || !this.visible || !this.wanted || this.disposed) return;
    const { renderer } = this;
    if (renderer && !renderer.lost) surfaceScene(renderer).prepare(renderer);
    queueDraw(this);
  }

  private layoutNow(): SurfaceLayout | null {
    if (!this.wanted || !isDrawable(this.wanted.size)) return null;
    const { view, orbit, theme, size } = this.wanted;
    this.layout ??= layoutSurface(canvasPen(this.context, theme.fontFamily), view, orbit, theme, size);
    return this.layout;
  }

  private drawByWebGl(wanted: Wanted, quality: Quality): boolean {
    const { renderer, context } = this;
    if (!renderer || renderer.lost || renderer.broken) return false;
    const scene = surfaceScene(renderer);
    scene.hurry(renderer);
    const job = this.job(wanted);
    fitCanvas(this.canvas, wanted.size);
    // What stands around it is painted while the GPU is at work.
    const copy = scene.draw(renderer, job, context, quality);
    return copy !== null && this.paint(wanted, job.layout, copy);
  }

  /** What the scene is to draw; data that it does not have are sent to the GPU. */
  private job({ view, theme, size }: Wanted): SurfaceJob {
    const layout = this.layoutNow()!;
    if (this.uploaded !== view.field) {
      this.textures?.dispose();
      this.textures = uploadField(view.field);
      this.uploaded = view.field;
    }
    const curtain = view.curtain ?? null;
    if (this.curtain?.of !== curtain) {
      this.curtain?.texture.dispose();
      this.curtain = curtain && { of: curtain, texture: uploadCurtain(curtain, view.field) };
    }
    return {
      layout,
      textures: this.textures!,
      theme,
      size,
      isoStep: this.isoStep,
      curtain: this.curtain?.texture ?? null,
      ...ribbonsOf(view, theme, layout),
    };
  }

  /** Everything on the canvas, from its ground to its letters; false where the surface cannot be drawn now. */
  private paint({ theme, size }: Wanted, layout: SurfaceLayout, surface: () => boolean): boolean {
    const { context } = this;
    fitCanvas(this.canvas, size);
    context.setTransform(size.pixelRatio, 0, 0, size.pixelRatio, 0, 0);
    context.fillStyle = theme.background;
    context.fillRect(0, 0, size.cssWidth, size.cssHeight);
    const pen = canvasPen(context, theme.fontFamily);
    drawBehind(pen, theme, layout);
    if (!surface()) return false;
    drawBefore(pen, theme, layout, size);
    return true;
  }
}

/** Ridges from their onset to where they sink, and the cursor's two lines. */
function ribbonsOf(
  view: FieldView,
  theme: DrawTheme,
  layout: SurfaceLayout,
): { alongRows: Ribbon[]; alongColumns: Ribbon[] } {
  const { columns, rows } = layout.relief;
  const { field } = view;
  const inRange = (at: number, [low, high]: readonly [number, number]): boolean => at >= low && at <= high;
  const text = cssBytes(theme.text);
  const accent = cssBytes(theme.accent);
  const paper = cssBytes(theme.background);
  const alongRows: Ribbon[] = view.flags
    .filter(({ position }) => inRange(position, view.columnRange))
    .flatMap((flag) => {
      const where = {
        fixed: indexAt(field.columnPositions, flag.position),
        from: rows[0],
        to: Math.min(rows[1], indexAt(field.rowPositions, flag.until)),
      };
      const cssWidth = flag.selected ? 2.75 : 1.75;
      // Paper under the ink: a dark line must be seen on a dark peak as well.
      return [
        { ...where, cssWidth: cssWidth + 2.5, colour: paper, opacity: 0.6 },
        {
          ...where,
          cssWidth,
          colour: flag.selected ? accent : text,
          opacity: flag.selected ? 1 : 0.7 + 0.3 * flag.weight,
        },
      ];
    });
  const alongColumns: Ribbon[] = [];
  if (view.cursor && inRange(view.cursor.column, view.columnRange))
    alongRows.push({
      fixed: indexAt(field.columnPositions, view.cursor.column),
      from: rows[0],
      to: rows[1],
      cssWidth: 1.25,
      colour: accent,
      opacity: 0.9,
    });
  if (view.cursor && inRange(view.cursor.row, view.rowRange))
    alongColumns.push({
      fixed: indexAt(field.rowPositions, view.cursor.row),
      from: columns[0],
      to: columns[1],
      cssWidth: 1.25,
      colour: accent,
      opacity: 0.9,
    });
  return { alongRows, alongColumns };
}
