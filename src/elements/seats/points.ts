import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { nearFieldBounds } from '../../study/inputs.js';
import { guessedPoint } from '../../study/points.js';
import type { Study } from '../../study/types.js';
import { parseNumber, type Speaker } from '../../words/index.js';

/**
 * What each recording is a recording of: source, seat and stage, typed or read from its name; and whether one clock timed
 * them all, without which sources cannot be summed.
 */
export function renderPoints(study: Study, speaker: Speaker, changed: () => void): TemplateResult {
  const { recordings } = study.snapshot;
  // One close to its source is added to nothing.
  const seats = recordings.filter(({ nearFieldMetres }) => nearFieldMetres === undefined);
  const common = seats.every(({ timeReference }) => timeReference === 'common');
  const columns = ['sourceName', 'seatName', 'stage'] as const;
  const heads = ['kind-source', 'kind-seat', 'stage-column'];
  const say = (index: number, about: Parameters<Study['setRecording']>[1]): void => {
    study.setRecording(index, about);
    changed();
  };
  const guess = (): void => {
    recordings.forEach(({ label }, index) => {
      const about = guessedPoint(label);
      if (about) study.setRecording(index, about);
    });
    changed();
  };
  return html`<details class="points screen-only" part="points">
    <summary>${speaker.view('points-edit')}</summary>
    <div class="scroll">
      <table class="plain">
        <thead>
          <tr>
            <th scope="col">${speaker.view('recordings')}</th>
            ${[...heads, 'near-field-column'].map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${recordings.map(
            (recording, index) =>
              html`<tr>
                <th scope="row">${recording.label || speaker.view('this-recording')}</th>
                ${columns.map(
                  (column, k) =>
                    html`<td>
                      <input
                        autocomplete="off"
                        aria-label=${speaker.view('point-of', {
                          what: speaker.view(heads[k]),
                          label: recording.label,
                        })}
                        .value=${recording[column] ?? ''}
                        @change=${(event: Event) =>
                          say(index, { [column]: (event.target as HTMLInputElement).value.trim() })}
                      />
                    </td>`,
                )}
                <td>
                  <input
                    class="distance"
                    inputmode="decimal"
                    autocomplete="off"
                    aria-label=${speaker.view('point-of', {
                      what: speaker.view('near-field-column'),
                      label: recording.label,
                    })}
                    .value=${recording.nearFieldMetres === undefined ? '' : speaker.n.significant(recording.nearFieldMetres, 2)}
                    @change=${(event: Event) => {
                      const input = event.target as HTMLInputElement;
                      const metres = parseNumber(input.value);
                      const [from, to] = nearFieldBounds;
                      const within = metres !== null && metres >= from && metres <= to;
                      input.setAttribute('aria-invalid', String(input.value.trim() !== '' && !within));
                      if (within || input.value.trim() === '')
                        say(index, { nearFieldMetres: within ? metres : null });
                    }}
                  />
                </td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    <p class="hint">${speaker.view('near-field-hint')}</p>
    <div class="tools">
      <button type="button" part="guess" @click=${guess}>${speaker.view('points-guess')}</button>
      <label>
        <input
          type="checkbox"
          part="clock"
          .checked=${live(common)}
          @change=${(event: Event) => {
            const timeReference = (event.target as HTMLInputElement).checked ? 'common' : 'none';
            recordings.forEach((_, index) => study.setRecording(index, { timeReference }));
            changed();
          }}
        />
        ${speaker.view('one-clock')}
      </label>
    </div>
    ${common ? nothing : html`<p class="hint">${speaker.view('one-clock-hint')}</p>`}
  </details>`;
}
