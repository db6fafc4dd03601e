import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { bandCsv, biquadCsv, biquadDocument, type Band } from '../../study/remedy-readings.js';
import type { System } from '../../study/system-types.js';
import type { Speaker } from '../../words/index.js';
import { fileNameOf } from '../../sheet/figure-words.js';
import type { Scope } from '../scope.js';
import { download } from '../shared/save.js';

/** Rates of processors; any other can be typed. Hz. */
const usualRates = [44100, 48000, 88200, 96000, 192000] as const;
const rateBounds = [8000, 768000] as const;

const makers = {
  json: {
    kind: 'json',
    type: 'application/json',
    text: (bands: readonly Band[], rate: number) =>
      `${JSON.stringify(biquadDocument(bands, rate), null, 1)}\n`,
  },
  biquads: { kind: 'csv', type: 'text/csv', text: biquadCsv },
  bands: { kind: 'csv', type: 'text/csv', text: bandCsv },
} as const;

/** The filters as files for processors, at a sample rate that is chosen and said. */
export function renderExport(
  system: System,
  label: string,
  scope: () => Scope | null,
  speaker: Speaker,
  changed: () => void,
): TemplateResult {
  const { bands, sampleRate } = system.snapshot.design;
  const left = bands.filter(({ kind }) => kind !== 'peaking').length;
  const save = (name: keyof typeof makers): void => {
    const { kind, type, text } = makers[name];
    const owner = scope();
    if (!owner) return;
    const file = new Blob([text(bands, sampleRate)], { type });
    download(owner, file, fileNameOf(label, `filters ${name} ${sampleRate} Hz`, kind));
  };
  return html`<section part="export" class="screen-only" aria-label=${speaker.view('export-heading')}>
    <h3>${speaker.view('export-heading')}</h3>
    <div class="tools">
      <label
        ><span>${speaker.view('export-rate')}</span>
        <input
          type="number"
          part="rate"
          list="rates"
          min=${rateBounds[0]}
          max=${rateBounds[1]}
          step="1"
          .value=${String(sampleRate)}
          @change=${(event: Event) => {
            const field = event.target as HTMLInputElement;
            const typed = Math.round(field.valueAsNumber);
            const rate = Number.isFinite(typed)
              ? Math.min(rateBounds[1], Math.max(rateBounds[0], typed))
              : sampleRate;
            field.value = String(rate);
            system.setDesign({ sampleRate: rate });
            changed();
          }}
      /></label>
      <datalist id="rates">${usualRates.map((rate) => html`<option value=${rate}></option>`)}</datalist>
      ${(['json', 'biquads', 'bands'] as const).map(
        (name) =>
          html`<button
            type="button"
            part="export-${name}"
            ?disabled=${bands.length === 0}
            @click=${() => save(name)}
          >
            ${speaker.view(`export-${name}`)}
          </button>`,
      )}
    </div>
    <p class="hint">${speaker.view('export-note', { rate: sampleRate, left })}</p>
  </section>`;
}
