import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { ShownPlace } from '../../study/places.js';
import type { LengthUnit } from '../../study/room-form.js';
import type { Speaker } from '../../words/index.js';
import { placeName } from '../../sheet/place-name.js';
import { lengthText } from './form.js';

export interface PlacesParts {
  readonly places: readonly ShownPlace[];
  readonly unit: LengthUnit;
  readonly speaker: Speaker;
  /** The sentence on a place that was refused, by its index. */
  readonly wrong: ReadonlyMap<number, string>;
  readonly add: (kind: ShownPlace['kind']) => void;
  readonly remove: (place: ShownPlace) => void;
  readonly rename: (place: ShownPlace, name: string) => void;
  readonly type: (index: number, axis: 'x' | 'y' | 'z', text: string) => void;
}

/** Seats and sources as a table of fields: the plan's twin, and the way to type them. */
export function renderPlaces(parts: PlacesParts): TemplateResult {
  const { places, speaker, unit, wrong } = parts;
  const axes = ['x', 'y', 'z'] as const;
  const heads = ['place-kind', 'place-name', 'axis-x', 'axis-y', 'axis-z'];
  return html`<div class=${unit === 'ft' ? 'places feet' : 'places'} part="places">
    ${
      places.length === 0
        ? nothing
        : html`<div class="scroll">
            <table>
              <caption class="unseen">
                ${speaker.view('places')}
              </caption>
              <thead>
                <tr>
                  ${heads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
                  <td></td>
                </tr>
              </thead>
              <tbody>
                ${places.map((place, index) => {
                  const name = placeName(place, places, speaker);
                  const problem =
                    wrong.get(index) ?? (place.inside ? null : speaker.view('place-beyond', { name }));
                  return html`<tr>
                      <th scope="row">${speaker.view(`kind-${place.kind}`)}</th>
                      <td>
                        ${
                          place.own
                            ? html`<input
                                aria-label=${speaker.view('place-name-of', { name })}
                                autocomplete="off"
                                .value=${place.name}
                                @change=${(event: Event) =>
                                  parts.rename(place, (event.target as HTMLInputElement).value)}
                              />`
                            : html`${name} <small>${speaker.view('of-recording')}</small>`
                        }
                      </td>
                      ${axes.map(
                        (axis) =>
                          html`<td data-axis=${speaker.view(`axis-${axis}`)}>
                            <input
                              class="length"
                              aria-label=${speaker.view('place-axis', { name, axis })}
                              aria-invalid=${problem ? 'true' : nothing}
                              aria-describedby=${problem ? `wrong-place-${index}` : nothing}
                              autocomplete="off"
                              .value=${lengthText(place.at[axis], unit, speaker)}
                              @change=${(event: Event) =>
                                parts.type(index, axis, (event.target as HTMLInputElement).value)}
                            />
                          </td>`,
                      )}
                      <td>
                        ${
                          place.own
                            ? html`<button
                                type="button"
                                aria-label=${speaker.view('place-remove', { name })}
                                @click=${() => parts.remove(place)}
                              >
                                ×
                              </button>`
                            : nothing
                        }
                      </td>
                    </tr>
                    ${
                      problem
                        ? html`<tr class="refusal">
                            <td colspan="6">
                              <p class="wrong" id=${`wrong-place-${index}`} role="alert">${problem}</p>
                            </td>
                          </tr>`
                        : nothing
                    }`;
                })}
              </tbody>
            </table>
          </div>`
    }
    <div class="row screen-only">
      ${(['seat', 'source'] as const).map(
        (kind) =>
          html`<button type="button" part=${`add-${kind}`} @click=${() => parts.add(kind)}>
            ${speaker.view(`add-${kind}`)}
          </button>`,
      )}
    </div>
  </div>`;
}
