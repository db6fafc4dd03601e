import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import {
  bandBoundsOf,
  matchedBand,
  mostBandsOfAll,
  remedyReading,
  ridgesAfter,
  type Band,
  type BandChange,
} from '../../study/remedy-readings.js';
import type { SystemSnapshot } from '../../study/system-types.js';
import { ownDecay } from '../../study/remedy-readings.js';
import type { Speaker } from '../../words/index.js';

export interface BandParts {
  readonly system: SystemSnapshot;
  readonly speaker: Speaker;
  /** Why the last change was not taken as it was wished. */
  readonly refusal: string;
  readonly change: (index: number, change: BandChange) => void;
  readonly remove: (index: number) => void;
  readonly add: (band: Band) => void;
  readonly clear: () => void;
}

const kinds = ['peaking', 'low-shelf', 'high-shelf'] as const;
type AddKind = (typeof kinds)[number];

/** New bands change nothing until they are set. */
const fresh: Readonly<Record<AddKind, Band>> = {
  peaking: { kind: 'peaking', frequencyHz: 60, gainDb: 0, q: 4 },
  'low-shelf': { kind: 'low-shelf', frequencyHz: 35, gainDb: 0, q: 0.7 },
  'high-shelf': { kind: 'high-shelf', frequencyHz: 90, gainDb: 0, q: 0.7 },
};

interface Field {
  readonly name: 'frequencyHz' | 'gainDb' | 'q' | 'targetSeconds';
  readonly value: number;
  readonly label: string;
  readonly bounds: readonly [number, number];
  readonly step: number;
  readonly digits: number;
}

/** A field for one number: what it becomes comes back to it, also where that is not what was typed. */
function numberField(
  { name, value, label, bounds, step, digits }: Field,
  set: (value: number) => void,
): TemplateResult {
  const text = String(Number(value.toFixed(digits)));
  return html`<input
    type="number"
    part="band-${name}"
    aria-label=${label}
    min=${bounds[0]}
    max=${bounds[1]}
    step=${step}
    .value=${text}
    @change=${(event: Event) => {
      const field = event.target as HTMLInputElement;
      const typed = field.valueAsNumber;
      // Shown again whatever comes of it: a refusal may leave the band as it is.
      field.value = text;
      if (Number.isFinite(typed)) set(typed);
    }}
  />`;
}

/** The filters as numbers, with ways to add and remove them. */
export function renderBands(parts: BandParts): TemplateResult {
  const { system, speaker, refusal } = parts;
  const { bands } = system.design;
  const heads = [
    'kind-column',
    'frequency-column',
    'band-gain-column',
    'q-column',
    'target-column',
    'cost-column',
  ];
  return html`<section part="bands" aria-label=${speaker.view('remedy-bands')}>
    <h3>${speaker.view('remedy-bands')}</h3>
    ${
      bands.length === 0
        ? html`<p class="hint">${speaker.view('no-bands')}</p>`
        : html`<div class="scroll" tabindex="0" role="group" aria-label=${speaker.view('remedy-bands')}>
            <table class="plain bands">
              <caption class="unseen">
                ${speaker.view('remedy-bands')}
              </caption>
              <thead>
                <tr>
                  <td></td>
                  ${heads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
                  <td></td>
                </tr>
              </thead>
              <tbody>
                ${bands.map((band, index) => renderBand(parts, band, index))}
              </tbody>
            </table>
          </div>`
    }
    <p class="wrong" role="alert" part="refusal">${refusal}</p>
    ${renderAdd(parts)}
  </section>`;
}

function renderBand(
  { system, speaker, change, remove }: BandParts,
  band: Band,
  index: number,
): TemplateResult {
  const number = index + 1;
  const { match } = band;
  const field = (
    name: Field['name'],
    head: string,
    value: number,
    rest: Pick<Field, 'bounds' | 'step' | 'digits'>,
  ): TemplateResult =>
    numberField(
      { name, value, label: speaker.view('band-field', { what: speaker.view(head), number }), ...rest },
      (typed) => change(index, { [name]: typed }),
    );
  return html`<tr>
    <th scope="row">${number}</th>
    <td>
      ${
        match
          ? html`${speaker.view('band-matched')}
              <span class="doubtful">${speaker.view('band-matches', { ...match })}</span>`
          : html`<select
              aria-label=${speaker.view('band-kind-of', { number })}
              @change=${(event: Event) =>
                change(index, { kind: kinds[(event.target as HTMLSelectElement).selectedIndex] })}
            >
              ${kinds.map(
                (kind) =>
                  html`<option ?selected=${kind === band.kind}>${speaker.view(`band-${kind}`)}</option>`,
              )}
            </select>`
      }
    </td>
    <td>
      ${
        match
          ? speaker.n.number(band.frequencyHz, 2)
          : field('frequencyHz', 'frequency-column', band.frequencyHz, {
              ...{ bounds: bandBoundsOf.frequencyHz, step: 0.1, digits: 2 },
            })
      }
    </td>
    <td>
      ${field('gainDb', 'band-gain-column', band.gainDb, { bounds: bandBoundsOf.gainDb, step: 0.1, digits: 3 })}
    </td>
    <td>
      ${
        match
          ? speaker.n.number(band.q, 2)
          : field('q', 'q-column', band.q, { bounds: bandBoundsOf.q, step: 0.1, digits: 3 })
      }
    </td>
    <td>
      ${
        match
          ? field('targetSeconds', 'target-column', match.targetSeconds, {
              ...{ bounds: [0.01, match.decayTimeSeconds] as const, step: 0.01, digits: 3 },
            })
          : '–'
      }
    </td>
    <td>${costText(system, band, index, speaker)}</td>
    <td>
      <button
        type="button"
        part="remove-band"
        aria-label=${speaker.view('band-take-away', { number })}
        @click=${() => remove(index)}
      >
        ×
      </button>
    </td>
  </tr>`;
}

/** How long a band rings itself, and what a boost takes. */
function costText(system: SystemSnapshot, band: Band, index: number, speaker: Speaker): string {
  const cost = remedyReading(system)?.costs[index];
  const rings = band.kind === 'peaking' ? [speaker.view('band-rings', { seconds: ownDecay(band) })] : [];
  const boosts =
    cost && cost.powerTimes > 1
      ? [speaker.view('band-costs', { power: cost.powerTimes, excursion: cost.excursionTimes })]
      : [];
  return [...rings, ...boosts].join('; ') || '–';
}

/** Ridges that a matched cut can be made for. */
function cuttable(
  system: SystemSnapshot,
): { frequencyHz: number; decayTimeSeconds: number; limitSeconds: number }[] {
  return (ridgesAfter(system) ?? []).flatMap(({ ridge }) => {
    const { frequencyHz, decayTimeSeconds, limitSeconds, resonance } = ridge;
    return decayTimeSeconds === null || resonance === null
      ? []
      : [{ frequencyHz, decayTimeSeconds, limitSeconds: limitSeconds ?? decayTimeSeconds / 2 }];
  });
}

function renderAdd({ system, speaker, add, clear }: BandParts): TemplateResult {
  const { bands } = system.design;
  const full = bands.length >= mostBandsOfAll;
  const ridges = cuttable(system);
  return html`<div class="tools screen-only">
    ${kinds.map(
      (kind) =>
        html`<button type="button" part="add-${kind}" ?disabled=${full} @click=${() => add(fresh[kind])}>
          ${speaker.view(`add-${kind}`)}
        </button>`,
    )}
    ${
      ridges.length > 0
        ? html`<label
              >${speaker.view('add-cut')}
              <select part="cut-of">
                ${ridges.map(
                  ({ frequencyHz, decayTimeSeconds }) =>
                    html`<option>
                      ${speaker.n.hertz(frequencyHz)}, ${speaker.n.seconds(decayTimeSeconds)}
                    </option>`,
                )}
              </select></label
            >
            <button
              type="button"
              part="add-cut"
              ?disabled=${full}
              @click=${(event: Event) => {
                const select = (event.currentTarget as HTMLElement).parentElement!.querySelector('select')!;
                const { limitSeconds, ...mode } = ridges[select.selectedIndex];
                add(matchedBand({ ...mode, targetSeconds: limitSeconds }));
              }}
            >
              ${speaker.view('add-cut-button')}
            </button>`
        : nothing
    }
    ${
      bands.length > 0
        ? html`<button type="button" part="clear" @click=${clear}>${speaker.view('remove-bands')}</button>`
        : nothing
    }
    ${full ? html`<span>${speaker.view('too-many-bands', { most: mostBandsOfAll })}</span>` : nothing}
  </div>`;
}
