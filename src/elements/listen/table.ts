import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { HeardKind, Listened } from '../../study/listen.js';
import type { Speaker } from '../../words/index.js';

/** What each sound is, with its levels; the one that is heard is marked. */
export function renderTable(
  { heard }: Listened,
  chosen: HeardKind,
  volumeDb: number | null,
  speaker: Speaker,
): TemplateResult {
  const { n } = speaker;
  const heads = ['sound', 'now', 'mean', 'peak', 'match', 'limiter', 'rings'];
  return html`<table>
    <thead>
      <tr>
        ${heads.map((head) => html`<th scope="col">${speaker.view(`listen-${head}-column`)}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${heard.map(
        ({ kind, meanDb, peakDb, matchDb, limitedDb, ringsSeconds }) =>
          html`<tr class=${kind === chosen ? 'selected' : ''}>
            <th scope="row">${speaker.view(`heard-${kind}`)}</th>
            <td>
              ${
                kind !== chosen
                  ? '–'
                  : volumeDb === null
                    ? speaker.view('listen-muted')
                    : n.decibels(volumeDb, 0)
              }
            </td>
            <td>${n.decibels(meanDb, 1)}</td>
            <td>${n.decibels(peakDb, 1)}</td>
            <td>${n.decibels(matchDb, 1)}</td>
            <td>${limitedDb > 0.05 ? n.decibels(-limitedDb, 1) : speaker.view('listen-untouched')}</td>
            <td>${n.seconds(ringsSeconds, 2)}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}
