import { isServer } from 'lit';
import type { ReactiveController } from 'lit';
import type { DrawSize } from '../../draw/picture.js';
import { Scope } from '../scope.js';
import type { RingdownElement } from './element.js';

/** Pixels per CSS pixel beyond which more only costs time. */
const highestPixelRatio = 3;

/**
 * Where a picture stands: its size, whether it is on screen, the pixel ratio. Asks for a draw, at most one per frame, and
 * only while it is visible; what was asked for meanwhile is drawn when it comes back.
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

  get size(): DrawSize {
    return {
      cssWidth: this.#width,
      cssHeight: this.#height,
      pixelRatio: isServer ? 1 : Math.min(highestPixelRatio, devicePixelRatio),
    };
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
    this.#draw();
  }
}
