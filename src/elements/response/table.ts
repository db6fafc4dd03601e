import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { overNoiseDb } from '../../study/readings.js';
import type { Speaker } from '../../words/index.js';
import { levelAt, spreadOf } from '../../sheet/response-chart.js';
import type { Seat } from '../../sheet/response-chart.js';

/** Rows per octave: a table is read line by line. */
const perOctave = 12;

/** The curves at twelve frequencies per octave, then peaks and dips. */
export function responseTable(seats: readonly Seat[], active: number, speaker: Speaker): TemplateResult {
  const { n } = speaker;
  const main = seats.find(({ index }) => index === active)!.response;
  const { frequenciesHz, levelsDb, noiseDb, extremes } = main;
  const [low, high] = [frequenciesHz[0], frequenciesHz[frequenciesHz.length - 1]];
  const count = Math.max(1, Math.floor(Math.log2(high / low) * perOctave + 1e-9));
  const rows = Array.from({ length: count + 1 }, (_, k) => low * 2 ** (k / perOctave));
  const spread = spreadOf(seats);
  const noiseAt = (f: number): number =>
    noiseDb[
      Math.max(
        0,
        frequenciesHz.findIndex((at) => at >= f),
      )
    ];
  return html`<table>
      <caption class="unseen">
        ${speaker.view('levels-table')}
      </caption>
      <thead>
        <tr>
          <th scope="col">${speaker.label('frequency')}</th>
          ${seats.map(({ label }) => html`<th scope="col">${label}</th>`)}
          ${spread ? html`<th scope="col">${speaker.view('seat-spread')}</th>` : nothing}
        </tr>
      </thead>
      <tbody>
        ${rows.map((f) => {
          const levels = seats.map(({ response }) => levelAt(response, f));
          const own = levelAt(main, f);
          return html`<tr class=${own <= noiseAt(f) + overNoiseDb ? 'doubtful' : ''}>
            <th scope="row">${n.hertz(f)}</th>
            ${levels.map((level) => html`<td>${n.decibels(level, 1)}</td>`)}
            ${spread ? html`<td>${n.decibels(Math.max(...levels) - Math.min(...levels), 1)}</td>` : nothing}
          </tr>`;
        })}
      </tbody>
    </table>
    ${
      extremes.length > 0
        ? html`<table>
            <caption class="unseen">
              ${speaker.view('extremes-table')}
            </caption>
            <thead>
              <tr>
                <th scope="col">${speaker.label('frequency')}</th>
                <th scope="col">${speaker.label('kind')}</th>
                <th scope="col">${speaker.label('level')}</th>
                <th scope="col">${speaker.view('prominence')}</th>
              </tr>
            </thead>
            <tbody>
              ${extremes.map(
                ({ index, kind, prominenceDb }) =>
                  html`<tr>
                    <th scope="row">${n.hertz(frequenciesHz[index])}</th>
                    <td>${speaker.view(kind)}</td>
                    <td>${n.decibels(levelsDb[index], 1)}</td>
                    <td>${n.decibels(prominenceDb, 1)}</td>
                  </tr>`,
              )}
            </tbody>
          </table>`
        : nothing
    }`;
}
