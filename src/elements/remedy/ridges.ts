import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { freshRidges, ridgeHangs, ridgesAfter, type RidgeAfter } from '../../study/remedy-readings.js';
import { refusalsOf } from '../../study/pair-readings.js';
import type { SystemSnapshot } from '../../study/system-types.js';
import type { Speaker } from '../../words/index.js';
import { seatNames } from '../../sheet/point-name.js';

/** How a change stands to its own uncertainty. */
export const sureText = (sure: boolean | null, speaker: Speaker): string =>
  speaker.view(sure === null ? 'sure-unknown' : sure ? 'sure-yes' : 'sure-no');

/** Each ridge without the filters, as expected with them, and as fitted to the samples through them. */
export function renderRidgesAfter(
  system: SystemSnapshot,
  chosen: number | null,
  choose: (ridge: number | null) => void,
  speaker: Speaker,
): TemplateResult {
  const rows = ridgesAfter(system);
  if (!rows)
    return html`<p class="hint" role="status">
      ${speaker.view('remedy-working', { stage: system.progress ? speaker.stage(system.progress.stage) : '' })}
    </p>`;
  const refusals = refusalsOf(system.before!.diagnosis);
  if (refusals.length > 0)
    return html`<div role="status">
      ${refusals.map((note) => html`<p class="wrong">${speaker.note(note)}</p>`)}
    </div>`;
  if (rows.length === 0) return html`<p role="status" class="hint">${speaker.view('no-ridges-here')}</p>`;
  const working = system.progress !== null && system.design.bands.length > 0;
  const heads = ['limit-column', 'before-column', 'remedy-expected', 'level-change-column', 'fitted-column'];
  return html`<section part="ridges" aria-label=${speaker.view('remedy-ridges')}>
    <h3>${speaker.view('remedy-ridges')}</h3>
    ${
      working
        ? html`<p class="hint" role="status">
            ${speaker.view('remedy-working', { stage: speaker.stage(system.progress.stage) })}
          </p>`
        : nothing
    }
    <div class="scroll tall" tabindex="0" role="group" aria-label=${speaker.view('remedy-ridges')}>
      <table class="plain">
        <caption class="unseen">
          ${speaker.view('remedy-ridges')}
        </caption>
        <thead>
          <tr>
            <th scope="col">${speaker.label('frequency')}</th>
            ${heads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
            <td></td>
          </tr>
        </thead>
        <tbody>
          ${rows.map((row, index) => renderRow(row, index, chosen === index, choose, speaker))}
        </tbody>
      </table>
    </div>
    ${renderHangs(system, speaker)}
    ${freshRidges(system).map(
      ({ frequencyHz, decayTimeSeconds }) =>
        html`<p class="wrong">${speaker.view('fresh-ridge', { frequencyHz, decayTimeSeconds })}</p>`,
    )}
  </section>`;
}

function renderRow(
  { ridge, expectedSeconds, expectedDb, fitted }: RidgeAfter,
  index: number,
  open: boolean,
  choose: (ridge: number | null) => void,
  speaker: Speaker,
): TemplateResult {
  const { n } = speaker;
  const { frequencyHz, limitSeconds, decayTimeSeconds, decayTimeSdSeconds } = ridge;
  const after = fitted?.afterSeconds ?? null;
  return html`<tr class=${open ? 'selected' : ''}>
    <th scope="row">${n.hertz(frequencyHz)}</th>
    <td>${limitSeconds === null ? '–' : n.seconds(limitSeconds)}</td>
    <td>
      ${decayTimeSeconds === null ? speaker.label('never') : n.plusMinus(decayTimeSeconds, decayTimeSdSeconds, 's')}
    </td>
    <td>${expectedSeconds === null ? '–' : n.seconds(expectedSeconds)}</td>
    <td>${speaker.view('signed-decibels', { decibels: expectedDb })}</td>
    <td>
      ${
        fitted
          ? after === null
            ? speaker.view('not-found')
            : html`${n.plusMinus(after, fitted.afterSdSeconds, 's')}
                <span class="doubtful">${sureText(fitted.sure, speaker)}</span>`
          : '–'
      }
    </td>
    <td>
      <button
        type="button"
        part="options-button"
        aria-expanded=${open}
        aria-label=${speaker.view('options-of', { frequencyHz })}
        @click=${() => choose(open ? null : index)}
      >
        ${speaker.view('options-button')}
      </button>
    </td>
  </tr>`;
}

/** How long each ridge hangs at each seat; of one seat the table above says all. */
function renderHangs(system: SystemSnapshot, speaker: Speaker): TemplateResult | typeof nothing {
  const rows = system.grid.seats.length > 1 ? ridgeHangs(system) : null;
  if (!rows) return nothing;
  const title = speaker.view('hangs-by-seat');
  return html`<details part="hangs">
    <summary>${title}</summary>
    <div class="scroll tall" tabindex="0" role="group" aria-label=${title}>
      <table class="plain">
        <caption class="unseen">
          ${title}
        </caption>
        <thead>
          <tr>
            <th scope="col">${speaker.label('frequency')}</th>
            ${seatNames(system, speaker).map((name) => html`<th scope="col">${name}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ({ ridge, seats }) =>
              html`<tr>
                <th scope="row">${speaker.n.hertz(ridge.frequencyHz)}</th>
                ${seats.map(
                  ({ before, after }) =>
                    html`<td class=${before === null ? 'doubtful' : ''}>
                      ${
                        before === null
                          ? speaker.view('not-heard')
                          : speaker.view('hang-change', { before, after })
                      }
                    </td>`,
                )}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
  </details>`;
}
