import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { paintCanvas } from '../../draw/canvas.js';
import { figurePng } from '../../draw/figure-png.js';
import { figureSvg } from '../../draw/figure.js';
import type { FigureSize, FigureWords } from '../../draw/figure.js';
import type { LegendItem } from '../../draw/legend.js';
import { canvasPen } from '../../draw/pen.js';
import { figureWords } from '../../sheet/figure-words.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import type { DrawTheme } from '../../draw/types.js';
import type { Cursor, StudyChoices } from '../../study/types.js';
import { givenCaptions } from '../../words/index.js';
import { legendList } from './legend.js';
import { cursorControls } from './cursor-controls.js';
import type { CursorSlider } from './cursor-controls.js';
import { FigureElement } from './figure-element.js';

/** What the charts share: one canvas, sliders for the cursor, the same as a table, a caption. */
export abstract class ChartElement extends FigureElement {
  /** Stem of its words: `<name>`, `<name>-name`, `<name>-help`. */
  protected abstract readonly chartName: string;

  /** Whether there is something to draw. */
  protected abstract get drawable(): boolean;
  protected abstract paint(pen: Pen, theme: DrawTheme, size: DrawSize): void;
  /** Of the cursor: its frequency, where the picture has no other axis. */
  protected sliders(): readonly CursorSlider[] {
    const { cursor, choices } = this.snapshot!;
    return [this.frequencySlider(cursor?.frequencyHz ?? choices.fromHz)];
  }
  /** How the picture was made. */
  protected abstract captionText(): string;
  /** What its signs mean. */
  protected keyItems(): readonly LegendItem[] {
    return [];
  }
  /** The table twin. */
  protected abstract renderTable(): TemplateResult;

  protected override draw(): void {
    const context = this.canvas?.getContext('2d');
    if (!context || !this.drawable) return;
    const theme = this.look;
    const { size } = this.stageController;
    paintCanvas(context, theme, size, (pen) => this.paint(pen, theme, size));
  }

  /** The cursor with one of its places changed; the other stays where it is, or begins where the picture does. */
  protected cursorWith(change: Partial<Cursor>): Cursor {
    const { cursor, choices } = this.snapshot!;
    return { frequencyHz: choices.fromHz, timeSeconds: 0, ...cursor, ...change };
  }

  protected frequencySlider(value: number): CursorSlider {
    return {
      axis: 'frequency',
      positions: frequencySteps(this.snapshot!.choices),
      value,
      moved: (frequencyHz) => this.placeCursor(this.cursorWith({ frequencyHz })),
    };
  }

  /** In steps of the study's slices. */
  protected timeSlider(value: number, range: readonly [number, number]): CursorSlider {
    return {
      axis: 'time',
      positions: timeSteps(range, this.snapshot!.choices.stepSeconds),
      value,
      moved: (timeSeconds) => this.placeCursor(this.cursorWith({ timeSeconds })),
    };
  }

  protected override targetAt(_x: number, _y: number): number | null {
    return null;
  }

  protected override selectTarget(_target: number): void {}

  /** Pixels within a vector picture for one of the page, where it holds any. */
  protected get savedFineness(): number {
    return 1;
  }

  /** What a saved picture says beside itself, and what made it. */
  protected savedWords(): FigureWords {
    const { snapshot, speaker } = this;
    const about = { label: this.recordingLabel, legend: this.keyItems(), caption: this.captionText() };
    return figureWords(snapshot!, speaker, this.chartName, about);
  }

  /** Of the picture on the page, unless told otherwise. */
  #savedSize(size: Partial<FigureSize>): FigureSize {
    const { cssWidth, cssHeight } = this.stageController.size;
    return { cssWidth: cssWidth || 900, cssHeight: cssHeight || 380, ...size };
  }

  /** Draws elsewhere; where things are on the page is found again by drawing there. */
  #paintOnce(pen: Pen, size: DrawSize): void {
    this.paint(pen, this.look, size);
    this.stageController.request();
  }

  override toSvg(size: Partial<FigureSize> = {}): string | null {
    if (!this.snapshot || !this.drawable) return null;
    const words = this.savedWords();
    const saved = this.#savedSize(size);
    const paint = (pen: Pen): void => this.#paintOnce(pen, { ...saved, pixelRatio: this.savedFineness });
    return figureSvg(paint, this.look, saved, words, this.chartName);
  }

  override async toPng(widthPixels = 2400, size: Partial<FigureSize> = {}): Promise<Blob | null> {
    if (!this.snapshot || !this.drawable) return null;
    const words = this.savedWords();
    const theme = this.look;
    const cssSize = this.#savedSize(size);
    const saved = { ...cssSize, pixelRatio: widthPixels / cssSize.cssWidth };
    const paint = (context: CanvasRenderingContext2D): void =>
      this.#paintOnce(canvasPen(context, theme.fontFamily), saved);
    return figurePng(paint, theme, saved, words);
  }

  /** Why there is no chart although the study is ready. */
  protected emptyText(): string | null {
    return null;
  }

  protected renderCanvas(): TemplateResult {
    return html`<canvas
      part="canvas"
      role="img"
      aria-label=${this.speaker.view(`${this.chartName}-name`, { label: this.recordingLabel })}
      aria-describedby="help"
      @pointermove=${(event: PointerEvent) => this.hover(event)}
      @pointerleave=${() => this.leave()}
      @click=${(event: MouseEvent) => this.press(event)}
    ></canvas>`;
  }

  protected renderFigure(): TemplateResult {
    const { speaker, drawable } = this;
    const keys = drawable ? this.keyItems() : [];
    return html`<figure part="base">
      <div class="head" part="head">
        <div class="title" part="title">
          ${drawable ? this.recordingLabel : speaker.view(this.chartName)}${
            drawable ? html`<small>${speaker.view(this.chartName)}</small>` : null
          }
        </div>
        ${drawable ? this.renderTools() : null}
      </div>
      <div class="picture" part="picture" data-stage>
        ${drawable ? this.renderCanvas() : null} ${this.veil(drawable, this.emptyText())}
      </div>
      ${
        drawable
          ? html`${keys.length > 0 ? legendList(keys) : null}
              ${cursorControls(this.sliders(), this.readoutText(), speaker)} ${this.renderMore()}
              <div class="hand screen-only">${this.renderSave(this.chartName)} ${this.renderLink()}</div>
              <p class="unseen" id="help">${speaker.view(`${this.chartName}-help`)}</p>
              <div class="unseen" role="status">${this.spoken}</div>
              <figcaption part="caption">${this.captionText()} ${this.#given()}</figcaption>
              <details class="twin" part="table">
                <summary>${speaker.view('as-table')}</summary>
                <div class="scroll" tabindex="0" role="group" aria-label=${speaker.view('as-table')}>
                  ${this.renderTable()}
                </div>
              </details>`
          : null
      }
    </figure>`;
  }

  /** What was given beside the file, as a sentence. */
  #given(): string {
    const { snapshot, speaker } = this;
    const recording = snapshot?.recordings[snapshot.active];
    const said = recording ? givenCaptions(speaker, recording).join('; ') : '';
    return said && `${said[0].toUpperCase()}${said.slice(1)}.`;
  }

  protected override render(): TemplateResult {
    return this.renderFigure();
  }
}

const perOctave = 48;

/** Steps of the frequency slider: as those of the grid, 1/48 octave. */
function frequencySteps({ fromHz, toHz }: StudyChoices): Float64Array {
  const count = Math.max(1, Math.floor(Math.log2(toHz / fromHz) * perOctave + 1e-9));
  return Float64Array.from({ length: count + 1 }, (_, k) => fromHz * (toHz / fromHz) ** (k / count));
}

function timeSteps([from, to]: readonly [number, number], step: number): Float64Array {
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.max(1, Math.floor(to / step + 1e-9) - first);
  return Float64Array.from({ length: count + 1 }, (_, k) => (first + k) * step);
}
