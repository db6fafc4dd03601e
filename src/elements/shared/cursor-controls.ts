import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { indexAt } from '../../draw/field.js';
import type { Cursor, StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { readout } from '../../sheet/field-view.js';

/** One slider of the cursor: one step per position. */
export interface CursorSlider {
  readonly axis: 'frequency' | 'time' | 'x' | 'y' | 'z';
  /** Ascending, Hz, s or m. */
  readonly positions: ArrayLike<number>;
  readonly value: number;
  readonly moved: (value: number) => void;
}

const metres = (value: number, { n }: Speaker): string => n.metres(value, 2);
const textOf: Readonly<Record<CursorSlider['axis'], (value: number, speaker: Speaker) => string>> = {
  frequency: (value, { n }) => n.hertz(value),
  time: (value, { n }) => n.seconds(value),
  ...{ x: metres, y: metres, z: metres },
};

/**
 * The keyboard's cursor: real sliders, one step per position, each saying its value in words. The read-out beside them
 * is for the eye; a status region speaks it once the hand rests, while a slider has the focus.
 */
export function cursorControls(
  sliders: readonly CursorSlider[],
  readoutText: string,
  speaker: Speaker,
): TemplateResult {
  return html`<div class="cursor screen-only" part="cursor" data-sliders=${sliders.length}>
    ${sliders.map(({ axis, positions, value, moved }) => {
      const text = textOf[axis](value, speaker);
      return html`<label>
        <span>${speaker.label(axis)}</span>
        <input
          type="range"
          part="${axis}-slider"
          aria-label=${speaker.view(`cursor-${axis}`)}
          min="0"
          max=${positions.length - 1}
          .value=${live(String(Math.round(indexAt(positions, value))))}
          aria-valuetext=${text}
          @input=${(event: Event) => moved(positions[(event.target as HTMLInputElement).valueAsNumber])}
        />
      </label>`;
    })}
    <output class="readout" part="readout" aria-live="off">${readoutText}</output>
  </div>`;
}

/** The cursor of a grid: one step per column and slice. */
export function gridCursor(
  snapshot: StudySnapshot,
  speaker: Speaker,
  moved: (cursor: Cursor) => void,
): TemplateResult | typeof nothing {
  const { grid, cursor } = snapshot;
  if (!grid) return nothing;
  const { frequenciesHz, timesSeconds } = grid;
  const ridge = snapshot.diagnosis?.ridges[0];
  const frequencyHz = cursor?.frequencyHz ?? ridge?.frequencyHz ?? frequenciesHz[frequenciesHz.length >> 1];
  const timeSeconds = cursor?.timeSeconds ?? timesSeconds[0];
  return cursorControls(
    [
      {
        axis: 'frequency',
        positions: frequenciesHz,
        value: frequencyHz,
        moved: (value) => moved({ frequencyHz: value, timeSeconds }),
      },
      {
        axis: 'time',
        positions: timesSeconds,
        value: timeSeconds,
        moved: (value) => moved({ frequencyHz, timeSeconds: value }),
      },
    ],
    readout(snapshot, speaker),
    speaker,
  );
}
