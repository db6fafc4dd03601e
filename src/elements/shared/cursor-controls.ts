import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { indexAt } from '../../draw/field.js';
import type { Cursor, StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { readout } from './field-view.js';

/**
 * The keyboard's cursor: two real sliders, one step per column and slice of the grid, each saying its value in words.
 * The read-out beside them is for the eye; a status region speaks it once the hand rests, while a slider has the focus.
 */
export function cursorControls(
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
  const at = (positions: ArrayLike<number>, value: number): number => Math.round(indexAt(positions, value));
  const index = (event: Event): number => (event.target as HTMLInputElement).valueAsNumber;
  return html`<div class="cursor screen-only" part="cursor">
    <label>
      <span>${speaker.label('frequency')}</span>
      <input
        type="range"
        part="frequency-slider"
        aria-label=${speaker.view('cursor-frequency')}
        min="0"
        max=${frequenciesHz.length - 1}
        .value=${live(String(at(frequenciesHz, frequencyHz)))}
        aria-valuetext=${speaker.n.hertz(frequencyHz)}
        @input=${(event: Event) => moved({ frequencyHz: frequenciesHz[index(event)], timeSeconds })}
      />
    </label>
    <label>
      <span>${speaker.label('time')}</span>
      <input
        type="range"
        part="time-slider"
        aria-label=${speaker.view('cursor-time')}
        min="0"
        max=${timesSeconds.length - 1}
        .value=${live(String(at(timesSeconds, timeSeconds)))}
        aria-valuetext=${speaker.n.seconds(timeSeconds)}
        @input=${(event: Event) => moved({ frequencyHz, timeSeconds: timesSeconds[index(event)] })}
      />
    </label>
    <output class="readout" part="readout" aria-live="off">${readout(snapshot, speaker)}</output>
  </div>`;
}
