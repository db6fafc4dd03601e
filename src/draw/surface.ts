/**
 * A surface on a canvas: drawn by the page's one WebGL context where there is one, as a hidden-line drawing where there
 * is none or while it is lost. It is drawn only when something changed and the canvas can be seen.
 */
import { indexAt } from './field.js';
import { drawBefore, drawBehind } from './frame.js';
import { canvasPen } from './pen.js';
import { fitCanvas, isDrawable, type DrawSize, type Pick, type Point } from './picture.js';
import { uploadCurtain, uploadField, type FieldTextures } from './field-textures.js';
import { acquireRenderer, releaseRenderer, type Quality, type SharedRenderer } from './renderer.js';
import { sameParts } from './same.js';
import { drawCounters, dropDraw, dropRefine, queueDraw, refineSoon } from './schedule.js';
import { surfaceScene, type Ribbon } from './surface-scene.js';
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
  surfaceScene(renderer).prepare(renderer);
  let held = true;
  return () => {
    if (held) releaseRenderer();
    held = false;
  };
}

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
  private visible: boolean;
  private disposed = false;
  private drawnMode: 'webgl' | 'lines';
  private readonly invalidate = (): void => {
    this.dirty = true;
    this.ask();
  };

  constructor(canvas: HTMLCanvasElement, options: SurfaceOptions = {}) {
    const context = canvas.getContext('2d');
    if (!context) throw new RangeError('A surface needs a canvas that has no other context than 2D.');
    this.canvas = canvas;
    this.context = context;
    this.isoStep = options.isoStep ?? 10;
    this.once = options.once === true;
    this.renderer = acquireRenderer();
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

  /** Called by the queue: draws if dirty and visible, quickly where this machine is slow, and then with care. */
  drawNow(): void {
    if (this.visible) this.draw(this.renderer && surfaceScene(this.renderer).isFast ? 'fine' : 'quick');
  }

  /** Called by the queue once everything rests. */
  refine(): void {
    if (!this.quick) return;
    this.dirty = true;
    if (this.visible) this.draw('fine');
  }

  /** Draws what is wanted even unseen, with care, for print and export; nothing if it is drawn so already. */
  drawAnyway(): void {
    if (this.quick) this.dirty = true;
    this.draw('fine');
  }

  private draw(quality: Quality): void {
    if (this.disposed || !this.dirty || !this.wanted || !isDrawable(this.wanted.size)) return;
    this.dirty = false;
    this.quick = false;
    dropRefine(this);
    drawCounters.frames += 1;
    if (this.drawByWebGl(this.wanted, quality)) {
      this.drawnMode = 'webgl';
      this.quick = quality === 'quick';
      if (this.quick) refineSoon(this);
      return;
    }
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
    if (this.dirty && this.visible && this.wanted && !this.disposed) queueDraw(this);
  }

  private layoutNow(): SurfaceLayout | null {
    if (!this.wanted || !isDrawable(this.wanted.size)) return null;
    const { view, orbit, theme, size } = this.wanted;
    this.layout ??= layoutSurface(canvasPen(this.context, theme.fontFamily), view, orbit, theme, size);
    return this.layout;
  }

  private drawByWebGl({ view, theme, size }: Wanted, quality: Quality): boolean {
    const { renderer, context } = this;
    if (!renderer || renderer.lost || renderer.broken) return false;
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
    fitCanvas(this.canvas, size);
    context.setTransform(size.pixelRatio, 0, 0, size.pixelRatio, 0, 0);
    context.fillStyle = theme.background;
    context.fillRect(0, 0, size.cssWidth, size.cssHeight);
    const pen = canvasPen(context, theme.fontFamily);
    drawBehind(pen, theme, layout);
    const job = {
      layout,
      textures: this.textures!,
      theme,
      size,
      isoStep: this.isoStep,
      curtain: this.curtain?.texture ?? null,
      ...ribbonsOf(view, theme, layout),
    };
    if (!surfaceScene(renderer).draw(renderer, job, context, quality)) return false;
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
