import { html } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { Pick } from '../../draw/picture.js';
import type { FieldView } from '../../draw/types.js';
import type { Cursor } from '../../study/types.js';
import { gridCaption } from '../../words/index.js';
import type { Scope } from '../scope.js';
import { cursorControls } from './cursor-controls.js';
import { fieldViewOf, readout } from './field-view.js';
import { StageController } from './stage.js';
import { ViewElement } from './view-element.js';

/** How long the hand must rest before the read-out is spoken, ms. */
const spokenAfterMs = 500;

/** What the pictures of a grid share: canvas, cursor, caption, words for the eye and for the ear. */
export abstract class PictureElement extends ViewElement {
  protected readonly stageController = new StageController(this, () => this.draw());
  /** What a screen reader is told, once the cursor rests. */
  @state() private spoken = '';
  #inFrame: (action: () => void) => void = () => undefined;
  #speakSoon: (action: () => void) => void = () => undefined;
  /** The cursor before the pointer came, to go back to when it leaves. */
  #kept: Cursor | null | undefined;
  #shown: unknown[] = [];

  protected abstract readonly pictureName: 'waterfall' | 'spectrogram';
  /** Draws what `fieldView` says onto the canvas. */
  protected abstract draw(): void;
  /** What is under a point of the picture. */
  protected abstract pickAt(x: number, y: number): Pick | null;
  /** Which ridge's label or line is there, by its index. */
  protected abstract ridgeAt(x: number, y: number): number | null;

  protected get canvas(): HTMLCanvasElement | null {
    return this.renderRoot?.querySelector('canvas') ?? null;
  }

  protected get fieldView(): FieldView | null {
    return this.snapshot ? fieldViewOf(this.snapshot, this.speaker) : null;
  }

  protected override connected(scope: Scope): void {
    super.connected(scope);
    this.#inFrame = scope.frames();
    this.#speakSoon = scope.debounce(spokenAfterMs);
    this.#shown = [];
  }

  /** Only what the picture shows makes it dirty: progress does not. */
  protected override snapshotChanged(): void {
    const { snapshot } = this;
    const shown = snapshot
      ? [
          snapshot.grid,
          snapshot.diagnosis,
          snapshot.cursor,
          snapshot.selectedRidge,
          snapshot.choices.rangeDb,
          snapshot.room,
        ]
      : [];
    if (shown.length === this.#shown.length && shown.every((value, k) => value === this.#shown[k])) return;
    this.#shown = shown;
    this.stageController.request();
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    this.stageController.request();
  }

  protected override themeChanged(): void {
    if (this.themeController.printing) this.stageController.drawNow();
    else this.stageController.request();
  }

  protected placeCursor(cursor: Cursor): void {
    this.#kept = undefined;
    this.moveCursor(cursor);
    this.#speakSoon(() => {
      const focused = this.shadowRoot?.activeElement;
      if (focused && this.snapshot) this.spoken = readout(this.snapshot, this.speaker);
    });
  }

  /** Coordinates of a pointer on the canvas, CSS pixels. */
  protected pointOf(event: PointerEvent | MouseEvent): { x: number; y: number } {
    const box = this.canvas!.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }

  protected hover(event: PointerEvent): void {
    const { x, y } = this.pointOf(event);
    this.#inFrame(() => {
      if (!this.snapshot) return;
      const pick = this.pickAt(x, y);
      this.canvas?.classList.toggle('on-ridge', this.ridgeAt(x, y) !== null);
      if (!pick) return;
      if (this.#kept === undefined) this.#kept = this.snapshot.cursor;
      this.moveCursor({ frequencyHz: pick.column, timeSeconds: pick.row });
    });
  }

  protected leave(): void {
    this.#inFrame(() => undefined);
    if (this.#kept === undefined) return;
    const kept = this.#kept;
    this.#kept = undefined;
    this.moveCursor(kept);
  }

  /** A click selects the ridge under it; elsewhere it pins the cursor. */
  protected press(event: MouseEvent): void {
    const { x, y } = this.pointOf(event);
    const ridge = this.ridgeAt(x, y);
    if (ridge !== null) this.selectRidge(this.snapshot?.selectedRidge === ridge ? null : ridge);
    else {
      const pick = this.pickAt(x, y);
      if (pick) this.placeCursor({ frequencyHz: pick.column, timeSeconds: pick.row });
    }
  }

  protected abstract renderCanvas(): TemplateResult;
  protected renderTools(): TemplateResult | null {
    return null;
  }
  protected renderMore(): TemplateResult | null {
    return null;
  }

  /** What the signs in the picture mean. */
  protected renderKey(): TemplateResult | string | null {
    const view = this.fieldView;
    return view && (view.flags.length > 0 || view.marks.length > 0) ? this.speaker.view('key-line') : null;
  }

  protected override render(): TemplateResult {
    const { snapshot, speaker } = this;
    const grid = snapshot?.grid ?? null;
    return html`<figure part="base">
      <div class="head" part="head">
        <div class="title" part="title">
          ${grid ? this.recordingLabel : speaker.view(this.pictureName)}${
            grid ? html`<small>${speaker.view(this.pictureName)}</small>` : null
          }
        </div>
        ${grid ? this.renderTools() : null}
      </div>
      <div class="picture" part="picture" data-stage>
        ${grid ? this.renderCanvas() : null} ${this.veil(grid !== null)}
      </div>
      ${
        grid && snapshot
          ? html`${cursorControls(snapshot, speaker, (cursor) => this.placeCursor(cursor))}
              ${this.renderMore()}
              <p class="unseen" id="help">${speaker.view(`${this.pictureName}-help`)}</p>
              <div class="unseen" role="status">${this.spoken}</div>
              <figcaption part="caption">
                ${this.renderKey()} ${gridCaption(speaker, grid, snapshot.choices.rangeDb)}
              </figcaption>`
          : null
      }
    </figure>`;
  }
}
