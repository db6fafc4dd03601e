import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { drawHeatMap, drawHeatMapWith } from '../../draw/heatmap.js';
import { figurePng } from '../../draw/figure-png.js';
import { figureSvg } from '../../draw/figure.js';
import type { FigureSize } from '../../draw/figure.js';
import { canvasPen } from '../../draw/pen.js';
import type { HeatMapLayout } from '../../draw/heatmap.js';
import type { Pen } from '../../draw/pen.js';
import type { Pick } from '../../draw/picture.js';
import { PictureElement } from '../shared/picture-element.js';
import { figureStyles } from '../shared/figure-styles.js';
import type { LinkValue } from '../../study/view-link.js';
import { tokens } from '../shared/styles.js';
import { spectrogramStyles } from './styles.js';

/**
 * Level over time and frequency as a heat map, with the flagged ridges. What lies in the noise or past the end of the
 * recording is drawn as such; the caption says method, window, true resolution, time zero and the reference of level.
 *
 * @summary Heat map of level over time and frequency, with the ridges.
 * @tag ringdown-spectrogram
 *
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<RidgeSelectDetail>} ringdown-ridge-select - The user selected a ridge.
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a `src`.
 * @fires {CustomEvent<ReadyDetail>} ringdown-ready - Its own study is done.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name and tools.
 * @csspart title - Name of the recording.
 * @csspart picture - What holds the canvas.
 * @csspart cursor - The two sliders and the read-out.
 * @csspart readout - The value under the cursor.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 * @csspart canvas - The picture itself.
 *
 * @cssprop [--ringdown-height=clamp(18rem, 54cqi, 34rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text; the page's where not given.
 * @cssprop --ringdown-accent - Cursor and selection.
 * @cssprop --ringdown-scale - Colour scale: `dusk`, `dawn` or `clear`; where `scale` is `auto`.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownSpectrogram extends PictureElement {
  static override styles = [tokens, figureStyles, spectrogramStyles];

  protected override readonly pictureName = 'spectrogram';
  protected override readonly unseenSize = { cssWidth: 900, cssHeight: 420 };
  /** @internal */
  override readonly linkName = 'spectrogram';
  #layout: HeatMapLayout | null = null;

  /** @internal */
  override linkValues(): readonly LinkValue[] {
    return [this.linkedScale];
  }

  /** @internal */
  override takeLink([scale = null]: readonly LinkValue[]): void {
    this.linkedScale = scale as string | null;
  }

  protected override draw(): void {
    const context = this.canvas?.getContext('2d');
    const view = this.fieldView;
    if (context && view) this.#layout = drawHeatMap(context, view, this.look, this.stageController.size);
  }

  protected override pickAt(x: number, y: number): Pick | null {
    return this.#layout?.toField(x, y) ?? null;
  }

  protected override ridgeAt(x: number, y: number): number | null {
    return this.#layout?.flagAt(x, y) ?? null;
  }

  override toSvg(size: Partial<FigureSize> = {}): string | null {
    const saved = this.saved(size);
    if (!saved) return null;
    const { view, theme, words } = saved;
    // The map within has two pixels for one of the page, to stand print.
    const draw = (pen: Pen): void => void drawHeatMapWith(pen, view, theme, { ...saved.size, pixelRatio: 2 });
    return figureSvg(draw, theme, saved.size, words, 'spectrogram');
  }

  override async toPng(widthPixels = 2400, size: Partial<FigureSize> = {}): Promise<Blob | null> {
    const saved = this.saved(size);
    if (!saved) return null;
    const { view, theme, words } = saved;
    const full = { ...saved.size, pixelRatio: widthPixels / saved.size.cssWidth };
    const draw = (context: CanvasRenderingContext2D): void =>
      void drawHeatMapWith(canvasPen(context, theme.fontFamily), view, theme, full);
    return figurePng(draw, theme, full, words);
  }

  protected override renderMore(): TemplateResult {
    return this.renderSave(this.pictureName);
  }

  protected override renderCanvas(): TemplateResult {
    return html`<canvas
      part="canvas"
      role="img"
      aria-label=${this.speaker.view('spectrogram-name', { label: this.recordingLabel })}
      aria-describedby="help"
      @pointermove=${(event: PointerEvent) => this.hover(event)}
      @pointerleave=${() => this.leave()}
      @click=${(event: MouseEvent) => this.press(event)}
    ></canvas>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-spectrogram': RingdownSpectrogram;
  }
}
