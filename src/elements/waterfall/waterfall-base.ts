import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import { limitOrbit, viewpoints } from '../../draw/orbit.js';
import type { ViewpointName } from '../../draw/orbit.js';
import type { DrawSize, Pick } from '../../draw/picture.js';
import { pickSurface, surfaceFlagAt } from '../../draw/surface-layout.js';
import type { SurfaceLayout } from '../../draw/surface-layout.js';
import type { FigureSize } from '../../draw/figure.js';
import type { LegendItem } from '../../draw/legend.js';
import { surfaceSvg } from '../../draw/surface-svg.js';
import { drawSurface2d } from '../../draw/surface2d.js';
import type { DrawTheme, FieldView, OrbitView } from '../../draw/types.js';
import { afterGrace } from '../scope.js';
import type { Dispose, Scope } from '../scope.js';
import { PictureElement } from '../shared/picture-element.js';
import { figureStyles } from '../shared/figure-styles.js';
import type { LinkValue } from '../../study/view-link.js';
import { orbitOf, orbitValues, sameOrbit } from '../shared/orbit-link.js';
import { turningControls, turningStyles } from '../shared/turning.js';
import { tokens } from '../shared/styles.js';
import { waterfallPng } from './figure.js';
import type { WaterfallFigure } from './figure.js';
import { OrbitGestures } from '../shared/gestures.js';
import { waterfallLegend } from '../../sheet/waterfall-key.js';
import { waterfallStyles } from './styles.js';

/** The shaded surface, as far as this element needs to know it. */
export interface Surface {
  update(view: FieldView, orbit: OrbitView, theme: DrawTheme, size: DrawSize): void;
  pick(xCss: number, yCss: number): Pick | null;
  flagAt(xCss: number, yCss: number): number | null;
  /** Even while it is not seen: for printing. */
  drawAnyway(): void;
  /** `lines` where there is no WebGL, or while it is lost. */
  readonly mode: 'webgl' | 'lines';
  dispose(): void;
}

export interface SurfaceMaker {
  /** Makes ready what takes long, while data are still computed, until the returned function is called. */
  prepare(): Dispose;
  /** `once`: drawn a single time for a file, and never seen. */
  create(canvas: HTMLCanvasElement, options?: { readonly once?: boolean }): Surface;
}

const presets = Object.keys(viewpoints) as ViewpointName[];
/** The waterfall without its surface: everything but who draws it. */
export abstract class WaterfallBase extends PictureElement {
  static override styles = [tokens, figureStyles, turningStyles, waterfallStyles];

  protected override readonly pictureName = 'waterfall';
  /** @internal */
  override readonly linkName = 'waterfall';
  protected override readonly unseenSize = { cssWidth: 900, cssHeight: 520 };
  @state() private orbit: OrbitView = viewpoints.corner;
  /** Drawn by this element itself, because what draws the surface is not in this build or did not come. */
  @state() private flat = false;
  /** Drawn by lines for want of WebGL. */
  @state() private lines = false;
  #maker: SurfaceMaker | null = null;
  #surface: Surface | null = null;
  #surfaceCanvas: HTMLCanvasElement | null = null;
  #layout: SurfaceLayout | null = null;
  #loading = false;
  #prepared: Dispose | null = null;
  #callOff: Dispose | null = null;
  readonly #gestures = new OrbitGestures({
    orbit: () => this.orbit,
    turned: (orbit) => this.#turn(orbit),
    size: () => this.stageController.boxSize,
  });

  /** @internal */
  override linkValues(): readonly LinkValue[] {
    return [...orbitValues(this.orbit), this.linkedScale];
  }

  /** @internal */
  override takeLink([turn = null, tilt = null, zoom = null, scale = null]: readonly LinkValue[]): void {
    this.linkedScale = scale as string | null;
    this.#turn(orbitOf([turn, tilt, zoom]));
  }

  /** Fetches what draws the surface; null where this build has none. */
  protected loadSurface(): Promise<SurfaceMaker> | null {
    return null;
  }

  protected override connected(scope: Scope): void {
    super.connected(scope);
    this.#callOff?.();
    this.#callOff = null;
  }

  /** A moved element keeps its surface; one that stays away frees it. */
  protected override disconnected(): void {
    super.disconnected();
    this.#callOff = afterGrace(() => this.#free());
  }

  #free(): void {
    this.#drop();
    this.#prepared?.();
    this.#prepared = null;
  }

  #drop(): void {
    this.#surface?.dispose();
    this.#surface = null;
    this.#surfaceCanvas = null;
  }

  protected override draw(): void {
    const { canvas, fieldView: view } = this;
    if (!canvas || !view) {
      this.#prepare();
      return;
    }
    const theme = this.look;
    const { size } = this.stageController;
    if (!this.flat && !this.#maker) {
      void this.#load();
      return;
    }
    if (!this.flat && this.#maker) {
      try {
        if (this.#surfaceCanvas !== canvas) this.#drop();
        this.#surface ??= this.#maker.create(canvas);
        this.#prepared?.();
        this.#prepared = null;
        this.#surfaceCanvas = canvas;
        this.#surface.update(view, this.orbit, theme, size);
        this.lines = this.#surface.mode === 'lines';
        if (this.themeController.printing) this.#surface.drawAnyway();
        return;
      } catch {
        this.#free();
        this.flat = true; // renders a new canvas, on which `updated` asks for a draw
        return;
      }
    }
    const context = canvas.getContext('2d');
    if (context) this.#layout = drawSurface2d(context, view, this.orbit, theme, size);
  }

  /** What draws comes while what is drawn is still computed. */
  #prepare(): void {
    if (this.flat || this.snapshot?.status !== 'working') return;
    if (!this.#maker) void this.#load();
    else if (!this.#surface) this.#prepared ??= this.#maker.prepare();
  }

  async #load(): Promise<void> {
    if (this.#loading) return;
    this.#loading = true;
    try {
      this.#maker = (await this.loadSurface()) ?? null;
    } catch {
      // A page that forbids the further module, or a lost network: the same data by lines.
    }
    this.#loading = false;
    if (this.#maker) this.stageController.request();
    else this.flat = true;
  }

  protected override pickAt(x: number, y: number): Pick | null {
    if (!this.flat) return this.#surface?.pick(x, y) ?? null;
    return this.#layout ? pickSurface(this.#layout, x, y) : null;
  }

  protected override ridgeAt(x: number, y: number): number | null {
    if (!this.flat) return this.#surface?.flagAt(x, y) ?? null;
    return this.#layout ? surfaceFlagAt(this.#layout, x, y) : null;
  }

  #turn(orbit: OrbitView): void {
    this.orbit = limitOrbit(orbit);
    this.stageController.request();
  }

  protected override renderCanvas(): TemplateResult {
    const gestures = this.#gestures;
    return html`${keyed(
      this.flat,
      html`<canvas
        part="canvas"
        role="img"
        aria-label=${this.speaker.view('waterfall-name', { label: this.recordingLabel })}
        aria-describedby="help"
        @pointerdown=${(event: PointerEvent) => {
          this.leave();
          gestures.down(event);
        }}
        @pointermove=${(event: PointerEvent) => {
          if (!gestures.move(event)) this.hover(event);
        }}
        @pointerup=${(event: PointerEvent) => {
          if (gestures.up(event)) this.press(event);
        }}
        @pointercancel=${(event: PointerEvent) => gestures.up(event)}
        @pointerleave=${() => this.leave()}
        @wheel=${gestures.wheelListener}
      ></canvas>`,
    )}`;
  }

  protected override legend(view: FieldView): readonly LegendItem[] {
    return waterfallLegend(view, this.speaker);
  }

  override toSvg(size: Partial<FigureSize> = {}): string | null {
    const figure = this.#figure(size);
    return figure && surfaceSvg(figure.view, figure.orbit, figure.theme, figure.size, figure.words);
  }

  override async toPng(widthPixels = 2400, size: Partial<FigureSize> = {}): Promise<Blob | null> {
    const figure = this.#figure(size);
    return figure && waterfallPng(figure, widthPixels, this.flat ? null : this.#maker);
  }

  #figure(size: Partial<FigureSize>): WaterfallFigure | null {
    const saved = this.saved(size);
    return saved && { ...saved, orbit: this.orbit };
  }

  protected override renderTools(): TemplateResult {
    const { speaker } = this;
    return html`<div
      class="views screen-only"
      part="views"
      role="group"
      aria-label=${speaker.view('view-group')}
    >
      ${presets.map(
        (name) =>
          html`<button
            type="button"
            aria-pressed=${sameOrbit(this.orbit, viewpoints[name])}
            @click=${() => this.#turn(viewpoints[name])}
          >
            ${speaker.view(`view-${name}`)}
          </button>`,
      )}
    </div>`;
  }

  protected override renderMore(): TemplateResult {
    const { speaker, orbit } = this;
    return html`${turningControls(speaker, orbit, (view) => this.#turn(view))}
    ${this.renderSave(this.pictureName)}
    ${this.flat || this.lines ? html`<p class="flat">${speaker.view('drawn-flat')}</p>` : nothing}`;
  }
}
