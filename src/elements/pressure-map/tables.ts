import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { placeName } from '../../sheet/place-name.js';
import { levelText, motionText, placesInMap, shapesAtPlaces, valueAt } from './chart.js';

/** What the mode does at each seat and source, and each source at each seat. */
export function renderPlaceTables(snapshot: StudySnapshot, speaker: Speaker): TemplateResult {
  const { n } = speaker;
  const places = placesInMap(snapshot);
  const rows = shapesAtPlaces(snapshot);
  if (rows.length === 0) return html`<p>${speaker.view('pressure-no-places')}</p>`;
  const map = snapshot.pressure!;
  const room = snapshot.room!;
  const heads = ['place-name', 'place-kind', 'pressure-column', 'pressure-level', 'motion-level'];
  return html`<table>
      <caption class="unseen">
        ${speaker.view('pressure-at-places')}
      </caption>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ({ place, shape, node }) =>
            html`<tr>
              <th scope="row">${placeName(place, places, speaker)}</th>
              <td>${speaker.view(`kind-${place.kind}`)}</td>
              <td>${n.number(shape, 2)}</td>
              <td>${levelText(shape, node, speaker)}</td>
              <td>${motionText(valueAt(map, room, place.at, 'motion'), speaker)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    ${renderLevels(snapshot, speaker)}`;
}

function renderLevels(snapshot: StudySnapshot, speaker: Speaker): TemplateResult | typeof nothing {
  const { levels } = snapshot.pressure!;
  const places = placesInMap(snapshot);
  const seats = places.filter(({ kind }) => kind === 'seat');
  const sources = places.filter(({ kind }) => kind === 'source');
  if (levels.length !== seats.length * sources.length || levels.length === 0) return nothing;
  const known = levels.every(({ levelDb }) => levelDb !== null);
  return html`<table>
    <caption>
      ${speaker.view(known ? 'levels-known' : 'levels-relative')}
    </caption>
    <thead>
      <tr>
        <td></td>
        ${sources.map((source) => html`<th scope="col">${placeName(source, places, speaker)}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${seats.map(
        (seat, k) =>
          html`<tr>
            <th scope="row">${placeName(seat, places, speaker)}</th>
            ${sources.map((_, source) => {
              const one = levels.find((level) => level.source === source && level.seat === k)!;
              return html`<td>
                ${
                  Math.abs(one.shape) < 0.01
                    ? speaker.view('on-a-node')
                    : speaker.n.decibels(one.levelDb ?? one.shapeDb, 0)
                }
              </td>`;
            })}
          </tr>`,
      )}
    </tbody>
  </table>`;
}
