import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { FigureSize, FigureWords } from '../../draw/figure.js';
import type { LegendItem } from '../../draw/legend.js';
import type { Pick } from '../../draw/picture.js';
import type { DrawTheme, FieldView } from '../../draw/types.js';
import type { Cursor } from '../../study/types.js';
import { gridCursor } from './cursor-controls.js';
import { fieldViewOf, readout } from '../../sheet/field-view.js';
import { FigureElement } from './figure-element.js';
import { legendList } from './legend.js';
import { fieldCaption, figureWords } from '../../sheet/figure-words.js';

/** All that a saved picture is made of. */
export interface SavedPicture {
  readonly view: FieldView;
  readonly theme: DrawTheme;
  readonly size: FigureSize;
  readonly words: FigureWords;
}

/** What the pictures of a grid share: cursor, caption, words. */
export abstract class PictureElement extends FigureElement {
  protected abstract readonly pictureName: 'waterfall' | 'spectrogram';
  /** Size at which it is saved while it stands nowhere on the page, CSS pixels. */
  protected abstract readonly unseenSize: FigureSize;
  /** What is under a point of the picture. */
  protected abstract pickAt(x: number, y: number): Pick | null;
  /** Which ridge's label or line is there, by its index. */
  protected abstract ridgeAt(x: number, y: number): number | null;

  protected get fieldView(): FieldView | null {
    return this.snapshot ? fieldViewOf(this.snapshot, this.speaker) : null;
  }

  protected override shownParts(): readonly unknown[] {
    const { grid, diagnosis, cursor, selectedRidge, choices, room } = this.snapshot!;
    return [grid, diagnosis, cursor, selectedRidge, choices.rangeDb, choices.axis, room];
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    const pick = this.pickAt(x, y);
    return pick && { frequencyHz: pick.column, timeSeconds: pick.row };
  }

  protected override targetAt(x: number, y: number): number | null {
    return this.ridgeAt(x, y);
  }

  protected override selectTarget(ridge: number): void {
    this.selectRidge(this.snapshot?.selectedRidge === ridge ? null : ridge);
  }

  protected override readoutText(): string {
    return this.snapshot ? readout(this.snapshot, this.speaker) : '';
  }

  /** The colour scale that the element itself asks for, beside those of the page's style sheets. */
  protected get linkedScale(): string | null {
    return this.style.getPropertyValue('--ringdown-scale').trim() || null;
  }

  protected set linkedScale(scale: string | null) {
    if (scale === this.linkedScale) return;
    if (scale === null) this.style.removeProperty('--ringdown-scale');
    else this.style.setProperty('--ringdown-scale', scale);
  }

  protected abstract renderCanvas(): TemplateResult;

  /** What the signs in the picture mean. */
  protected legend(_view: FieldView): readonly LegendItem[] {
    return [];
  }

  protected renderKey(): TemplateResult | string | null {
    const view = this.fieldView;
    if (!view) return null;
    const legend = this.legend(view);
    if (legend.length > 0) return legendList(legend);
    return view.flags.length > 0 || view.marks.length > 0 ? this.speaker.view('key-line') : null;
  }

  /** What a saved picture says beside itself. */
  #figureWords(): FigureWords | null {
    const { snapshot, speaker, fieldView } = this;
    const caption = snapshot && fieldCaption(snapshot, speaker);
    if (!snapshot || !fieldView || caption === null) return null;
    const legend = this.legend(fieldView);
    const key = legend.length > 0 ? '' : `${speaker.view('key-line')} `;
    const about = { label: this.recordingLabel, legend, caption: key + caption };
    return figureWords(snapshot, speaker, this.pictureName, about);
  }

  /** What a saved picture is made of, without the cursor; of the size on the page unless told otherwise. */
  protected saved(size: Partial<FigureSize>): SavedPicture | null {
    const { fieldView } = this;
    const words = this.#figureWords();
    if (!fieldView || !words) return null;
    const { cssWidth, cssHeight } = this.stageController.size;
    return {
      view: { ...fieldView, cursor: null },
      theme: this.look,
      size: {
        cssWidth: cssWidth || this.unseenSize.cssWidth,
        cssHeight: cssHeight || this.unseenSize.cssHeight,
        ...size,
      },
      words,
    };
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
          ? html`${gridCursor(snapshot, speaker, (cursor) => this.placeCursor(cursor))}
              <div class="hand screen-only">${this.renderMore()} ${this.renderLink()}</div>
              <p class="unseen" id="help">${speaker.view(`${this.pictureName}-help`)}</p>
              <div class="unseen" role="status">${this.spoken}</div>
              <figcaption part="caption">${this.renderKey()} ${fieldCaption(snapshot, speaker)}</figcaption>`
          : null
      }
    </figure>`;
  }
}
