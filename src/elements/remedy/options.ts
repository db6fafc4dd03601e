import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { matchedBand, optionsOf, type Band, type RemedyOption } from '../../study/remedy-readings.js';
import type { SystemSnapshot } from '../../study/system-types.js';
import type { Speaker } from '../../words/index.js';
import { seatNames, sourceNames } from '../../sheet/point-name.js';

/** Everything that can be done about one ridge: why, what is expected after it, what it does besides, with what care. */
export function renderOptions(
  system: SystemSnapshot,
  index: number,
  add: (band: Band) => void,
  speaker: Speaker,
): TemplateResult | typeof nothing {
  const ridge = system.before?.diagnosis.ridges[index];
  if (!ridge) return nothing;
  const { frequencyHz, decayTimeSeconds, excess } = ridge;
  const options = optionsOf(system, index);
  const hasRoom = system.before.diagnosis.room !== null;
  const cautions = [...new Set(options.flatMap((option) => option.cautions))];
  const title = speaker.view('options-heading', { frequencyHz, decayTimeSeconds });
  return html`<section part="options" aria-label=${title}>
    <h3>${title}</h3>
    <dl class="options">
      ${options.map((option) => renderOption(option, { system, speaker, add, excess, index }))}
    </dl>
    <p class="hint">${speaker.view(hasRoom ? 'options-note' : 'options-room')}</p>
    <h4>${speaker.view('cautions-heading')}</h4>
    <ul class="cautions">
      ${cautions.map((code) => html`<li>${speaker.caution(code)}</li>`)}
    </ul>
  </section>`;
}

interface OptionParts {
  readonly system: SystemSnapshot;
  readonly speaker: Speaker;
  readonly add: (band: Band) => void;
  readonly excess: number | null;
  readonly index: number;
}

function renderOption(option: RemedyOption, parts: OptionParts): TemplateResult {
  const { system, speaker, add, excess, index } = parts;
  const { kind, standing, against, params, expectedSeconds, expectedDb } = option;
  const ridge = system.before!.diagnosis.ridges[index];
  const beside = besideTexts(option, system, speaker);
  const matchable =
    kind === 'cut' && typeof params.targetSeconds === 'number' && ridge.decayTimeSeconds !== null;
  const moved = kind === 'move-source' && typeof params.source === 'number' && system.grid.sources.length > 1;
  return html`<div class="option ${standing}">
    <dt>
      <span>${speaker.view(`option-${kind}`)}</span>
      <small>${speaker.view(`standing-${standing}`)}</small>
    </dt>
    <dd>
      <p>
        ${against ? speaker.view(`against-${against}`, { excess }) : nothing}
        ${against && kind === 'leave' ? nothing : speaker.remedy({ kind, params })}
        ${
          moved
            ? speaker.view('option-source', { name: sourceNames(system, speaker)[Number(params.source)] })
            : nothing
        }
      </p>
      <p>
        <b>${speaker.view('option-expected-head')}</b>:
        ${speaker.view('option-expected', { seconds: expectedSeconds, decibels: expectedDb })}
      </p>
      ${
        beside.length > 0
          ? html`<p><b>${speaker.view('option-beside-head')}</b>: ${beside.join('; ')}</p>`
          : nothing
      }
      ${
        matchable
          ? html`<button
              type="button"
              class="screen-only"
              part="option-cut"
              @click=${() =>
                add(
                  matchedBand({
                    frequencyHz: ridge.frequencyHz,
                    decayTimeSeconds: ridge.decayTimeSeconds!,
                    targetSeconds: Number(params.targetSeconds),
                  }),
                )}
            >
              ${speaker.view('option-add-cut')}
            </button>`
          : nothing
      }
    </dd>
  </div>`;
}

/** Ridges named beside an option: the most changed; the rest are counted. */
const mostRidges = 4;

/** What an option does at the seats and to other ridges, each in a few words; of many ridges the most changed. */
export function besideTexts(
  { sideEffects }: RemedyOption,
  system: SystemSnapshot,
  speaker: Speaker,
): string[] {
  const seats = seatNames(system, speaker);
  const size = (effect: RemedyOption['sideEffects'][number]): number =>
    effect.on === 'ridge' ? Math.abs(effect.changeDb ?? 0) : Infinity;
  const sorted = [...sideEffects].sort((a, b) => (size(a) === size(b) ? 0 : size(b) - size(a)));
  const shown = sorted.filter((effect) => effect.on === 'seat').length + mostRidges;
  const rest = sorted.length - shown;
  const texts = sorted.slice(0, shown).map((effect) =>
    effect.on === 'ridge'
      ? speaker.view('effect-ridge', {
          ...{ frequencyHz: effect.frequencyHz, changeDb: effect.changeDb, seconds: effect.expectedSeconds },
        })
      : speaker.view('effect-seat', {
          ...{ seat: seats[effect.seat], standingDb: effect.standingDb, heard: effect.heard },
        }),
  );
  return rest > 0 ? [...texts, speaker.view('effect-more', { count: rest })] : texts;
}
