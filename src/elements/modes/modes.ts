import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import { drawModeChart } from '../../draw/mode-chart.js';
import type { ModeChartLayout } from '../../draw/mode-chart.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import type { DrawTheme } from '../../draw/types.js';
import { crowdingOf, sameOrder } from '../../study/mode-readings.js';
import type { Mode } from '../../study/mode-readings.js';
import type { Cursor } from '../../study/types.js';
import type { LegendItem } from '../../draw/legend.js';
import { chartStyles } from '../shared/chart-styles.js';
import type { CursorSlider } from '../shared/cursor-controls.js';
import { figureStyles } from '../shared/figure-styles.js';
import { orderName } from '../../sheet/mode-name.js';
import { RoomChartElement } from '../shared/room-chart.js';
import { tokens } from '../shared/styles.js';
import {
  measuredShown,
  modeChart,
  modesCaption,
  modesKey,
  modesReadout,
  modesShown,
  nearestMeasured,
  spacingOf,
} from '../../sheet/mode-chart.js';

const modesStyles = css`
  .picture {
    block-size: var(--ringdown-height, clamp(19rem, 46cqi, 27rem));
  }
`;

/** Targets of the picture as one number: measured ones count from 0, predicted ones from here. */
const predictedFrom = 100000;

/**
 * Predicted modes against measured ridges along one frequency axis: each predicted mode as one, two or three strokes for
 * axial, tangential and oblique, tied to the ridges that it may be; below, how many lie in each third-octave, and where
 * single modes give way to a crowd. With a room alone it shows the prediction.
 *
 * @summary Predicted modes of the room against what was measured.
 * @tag ringdown-modes
 *
 * @fires {CustomEvent<ModeSelectDetail>} ringdown-mode-select - The user chose a predicted mode.
 * @fires {CustomEvent<RidgeSelectDetail>} ringdown-ridge-select - The user selected a ridge.
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a `src` or a room.
 * @fires {CustomEvent<ReadyDetail>} ringdown-ready - Its own study is done.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name.
 * @csspart title - Name of the recording, or of the room.
 * @csspart picture - What holds the canvas.
 * @csspart key - What the signs mean.
 * @csspart cursor - The slider and the read-out.
 * @csspart readout - The values under the cursor.
 * @csspart table - Modes and third-octaves as tables.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 *
 * @cssprop [--ringdown-height=clamp(19rem, 46cqi, 27rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text and marks; the page's where not given.
 * @cssprop --ringdown-accent - Expected counts, transition, cursor and selection.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownModes extends RoomChartElement {
  static override styles = [tokens, figureStyles, chartStyles, modesStyles];

  protected override readonly chartName = 'modes';
  #layout: ModeChartLayout | null = null;

  protected override get drawable(): boolean {
    const { snapshot } = this;
    return Boolean(snapshot?.prediction && (snapshot.diagnosis || snapshot.recordings.length === 0));
  }

  protected override shownParts(): readonly unknown[] {
    const { prediction, diagnosis, cursor, choices, selectedRidge, selectedResonance, selectedMode } =
      this.snapshot!;
    return [prediction, diagnosis, cursor, choices, selectedRidge, selectedResonance, selectedMode];
  }

  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    this.#layout = drawModeChart(pen, modeChart(this.snapshot!, this.speaker), theme, size);
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    const frequencyHz = this.#layout?.toPosition(x, y) ?? null;
    return frequencyHz === null ? null : this.cursorWith({ frequencyHz });
  }

  protected override targetAt(x: number, y: number): number | null {
    const target = this.#layout?.targetAt(x, y) ?? null;
    return target && target.index + (target.kind === 'predicted' ? predictedFrom : 0);
  }

  protected override selectTarget(target: number): void {
    if (target >= predictedFrom) {
      this.#toggleMode(modesShown(this.snapshot!)[target - predictedFrom].mode);
      return;
    }
    const { ridge, resonance, selected } = measuredShown(this.snapshot!, this.speaker)[target];
    if (ridge !== null) this.selectRidge(selected ? null : ridge);
    else this.selectResonance(selected ? null : resonance);
  }

  #toggleMode({ order }: Mode): void {
    this.selectMode(sameOrder(order, this.snapshot!.selectedMode) ? null : order);
  }

  protected override readoutText(): string {
    return this.snapshot ? modesReadout(this.snapshot, this.speaker) : '';
  }

  protected override sliders(): readonly CursorSlider[] {
    const { cursor, diagnosis, prediction, choices } = this.snapshot!;
    const start = diagnosis?.ridges[0]?.frequencyHz ?? prediction?.modes[0]?.frequencyHz ?? choices.fromHz;
    return [this.frequencySlider(cursor?.frequencyHz ?? start)];
  }

  protected override keyItems(): readonly LegendItem[] {
    return modesKey(this.snapshot!, this.speaker);
  }

  protected override captionText(): string {
    return modesCaption(this.snapshot!, this.speaker);
  }

  protected override renderTable(): TemplateResult {
    return html`${this.#renderModes()} ${this.#renderBands()}`;
  }

  #renderModes(): TemplateResult {
    const { speaker } = this;
    const { n } = speaker;
    const snapshot = this.snapshot!;
    const { room, modes } = snapshot.prediction!;
    const measured = snapshot.recordings.length > 0;
    const decays = room.absorption !== null;
    const heads = [
      speaker.label('frequency'),
      speaker.label(room.plan ? 'planOrder' : 'order'),
      speaker.label('kind'),
      speaker.view('next-mode'),
      ...(decays ? [speaker.view('expected-decay')] : []),
      ...(measured ? [speaker.view('nearest-measured'), speaker.view('off-by')] : []),
    ];
    return html`<table>
      <caption class="unseen">
        ${speaker.view('modes-predicted')}
      </caption>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${modesShown(snapshot).map(({ mode, index }) => {
          const selected = sameOrder(mode.order, snapshot.selectedMode);
          const near = measured ? nearestMeasured(mode, snapshot) : null;
          return html`<tr class=${selected ? 'selected' : ''}>
            <th scope="row">
              <button type="button" aria-pressed=${selected} @click=${() => this.#toggleMode(mode)}>
                ${n.hertz(mode.frequencyHz)}
              </button>
            </th>
            <td>${orderName(mode.order, room)}</td>
            <td>${speaker.term('modeKinds', mode.kind)}</td>
            <td>${n.hertz(spacingOf(modes, index))}</td>
            ${decays ? html`<td>${n.seconds(mode.decayTimeSeconds)}</td>` : null}
            ${
              measured
                ? html`<td>${near ? n.hertz(near.frequencyHz) : speaker.view('nothing-near')}</td>
                    <td>${near ? n.percent(near.deviation, 1) : '–'}</td>`
                : null
            }
          </tr>`;
        })}
      </tbody>
    </table>`;
  }

  #renderBands(): TemplateResult {
    const { speaker } = this;
    const { n } = speaker;
    const heads = ['band-column', 'count-column', 'expected-column', 'widest-gap', 'closest-pair'];
    return html`<table>
      <caption class="unseen">
        ${speaker.view('modes-per-band')}
      </caption>
      <thead>
        <tr>
          ${heads.map((head) => html`<th scope="col">${speaker.view(head)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${crowdingOf(this.snapshot!).map(
          (band) =>
            html`<tr>
              <th scope="row">${n.hertz(band.centreHz, band.centreHz < 40 ? 1 : 0)}</th>
              <td>${n.integer(band.count)}</td>
              <td>${n.number(band.expected, 1)}</td>
              <td>${n.hertz(band.widestGapHz)}</td>
              <td>${n.hertz(band.closestHz)}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-modes': RingdownModes;
  }
}
