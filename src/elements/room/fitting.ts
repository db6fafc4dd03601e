import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { roomFitHeads, roomFitRows, roomFitSentences, type RoomFit } from '../../sheet/room-fit.js';
import type { Speaker } from '../../words/index.js';

/** Where a fit of the sides stands: not asked for, under way, made, or refused with its reason. */
export type Fitting =
  | { readonly at: 'none' }
  | { readonly at: 'working' }
  | { readonly at: 'done'; readonly fit: RoomFit }
  | { readonly at: 'refused'; readonly reason: string };

export interface FittingParts {
  readonly fitting: Fitting;
  readonly speaker: Speaker;
  readonly start: () => void;
  readonly take: (fit: RoomFit) => void;
  readonly leave: () => void;
}

/** The button that fits the sides, then what the fit says, for the user to take or leave. */
export function renderFitting({ fitting, speaker, start, take, leave }: FittingParts): TemplateResult {
  const { at } = fitting;
  return html`<section class="fitting" part="fitting" aria-live="polite">
    ${
      at === 'done'
        ? nothing
        : html`<button
            type="button"
            part="fit"
            class="screen-only"
            ?disabled=${at === 'working'}
            @click=${start}
          >
            ${speaker.view('room-fit')}
          </button>`
    }
    ${at === 'working' ? html`<p class="hint">${speaker.view('room-fit-working')}</p>` : nothing}
    ${at === 'refused' ? html`<p class="wrong">${fitting.reason}</p>` : nothing}
    ${
      at === 'done'
        ? html`<h3>${speaker.view('room-fit-heading')}</h3>
            ${roomFitSentences(fitting.fit, speaker).map((sentence) => html`<p>${sentence}</p>`)}
            <div class="scroll">
              <table>
                <thead>
                  <tr>
                    ${roomFitHeads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
                  </tr>
                </thead>
                <tbody>
                  ${roomFitRows(fitting.fit, speaker).map(
                    ([first, ...rest]) =>
                      html`<tr>
                        <th scope="row">${first}</th>
                        ${rest.map((cell) => html`<td>${cell}</td>`)}
                      </tr>`,
                  )}
                </tbody>
              </table>
            </div>
            <div class="row screen-only">
              <button type="button" part="fit-take" @click=${() => take(fitting.fit)}>
                ${speaker.view('room-fit-take')}
              </button>
              <button type="button" part="fit-leave" @click=${leave}>
                ${speaker.view('room-fit-leave')}
              </button>
            </div>`
        : nothing
    }
  </section>`;
}
