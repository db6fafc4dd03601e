/** One swing takes so long, s: slow enough to follow with the eye. */
const swingSeconds = 4;
/** Pictures per second while it swings. */
const swingRate = 24;

export interface SwingHost {
  /** Whether it is to move now. */
  readonly moving: () => boolean;
  /** Where it can be seen; out of sight it waits to be drawn again. */
  readonly visible: () => boolean;
  readonly request: () => void;
  /** The colours alone. */
  readonly draw: () => void;
  readonly inFrame: (action: () => void) => void;
}

/** The slow oscillation of the shape. */
export class Swing {
  readonly #host: SwingHost;
  #began = 0;
  #drawnAt = 0;

  constructor(host: SwingHost) {
    this.#host = host;
  }

  /** Begins anew, at the whole shape. */
  begin(): void {
    this.#began = performance.now();
  }

  /** From 1 to -1 and back; whole while it stands still: what is seen is the shape itself. */
  get factor(): number {
    if (!this.#host.moving()) return 1;
    return Math.cos((2 * Math.PI * (performance.now() - this.#began)) / (1000 * swingSeconds));
  }

  /** Goes on only while it is seen. */
  run(): void {
    const { moving, visible, request, draw, inFrame } = this.#host;
    if (!moving()) return;
    inFrame(() => {
      if (!moving()) return;
      if (!visible()) {
        request();
        return;
      }
      const now = performance.now();
      if (now - this.#drawnAt >= 1000 / swingRate - 4) {
        this.#drawnAt = now;
        draw();
      }
      this.run();
    });
  }
}
