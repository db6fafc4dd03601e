import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { proposalIsSure } from '../../study/source-readings.js';
import type { System, SystemSnapshot } from '../../study/system-types.js';
import type { Speaker } from '../../words/index.js';
import { styleValues } from '../shared/style-values.js';
import { sourceNames } from '../../sheet/point-name.js';

/** Settings looked for by the machine: bounds, search, what it would cost, and the way to take it. */
export function renderProposal(system: System, speaker: Speaker, changed: () => void): TemplateResult {
  const { snapshot } = system;
  const { design, proposing, grid } = snapshot;
  const { bounds } = design;
  const bound = (
    name: 'lowestGainDb' | 'longestDelaySeconds' | 'leastLevelDb',
    [from, to, step, unit]: readonly [number, number, number, number],
  ): TemplateResult =>
    html`<label
      ><span>${speaker.view(`bound-${name}`)}</span>
      <input
        type="number"
        part=${`bound-${name}`}
        min=${from}
        max=${to}
        step=${step}
        .value=${String(Number((bounds[name] * unit).toFixed(3)))}
        @change=${(event: Event) => {
          const field = event.target as HTMLInputElement;
          const typed = field.valueAsNumber;
          const value = Number.isFinite(typed) ? Math.min(to, Math.max(from, typed)) : bounds[name] * unit;
          field.value = String(Number(value.toFixed(3)));
          system.setDesign({ bounds: { ...bounds, [name]: value / unit } });
        }}
    /></label>`;
  return html`<section class="proposal" part="proposal" aria-label=${speaker.view('proposal-heading')}>
    <h3>${speaker.view('proposal-heading')}</h3>
    <div class="tools screen-only">
      ${bound('lowestGainDb', [-40, 0, 1, 1])} ${bound('longestDelaySeconds', [0, 100, 1, 1000])}
      ${bound('leastLevelDb', [-40, 0, 1, 1])}
      <label
        ><input
          type="checkbox"
          .checked=${live(bounds.polarity)}
          @change=${(event: Event) =>
            system.setDesign({ bounds: { ...bounds, polarity: (event.target as HTMLInputElement).checked } })}
        />
        ${speaker.view('bound-polarity')}</label
      >
    </div>
    <div class="tools screen-only">
      ${
        proposing
          ? html`<button type="button" part="cancel" @click=${() => system.cancelProposal()}>
                ${speaker.view('proposal-cancel')}
              </button>
              <span class="bar" style=${styleValues({ '--fraction': proposing.fraction })}><i></i></span>
              <span>${speaker.stage(proposing.stage)}</span>`
          : html`<button
              type="button"
              part="propose"
              ?disabled=${grid.sources.length < 2}
              @click=${() => void system.propose()}
            >
              ${speaker.view('proposal-look')}
            </button>`
      }
      <button
        type="button"
        part="reset"
        @click=${() => {
          system.reset();
          changed();
        }}
      >
        ${speaker.view('proposal-reset')}
      </button>
    </div>
    ${snapshot.proposal ? renderFound(system, snapshot, speaker, changed) : nothing}
  </section>`;
}

function renderFound(
  system: System,
  snapshot: SystemSnapshot,
  speaker: Speaker,
  changed: () => void,
): TemplateResult {
  const { n } = speaker;
  const { proposal } = snapshot;
  const { alike, score, trims, tradeOff } = proposal!;
  const names = sourceNames(snapshot, speaker);
  const sure = proposalIsSure(snapshot);
  const hang = alike.worstHangSeconds > 0;
  const rows = [
    { what: speaker.view('stage-measured'), ...alike, take: null },
    { what: speaker.view('proposal-best'), ...score, take: () => system.applyProposal() },
    ...tradeOff.map((point, k) => ({
      what: speaker.view('proposal-point', { number: k + 1 }),
      ...point.score,
      take: () => system.applyProposal(k),
    })),
  ];
  return html`<p role="status">
      ${speaker.view('proposal-result', {
        before: alike.meanSpatialVariance,
        after: score.meanSpatialVariance,
        levelDb: score.meanOutputLevelDb - alike.meanOutputLevelDb,
      })}
      ${speaker.view(sure === null ? 'proposal-unrepeated' : sure ? 'proposal-sure' : 'proposal-unsure')}
    </p>
    <ul>
      ${trims.map(
        ({ gainDb, delaySeconds, inverted }, k) =>
          html`<li>
            ${speaker.view('trim', { name: names[k], gainDb, ms: 1000 * delaySeconds, inverted })}
          </li>`,
      )}
    </ul>
    <div class="scroll" tabindex="0" role="group" aria-label=${speaker.view('trade-off')}>
      <table class="plain" part="trade-off">
        <caption>
          ${speaker.view('trade-off')}
        </caption>
        <thead>
          <tr>
            <th scope="col">${speaker.view('stage-column')}</th>
            <th scope="col">${speaker.view('variance-column')}</th>
            <th scope="col">${speaker.view('output-column')}</th>
            ${hang ? html`<th scope="col">${speaker.view('hang-column')}</th>` : nothing}
            <td></td>
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ({ what, meanSpatialVariance: variance, meanOutputLevelDb: level, worstHangSeconds, take }) =>
              html`<tr>
                <th scope="row">${what}</th>
                <td>${speaker.view('variance', { variance })}</td>
                <td>${n.decibels(level, 1)}</td>
                ${hang ? html`<td>${n.seconds(worstHangSeconds)}</td>` : nothing}
                <td>
                  ${
                    take
                      ? html`<button
                          type="button"
                          aria-label=${speaker.view('take-of', { what })}
                          @click=${() => {
                            take();
                            changed();
                          }}
                        >
                          ${speaker.view('take')}
                        </button>`
                      : nothing
                  }
                </td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    <p class="hint">${speaker.view('proposal-caution')}</p>`;
}
