import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { arrivalsAtSeat, designedMatrix, sourcePhases } from '../../study/source-readings.js';
import type { Band, SourceSetting } from '../../study/source-readings.js';
import type { System } from '../../study/system-types.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { sourceNames } from '../../sheet/point-name.js';
import { settingOf } from './chart.js';

export interface ControlParts {
  readonly system: System;
  readonly study: StudySnapshot;
  readonly seat: number;
  readonly reference: number;
  readonly speaker: Speaker;
  /** What was typed for a source and could not be taken. */
  readonly wrong: ReadonlyMap<number, string>;
  readonly set: (source: number, change: Partial<SourceSetting>) => void;
  readonly setBand: (source: number, index: number, band: Band | null) => void;
}

interface NumberField {
  readonly part: string;
  readonly label: string;
  readonly value: number;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly set: (value: number) => void;
}

/** A field for one number: what is beyond its bounds comes back as the bound. */
function numberField({ part, label, value, from, to, step, set }: NumberField): TemplateResult {
  return html`<input
    type="number"
    part=${part}
    aria-label=${label}
    min=${from}
    max=${to}
    step=${step}
    .value=${String(Number(value.toFixed(4)))}
    @change=${(event: Event) => {
      const field = event.target as HTMLInputElement;
      const typed = field.valueAsNumber;
      const taken = Number.isFinite(typed) ? Math.min(to, Math.max(from, typed)) : value;
      field.value = String(taken);
      set(taken);
    }}
  />`;
}

/** Gain, delay, polarity, filters of each source, and how it stands in phase. */
export function renderControls(parts: ControlParts): TemplateResult {
  const { system, study, seat, reference, speaker, set } = parts;
  const { snapshot } = system;
  const { n } = speaker;
  const names = sourceNames(snapshot, speaker);
  const arrivals = arrivalsAtSeat(snapshot, study, seat);
  const matrix = designedMatrix(snapshot)!;
  const phases = sourcePhases(matrix, reference, [seat]);
  const heads = ['kind-source', 'gain-column', 'delay-column', 'inverted-column', 'muted-column'];
  const told = ['arrival-column', 'in-phase-column', 'best-phase-column'];
  return html`<div class="scroll" tabindex="0" role="group" aria-label=${speaker.view('settings-heading')}>
    <table class="plain" part="settings">
      <caption>
        ${speaker.view('settings-heading')}
      </caption>
      <thead>
        <tr>
          ${[...heads, ...told].map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${names.map((name, k) => {
          const setting = settingOf(snapshot, k);
          const { alignment, band } = phases[k];
          const flag = (field: 'inverted' | 'muted'): TemplateResult =>
            html`<input
              type="checkbox"
              aria-label=${speaker.view(`${field}-of`, { name })}
              .checked=${live(setting[field])}
              @change=${(event: Event) => set(k, { [field]: (event.target as HTMLInputElement).checked })}
            />`;
          return html`<tr>
              <th scope="row">${name}</th>
              <td>
                ${numberField({
                  ...{ part: 'gain', label: speaker.view('gain-of', { name }), value: setting.gainDb },
                  ...{ from: -60, to: 12, step: 0.5, set: (gainDb) => set(k, { gainDb }) },
                })}
              </td>
              <td>
                ${numberField({
                  ...{ part: 'delay', label: speaker.view('delay-of', { name }) },
                  value: 1000 * setting.delaySeconds,
                  ...{ from: 0, to: 200, step: 0.1, set: (ms) => set(k, { delaySeconds: ms / 1000 }) },
                })}
              </td>
              <td>${flag('inverted')}</td>
              <td>${flag('muted')}</td>
              <td>
                ${arrivals[k] === null ? '–' : speaker.view('milliseconds', { ms: 1000 * arrivals[k] })}
              </td>
              <td>
                ${
                  k === reference
                    ? speaker.view('reference')
                    : alignment
                      ? n.percent(alignment.matchNow, 0)
                      : speaker.view('nothing-shared')
                }
              </td>
              <td>
                ${
                  alignment && band
                    ? speaker.view('best-phase', {
                        match: alignment.match,
                        ms: 1000 * alignment.delaySeconds,
                        inverted: alignment.inverted,
                        sure: alignment.match - alignment.matchOther > 0.1,
                      })
                    : '–'
                }
              </td>
            </tr>
            ${renderFilters(parts, k, name)}`;
        })}
      </tbody>
    </table>
  </div>`;
}

const kinds = ['peaking', 'all-pass', 'low-shelf', 'high-shelf'] as const;
const freshBand: Band = { kind: 'all-pass', frequencyHz: 60, gainDb: 0, q: 0.7 };

function renderFilters(parts: ControlParts, source: number, name: string): TemplateResult {
  const { system, speaker, setBand, wrong } = parts;
  const { bands } = settingOf(system.snapshot, source);
  const problem = wrong.get(source);
  return html`<tr class="filters">
    <td colspan="8">
      <details ?open=${problem !== undefined}>
        <summary>${speaker.view('filters-of', { name, count: bands.length })}</summary>
        ${bands.map((band, index) => {
          const change = (some: Partial<Band>): void => setBand(source, index, { ...band, ...some });
          const number = (field: 'frequencyHz' | 'gainDb' | 'q', from: number, to: number, step: number) =>
            html`<label
              ><span>${speaker.view(`band-${field}`)}</span> ${numberField({
                ...{ part: `band-${field}`, label: speaker.view(`band-${field}`), value: band[field] },
                ...{ from, to, step, set: (value) => change({ [field]: value }) },
              })}</label
            >`;
          return html`<div class="tools band">
            <label
              ><span class="unseen">${speaker.view('band-kind')}</span>
              <select
                aria-label=${speaker.view('band-kind')}
                @change=${(event: Event) =>
                  change({ kind: kinds[(event.target as HTMLSelectElement).selectedIndex] })}
              >
                ${kinds.map(
                  (kind) =>
                    html`<option ?selected=${kind === band.kind}>${speaker.view(`band-${kind}`)}</option>`,
                )}
              </select></label
            >
            ${number('frequencyHz', 10, 1000, 1)}
            ${band.kind === 'all-pass' ? nothing : number('gainDb', -24, 12, 0.5)}
            ${number('q', 0.1, 120, 0.1)}
            <button
              type="button"
              aria-label=${speaker.view('band-remove', { name, number: index + 1 })}
              @click=${() => setBand(source, index, null)}
            >
              ×
            </button>
          </div>`;
        })}
        <button
          type="button"
          part="add-filter"
          ?disabled=${bands.length >= 8}
          @click=${() => setBand(source, bands.length, freshBand)}
        >
          ${speaker.view('add-filter')}
        </button>
        ${problem ? html`<p class="wrong" role="alert">${problem}</p>` : nothing}
      </details>
    </td>
  </tr>`;
}
