import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { pairRows, pairSummary, refusalsOf, ridgeOfRow, type PairRow } from '../../study/pair-readings.js';
import type { PairSnapshot } from '../../study/pair.js';
import type { DifferenceTable } from '../../sheet/pair-view.js';
import type { Speaker } from '../../words/index.js';

/** Each ridge in both, with its uncertainty, and whether the change is larger than that. */
export function renderPairRidges(
  pair: PairSnapshot,
  titles: readonly [string, string],
  speaker: Speaker,
): TemplateResult {
  const rows = pairRows(pair);
  if (!rows) return html`<p class="hint" role="status">${speaker.view('comparison-pending')}</p>`;
  const unread = [pair.first!, pair.second!].flatMap(({ diagnosis }, k) => {
    const notes = refusalsOf(diagnosis!);
    return notes.length === 0 ? [] : [{ label: titles[k], notes }];
  });
  if (unread.length > 0)
    return html`<div role="status" part="unread">
      ${unread.map(
        ({ label, notes }) =>
          html`<p class="summary wrong">
            ${speaker.view('comparison-unread', { label })}
            ${notes.map((note) => speaker.note(note)).join(' ')}
          </p>`,
      )}
    </div>`;
  if (rows.length === 0) return html`<p class="summary" role="status">${speaker.view('comparison-none')}</p>`;
  const heads = ['limit-column', 'first-column', 'second-column', 'change-column', 'surely-column'];
  return html`<p class="summary" role="status" part="summary">
      ${speaker.view('comparison-summary', { ...pairSummary(rows) })}
    </p>
    <div class="scroll tall" tabindex="0" role="group" aria-label=${speaker.view('comparison-ridges')}>
      <table class="plain" part="ridges">
        <caption>
          ${speaker.view('comparison-ridges')}
        </caption>
        <thead>
          <tr>
            <th scope="col">${speaker.label('frequency')}</th>
            ${heads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map((row) => renderRow(row, speaker))}
        </tbody>
      </table>
    </div>
    <p class="hint">${speaker.view('comparison-sure')}</p>`;
}

function renderRow(row: PairRow, speaker: Speaker): TemplateResult {
  const { n } = speaker;
  const { frequencyHz, limitSeconds } = ridgeOfRow(row);
  const { before, afterSeconds, afterSdSeconds, changeSeconds, changeSdSeconds, verdict, above } = row;
  const first =
    before === null
      ? '–'
      : before.decayTimeSeconds === null
        ? speaker.label('never')
        : n.plusMinus(before.decayTimeSeconds, before.decayTimeSdSeconds, 's');
  const words: Record<PairRow['verdict'], string> = {
    shorter: 'yes-shorter',
    longer: 'yes-longer',
    unsure: 'no-change',
    'not-found': 'not-found',
    new: 'new-ridge',
  };
  return html`<tr>
    <th scope="row">${n.hertz(frequencyHz)}</th>
    <td>${limitSeconds === null ? '–' : n.seconds(limitSeconds)}</td>
    <td>${first}</td>
    <td>
      ${afterSeconds === null ? '–' : n.plusMinus(afterSeconds, afterSdSeconds, 's')}
      ${
        before && !above && afterSeconds !== null
          ? html`<span class="doubtful">${speaker.view('below-limit')}</span>`
          : nothing
      }
    </td>
    <td>${changeSeconds === null ? '–' : n.plusMinus(changeSeconds, changeSdSeconds, 's')}</td>
    <td class=${verdict === 'unsure' || verdict === 'not-found' ? 'doubtful' : ''}>
      ${speaker.view(words[verdict])}
    </td>
  </tr>`;
}

/** The pictures as a table: differences in level, over frequency and time. */
export function renderDifferences(
  { frequenciesHz, timesSeconds, differencesDb }: DifferenceTable,
  speaker: Speaker,
): TemplateResult {
  const { n } = speaker;
  return html`<table>
    <caption class="unseen">
      ${speaker.view('comparison-table')}
    </caption>
    <thead>
      <tr>
        <th scope="col">${speaker.label('frequency')}</th>
        ${timesSeconds.map((seconds) => html`<th scope="col">${speaker.view('at-time', { seconds })}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${frequenciesHz.map(
        (frequency, f) =>
          html`<tr>
            <th scope="row">${n.hertz(frequency)}</th>
            ${differencesDb[f].map(
              (decibels) =>
                html`<td>${decibels === null ? '–' : speaker.view('signed-decibels', { decibels })}</td>`,
            )}
          </tr>`,
      )}
    </tbody>
  </table>`;
}
