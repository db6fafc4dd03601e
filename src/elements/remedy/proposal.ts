import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { deepestMatchDb, mostBandsOfAll, proposalOf } from '../../study/remedy-readings.js';
import type { System, SystemDesign } from '../../study/system-types.js';
import type { Speaker } from '../../words/index.js';

type Limits = SystemDesign['limits'];

/** Cuts for the ridges that the seats share, with limits, what they came to, and what was left alone. */
export function renderAuto(system: System, speaker: Speaker, changed: () => void): TemplateResult {
  const { snapshot } = system;
  const { limits } = snapshot.design;
  const field = (
    part: string,
    name: keyof Limits,
    [from, to, step]: readonly [number, number, number],
    shown: (value: number) => number,
  ): TemplateResult =>
    html`<label
      ><span>${speaker.view(`auto-${part}`)}</span>
      <input
        type="number"
        part="auto-${part}"
        min=${from}
        max=${to}
        step=${step}
        .value=${String(shown(limits[name]))}
        @change=${(event: Event) => {
          const input = event.target as HTMLInputElement;
          const typed = input.valueAsNumber;
          const value = Number.isFinite(typed) ? Math.min(to, Math.max(from, typed)) : shown(limits[name]);
          const whole = name === 'mostBands' ? Math.round(value) : value;
          input.value = String(whole);
          system.setDesign({ limits: { ...limits, [name]: shown(whole) } });
          changed();
        }}
    /></label>`;
  const found = snapshot.equaliser && proposalOf(snapshot);
  return html`<section part="auto" aria-label=${speaker.view('auto-heading')}>
    <h3>${speaker.view('auto-heading')}</h3>
    <div class="tools screen-only">
      ${field('most', 'mostBands', [1, mostBandsOfAll, 1], (value) => value)}
      ${field('lowest', 'lowestSeatDb', [0, 30, 1], (value) => -value || 0)}
      ${field('deepest', 'deepestDb', [0, -deepestMatchDb, 1], (value) => -value || 0)}
      <button
        type="button"
        part="propose"
        ?disabled=${!snapshot.before}
        @click=${() => {
          system.proposeBands();
          changed();
        }}
      >
        ${speaker.view('auto-button')}
      </button>
      ${snapshot.before ? nothing : html`<span>${speaker.view('auto-waiting')}</span>`}
    </div>
    ${
      found
        ? html`<div role="status">
            ${
              found.cuts.length === 0
                ? html`<p>${speaker.view('auto-nothing')}</p>`
                : html`<ul>
                    ${found.cuts.map((cut) => html`<li>${speaker.view('auto-made', { ...cut })}</li>`)}
                  </ul>`
            }
            ${
              found.skipped.length > 0
                ? html`<details part="skipped">
                    <summary>${speaker.view('auto-left')}</summary>
                    <ul>
                      ${found.skipped.map(
                        ({ frequencyHz, code }) =>
                          html`<li>
                            ${speaker.view('auto-skipped', { frequencyHz, why: speaker.view(`skip-${code}`) })}
                          </li>`,
                      )}
                    </ul>
                  </details>`
                : nothing
            }
          </div>`
        : nothing
    }
  </section>`;
}
