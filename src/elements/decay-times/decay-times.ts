import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import { drawDecayChart } from '../../draw/decay-chart.js';
import type { DecayChartLayout } from '../../draw/decay-chart.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import type { DrawTheme } from '../../draw/types.js';
import type { Cursor } from '../../study/types.js';
import { readings, readingText, usualReading } from '../../sheet/band-readings.js';
import type { Reading } from '../../sheet/band-readings.js';
import { ChartElement } from '../shared/chart-element.js';
import type { LegendItem } from '../../draw/legend.js';
import { chartStyles } from '../shared/chart-styles.js';
import type { CursorSlider } from '../shared/cursor-controls.js';
import { figureStyles } from '../shared/figure-styles.js';
import type { LinkValue } from '../../study/view-link.js';
import { tokens } from '../shared/styles.js';
import { decayCaption, decayChart, decayKey, decayReadout, decaysOf } from '../../sheet/decay-chart.js';

/**
 * Decay time against frequency: each fitted mode with its uncertainty, full above its limit and hollow below; decay
 * times per third-octave, with what is too short to be believed greyed; the audibility band and the target as soft areas.
 *
 * @summary Decay times of modes and third-octaves against their limits.
 * @tag ringdown-decay-times
 *
 * @fires {CustomEvent<RidgeSelectDetail>} ringdown-ridge-select - The user selected a ridge.
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a `src`.
 * @fires {CustomEvent<ReadyDetail>} ringdown-ready - Its own study is done.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name and tools.
 * @csspart title - Name of the recording.
 * @csspart picture - What holds the canvas.
 * @csspart key - What the signs mean.
 * @csspart cursor - The slider and the read-out.
 * @csspart readout - The values under the cursor.
 * @csspart table - Modes and bands as tables.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 * @csspart reading - Choice of what the third-octaves are read over.
 *
 * @cssprop [--ringdown-height=clamp(16rem, 40cqi, 24rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text and modes; the page's where not given.
 * @cssprop --ringdown-accent - Limits, cursor and selection.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownDecayTimes extends ChartElement {
  static override styles = [tokens, figureStyles, chartStyles];

  protected override readonly chartName = 'decay-times';
  @state() private reading: Reading = usualReading;
  /** @internal */
  override readonly linkName = 'decay-times';
  #layout: DecayChartLayout | null = null;

  /** @internal */
  override linkValues(): readonly LinkValue[] {
    return [this.reading === usualReading ? null : this.reading];
  }

  /** @internal */
  override takeLink([reading = null]: readonly LinkValue[]): void {
    this.reading = (reading as Reading | null) ?? usualReading;
  }

  protected override get drawable(): boolean {
    return Boolean(this.snapshot?.diagnosis && decaysOf(this.snapshot).length > 0);
  }

  protected override shownParts(): readonly unknown[] {
    const { diagnosis, examinations, active, cursor, choices, room, selectedResonance } = this.snapshot!;
    return [diagnosis, examinations, active, cursor, choices, room, selectedResonance];
  }

  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    this.#layout = drawDecayChart(pen, decayChart(this.snapshot!, this.reading, this.speaker), theme, size);
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    const field = this.#layout?.toField(x, y);
    return field ? this.cursorWith({ frequencyHz: field.position }) : null;
  }

  protected override targetAt(x: number, y: number): number | null {
    return this.#layout?.pointAt(x, y) ?? null;
  }

  protected override selectTarget(resonance: number): void {
    this.selectResonance(this.snapshot?.selectedResonance === resonance ? null : resonance);
  }

  protected override readoutText(): string {
    return this.snapshot ? decayReadout(this.snapshot, this.reading, this.speaker) : '';
  }

  protected override sliders(): readonly CursorSlider[] {
    const { cursor, diagnosis, choices } = this.snapshot!;
    return [this.frequencySlider(cursor?.frequencyHz ?? diagnosis?.ridges[0]?.frequencyHz ?? choices.fromHz)];
  }

  protected override keyItems(): readonly LegendItem[] {
    return decayKey(this.snapshot!, this.reading, this.speaker);
  }

  protected override captionText(): string {
    return decayCaption(this.snapshot!, this.speaker);
  }

  protected override renderTools(): TemplateResult {
    const { speaker } = this;
    return html`<div class="tools screen-only">
      <label
        >${speaker.view('choose-reading')}
        <select
          part="reading"
          @change=${(event: Event) => {
            this.reading = readings[(event.target as HTMLSelectElement).selectedIndex];
          }}
        >
          ${readings.map(
            (one) => html`<option ?selected=${one === this.reading}>${speaker.label(one)}</option>`,
          )}
        </select></label
      >
    </div>`;
  }

  protected override renderTable(): TemplateResult {
    return html`${this.#renderModes()} ${this.#renderBands()}`;
  }

  #renderModes(): TemplateResult {
    const { speaker } = this;
    const { n } = speaker;
    const { diagnosis, selectedResonance } = this.snapshot!;
    const { ridges, resonances } = diagnosis!;
    const heads = [
      ...['frequency', 'decayTime', 'q', 'kind'].map((head) => speaker.label(head)),
      speaker.view('against-limit'),
    ];
    return html`<table>
      <caption class="unseen">
        ${speaker.view('fitted-modes')}
      </caption>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${resonances.map((one, k) => {
          const ridge = ridges.find(({ resonance }) => resonance === k);
          const selected = k === selectedResonance;
          return html`<tr class=${selected ? 'selected' : ''}>
            <th scope="row">
              <button
                type="button"
                aria-pressed=${selected}
                @click=${() => this.selectResonance(selected ? null : k)}
              >
                ${n.plusMinus(one.frequencyHz, one.frequencySdHz, 'Hz')}
              </button>
            </th>
            <td>
              ${
                one.decayTimeSeconds === null
                  ? speaker.label('never')
                  : n.plusMinus(one.decayTimeSeconds, one.decayTimeSdSeconds, 's')
              }
            </td>
            <td>${n.number(one.q, 1)}</td>
            <td>${speaker.term('resonanceKinds', one.kind)}</td>
            <td>
              ${
                ridge
                  ? ridge.excess === null
                    ? speaker.view('key-above')
                    : speaker.view('times-limit', {
                        excess: ridge.excess,
                        limitSeconds: ridge.limitSeconds,
                      })
                  : speaker.view('key-below')
              }
            </td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }

  #renderBands(): TemplateResult {
    const { speaker } = this;
    const { n } = speaker;
    return html`<table>
      <caption class="unseen">
        ${speaker.view('band-decays')}
      </caption>
      <thead>
        <tr>
          <th scope="col">${speaker.view('band-column')}</th>
          ${readings.map((one) => html`<th scope="col">${speaker.label(one)}</th>`)}
          <th scope="col">${speaker.view('shortest-column')}</th>
        </tr>
      </thead>
      <tbody>
        ${decaysOf(this.snapshot!).map(
          (band) =>
            html`<tr>
              <th scope="row">${n.hertz(band.centreHz, band.centreHz < 40 ? 1 : 0)}</th>
              ${readings.map(
                (one) =>
                  html`<td class=${band[one].seconds === null ? 'doubtful' : ''}>
                    ${readingText(band, one, speaker)}
                  </td>`,
              )}
              <td>${n.seconds(band.shortestSeconds)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-decay-times': RingdownDecayTimes;
  }
}
