import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { choicesFailure, choiceWords } from '../../study/choices.js';
import type { StudyChoices } from '../../study/types.js';
import { parseNumber } from '../../words/index.js';
import type { Speaker } from '../../words/index.js';

/** What is offered; another value that the page has set stands among them. */
const offered = {
  windowSeconds: [0.1, 0.2, 0.3, 0.5, 1],
  spanSeconds: [0.5, 1, 1.5, 2, 3],
  rangeDb: [30, 40, 50, 60, 80],
} as const;

/** The choices that every view of a study shares, in one place. A wrong frequency is said and changes nothing. */
export function choiceControls(
  choices: StudyChoices,
  speaker: Speaker,
  problem: string | null,
  choose: (change: Partial<StudyChoices>) => void,
  refuse: (sentence: string) => void,
): TemplateResult {
  const { n } = speaker;
  const { fromHz, toHz, axis, spanSeconds, rangeDb } = choices;

  const select = <T extends string | number>(
    name: keyof StudyChoices,
    values: readonly T[],
    textOf: (value: T) => string,
  ): TemplateResult => {
    const value = choices[name] as T;
    const all = values.includes(value) ? values : [...values, value].sort((a, b) => Number(a) - Number(b));
    return html`<label
      >${speaker.view(`choose-${name}`)}
      <select
        name=${name}
        @change=${(event: Event) => choose({ [name]: all[(event.target as HTMLSelectElement).selectedIndex] })}
      >
        ${all.map((one) => html`<option ?selected=${one === value}>${textOf(one)}</option>`)}
      </select></label
    >`;
  };

  const frequency = (name: 'fromHz' | 'toHz', value: number): TemplateResult => {
    const changed = (event: Event): void => {
      const field = event.target as HTMLInputElement;
      const text = field.value;
      const read = parseNumber(text);
      const failure =
        read === null
          ? { code: 'frequency-text', params: { text } }
          : choicesFailure({ ...choices, [name]: read });
      if (failure) refuse(speaker.error(failure));
      else choose({ [name]: read! });
    };
    return html`<label
      >${speaker.view(`choose-${name}`)}
      <input
        name=${name}
        type="text"
        inputmode="decimal"
        size="5"
        .value=${n.significant(value, 4)}
        @change=${changed}
    /></label>`;
  };

  return html`<details class="choices screen-only" part="choices">
    <summary>
      ${speaker.view('choices-summary')}
      <small
        >${speaker.view('choices-now', { fromHz, toHz, axis: speaker.term('axes', axis), spanSeconds, rangeDb })}</small
      >
    </summary>
    <div role="group" aria-label=${speaker.view('choices-summary')}>
      ${frequency('fromHz', fromHz)} ${frequency('toHz', toHz)}
      ${select('axis', choiceWords.axis, (one) => speaker.term('axes', one))}
      ${select('spanSeconds', offered.spanSeconds, (one) => n.seconds(one))}
      ${select('rangeDb', offered.rangeDb, (one) => n.decibels(one))}
      ${select('method', choiceWords.method, (one) => speaker.term('methods', one))}
      ${select('windowSeconds', offered.windowSeconds, (one) => n.seconds(one))}
      ${select('limit', choiceWords.limit, (one) => speaker.term('limits', one))}
      ${select('scale', choiceWords.scale, (one) => speaker.view(`scale-${one}`))}
      ${problem === null ? nothing : html`<p class="alert" role="status">${problem}</p>`}
    </div>
  </details>`;
}
