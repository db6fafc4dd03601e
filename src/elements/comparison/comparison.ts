import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import type { LegendItem } from '../../draw/legend.js';
import { drawPair, type PairForm, type PairLayout } from '../../draw/pair-picture.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import type { DrawTheme } from '../../draw/types.js';
import { comparisonCaption, comparisonKey } from '../../sheet/comparison-words.js';
import {
  differenceField,
  differenceTable,
  pairPicture,
  pairReadout,
  pairViews,
} from '../../sheet/pair-view.js';
import { pointName } from '../../sheet/point-name.js';
import type { PairSide } from '../../study/pair.js';
import type { SystemPart } from '../../study/system-types.js';
import { comparisonTable, differencesTable } from '../../study/tables.js';
import type { Cursor } from '../../study/types.js';
import { chartStyles } from '../shared/chart-styles.js';
import { csvControls } from '../shared/csv.js';
import type { CursorSlider } from '../shared/cursor-controls.js';
import { figureStyles } from '../shared/figure-styles.js';
import { PairController } from '../shared/pair-controller.js';
import { tokens } from '../shared/styles.js';
import { SystemChartElement } from '../shared/system-chart.js';
import { systemStyles } from '../shared/system-styles.js';
import { sameSide, sideFromText, sideName, sidesOf, sideTitle } from './names.js';
import { comparisonStyles } from './styles.js';
import { renderDifferences, renderPairRidges } from './tables.js';

/**
 * Did it work? Two stages on locked scales: the same axes, colours, window and method, side by side, with their
 * difference; each ridge in both with its uncertainty, and whether the change is larger than that. Before and after as
 * measured, measured and designed, or any two recordings.
 *
 * @summary Two stages side by side on one scale, with their difference and each ridge in both.
 * @tag ringdown-comparison
 *
 * @attr {string} first - "before", "designed" or "after", or the label of a recording; chosen by itself where not given.
 * @attr {string} second - The same of the other side.
 *
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name and tools.
 * @csspart title - What is compared.
 * @csspart first - Choice of the first.
 * @csspart second - Choice of the second.
 * @csspart seat - Choice of the seat.
 * @csspart form - Choice of spectrogram or waterfall.
 * @csspart difference - Whether the difference is drawn.
 * @csspart picture - What holds the canvas.
 * @csspart canvas - The pictures.
 * @csspart key - What the signs mean.
 * @csspart cursor - The two sliders and the read-out.
 * @csspart readout - The values under the cursor.
 * @csspart levels - Whether levels may be compared.
 * @csspart summary - What came of the ridges.
 * @csspart unread - Of which of the two nothing was read, and why.
 * @csspart ridges - Each ridge in both.
 * @csspart csv - The tables as files.
 * @csspart save - The pictures as a file.
 * @csspart table - The pictures as a table.
 * @csspart caption - How the pictures were made.
 * @csspart message - Why there are none.
 *
 * @cssprop [--ringdown-height] - Height of the pictures; by the width, since they stand in one, two or three rows.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text; the page's where not given.
 * @cssprop --ringdown-accent - Cursor.
 * @cssprop --ringdown-scale - Colour scale of level: `dusk`, `dawn` or `clear`; where `scale` is `auto`.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownComparison extends SystemChartElement {
  static override styles = [tokens, figureStyles, chartStyles, systemStyles, comparisonStyles];

  /** "before", "designed" or "after", or the label of a recording; chosen by itself where not given. */
  @property() first: string | null = null;
  /** The same of the other side. */
  @property() second: string | null = null;

  protected override readonly chartName = 'comparison';
  @state() private form: PairForm = 'spectrogram';
  @state() private difference = true;
  #layout: PairLayout | null = null;
  readonly #pair = new PairController(this, () => this.#pairChanged());

  override get systemNeeds(): readonly SystemPart[] {
    return ['sums', 'decays'];
  }

  #pairChanged(): void {
    this.requestUpdate();
    this.stageController.request();
  }

  protected override snapshotChanged(): void {
    this.#pair.follow();
    super.snapshotChanged();
  }

  /** What the page names is there once its recordings are. */
  #chooseNamed(): void {
    const { snapshot, systemSnapshot } = this;
    if (!snapshot || !systemSnapshot) return;
    const wish = {
      ...(this.first !== null && { first: sideFromText(this.first, snapshot, systemSnapshot) }),
      ...(this.second !== null && { second: sideFromText(this.second, snapshot, systemSnapshot) }),
    };
    if (Object.keys(wish).length > 0) this.#pair.choose(wish);
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    this.#chooseNamed();
  }

  protected override get drawable(): boolean {
    const pair = this.#pair.snapshot;
    return Boolean(this.snapshot && pair?.first?.grid && pair.second?.grid);
  }

  protected override get recordingLabel(): string {
    const { snapshot, systemSnapshot, speaker } = this;
    const pair = this.#pair.snapshot;
    if (!snapshot || !systemSnapshot || !pair?.choice) return speaker.view('comparison');
    const [first, second] = [pair.choice.first, pair.choice.second].map((side) =>
      sideTitle(side, pair, snapshot, systemSnapshot, speaker),
    );
    return speaker.view('comparison-title', { first, second });
  }

  protected override emptyText(): string | null {
    const pair = this.#pair.snapshot;
    if (!pair || !this.systemSnapshot) return null;
    if (pair.progress) return this.speaker.stage(pair.progress.stage);
    const [failure] = pair.failures;
    if (failure) return this.describe({ ...failure, label: null });
    if (pair.choice === null) return this.speaker.view('comparison-nothing');
    return super.emptyText();
  }

  protected override get savedFineness(): number {
    return 2;
  }

  protected override shownParts(): readonly unknown[] {
    const { cursor, choices, room } = this.snapshot!;
    const pair = this.#pair.snapshot;
    return [cursor, choices, room, pair?.first, pair?.second, pair?.levels];
  }

  protected override sliders(): readonly CursorSlider[] {
    const { cursor, choices } = this.snapshot!;
    return [
      this.frequencySlider(cursor?.frequencyHz ?? choices.fromHz),
      this.timeSlider(cursor?.timeSeconds ?? 0, [0, choices.spanSeconds]),
    ];
  }

  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    const { snapshot, systemSnapshot, speaker, form, difference } = this;
    const pair = this.#pair.snapshot!;
    const title = (side: PairSide): string => sideTitle(side, pair, snapshot!, systemSnapshot!, speaker);
    const titles = { first: title(pair.choice!.first), second: title(pair.choice!.second) };
    const picture = pairPicture(snapshot!, pair, titles, { form, difference }, speaker);
    if (picture) this.#layout = drawPair(pen, picture, theme, size);
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    const pick = this.#layout?.toField(x, y) ?? null;
    return pick && { frequencyHz: pick.column, timeSeconds: pick.row };
  }

  protected override readoutText(): string {
    const pair = this.#pair.snapshot;
    return this.snapshot && pair && this.drawable ? pairReadout(this.snapshot, pair, this.speaker) : '';
  }

  protected override keyItems(): readonly LegendItem[] {
    return this.difference ? comparisonKey(this.speaker) : [];
  }

  protected override captionText(): string {
    return comparisonCaption(this.snapshot!, this.#pair.snapshot!, this.difference, this.speaker);
  }

  protected override renderTools(): TemplateResult {
    const { speaker, form } = this;
    const [system, pair] = [this.systemSnapshot!, this.#pair.snapshot!];
    const seats = pair.seats.map((seat) => pointName(system.arrangement.seats[seat], 'seat', speaker));
    return html`<div class="tools screen-only">
      ${this.#renderSide('first')} ${this.#renderSide('second')}
      ${
        seats.length > 1
          ? html`<label
              >${speaker.view('choose-seat')}
              <select
                part="seat"
                @change=${(event: Event) =>
                  this.#pair.choose({ seat: pair.seats[(event.target as HTMLSelectElement).selectedIndex] })}
              >
                ${seats.map((name, k) => html`<option ?selected=${pair.seats[k] === pair.seat}>${name}</option>`)}
              </select></label
            >`
          : nothing
      }
      <label
        >${speaker.view('choose-form')}
        <select
          part="form"
          @change=${(event: Event) => {
            this.form = (event.target as HTMLSelectElement).selectedIndex === 0 ? 'spectrogram' : 'waterfall';
          }}
        >
          ${(['spectrogram', 'waterfall'] as const).map(
            (one) => html`<option ?selected=${one === form}>${speaker.view(`form-${one}`)}</option>`,
          )}
        </select></label
      >
      <label
        ><input
          type="checkbox"
          part="difference"
          .checked=${this.difference}
          @change=${(event: Event) => {
            this.difference = (event.target as HTMLInputElement).checked;
          }}
        />
        ${speaker.view('choose-difference')}</label
      >
    </div>`;
  }

  #renderSide(which: 'first' | 'second'): TemplateResult {
    const { speaker } = this;
    const [study, system, pair] = [this.snapshot!, this.systemSnapshot!, this.#pair.snapshot!];
    const sides = sidesOf(study, system);
    const shown = pair.choice![which];
    const option = (side: PairSide): TemplateResult =>
      html`<option ?selected=${sameSide(side, shown)}>${sideName(side, study, system, speaker)}</option>`;
    const stages = sides.filter(({ of }) => of !== 'recording');
    const recordings = sides.filter(({ of }) => of === 'recording');
    return html`<label
      >${speaker.view(`choose-${which}`)}
      <select
        part=${which}
        @change=${(event: Event) => {
          // What the user chose outlives what the page named.
          this[which] = null;
          this.#pair.choose({ [which]: sides[(event.target as HTMLSelectElement).selectedIndex] });
        }}
      >
        ${
          stages.length > 0
            ? html`<optgroup label=${speaker.view('group-stages')}>${stages.map(option)}</optgroup>`
            : nothing
        }
        <optgroup label=${speaker.view('group-recordings')}>${recordings.map(option)}</optgroup>
      </select></label
    >`;
  }

  protected override renderMore(): TemplateResult {
    const { speaker } = this;
    const [study, pair] = [this.snapshot!, this.#pair.snapshot!];
    const { first, second } = pair;
    const views = pairViews(study, pair, speaker);
    const title = (side: PairSide): string => sideTitle(side, pair, study, this.systemSnapshot!, speaker);
    return html`${this.renderFailures()}
      <p class="summary ${pair.levels}" part="levels">${speaker.view(`compare-${pair.levels}`)}</p>
      ${renderPairRidges(pair, [title(pair.choice!.first), title(pair.choice!.second)], speaker)}
      ${csvControls(
        () => [
          first?.diagnosis && second?.diagnosis ? comparisonTable(first.diagnosis, second.diagnosis) : null,
          views && differencesTable(differenceTable(differenceField(views))),
        ],
        [...(first?.diagnosis && second?.diagnosis ? ['comparison'] : []), 'difference'],
        () => this.scope,
        this.recordingLabel,
        speaker,
      )}`;
  }

  protected override renderTable(): TemplateResult {
    const views = pairViews(this.snapshot!, this.#pair.snapshot!, this.speaker);
    return views ? renderDifferences(differenceTable(differenceField(views)), this.speaker) : html``;
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    this.renderRoot.querySelector('.picture')?.classList.toggle('two', !this.difference);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-comparison': RingdownComparison;
  }
}
