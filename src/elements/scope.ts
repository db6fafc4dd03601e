/**
 * The one owner of listeners, timers, frames and observers of an element. What is taken through a scope is given back
 * when the scope is disposed, in reverse order; so connect and disconnect mirror each other by construction. Nothing here
 * touches a browser global before it is called.
 */
export type Dispose = () => void;

type EventMapOf<T> = T extends Window
  ? WindowEventMap
  : T extends Document
    ? DocumentEventMap
    : T extends HTMLElement
      ? HTMLElementEventMap
      : T extends MediaQueryList
        ? MediaQueryListEventMap
        : Record<string, Event>;

export class Scope {
  readonly #disposers: Dispose[] = [];
  #disposed = false;

  get disposed(): boolean {
    return this.#disposed;
  }

  /** Adds something to be undone; at once where the scope is already disposed. Returns the way to undo it early. */
  add(dispose: Dispose): Dispose {
    if (this.#disposed) {
      dispose();
      return () => undefined;
    }
    this.#disposers.push(dispose);
    return () => {
      const at = this.#disposers.indexOf(dispose);
      if (at < 0) return;
      this.#disposers.splice(at, 1);
      dispose();
    };
  }

  /** A scope that ends with this one, or before. */
  child(): Scope {
    const scope = new Scope();
    this.add(() => scope.dispose());
    return scope;
  }

  listen<T extends EventTarget, K extends keyof EventMapOf<T> & string>(
    target: T,
    type: K,
    handler: (event: EventMapOf<T>[K]) => void,
    options: AddEventListenerOptions = {},
  ): Dispose {
    const listener = handler as EventListener;
    target.addEventListener(type, listener, options);
    return this.add(() => target.removeEventListener(type, listener, options));
  }

  timeout(action: () => void, milliseconds: number): Dispose {
    if (this.#disposed) return () => undefined;
    const undo = this.add(() => clearTimeout(id));
    const id = setTimeout(() => {
      undo();
      action();
    }, milliseconds);
    return undo;
  }

  /** Runs the action in the next animation frame; further calls before it only replace the action. */
  frames(): (action: () => void) => void {
    let wanted: (() => void) | null = null;
    let id = 0;
    this.add(() => cancelAnimationFrame(id));
    return (action) => {
      if (this.#disposed) return;
      if (!wanted)
        id = requestAnimationFrame(() => {
          const run = wanted;
          wanted = null;
          run?.();
        });
      wanted = action;
    };
  }

  /** Runs the action once nothing has been asked for during so long. */
  debounce(milliseconds: number): (action: () => void) => void {
    let undo: Dispose | null = null;
    return (action) => {
      undo?.();
      undo = this.timeout(action, milliseconds);
    };
  }

  observeSize(element: Element, seen: (width: number, height: number) => void): Dispose {
    const observer = new ResizeObserver((entries) => {
      const { width, height } = entries[entries.length - 1].contentRect;
      seen(width, height);
    });
    observer.observe(element);
    return this.add(() => observer.disconnect());
  }

  /**
   * On screen or nearly: the margin lets a picture be drawn before it is scrolled into view. The threshold is just above
   * zero, because at zero a neighbour that only touches the screen counts as visible.
   */
  observeVisibility(element: Element, seen: (visible: boolean) => void): Dispose {
    const observer = new IntersectionObserver((entries) => seen(entries[entries.length - 1].isIntersecting), {
      threshold: 0.00001,
    });
    observer.observe(element);
    return this.add(() => observer.disconnect());
  }

  observeMutations(node: Node, init: MutationObserverInit, seen: () => void): Dispose {
    const observer = new MutationObserver(() => seen());
    observer.observe(node, init);
    return this.add(() => observer.disconnect());
  }

  onMedia(query: string, changed: () => void): Dispose {
    return this.listen(matchMedia(query), 'change', changed);
  }

  /** Zoom and moves to another screen; the query is renewed at each change because it names the ratio that was. */
  onPixelRatio(changed: () => void): Dispose {
    let undo: Dispose = () => undefined;
    const renew = (): void => {
      undo();
      undo = this.onMedia(`(resolution: ${devicePixelRatio}dppx)`, () => {
        renew();
        changed();
      });
    };
    renew();
    return () => undo();
  }

  abortSignal(): AbortSignal {
    const controller = new AbortController();
    this.add(() => controller.abort());
    return controller.signal;
  }

  dispose(): void {
    if (this.#disposed) return;
    this.#disposed = true;
    for (const dispose of this.#disposers.splice(0).reverse()) {
      try {
        dispose();
      } catch (error) {
        console.error(error);
      }
    }
  }
}

/**
 * Runs the action unless it is called off first: a moved element is removed and put back at once, and must not lose what
 * is dear to make.
 */
export function afterGrace(action: () => void, milliseconds = 100): Dispose {
  const id = setTimeout(action, milliseconds);
  return () => clearTimeout(id);
}
