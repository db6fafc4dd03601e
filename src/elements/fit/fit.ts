import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { drawFitChart } from '../../draw/fit-chart.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import type { Plot } from '../../draw/plot.js';
import type { DrawTheme } from '../../draw/types.js';
import type { Cursor, Part } from '../../study/types.js';
import { ChartElement } from '../shared/chart-element.js';
import type { LegendItem } from '../../draw/legend.js';
import type { CursorSlider } from '../shared/cursor-controls.js';
import { chartStyles } from '../shared/chart-styles.js';
import { figureStyles } from '../shared/figure-styles.js';
import { tokens } from '../shared/styles.js';
import { decayText, fitChart, fitReadout, fitRows } from './chart.js';

/**
 * One ridge beside the sound it was fitted to, in a narrow band: the recording's level, the fitted decay, all fitted
 * decays together (where neighbours beat), what they leave over, and the noise floor. The stretch that was fitted is
 * stated; below the floor nothing is drawn. Shows the selected ridge, else the worst; any fitted resonance can be chosen.
 *
 * @summary One ridge: its envelope, the fitted decay, the floor and the residual.
 * @tag ringdown-fit
 *
 * @fires {CustomEvent<RidgeSelectDetail>} ringdown-ridge-select - The user chose a ridge.
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a `src`.
 * @fires {CustomEvent<ReadyDetail>} ringdown-ready - Its own study is done.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name and the choice of ridge.
 * @csspart title - Name of the recording.
 * @csspart picture - What holds the canvas.
 * @csspart cursor - The slider and the read-out.
 * @csspart readout - The values under the cursor.
 * @csspart table - The curves as a table.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 * @csspart ridge - Choice of the ridge shown.
 *
 * @cssprop [--ringdown-height=clamp(16rem, 40cqi, 24rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text; the page's where not given.
 * @cssprop --ringdown-accent - The fitted decay and the cursor.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownFit extends ChartElement {
  static override styles = [tokens, figureStyles, chartStyles];

  protected override readonly chartName = 'fit';
  #plot: Plot | null = null;

  override get needs(): readonly Part[] {
    return ['ridgeFit'];
  }

  protected override get drawable(): boolean {
    return Boolean(this.snapshot?.ridgeFit && this.snapshot.diagnosis);
  }

  protected override shownParts(): readonly unknown[] {
    const { ridgeFit, cursor, choices } = this.snapshot!;
    return [ridgeFit, cursor, choices];
  }

  protected override emptyText(): string | null {
    const { snapshot } = this;
    if (!snapshot?.diagnosis) return null;
    return this.speaker.view(snapshot.diagnosis.resonances.length === 0 ? 'fit-nothing' : 'fit-coming');
  }

  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    const { snapshot, speaker } = this;
    this.#plot = drawFitChart(pen, fitChart(snapshot!, snapshot!.ridgeFit!, speaker), theme, size);
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    if (!this.#plot?.holds(x, y)) return null;
    return this.cursorWith({ timeSeconds: this.#plot.columnAxis.atPixel(x) });
  }

  /** The cursor lies on the ridge: that is where the other pictures show it. */
  protected override cursorWith(change: Partial<Cursor>): Cursor {
    const { frequencyHz } = this.snapshot!.ridgeFit!.target;
    return super.cursorWith({ frequencyHz, ...change });
  }

  protected override readoutText(): string {
    const { snapshot, speaker } = this;
    return snapshot?.ridgeFit ? fitReadout(snapshot, snapshot.ridgeFit, speaker) : '';
  }

  protected override sliders(): readonly CursorSlider[] {
    const { cursor, choices } = this.snapshot!;
    return [this.timeSlider(cursor?.timeSeconds ?? 0, [0, choices.spanSeconds])];
  }

  protected override keyItems(): readonly LegendItem[] {
    const { speaker, snapshot } = this;
    const { fittedDb, floorDb, endSeconds } = snapshot!.ridgeFit!;
    const { rangeDb, spanSeconds } = snapshot!.choices;
    return [
      { sign: 'text-line', text: speaker.view('fit-recorded') },
      ...(fittedDb ? [{ sign: 'accent-line', text: speaker.view('fit-one') } as const] : []),
      { sign: 'accent-dash', text: speaker.view('fit-together') },
      { sign: 'dots', text: speaker.view('fit-residual') },
      ...(floorDb > -rangeDb ? [{ sign: 'grey', text: speaker.view('noise-area') } as const] : []),
      ...(endSeconds < spanSeconds ? [{ sign: 'hatch', text: speaker.view('past-end-area') } as const] : []),
    ];
  }

  protected override captionText(): string {
    const { speaker, snapshot } = this;
    const fit = snapshot!.ridgeFit!;
    const { frequencyHz, resonance } = fit.target;
    const kind = resonance === null ? null : snapshot!.diagnosis!.resonances[resonance]?.kind;
    const parts = [
      speaker.view('fit-caption', {
        frequencyHz,
        bandwidthHz: fit.bandwidthHz,
        decay: decayText(fit, speaker),
        fromSeconds: fit.fitFromSeconds,
        toSeconds: fit.fitToSeconds,
      }),
    ];
    if (resonance === null) parts.push(speaker.view('fit-unexplained'));
    else if (kind && kind !== 'resolved') parts.push(speaker.meaning('resonanceKinds', kind));
    return parts.join(' ');
  }

  protected override renderTools(): TemplateResult {
    const { speaker } = this;
    const { diagnosis, ridgeFit } = this.snapshot!;
    const { ridges, resonances } = diagnosis!;
    const shown = ridgeFit!.target;
    const flagged = new Set(ridges.map(({ resonance }) => resonance));
    const name = (frequencyHz: number, decayTimeSeconds: number | null): string =>
      speaker.view('ridge-flag', { frequencyHz, decayTimeSeconds });
    const value = shown.resonance === null ? `band ${shown.frequencyHz}` : `resonance ${shown.resonance}`;
    const others = resonances.map((one, k) => ({ one, k })).filter(({ k }) => !flagged.has(k));
    return html`<div class="tools screen-only">
      <label
        >${speaker.view('fit-choose')}
        <select part="ridge" .value=${live(value)} @change=${(event: Event) => this.#choose(event)}>
          ${
            ridges.length > 0
              ? html`<optgroup label=${speaker.view('fit-ridges')}>
                  ${ridges.map(({ resonance, frequencyHz, decayTimeSeconds }) => {
                    const own = resonance === null ? `band ${frequencyHz}` : `resonance ${resonance}`;
                    return html`<option value=${own} ?selected=${own === value}>
                      ${name(frequencyHz, decayTimeSeconds)}
                    </option>`;
                  })}
                </optgroup>`
              : nothing
          }
          ${
            others.length > 0
              ? html`<optgroup label=${speaker.view('fit-others')}>
                  ${others.map(
                    ({ one, k }) =>
                      html`<option value="resonance ${k}" ?selected=${value === `resonance ${k}`}>
                        ${name(one.frequencyHz, one.decayTimeSeconds)}
                      </option>`,
                  )}
                </optgroup>`
              : nothing
          }
        </select></label
      >
    </div>`;
  }

  #choose(event: Event): void {
    const [kind, at] = (event.target as HTMLSelectElement).value.split(' ');
    if (kind === 'resonance') this.selectResonance(Number(at));
    else {
      const ridges = this.snapshot?.diagnosis?.ridges ?? [];
      this.selectRidge(ridges.findIndex(({ frequencyHz }) => frequencyHz === Number(at)));
    }
  }

  protected override renderTable(): TemplateResult {
    const { speaker, snapshot } = this;
    const { n } = speaker;
    const heads = ['fit-recorded', 'fit-one', 'fit-together', 'fit-residual'];
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${speaker.label('time')}</th>
          ${heads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${fitRows(snapshot!, snapshot!.ridgeFit!).map(
          ({ timeSeconds, levelDb, fittedDb, togetherDb, residualDb, noise }) =>
            html`<tr class=${noise ? 'doubtful' : ''}>
              <th scope="row">${n.seconds(timeSeconds, 2)}</th>
              <td>${noise ? speaker.view('noise-area') : n.decibels(levelDb, 1)}</td>
              <td>${n.decibels(fittedDb, 1)}</td>
              <td>${n.decibels(togetherDb, 1)}</td>
              <td>${noise ? speaker.view('noise-area') : n.decibels(residualDb, 1)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-fit': RingdownFit;
  }
}
