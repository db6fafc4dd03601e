import { isServer } from 'lit';
import type { ReactiveController } from 'lit';
import { createPair, type Pair, type PairSnapshot, type PairWish } from '../../study/pair.js';
import type { System } from '../../study/system-types.js';
import type { Study } from '../../study/types.js';
import type { RingdownElement } from './element.js';

/** Where two stages are looked for: the study of an element, once there is one. */
export interface PairHost extends RingdownElement {
  readonly study: Study | null;
  readonly system: System | null;
}

/** Two stages beside each other for one element: made with its study, gone with the element's stay in the page. */
export class PairController implements ReactiveController {
  readonly #host: PairHost;
  readonly #changed: () => void;
  #study: Study | null = null;
  #pair: Pair | null = null;
  #wish: PairWish = {};

  constructor(host: PairHost, changed: () => void) {
    this.#host = host;
    this.#changed = changed;
    host.addController(this);
  }

  get snapshot(): PairSnapshot | null {
    return this.#pair?.snapshot ?? null;
  }

  /** Kept for the next study, too: a moved element shows what it showed. */
  choose(wish: PairWish): void {
    this.#wish = { ...this.#wish, ...wish };
    this.#pair?.choose(wish);
  }

  /** Follows the study that the element shows now. */
  follow(): void {
    if (isServer || !this.#host.isConnected) return;
    const { study, system } = this.#host;
    if (study === this.#study) return;
    this.hostDisconnected();
    if (!study || !system) return;
    this.#study = study;
    // Nothing is told before it is held here.
    this.#pair = createPair(study, system, () => {
      if (this.#pair && this.#study === study) this.#changed();
    });
    this.#pair.choose(this.#wish);
  }

  hostDisconnected(): void {
    this.#pair?.dispose();
    this.#pair = null;
    this.#study = null;
  }
}
