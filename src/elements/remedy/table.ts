import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { indexAt } from '../../draw/field.js';
import type { RemedySeat } from '../../sheet/remedy-chart.js';
import { levelsOfSeat, remedyReading } from '../../study/remedy-readings.js';
import type { SystemSnapshot } from '../../study/system-types.js';
import type { Speaker } from '../../words/index.js';

/** Steps of the table twin per octave. */
const rowsPerOctave = 6;

/** The chart as a table: levels without and with the filters, and their gain. */
export function renderRemedyTable(
  system: SystemSnapshot,
  seat: RemedySeat,
  speaker: Speaker,
): TemplateResult {
  const { n } = speaker;
  const { before, after, frequenciesHz, gainDb } = remedyReading(system)!;
  const read = system.matrix!.frequenciesHz;
  const levels = [before, after].map((one) => (seat === null ? one.meanDb : levelsOfSeat(one, seat)));
  const perStep = Math.max(1, Math.round(1 / (rowsPerOctave * Math.log2(read[1] / read[0]))));
  const rows = [...read.keys()].filter((f) => f % perStep === 0);
  return html`<table>
    <caption class="unseen">
      ${speaker.view('remedy-table')}
    </caption>
    <thead>
      <tr>
        <th scope="col">${speaker.label('frequency')}</th>
        <th scope="col">${speaker.view('before-column')}</th>
        <th scope="col">${speaker.view('remedy-after')}</th>
        <th scope="col">${speaker.view('gain-axis')}</th>
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (f) =>
          html`<tr>
            <th scope="row">${n.hertz(read[f])}</th>
            <td>${n.decibels(levels[0][f], 1)}</td>
            <td>${n.decibels(levels[1][f], 1)}</td>
            <td>${n.decibels(gainDb[Math.round(indexAt(frequenciesHz, read[f]))], 1)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}
