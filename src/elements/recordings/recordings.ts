/** Long because header and properties are the documented interface of the element; chart and styles stand beside it. */
import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import { drawRecordingChart } from '../../draw/recording-chart.js';
import type { RecordingLayout } from '../../draw/recording-chart.js';
import type { DrawTheme } from '../../draw/types.js';
import { expectedOf, notesOf, rangeState, verdictOf } from '../../study/readings.js';
import type { Cursor, StudySnapshot } from '../../study/types.js';
import { emit } from '../events.js';
import { readings, readingText } from '../../sheet/band-readings.js';
import { ChartElement } from '../shared/chart-element.js';
import type { CursorSlider } from '../shared/cursor-controls.js';
import { figureStyles } from '../shared/figure-styles.js';
import type { LinkValue } from '../../study/view-link.js';
import { tokens } from '../shared/styles.js';
import { recordingChart, recordingReadout, sparkline } from './chart.js';
import type { Examination, TimeShown } from './chart.js';
import { recordingsStyles } from './styles.js';

/**
 * Whether each recording is fit to be read, before any ridge is: its waveform and level, onset, where the decay meets
 * the noise, the usable range of each third-octave, and notes that say what to do. What is noise or lies past the end is
 * greyed. The list chooses which recording the study shows.
 *
 * @summary The recordings of a study and whether each is fit to be read.
 * @tag ringdown-recordings
 *
 * @fires {CustomEvent<StudyChangeDetail>} ringdown-study-change - The user chose another recording or channel.
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a `src`.
 * @fires {CustomEvent<ReadyDetail>} ringdown-ready - Its own study is done.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure of the shown recording.
 * @csspart head - Name and tools.
 * @csspart title - Name of the recording.
 * @csspart list - The table of recordings.
 * @csspart picture - What holds the canvas.
 * @csspart cursor - The sliders and the read-out.
 * @csspart readout - The value under the cursor.
 * @csspart notes - What to know before reading on.
 * @csspart expected - What a fit can tell at best, before it is made.
 * @csspart table - The range per band as a table.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 * @csspart channel - Choice of the channel of a recording.
 * @csspart time - The slider of the time shown.
 *
 * @cssprop [--ringdown-height=clamp(20rem, 38cqi, 28rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text; the page's where not given.
 * @cssprop --ringdown-accent - Level, range, cursor and selection.
 * @cssprop --ringdown-alert - What must not be read.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownRecordings extends ChartElement {
  static override styles = [tokens, figureStyles, recordingsStyles];

  protected override readonly chartName = 'recordings';
  @state() private timeShown: TimeShown = 'file';
  /** @internal */
  override readonly linkName = 'recordings';
  #layout: RecordingLayout | null = null;

  /** @internal */
  override linkValues(): readonly LinkValue[] {
    return [this.timeShown === 'file' ? null : this.timeShown];
  }

  /** @internal */
  override takeLink([shown = null]: readonly LinkValue[]): void {
    this.timeShown = shown === null ? 'file' : 'first';
  }

  #examination(index = this.snapshot?.active ?? 0): Examination | null {
    return this.snapshot?.examinations[index] ?? null;
  }

  protected override get drawable(): boolean {
    return this.#examination() !== null;
  }

  protected override shownParts(): readonly unknown[] {
    const { examinations, active, cursor, choices, diagnosis } = this.snapshot!;
    return [examinations, active, cursor, choices, diagnosis];
  }

  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    const { snapshot } = this;
    const chart = recordingChart(
      snapshot!,
      snapshot!.active,
      this.#examination()!,
      this.timeShown,
      this.speaker,
    );
    this.#layout = drawRecordingChart(pen, chart, theme, size);
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    const field = this.#layout?.toField(x, y);
    if (!field) return null;
    return this.cursorWith({
      ...(field.time !== undefined && { timeSeconds: field.time }),
      ...(field.frequency !== undefined && { frequencyHz: field.frequency }),
    });
  }

  protected override readoutText(): string {
    const examination = this.#examination();
    return examination && this.snapshot ? recordingReadout(this.snapshot, examination, this.speaker) : '';
  }

  protected override sliders(): readonly CursorSlider[] {
    const { cursor, choices } = this.snapshot!;
    const { trace } = this.#examination()!;
    const range: [number, number] =
      this.timeShown === 'file'
        ? [-trace.onsetSeconds, trace.durationSeconds - trace.onsetSeconds]
        : [0, choices.spanSeconds];
    return [
      this.frequencySlider(cursor?.frequencyHz ?? choices.fromHz),
      this.timeSlider(cursor?.timeSeconds ?? 0, range),
    ];
  }

  protected override captionText(): string {
    const { fromHz, toHz } = this.#examination()!.trace;
    const { recordings, active } = this.snapshot!;
    const changed = Boolean(recordings[active]?.microphone ?? recordings[active]?.sweep);
    return this.speaker.view('recordings-caption', { fromHz, toHz, changed });
  }

  protected override render(): TemplateResult {
    const { snapshot } = this;
    return html`${snapshot && snapshot.recordings.length > 0 ? this.#renderList(snapshot) : nothing}
    ${this.renderFigure()} ${this.drawable && snapshot ? this.#renderNotes(snapshot) : nothing}`;
  }

  protected override renderTools(): TemplateResult {
    const { speaker, snapshot } = this;
    const recording = snapshot!.recordings[snapshot!.active];
    return html`<div class="tools screen-only">
      ${
        recording && recording.channelCount > 1
          ? html`<label
              >${speaker.view('choose-channel')}
              <select part="channel" @change=${(event: Event) => this.#chooseChannel(event)}>
                ${Array.from(
                  { length: recording.channelCount },
                  (_, k) =>
                    html`<option ?selected=${k + 1 === recording.channel}>
                      ${speaker.view('channel-of', { channel: k + 1, count: recording.channelCount })}
                    </option>`,
                )}
              </select></label
            >`
          : nothing
      }
      <label
        >${speaker.view('time-shown')}
        <select
          part="time"
          @change=${(event: Event) => {
            this.timeShown = (event.target as HTMLSelectElement).selectedIndex === 0 ? 'file' : 'first';
          }}
        >
          <option ?selected=${this.timeShown === 'file'}>${speaker.view('whole-file')}</option>
          <option ?selected=${this.timeShown === 'first'}>
            ${speaker.view('first-seconds', { seconds: snapshot!.choices.spanSeconds })}
          </option>
        </select></label
      >
    </div>`;
  }

  #chooseChannel(event: Event): void {
    const { study } = this;
    if (!study) return;
    study.setChannel(study.snapshot.active, (event.target as HTMLSelectElement).selectedIndex + 1);
    emit(this, 'ringdown-study-change', { what: 'channel', snapshot: study.snapshot });
  }

  #choose(index: number): void {
    const { study } = this;
    if (!study || study.snapshot.active === index) return;
    study.setActive(index);
    emit(this, 'ringdown-study-change', { what: 'active', snapshot: study.snapshot });
  }

  #renderList(snapshot: StudySnapshot): TemplateResult {
    const { speaker } = this;
    const heads = ['label', 'level', 'onset', 'usable', 'length', 'range', 'verdict'];
    const names: Record<string, string> = {
      label: speaker.view('recordings'),
      level: speaker.label('level'),
      onset: speaker.view('onset-column'),
      usable: speaker.view('usable-column'),
      length: speaker.view('length-column'),
      range: speaker.view('range-column'),
      verdict: speaker.view('verdict-column'),
    };
    // Roles are written out because the narrow layout changes `display`, and with it what some browsers expose.
    return html`<table class="list" part="list" role="table" aria-label=${speaker.view('recordings-list')}>
      <thead role="rowgroup">
        <tr role="row">
          ${heads.map((head) => html`<th role="columnheader" scope="col" class=${head}>${names[head]}</th>`)}
        </tr>
      </thead>
      <tbody role="rowgroup">
        ${snapshot.recordings.map((_, index) => this.#renderRow(snapshot, index, names))}
      </tbody>
    </table>`;
  }

  #renderRow(snapshot: StudySnapshot, index: number, names: Record<string, string>): TemplateResult {
    const { speaker } = this;
    const { n } = speaker;
    const { label, stage, onsetSeconds, samples, sampleRate, nearFieldMetres } = snapshot.recordings[index];
    const examination = this.#examination(index);
    const trace = examination?.trace;
    const beside = [stage, nearFieldMetres === undefined ? '' : speaker.view('near-field-tag')].filter(
      Boolean,
    );
    const name = `${label || speaker.view('this-recording')}${beside.length > 0 ? ` (${beside.join(', ')})` : ''}`;
    const cell = (of: string, content: unknown): TemplateResult =>
      html`<td role="cell" class=${of} data-label=${names[of]}>${content}</td>`;
    const verdict = examination && verdictOf(snapshot, index);
    const ranges = examination?.ranges.map(({ rangeDb }) => rangeDb) ?? [];
    const active = index === snapshot.active;
    return html`<tr role="row" class=${active ? 'selected' : ''}>
      <th role="rowheader" scope="row">
        <button
          type="button"
          aria-pressed=${active}
          aria-label=${speaker.view('show-recording', { label: name })}
          @click=${() => this.#choose(index)}
        >
          ${name}
        </button>
      </th>
      ${cell('level', examination ? renderSpark(examination) : '–')} ${cell('onset', n.seconds(onsetSeconds))}
      ${cell(
        'usable',
        !trace
          ? '–'
          : trace.usableEndSeconds === null
            ? speaker.view('no-decay-found')
            : trace.usableEndSeconds < trace.durationSeconds
              ? n.seconds(trace.usableEndSeconds - onsetSeconds)
              : speaker.view('decays-to-end'),
      )}
      ${cell('length', n.seconds(samples.length / sampleRate))}
      ${cell(
        'range',
        ranges.length === 0
          ? '–'
          : speaker.view('range-span', { lowDb: Math.min(...ranges), highDb: Math.max(...ranges) }),
      )}
      ${cell(
        'verdict',
        verdict ? html`<span class=${verdict}>${speaker.view(`verdict-${verdict}`)}</span>` : '–',
      )}
    </tr>`;
  }

  #renderNotes(snapshot: StudySnapshot): TemplateResult {
    const { speaker } = this;
    const expected = expectedOf(snapshot, snapshot.active);
    const notes = notesOf(snapshot, snapshot.active);
    const codes = [...new Set(notes.map(({ code }) => code))];
    return html`<section class="notes" part="notes" aria-labelledby="notes-heading">
      <h3 id="notes-heading">${speaker.view('notes-heading')}</h3>
      ${
        notes.length === 0
          ? html`<p>${speaker.view('no-notes')}</p>`
          : html`<ul>
              ${codes.map((code) => this.#renderKind(notes.filter((note) => note.code === code)))}
            </ul>`
      }
      ${expected ? html`<p part="expected">${speaker.caption('expected', expected)}</p>` : ''}
    </section>`;
  }

  /** One kind of note: the first in full, the rest one click away where they are many. */
  #renderKind(notes: ReturnType<typeof notesOf>): TemplateResult {
    const { speaker } = this;
    const items = notes.map((note) => html`<li>${speaker.note(note)}</li>`);
    if (items.length <= 2) return html`${items}`;
    return html`<li>
      ${speaker.note(notes[0])}
      <details>
        <summary>${speaker.view('more-notes', { count: items.length - 1 })}</summary>
        <ul>
          ${items.slice(1)}
        </ul>
      </details>
    </li>`;
  }

  protected override renderTable(): TemplateResult {
    const { speaker } = this;
    const { n } = speaker;
    const { ranges, decays } = this.#examination()!;
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${speaker.view('band-column')}</th>
          <th scope="col">${speaker.view('range-column')}</th>
          <th scope="col">${speaker.view('reading-column')}</th>
          <th scope="col">${speaker.view('usable-length-column')}</th>
          ${readings.map((one) => html`<th scope="col">${speaker.label(one)}</th>`)}
          <th scope="col">${speaker.view('shortest-column')}</th>
        </tr>
      </thead>
      <tbody>
        ${ranges.map(({ centreHz, rangeDb }, k) => {
          const reading = rangeState(rangeDb);
          const band = decays[k];
          const usable = band?.usableSeconds ?? 0;
          return html`<tr class=${reading === 'good' ? '' : 'doubtful'}>
            <th scope="row">${n.hertz(centreHz, centreHz < 40 ? 1 : 0)}</th>
            <td>${n.decibels(rangeDb)}</td>
            <td>${speaker.view(`range-${reading}`)}</td>
            <td>${usable > 0 ? n.seconds(usable) : speaker.view('no-decay-found')}</td>
            ${readings.map(
              (one) =>
                html`<td class=${band?.[one].seconds == null ? 'doubtful' : ''}>
                  ${band ? readingText(band, one, speaker) : '–'}
                </td>`,
            )}
            <td>${n.seconds(band?.shortestSeconds)}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }
}

/** The level as a small picture; the figures are in the row. */
function renderSpark(examination: Examination): TemplateResult {
  const { whole, usable } = sparkline(examination);
  return html`<svg class="spark" viewBox="0 0 100 20" preserveAspectRatio="none" aria-hidden="true">
    ${svg`<polyline class="whole" points=${whole}></polyline>
      <polyline class="usable" points=${usable}></polyline>`}
  </svg>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-recordings': RingdownRecordings;
  }
}
