import type { PropertyValues, TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { FigureSize } from '../../draw/figure.js';
import type { Cursor } from '../../study/types.js';
import type { Scope } from '../scope.js';
import { fileNameOf } from '../../sheet/figure-words.js';
import { addressOf, copyText, linkControl } from './copy-link.js';
import type { Copied } from './copy-link.js';
import { handOver, saveControls } from './save.js';
import { StageController } from './stage.js';
import { ViewElement } from './view-element.js';

/** How long the hand must rest before the read-out is spoken, ms. */
const spokenAfterMs = 500;

/** What all pictures share: a canvas drawn when dirty and seen, the pointer's cursor, words for the ear. */
export abstract class FigureElement extends ViewElement {
  protected readonly stageController = new StageController(this, () => this.draw());
  /** What a screen reader is told, once the cursor rests. */
  @state() protected spoken = '';
  @state() private saveFailed = false;
  @state() private copied: Copied = 'no';
  #inFrame: (action: () => void) => void = () => undefined;
  #speakSoon: (action: () => void) => void = () => undefined;
  /** The cursor before the pointer came, to go back to when it leaves. */
  #kept: Cursor | null | undefined;
  #shown: readonly unknown[] = [];

  /** Draws what is shown onto the canvas. */
  protected abstract draw(): void;
  /** Everything of the study that the picture shows: it is dirty where one of these is another. */
  protected abstract shownParts(): readonly unknown[];
  /** What is under a point of the picture; null outside. */
  protected abstract cursorAt(x: number, y: number): Cursor | null;
  /** What can be selected there, by a number of the picture's own. */
  protected abstract targetAt(x: number, y: number): number | null;
  protected abstract selectTarget(target: number): void;
  /** The value under the cursor in words. */
  protected abstract readoutText(): string;

  protected get canvas(): HTMLCanvasElement | null {
    return this.renderRoot?.querySelector('canvas') ?? null;
  }

  protected override connected(scope: Scope): void {
    super.connected(scope);
    this.#inFrame = scope.frames();
    this.#speakSoon = scope.debounce(spokenAfterMs);
    this.#shown = [];
  }

  /** Only what the picture shows makes it dirty: progress does not. */
  protected override snapshotChanged(): void {
    const shown = this.snapshot ? this.shownParts() : [];
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
    this.speakReadout();
  }

  /** Says the read-out once the hand rests, while a control has the focus. */
  protected speakReadout(): void {
    this.#speakSoon(() => {
      const focused = this.shadowRoot?.activeElement;
      if (focused && this.snapshot) this.spoken = this.readoutText();
    });
  }

  /** Coordinates of a pointer on the canvas, in the picture's own pixels. */
  protected pointOf(event: PointerEvent | MouseEvent): { x: number; y: number } {
    return this.stageController.pointOf(event, this.canvas!);
  }

  protected hover(event: PointerEvent): void {
    const { x, y } = this.pointOf(event);
    this.#inFrame(() => {
      if (!this.snapshot) return;
      const cursor = this.cursorAt(x, y);
      this.canvas?.classList.toggle('on-ridge', this.targetAt(x, y) !== null);
      if (!cursor) return;
      if (this.#kept === undefined) this.#kept = this.snapshot.cursor;
      this.moveCursor(cursor);
    });
  }

  protected leave(): void {
    this.#inFrame(() => undefined);
    if (this.#kept === undefined) return;
    const kept = this.#kept;
    this.#kept = undefined;
    this.moveCursor(kept);
  }

  /** A click selects what is under it; elsewhere it pins the cursor. */
  protected press(event: MouseEvent): void {
    const { x, y } = this.pointOf(event);
    const target = this.targetAt(x, y);
    if (target !== null) this.selectTarget(target);
    else {
      const cursor = this.cursorAt(x, y);
      if (cursor) this.placeCursor(cursor);
    }
  }

  /**
   * The picture as it stands, as a vector document with its caption and what made it; null while there is none, or
   * where the picture has no such form. `cssWidth` and `cssHeight` are those of the picture; its own by default.
   */
  toSvg(_size: Partial<FigureSize> = {}): string | null {
    return null;
  }

  /** The same as a PNG file so many pixels wide. Rejects with a RangeError where the browser makes none that large. */
  toPng(_widthPixels = 2400, _size: Partial<FigureSize> = {}): Promise<Blob | null> {
    return Promise.resolve(null);
  }

  /** The controls that save what `toPng` and `toSvg` make. */
  protected renderSave(pictureName: string): TemplateResult {
    return saveControls(this.speaker, this.saveFailed, (kind, widthPixels) => {
      this.saveFailed = false;
      const { scope, recordingLabel } = this;
      const made =
        kind === 'png'
          ? this.toPng(widthPixels)
          : Promise.resolve(this.toSvg()).then((text) =>
              text === null ? null : new Blob([text], { type: 'image/svg+xml' }),
            );
      const name = fileNameOf(recordingLabel, pictureName, kind);
      handOver(
        made,
        name,
        () => scope,
        () => {
          this.saveFailed = true;
        },
      );
    });
  }

  /** A link to what is shown, where the page reads its address. */
  protected renderLink(): TemplateResult | null {
    const links = this.found.feed?.links;
    if (!links || links.addressId === null) return null;
    return linkControl(this.speaker, this.copied, () => {
      void copyText(addressOf(links)).then((copied) => {
        this.copied = copied;
      });
    });
  }

  protected renderTools(): TemplateResult | null {
    return null;
  }
  protected renderMore(): TemplateResult | null {
    return null;
  }
}
