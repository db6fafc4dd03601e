import { isServer } from 'lit';
import type { ReactiveController } from 'lit';
import type { DrawSize } from '../../draw/picture.js';
import { Scope } from '../scope.js';
import type { RingdownElement } from './element.js';

/** Pixels per CSS pixel beyond which more only costs time. */
const highestPixelRatio = 3;
/** Letters of pictures are sized for a page whose text is so large. CSS pixels. */
const plainTextPixels = 16;
/** They grow with the page's text up to this, and shrink never: small text of a page is for reading near by. */
const largestTextScale = 2.5;
/** A picture keeps at least this width in its own pixels: narrower, its labels would have no room. */
const leastWidth = 320;

/**
 * Where a picture stands: its size, whether it is on screen, the pixel ratio. Asks for a draw, at most one per frame, and
 * only while it is visible; what was asked for meanwhile is drawn when it comes back.
 *
 * Where the element's text is larger than a page's usual one, or `--ringdown-text-scale` says so, the whole picture is drawn
 * larger: it has fewer pixels of its own, each of them `scale` CSS pixels wide.
 */
export class StageController implements ReactiveController {
  readonly #host: RingdownElement;
  readonly #draw: () => void;
  #scope: Scope | null = null;
  #inFrame: (action: () => void) => void = () => undefined;
  #box: Element | null = null;
  #unwatch: () => void = () => undefined;
  #width = 0;
  #height = 0;
  #scale = 1;
  #visible = false;
  #dirty = true;

  readonly #selector: string;

  /** @param selector Of the box that the picture fills, in the element's shadow root. */
  constructor(host: RingdownElement, draw: () => void, selector = '[data-stage]') {
    this.#host = host;
    this.#selector = selector;
    this.#draw = draw;
    host.addController(this);
  }

  /** In the picture's own pixels. */
  get size(): DrawSize {
    const scale = this.#scale;
    return {
      cssWidth: this.#width / scale,
      cssHeight: this.#height / scale,
      pixelRatio: (isServer ? 1 : Math.min(highestPixelRatio, devicePixelRatio)) * scale,
    };
  }

  /** CSS pixels of the page per pixel of the picture. */
  get scale(): number {
    return this.#scale;
  }

  /** Of the box on the page, CSS pixels. */
  get boxSize(): Pick<DrawSize, 'cssWidth' | 'cssHeight'> {
    return { cssWidth: this.#width, cssHeight: this.#height };
  }

  /** Where a pointer stands over the box, in the picture's own pixels. */
  pointOf(
    { clientX, clientY }: Pick<MouseEvent, 'clientX' | 'clientY'>,
    box: Element,
  ): { x: number; y: number } {
    const { left, top } = box.getBoundingClientRect();
    return { x: (clientX - left) / this.#scale, y: (clientY - top) / this.#scale };
  }

  /** The page's text may have become larger without any box changing. */
  #readScale(): number {
    const style = getComputedStyle(this.#host);
    const asked = Number.parseFloat(style.getPropertyValue('--ringdown-text-scale'));
    const scale = asked > 0 ? asked : Number.parseFloat(style.fontSize) / plainTextPixels;
    const widest = Math.min(largestTextScale, Math.max(1, this.#width / leastWidth));
    return Math.min(widest, Math.max(1, scale || 1));
  }

  get visible(): boolean {
    return this.#visible;
  }

  hostConnected(): void {
    if (isServer) return;
    this.#scope = new Scope();
    this.#inFrame = this.#scope.frames();
    this.#scope.onPixelRatio(() => this.request());
    this.#scope.observeVisibility(this.#host, (visible) => {
      this.#visible = visible;
      if (visible && this.#dirty) this.request();
    });
    this.#dirty = true;
    if (this.#box) this.#watch(this.#box);
  }

  hostDisconnected(): void {
    this.#scope?.dispose();
    this.#scope = null;
    this.#visible = false;
  }

  hostUpdated(): void {
    const box = (this.#host.renderRoot as ShadowRoot | undefined)?.querySelector(this.#selector) ?? null;
    if (box === this.#box) return;
    this.#box = box;
    if (box) this.#watch(box);
  }

  #watch(box: Element): void {
    this.#unwatch();
    this.#unwatch = () => undefined;
    if (!this.#scope) return;
    this.#unwatch = this.#scope.observeSize(box, (width, height) => {
      if (width === this.#width && height === this.#height) return;
      this.#width = width;
      this.#height = height;
      this.request();
    });
  }

  request(): void {
    this.#dirty = true;
    if (this.#visible) this.#inFrame(() => this.drawNow());
  }

  /** At once, also while not on screen: for printing. */
  drawNow(): void {
    if (this.#width === 0 || this.#height === 0) return;
    this.#dirty = false;
    this.#scale = this.#readScale();
    this.#draw();
  }
}
