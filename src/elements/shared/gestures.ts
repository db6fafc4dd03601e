import { dragOrbit, pinchOrbit, wheelOrbit } from '../../draw/orbit.js';
import type { OrbitView } from '../../draw/types.js';

interface Owner {
  readonly orbit: () => OrbitView;
  readonly turned: (orbit: OrbitView) => void;
  readonly size: () => { readonly cssWidth: number; readonly cssHeight: number };
}

interface Finger {
  x: number;
  y: number;
}

/** A pointer that moved less than this, CSS pixels, has pressed and not dragged. */
const slackPixels = 4;
/** A wheel's line, CSS pixels. */
const linePixels = 16;

/**
 * Pointer and wheel into orbit. One finger turns sideways only: its way up and down belongs to the page, which scrolls.
 * Two fingers pinch and tilt. The wheel is the page's unless Control is held, as it is in a trackpad's pinch.
 */
export class OrbitGestures {
  readonly #owner: Owner;
  readonly #fingers = new Map<number, Finger>();
  #travelled = 0;
  #pinch: { view: OrbitView; distance: number } | null = null;

  /** Not passive, because it takes the wheel from the page where Control is held; only there. */
  readonly wheelListener = {
    handleEvent: (event: WheelEvent): void => this.#wheel(event),
    passive: false,
  };

  constructor(owner: Owner) {
    this.#owner = owner;
  }

  down(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.#fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    this.#travelled = 0;
    const target = event.currentTarget as Element;
    try {
      target.setPointerCapture(event.pointerId);
    } catch {
      // A pointer that is gone already, or one that a script made.
    }
    if (this.#fingers.size === 2) this.#pinch = { view: this.#owner.orbit(), distance: this.#spread() };
  }

  /** @returns whether the gesture took the move; else the pointer only hovers */
  move(event: PointerEvent): boolean {
    const finger = this.#fingers.get(event.pointerId);
    if (!finger) return false;
    const dx = event.clientX - finger.x;
    const dy = event.clientY - finger.y;
    this.#travelled += Math.hypot(dx, dy);
    finger.x = event.clientX;
    finger.y = event.clientY;
    const { orbit, size, turned } = this.#owner;
    if (this.#fingers.size === 2 && this.#pinch) {
      const { zoom } = pinchOrbit(this.#pinch.view, this.#spread() / this.#pinch.distance);
      turned({ ...dragOrbit(orbit(), dx / 2, dy / 2, size()), zoom });
    } else if (this.#travelled > slackPixels) {
      turned(dragOrbit(orbit(), dx, event.pointerType === 'touch' ? 0 : dy, size()));
    }
    return true;
  }

  /** @returns whether it was a press */
  up(event: PointerEvent): boolean {
    if (!this.#fingers.delete(event.pointerId)) return false;
    this.#pinch = null;
    return event.type === 'pointerup' && this.#fingers.size === 0 && this.#travelled <= slackPixels;
  }

  #spread(): number {
    const [a, b] = [...this.#fingers.values()];
    return Math.max(1, Math.hypot(a.x - b.x, a.y - b.y));
  }

  #wheel(event: WheelEvent): void {
    if (!event.ctrlKey && !event.metaKey) return;
    event.preventDefault();
    const pixels = event.deltaY * (event.deltaMode === 1 ? linePixels : 1);
    this.#owner.turned(wheelOrbit(this.#owner.orbit(), pixels));
  }
}
