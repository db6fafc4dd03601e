import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { SheetRidge } from '../../sheet/report/subject.js';
import { actions, papers, withDecision } from '../../study/sheet-texts.js';
import type { Action, Paper, SheetTexts } from '../../study/sheet-texts.js';
import type { SheetPair } from '../../study/sheet-pair.js';
import type { Speaker } from '../../words/index.js';

export interface FormParts {
  readonly texts: SheetTexts;
  readonly pair: SheetPair;
  readonly seat: string | null;
  readonly ridges: readonly SheetRidge[];
  readonly speaker: Speaker;
  readonly write: (change: Partial<SheetTexts>) => void;
  readonly chooseSeat: (key: string | null) => void;
}

const valueOf = (event: Event): string =>
  (event.target as HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement).value;

/** What people write on the sheet; all of it may stay empty. */
export function renderForm(parts: FormParts): TemplateResult {
  const { texts, pair, seat, speaker, write } = parts;
  const field = (name: 'title' | 'client' | 'author' | 'date'): TemplateResult =>
    html`<label>
      ${speaker.view(`sheet-${name}`)}
      <input
        autocomplete="off"
        .value=${texts[name]}
        @input=${(event: Event) => write({ [name]: valueOf(event) })}
      />
    </label>`;
  return html`<div class="form" part="form">
      ${(['title', 'client', 'author', 'date'] as const).map(field)}
      <label class="wide-field">
        ${speaker.view('sheet-notes')}
        <textarea
          rows="3"
          .value=${texts.notes}
          @input=${(event: Event) => write({ notes: valueOf(event) })}
        ></textarea>
      </label>
      <label>
        ${speaker.view('report-paper')}
        <select part="paper" @change=${(event: Event) => write({ paper: valueOf(event) as Paper })}>
          ${papers.map((paper) => html`<option .selected=${live(paper === texts.paper)}>${paper}</option>`)}
        </select>
      </label>
      ${
        pair.seats.length > 1
          ? html`<label>
              ${speaker.view('report-seat')}
              <select part="seat" @change=${(event: Event) => parts.chooseSeat(valueOf(event) || null)}>
                <option value="" .selected=${live(seat === null)}>
                  ${speaker.view('report-worst-seat')}
                </option>
                ${pair.seats.map(
                  ({ key, name }) =>
                    html`<option value=${key} .selected=${live(key === seat)}>${name}</option>`,
                )}
              </select>
            </label>`
          : nothing
      }
    </div>
    <p class="hint">${speaker.view('report-typed')}</p>
    ${renderDecisions(parts)}`;
}

function renderDecisions({ ridges, texts, speaker, write }: FormParts): TemplateResult | typeof nothing {
  if (ridges.length === 0) return nothing;
  const { n } = speaker;
  return html`<details class="decisions" part="decisions">
    <summary>${speaker.view('report-decisions')}</summary>
    ${ridges.map(({ row, decision }) => {
      const { frequencyHz, decayTimeSeconds } = row.ridge;
      const decide = (change: { action?: Action; note?: string }): void =>
        write(withDecision(texts, frequencyHz, change));
      return html`<fieldset class="decision">
        <legend class="unseen">${speaker.view('report-decision-of', { frequencyHz })}</legend>
        <p>
          ${n.hertz(frequencyHz)}
          <small>${decayTimeSeconds === null ? speaker.label('never') : n.seconds(decayTimeSeconds)}</small>
        </p>
        <select
          aria-label=${speaker.view('report-decision-of', { frequencyHz })}
          @change=${(event: Event) => decide({ action: valueOf(event) as Action })}
        >
          ${actions.map(
            (action) =>
              html`<option value=${action} .selected=${live(action === (decision?.action ?? ''))}>
                ${speaker.view(`action-${action}`)}
              </option>`,
          )}
        </select>
        <input
          autocomplete="off"
          aria-label=${speaker.view('report-note-of', { frequencyHz })}
          .value=${decision?.note ?? ''}
          @change=${(event: Event) => decide({ note: valueOf(event) })}
        />
      </fieldset>`;
    })}
  </details>`;
}
