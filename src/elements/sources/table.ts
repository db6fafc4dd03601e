import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { designedMatrix, levelsAtSeat, phasesAtSeat, sourcePhases } from '../../study/source-readings.js';
import type { SystemSnapshot } from '../../study/system-types.js';
import type { Speaker } from '../../words/index.js';
import { sourceNames } from '../../sheet/point-name.js';

/** Steps of the table twin per octave. */
const rowsPerOctave = 6;

/** The picture as a table. */
export function renderLevels(
  system: SystemSnapshot,
  seat: number,
  reference: number,
  speaker: Speaker,
): TemplateResult {
  const { n } = speaker;
  const matrix = designedMatrix(system)!;
  const { frequenciesHz } = matrix;
  const { sources, sum } = levelsAtSeat(matrix, seat);
  const phases = phasesAtSeat(matrix, reference, seat);
  const shared = sourcePhases(matrix, reference, [seat]);
  const names = sourceNames(system, speaker);
  const perStep = Math.max(
    1,
    Math.round(1 / (rowsPerOctave * Math.log2(frequenciesHz[1] / frequenciesHz[0]))),
  );
  const rows = [...frequenciesHz.keys()].filter((f) => f % perStep === 0);
  const phaseText = (k: number, f: number): string => {
    const { band } = shared[k];
    const known = band && frequenciesHz[f] >= band.fromHz && frequenciesHz[f] <= band.toHz;
    return known ? speaker.view('degrees', { degrees: phases[k][f] }) : '–';
  };
  return html`<table>
    <caption class="unseen">
      ${speaker.view('sources-table')}
    </caption>
    <thead>
      <tr>
        <th scope="col">${speaker.label('frequency')}</th>
        <th scope="col">${speaker.view('sum')}</th>
        ${names.map((name, k) =>
          k === reference
            ? html`<th scope="col">${name}</th>`
            : html`<th scope="col">${name}</th>
                <th scope="col">${speaker.view('phase-of', { name })}</th>`,
        )}
      </tr>
    </thead>
    <tbody>
      ${rows.map(
        (f) =>
          html`<tr>
            <th scope="row">${n.hertz(frequenciesHz[f])}</th>
            <td>${n.decibels(sum[f], 1)}</td>
            ${names.map(
              (_, k) =>
                html`<td>${n.decibels(sources[k][f], 1)}</td>
                  ${k === reference ? nothing : html`<td>${phaseText(k, f)}</td>`}`,
            )}
          </tr>`,
      )}
    </tbody>
  </table>`;
}
