import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { PlanLayout } from '../../draw/plan.js';
import type { Point } from './edit.js';

/** Something on the plan that can be moved: a button, so that keyboard and screen reader find it. */
export interface Handle {
  readonly id: string;
  /** m */
  readonly at: Point;
  readonly label: string;
  readonly moved: (to: Point) => void;
}

export interface HandleStage {
  readonly layout: () => PlanLayout;
  /** Where a pointer stands over the plan, in its own pixels. */
  readonly pointOf: (event: MouseEvent, box: Element) => Point;
  /** While it is dragged; null once it is let go. */
  readonly hold: (handle: string | null, at: Point | null) => void;
}

/** m per press of an arrow key; with Shift, and alone. */
const steps = { coarse: 0.5, fine: 0.1 } as const;
/** Places fall on whole centimetres. */
const rounded = (value: number): number => Math.round(value * 100) / 100;

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

export function renderHandles(handles: readonly Handle[], stage: HandleStage): TemplateResult[] {
  return handles.map((handle) => {
    const { at } = handle;
    const pointed = (event: PointerEvent): Point => {
      const at = stage.pointOf(event, (event.currentTarget as HTMLElement).parentElement!);
      const { x, y } = stage.layout().toMetres(at.x, at.y);
      return { x: rounded(x), y: rounded(y) };
    };
    const press = (event: PointerEvent): void => {
      if (event.button !== 0) return;
      const node = event.currentTarget as HTMLElement;
      node.setPointerCapture(event.pointerId);
      node.focus();
    };
    const move = (event: PointerEvent): void => {
      const node = event.currentTarget as HTMLElement;
      if (!node.hasPointerCapture(event.pointerId)) return;
      node.dataset.dragged = 'yes';
      stage.hold(handle.id, pointed(event));
    };
    const release = (event: PointerEvent): void => {
      const node = event.currentTarget as HTMLElement;
      if (!node.hasPointerCapture(event.pointerId)) return;
      node.releasePointerCapture(event.pointerId);
      const to = event.type === 'pointerup' && node.dataset.dragged ? pointed(event) : null;
      delete node.dataset.dragged;
      stage.hold(null, null);
      if (to) handle.moved(to);
    };
    return html`<button
      type="button"
      class="handle ${handle.id.split('-')[0]}"
      part="handle"
      data-x=${at.x}
      data-y=${at.y}
      aria-label=${handle.label}
      aria-describedby="help"
      @pointerdown=${press}
      @pointermove=${move}
      @pointerup=${release}
      @pointercancel=${release}
      @keydown=${(event: KeyboardEvent) => {
        const way = arrows[event.key];
        if (!way || event.ctrlKey || event.metaKey || event.altKey) return;
        event.preventDefault();
        const step = event.shiftKey ? steps.coarse : steps.fine;
        handle.moved({ x: rounded(at.x + way[0] * step), y: rounded(at.y + way[1] * step) });
      }}
    ></button>`;
  });
}
