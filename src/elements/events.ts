import type { Cursor, StudyFailure, StudySnapshot } from '../study/types.js';

export interface ProgressDetail {
  /** A code of the engine, for example `fit`. */
  readonly stage: string;
  readonly fraction: number;
}

export interface ReadyDetail {
  readonly snapshot: StudySnapshot;
  /** How it was computed: `factory`, `sibling` or `inline` in a worker, `main` on the page's own thread; null if kept. */
  readonly way: string | null;
}

export interface ErrorDetail {
  /** The sentence that is shown. */
  readonly message: string;
  readonly failure: StudyFailure;
}

export interface CursorChangeDetail {
  /** null where the pointer left. */
  readonly cursor: Cursor | null;
}

export interface RidgeSelectDetail {
  /** Index into the ridges of the diagnosis; null where the selection was taken back. */
  readonly ridge: number | null;
}

export interface ModeSelectDetail {
  /** As (p,q,r); of a room given by a plan its wave, 0, and the order in height. Null where the choice was taken back. */
  readonly order: readonly [number, number, number] | null;
}

export interface StudyChangeDetail {
  readonly what: 'recordings' | 'active' | 'choices' | 'channel' | 'room' | 'places' | 'design' | 'sheet';
  readonly snapshot: StudySnapshot;
}

/** Every event of ours, by name, with its detail. */
export interface RingdownEventDetails {
  'ringdown-progress': ProgressDetail;
  'ringdown-ready': ReadyDetail;
  'ringdown-error': ErrorDetail;
  'ringdown-cursor-change': CursorChangeDetail;
  'ringdown-ridge-select': RidgeSelectDetail;
  'ringdown-mode-select': ModeSelectDetail;
  'ringdown-study-change': StudyChangeDetail;
}

export type RingdownEvents = { [K in keyof RingdownEventDetails]: CustomEvent<RingdownEventDetails[K]> };

/** Bubbles through the study and out of shadow roots, so that one listener on the page hears all. */
export function emit<K extends keyof RingdownEventDetails>(
  from: EventTarget,
  type: K,
  detail: RingdownEventDetails[K],
): void {
  from.dispatchEvent(new CustomEvent(type, { detail, bubbles: true, composed: true }));
}

declare global {
  // eslint-disable-next-line @typescript-eslint/no-empty-object-type -- merged into the DOM's own interface
  interface HTMLElementEventMap extends RingdownEvents {}
}
