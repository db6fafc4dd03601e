import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { RemedyLayout } from '../../draw/remedy-chart.js';
import type { Band, BandChange } from '../../study/remedy-readings.js';
import type { Speaker } from '../../words/index.js';

export interface HandleParts {
  readonly bands: readonly Band[];
  readonly layout: () => RemedyLayout | null;
  /** Where a pointer stands over the picture, in its own pixels. */
  readonly pointOf: (event: MouseEvent, box: Element) => { readonly x: number; readonly y: number };
  readonly speaker: Speaker;
  readonly change: (index: number, change: BandChange) => void;
  /** Which band is held or has the focus. */
  readonly hold: (index: number | null) => void;
}

/** Octaves and dB per press of an arrow key; with Shift ten times as far. */
const stepOctaves = 0.01;
const stepDb = 0.1;
/** Of Q, per press of Page Up. */
const stepQ = 1.1;

/** What is typed in frequencies is whole tenths; so is what is dragged. */
const rounded = (value: number, step: number): number => Math.round(value / step) * step;

/** What an arrow or page key asks of a band; null for any other key. */
export function keyChange(band: Band, key: string, shift: boolean): BandChange | null {
  const far = shift ? 10 : 1;
  const { frequencyHz, gainDb, q, match } = band;
  switch (key) {
    case 'ArrowUp':
      return { gainDb: gainDb + far * stepDb };
    case 'ArrowDown':
      return { gainDb: gainDb - far * stepDb };
    case 'ArrowRight':
      return match ? null : { frequencyHz: frequencyHz * 2 ** (far * stepOctaves) };
    case 'ArrowLeft':
      return match ? null : { frequencyHz: frequencyHz / 2 ** (far * stepOctaves) };
    case 'PageUp':
      return match ? null : { q: q * stepQ };
    case 'PageDown':
      return match ? null : { q: q / stepQ };
    default:
      return null;
  }
}

/** What a drag to a frequency and a gain asks of a band: a matched cut keeps its frequency. */
export const dragChange = (band: Band, to: { position: number; gain: number }): BandChange =>
  band.match
    ? { gainDb: rounded(to.gain, 0.1) }
    : { frequencyHz: rounded(to.position, 0.1), gainDb: rounded(to.gain, 0.1) };

/** One button per band upon the plot of the gains, so that pointer, keyboard and screen reader find it. */
export function renderHandles({
  bands,
  layout,
  pointOf,
  speaker,
  change,
  hold,
}: HandleParts): TemplateResult[] {
  return bands.map((band, index) => {
    const pointed = (event: PointerEvent): BandChange | null => {
      const { x, y } = pointOf(event, (event.currentTarget as HTMLElement).parentElement!);
      const at = layout()?.toBand(x, y);
      return at ? dragChange(band, at) : null;
    };
    const press = (event: PointerEvent): void => {
      if (event.button !== 0) return;
      const node = event.currentTarget as HTMLElement;
      node.setPointerCapture(event.pointerId);
      node.focus();
      hold(index);
    };
    const move = (event: PointerEvent): void => {
      if (!(event.currentTarget as HTMLElement).hasPointerCapture(event.pointerId)) return;
      const to = pointed(event);
      if (to) change(index, to);
    };
    const release = (event: PointerEvent): void => {
      const node = event.currentTarget as HTMLElement;
      if (node.hasPointerCapture(event.pointerId)) node.releasePointerCapture(event.pointerId);
    };
    const { frequencyHz, gainDb, q, match } = band;
    const kind = speaker.view(match ? 'band-matched' : `band-${band.kind}`);
    return html`<button
      type="button"
      class="handle ${match ? 'matched' : ''}"
      part="handle"
      data-band=${index}
      aria-label=${speaker.view('band-handle', { number: index + 1, kind, frequencyHz, gainDb, q })}
      aria-describedby="help"
      @pointerdown=${press}
      @pointermove=${move}
      @pointerup=${release}
      @pointercancel=${release}
      @focus=${() => hold(index)}
      @blur=${() => hold(null)}
      @keydown=${(event: KeyboardEvent) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return;
        const wanted = keyChange(band, event.key, event.shiftKey);
        if (!wanted) return;
        event.preventDefault();
        change(index, wanted);
      }}
    >
      <span aria-hidden="true">${index + 1}</span>
    </button>`;
  });
}
