import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { state } from 'lit/decorators.js';
import type { StudySnapshot } from '../../study/types.js';
import { orderText, ridgeRows } from '../../sheet/ridges.js';
import type { Candidate, RidgeRow } from '../../sheet/ridges.js';
import { tokens } from '../shared/styles.js';
import { ViewElement } from '../shared/view-element.js';
import { ridgesStyles } from './styles.js';
import { styleValues } from '../shared/style-values.js';

type Diagnosis = NonNullable<StudySnapshot['diagnosis']>;

/** Candidates that stand in the cell; the rest is one click away. */
const candidatesShown = 3;
/** Rows shown at first: the worst, where a hard room has dozens above its limit. */
const rowsShown = 10;
/** Rows of a first answer: enough to see what hangs. */
const firstShown = 6;

/**
 * The flagged ridges as a table: the twin of every picture for those who do not see them, and the place where the
 * evidence is written out. Worst first, by how far each exceeds its limit. Selecting a row selects the ridge everywhere.
 *
 * @summary Table of the ridges that hang, with limits, candidates and what may help.
 * @tag ringdown-ridges
 *
 * @fires {CustomEvent<RidgeSelectDetail>} ringdown-ridge-select - The user selected a ridge.
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a `src`.
 * @fires {CustomEvent<ReadyDetail>} ringdown-ready - Its own study is done.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - All of it.
 * @csspart table - The table.
 * @csspart row - One ridge.
 * @csspart caption - Name of the recording.
 * @csspart foot - How to read the table.
 * @csspart message - Why there is no table.
 * @csspart more - Shows all ridges, or the worst alone.
 *
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text; the page's where not given.
 * @cssprop --ringdown-accent - Selection and decay.
 * @cssprop --ringdown-alert - What exceeds its limit.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 */
export class RingdownRidges extends ViewElement {
  static override styles = [tokens, ridgesStyles];

  @state() private all = false;

  protected override render(): TemplateResult {
    const { snapshot } = this;
    const diagnosis = snapshot?.diagnosis ?? null;
    return html`<div class="base" part="base">
      ${this.veil(diagnosis !== null)}
      ${snapshot && diagnosis ? this.#renderDiagnosis(snapshot, diagnosis) : nothing}
      ${!diagnosis && snapshot?.firstAnswer ? this.#renderFirst(snapshot.firstAnswer) : nothing}
    </div>`;
  }

  /** What the fit has found so far: the longest decays, without limits or candidates, which wait for the fit's end. */
  #renderFirst({ resonances }: NonNullable<StudySnapshot['firstAnswer']>): TemplateResult | typeof nothing {
    const { speaker } = this;
    const longest = resonances
      .filter(({ kind, decayTimeSeconds }) => decayTimeSeconds !== null && kind !== 'source')
      .sort((a, b) => b.decayTimeSeconds! - a.decayTimeSeconds!)
      .slice(0, firstShown);
    if (longest.length === 0) return nothing;
    return html`<table class="first" part="table">
      <caption part="caption">
        ${speaker.view('first-answer', { count: longest.length })}
      </caption>
      <thead>
        <tr>
          <th scope="col">${speaker.label('frequency')}</th>
          <th scope="col">${speaker.label('decayTime')}</th>
        </tr>
      </thead>
      <tbody>
        ${longest.map(
          (one) =>
            html`<tr>
              <th scope="row">${speaker.n.plusMinus(one.frequencyHz, one.frequencySdHz, 'Hz')}</th>
              <td>${speaker.n.plusMinus(one.decayTimeSeconds, one.decayTimeSdSeconds, 's')}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  #renderDiagnosis(snapshot: StudySnapshot, diagnosis: Diagnosis): TemplateResult {
    if (diagnosis.ridges.length > 0) return this.#renderTable(snapshot, diagnosis);
    const { speaker } = this;
    const refusals = diagnosis.fit.notes;
    const { fromHz, toHz, limit } = snapshot.choices;
    return html`<div class="empty" part="message">
      <p class="title">${this.recordingLabel}</p>
      ${
        refusals.length > 0 && diagnosis.resonances.length === 0
          ? refusals.map((note) => html`<p class="alert">${speaker.note(note)}</p>`)
          : html`<p>
                ${speaker.view('no-ridges', {
                  limit: speaker.term('limits', limit),
                  ...{ fromHz, toHz, count: diagnosis.resonances.length },
                })}
              </p>
              <p class="faint">${speaker.view('no-ridges-node')} ${this.#fitQuality(diagnosis)}</p>`
      }
    </div>`;
  }

  #renderTable(snapshot: StudySnapshot, diagnosis: Diagnosis): TemplateResult {
    const { speaker } = this;
    const rows = ridgeRows(diagnosis);
    const longest = Math.max(
      ...rows.map(({ ridge }) => Math.max(ridge.decayTimeSeconds ?? 0, ridge.limitSeconds ?? 0)),
    );
    const heads = ['frequency', 'decayTime', 'q', 'limit', 'excess', 'candidates'];
    const headOf = (name: string): string =>
      name === 'candidates' ? speaker.view('cause-and-candidates') : speaker.label(name);
    // Roles are written out because the narrow layout changes `display`, and with it what some browsers expose.
    return html`<table part="table" role="table" aria-describedby="foot">
        <caption part="caption">
          ${speaker.view('ridges-name', { label: this.recordingLabel })}
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            ${heads.map(
              (head) => html`<th role="columnheader" scope="col" class=${head}>${headOf(head)}</th>`,
            )}
          </tr>
        </thead>
        <tbody role="rowgroup">
          ${repeat(
            this.all || rows.length <= rowsShown + 2 ? rows : rows.slice(0, rowsShown),
            ({ index }) => index,
            (row) => this.#renderRow(row, snapshot, longest, diagnosis.room !== null),
          )}
        </tbody>
      </table>
      ${
        rows.length > rowsShown + 2
          ? html`<button
              type="button"
              class="more"
              part="more"
              aria-expanded=${this.all}
              @click=${() => {
                this.all = !this.all;
              }}
            >
              ${
                this.all
                  ? speaker.view('fewer-rows', { count: rowsShown })
                  : speaker.view('all-rows', { count: rows.length })
              }
            </button>`
          : nothing
      }
      <p class="foot" id="foot" part="foot">
        ${speaker.view('ridges-foot')} ${this.#fitQuality(diagnosis)}
        ${diagnosis.room ? nothing : speaker.view('no-room')} ${speaker.caution('licensed')}
      </p>`;
  }

  #fitQuality({ fit }: Diagnosis): string {
    const { explainedEnergy: explained, residualWhiteness: whiteness } = fit;
    return this.speaker.view('fit-quality', { explained, whiteness });
  }

  #renderRow(row: RidgeRow, snapshot: StudySnapshot, longest: number, hasRoom: boolean): TemplateResult {
    const { speaker } = this;
    const { n } = speaker;
    const { ridge, index } = row;
    const selected = snapshot.selectedRidge === index;
    const cell = (name: string, content: unknown, label = speaker.label(name)): TemplateResult =>
      html`<td role="cell" class=${name} data-label=${label}>${content}</td>`;
    const quiet = (text: string): TemplateResult | typeof nothing =>
      text ? html`<span class="faint">${text}</span>` : nothing;
    const frequency = n.plusMinus(ridge.frequencyHz, row.frequencySdHz, 'Hz');
    const kind = row.kind && row.kind !== 'resolved' ? speaker.term('resonanceKinds', row.kind) : '';
    return html`<tr
      role="row"
      part="row"
      class=${selected ? 'selected' : ''}
      @click=${(event: MouseEvent) => this.#press(event, index)}
    >
      <th role="rowheader" scope="row" class="frequency" data-label=${speaker.label('frequency')}>
        <button
          type="button"
          aria-pressed=${selected}
          title=${speaker.view('select-ridge', { frequency: n.hertz(ridge.frequencyHz) })}
        >
          ${frequency}
        </button>
        ${kind ? html`<span class="faint" title=${speaker.meaning('resonanceKinds', row.kind!)}>${kind}</span>` : nothing}
        ${ridge.resonance === null ? quiet(speaker.view('unexplained')) : nothing}
      </th>
      ${cell(
        'decayTime',
        ridge.decayTimeSeconds === null
          ? speaker.label('never')
          : html`${n.plusMinus(ridge.decayTimeSeconds, ridge.decayTimeSdSeconds, 's')}
            ${this.#renderBar(row, longest)}`,
      )}
      ${cell('q', row.q === null ? '–' : n.plusMinus(row.q, row.qSd))}
      ${cell(
        'limit',
        html`${n.seconds(ridge.limitSeconds)}
        ${quiet(ridge.limitName === snapshot.choices.limit ? '' : speaker.term('limits', ridge.limitName))}`,
      )}
      ${cell(
        'excess',
        html`<strong
            >${ridge.excess === null ? '–' : speaker.view('excess', { excess: ridge.excess })}</strong
          >
          <span class="faint" title=${speaker.meaning('audible', ridge.audible)}
            >${speaker.view('audible', { audible: speaker.term('audible', ridge.audible) })}</span
          >`,
      )}
      ${cell(
        'candidates',
        html`<span class="cause" title=${speaker.meaning('causes', ridge.cause)}
            >${speaker.term('causes', ridge.cause)}</span
          >
          ${this.#renderCandidates(row, hasRoom)}${this.#renderEvidence(row, hasRoom)}`,
        speaker.view('cause-and-candidates'),
      )}
    </tr>`;
  }

  /** Decay and limit on one scale for all rows, so that lengths can be compared down the column. */
  #renderBar({ ridge }: RidgeRow, longest: number): TemplateResult | typeof nothing {
    const { decayTimeSeconds, limitSeconds } = ridge;
    if (decayTimeSeconds === null || limitSeconds === null) return nothing;
    return html`<span
      class="decay"
      role="img"
      aria-label=${this.speaker.view('excess-bar', { decayTimeSeconds, limitSeconds })}
      style=${styleValues({
        '--decay': String(decayTimeSeconds / longest),
        '--limit': String(limitSeconds / longest),
      })}
      ><i></i><b></b
    ></span>`;
  }

  /** The heaviest in one line, with the chance that none is right; all of them are in the disclosure below. */
  #renderCandidates({ candidates, noneShare }: RidgeRow, hasRoom: boolean): TemplateResult | typeof nothing {
    const { speaker } = this;
    if (!hasRoom) return nothing;
    if (candidates.length === 0) return html`<span class="faint">${speaker.view('no-candidates')}</span>`;
    const some = candidates.slice(0, candidatesShown);
    const rest = candidates.length - some.length;
    return html`<ul class="some" role="list">
      ${some.map(
        ({ order, weight }) =>
          html`<li>${orderText(order)} <span class="faint">${speaker.n.percent(weight)}</span></li> `,
      )}
      ${rest > 0 ? html`<li class="faint">${speaker.view('more-candidates', { count: rest })}</li>` : nothing}
      <li class="faint">${speaker.view('none-share', { share: noneShare })}</li>
    </ul>`;
  }

  #renderEvidence(
    { ridge, candidates, noneShare }: RidgeRow,
    hasRoom: boolean,
  ): TemplateResult | typeof nothing {
    const { speaker } = this;
    const listed = hasRoom && candidates.length > 0;
    const { evidence } = ridge;
    if (!listed && !evidence && ridge.remedies.length === 0) return nothing;
    return html`<details>
      <summary>${speaker.view(listed || evidence ? 'evidence' : 'remedies')}</summary>
      ${evidence ? html`<p class="why">${speaker.view(`why-${evidence.kind}`, evidence.params)}</p>` : nothing}
      ${
        listed
          ? html`<ul class="all" role="list">
              ${candidates.map((candidate) => this.#renderCandidate(candidate))}
              <li class="faint" style=${styleValues({ '--share': noneShare })}>
                ${speaker.view('none-share', { share: noneShare })}
              </li>
            </ul>`
          : nothing
      }
      ${
        ridge.remedies.length > 0
          ? html`<ul class="remedies">
              ${ridge.remedies.map((remedy) => html`<li>${speaker.remedy(remedy)}</li>`)}
            </ul>`
          : nothing
      }
    </details>`;
  }

  #renderCandidate(candidate: Candidate): TemplateResult {
    const { speaker } = this;
    const { order, weight, frequencyHz } = candidate;
    const kind = speaker.term('modeKinds', candidate.kind);
    return html`<li style=${styleValues({ '--share': weight })}>
      ${speaker.view('candidate', { order: orderText(order), kind, frequencyHz, weight })}
    </li>`;
  }

  /** The whole row is a target for the pointer; the button in it is the one for the keyboard. */
  #press(event: MouseEvent, index: number): void {
    const inDetails = event
      .composedPath()
      .some((node) => node instanceof HTMLElement && node.matches('details'));
    if (inDetails || String(getSelection())) return;
    this.selectRidge(this.snapshot?.selectedRidge === index ? null : index);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-ridges': RingdownRidges;
  }
}
