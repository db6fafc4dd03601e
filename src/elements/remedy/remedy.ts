/**
 * Long because chart, filters, ridges and pictures follow one seat, one selection and one design; what each of
 * them shows stands beside it.
 */
import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import { paintCanvas } from '../../draw/canvas.js';
import type { LegendItem } from '../../draw/legend.js';
import { drawPair, type PairForm } from '../../draw/pair-picture.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import { drawRemedyChart, type RemedyLayout } from '../../draw/remedy-chart.js';
import type { DrawTheme } from '../../draw/types.js';
import { pairPicture } from '../../sheet/pair-view.js';
import { seatNames } from '../../sheet/point-name.js';
import {
  remedyCaption,
  remedyChart,
  remedyKey,
  remedyReadout,
  type RemedySeat,
} from '../../sheet/remedy-chart.js';
import {
  bandAfter,
  bandRefusal,
  remedyReading,
  type Band,
  type BandChange,
} from '../../study/remedy-readings.js';
import type { SystemPart } from '../../study/system-types.js';
import { optionsTable, remedyTable } from '../../study/tables.js';
import type { Cursor } from '../../study/types.js';
import { emit } from '../events.js';
import { chartStyles } from '../shared/chart-styles.js';
import { csvControls } from '../shared/csv.js';
import { figureStyles } from '../shared/figure-styles.js';
import { PairController } from '../shared/pair-controller.js';
import { StageController } from '../shared/stage.js';
import { tokens } from '../shared/styles.js';
import { SystemChartElement } from '../shared/system-chart.js';
import { systemStyles } from '../shared/system-styles.js';
import { renderBands } from './bands.js';
import { renderExport } from './export.js';
import { renderHandles } from './handles.js';
import { renderOptions } from './options.js';
import { renderAuto } from './proposal.js';
import { renderRidgesAfter } from './ridges.js';
import { remedyStyles } from './styles.js';
import { renderRemedyTable } from './table.js';

/**
 * What would help, before anyone pays for it: for each ridge everything that can be done, with why, what decay and level to
 * expect after it, and what it does at the other seats; and filters over all sources, by number, by handle and by key,
 * with their levels, decays and pictures at every seat, live. Works with one recording as well.
 *
 * @summary What a move, an absorber or a filter would do to the decay, with an editor of filters.
 * @tag ringdown-remedy
 *
 * @fires {CustomEvent<StudyChangeDetail>} ringdown-study-change - The user changed filters or their limits.
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a `src`.
 * @fires {CustomEvent<ReadyDetail>} ringdown-ready - Its own study is done.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name and tools.
 * @csspart title - How many sources and seats.
 * @csspart seat - Choice of the seat.
 * @csspart picture - What holds the canvas and the handles.
 * @csspart canvas - The chart.
 * @csspart handle - One filter's handle.
 * @csspart key - What the signs mean.
 * @csspart cursor - The slider and the read-out.
 * @csspart readout - The values under the cursor.
 * @csspart bands - The filters as numbers.
 * @csspart refusal - Why a change was not taken as it was wished.
 * @csspart cut-of - Choice of the ridge for a matched cut.
 * @csspart add-cut - The button that adds it.
 * @csspart remove-band - The button that removes one filter.
 * @csspart clear - The button that removes all.
 * @csspart headroom - What is gained or lost.
 * @csspart auto - Proposed cuts with their limits.
 * @csspart propose - The button that proposes them.
 * @csspart skipped - What was left alone, and why.
 * @csspart ridges - Ridges without and with the filters.
 * @csspart hangs - How long each ridge hangs at each seat.
 * @csspart options-button - The button that opens what can be done about a ridge.
 * @csspart options - Everything that can be done about it.
 * @csspart option-cut - The button that adds the cut that is told there.
 * @csspart after - The decay without and with the filters, as pictures.
 * @csspart form - Choice of spectrogram or waterfall.
 * @csspart export - The filters as files.
 * @csspart rate - Their sample rate.
 * @csspart csv - The tables as files.
 * @csspart save - The chart as a file.
 * @csspart table - The chart as a table.
 * @csspart caption - How the chart was made.
 * @csspart message - Why there is no chart.
 *
 * @cssprop [--ringdown-height=clamp(30rem, 74cqi, 42rem)] - Height of the chart.
 * @cssprop [--ringdown-pair-height=clamp(17rem, 38cqi, 26rem)] - Height of the two pictures.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text; the page's where not given.
 * @cssprop --ringdown-accent - What the filters make, and the cursor.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownRemedy extends SystemChartElement {
  static override styles = [tokens, figureStyles, chartStyles, systemStyles, remedyStyles];

  protected override readonly chartName = 'remedy';
  /** Index in the grid; null for the mean. */
  @state() private seatShown: RemedySeat = null;
  @state() private held: number | null = null;
  @state() private refusal = '';
  /** Index of the ridge whose options stand open. */
  @state() private opened: number | null = null;
  @state() private form: PairForm = 'waterfall';
  #layout: RemedyLayout | null = null;
  readonly #pair = new PairController(this, () => this.#pairChanged());
  readonly #afterStage = new StageController(this, () => this.#drawAfter(), '[data-after]');

  override get systemNeeds(): readonly SystemPart[] {
    return ['sums', 'decays'];
  }

  get #seat(): RemedySeat {
    const count = this.systemSnapshot!.grid.seats.length;
    if (count === 1) return 0;
    return this.seatShown !== null && this.seatShown < count ? this.seatShown : null;
  }

  /** The seat of the pictures: the one chosen, else the first. */
  get #pictureSeat(): number {
    return this.#seat ?? 0;
  }

  protected override snapshotChanged(): void {
    this.#pair.follow();
    super.snapshotChanged();
  }

  #pairChanged(): void {
    this.requestUpdate();
    this.#afterStage.request();
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const system = this.systemSnapshot;
    if (!system || system.grid.seats.length === 0) return;
    const seat = system.grid.seats[this.#pictureSeat] ?? null;
    this.#pair.choose({ first: { of: 'before' }, second: { of: 'designed' }, seat });
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    this.#afterStage.request();
    this.#placeHandles();
  }

  protected override themeChanged(): void {
    super.themeChanged();
    if (this.themeController.printing) this.#afterStage.drawNow();
    else this.#afterStage.request();
  }

  protected override shownParts(): readonly unknown[] {
    const { cursor, choices } = this.snapshot!;
    const { matrix, design, before, designed } = this.systemSnapshot!;
    return [cursor, choices, matrix, design, before, designed];
  }

  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    const shown = { seat: this.#seat, held: this.held };
    const chart = remedyChart(this.snapshot!, this.systemSnapshot!, shown, this.speaker);
    this.#layout = drawRemedyChart(pen, chart, theme, size);
    this.#placeHandles();
  }

  /** Handles stand where the picture says; it may be drawn after them. */
  #placeHandles(): void {
    const layout = this.#layout;
    const { scale } = this.stageController;
    const bands = this.systemSnapshot?.design.bands;
    if (!layout || !bands) return;
    for (const node of this.renderRoot.querySelectorAll<HTMLElement>('.handle')) {
      const band = bands[Number(node.dataset.band)] as Band | undefined;
      if (!band) continue;
      const { x, y } = layout.toPixel(band.frequencyHz, band.gainDb);
      const { left, right, top, bottom } = layout.gains;
      node.style.setProperty('--x', `${scale * Math.min(right, Math.max(left, x))}px`);
      node.style.setProperty('--y', `${scale * Math.min(bottom, Math.max(top, y))}px`);
    }
  }

  #drawAfter(): void {
    const context = this.renderRoot.querySelector<HTMLCanvasElement>('.after canvas')?.getContext('2d');
    const pair = this.#pair.snapshot;
    if (!context || !pair || !this.snapshot) return;
    const theme = this.look;
    const { size } = this.#afterStage;
    const titles = { first: this.speaker.view('remedy-before'), second: this.speaker.view('remedy-after') };
    const what = { form: this.form, difference: false };
    const picture = pairPicture(this.snapshot, pair, titles, what, this.speaker);
    if (picture) paintCanvas(context, theme, size, (pen) => void drawPair(pen, picture, theme, size));
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    const frequencyHz = this.#layout?.toPosition(x, y) ?? null;
    return frequencyHz === null ? null : this.cursorWith({ frequencyHz });
  }

  protected override readoutText(): string {
    const { snapshot, systemSnapshot } = this;
    return snapshot && systemSnapshot?.matrix
      ? remedyReadout(snapshot, systemSnapshot, this.#seat, this.speaker)
      : '';
  }

  protected override keyItems(): readonly LegendItem[] {
    return remedyKey(this.systemSnapshot!, this.speaker);
  }

  protected override captionText(): string {
    return remedyCaption(this.systemSnapshot!, this.#seat, this.speaker);
  }

  #changed(): void {
    emit(this, 'ringdown-study-change', { what: 'design', snapshot: this.snapshot! });
  }

  #setBands(bands: readonly Band[], refusal = ''): void {
    this.refusal = refusal;
    this.system?.setBands(bands);
    this.#changed();
  }

  #change(index: number, change: BandChange): void {
    const { system, speaker } = this;
    if (!system) return;
    const { bands } = system.snapshot.design;
    if (!bands[index]) return;
    const allowed = bandAfter(system.snapshot, index, change);
    const names = seatNames(system.snapshot, speaker);
    const said = bandRefusal(allowed);
    const seats = allowed.nullSeats.map((seat) => names[seat]).join(', ');
    this.#setBands(
      bands.map((band, k) => (k === index ? allowed.band : band)),
      said ? speaker.view(said.code, { ...said.params, seats, count: allowed.nullSeats.length }) : '',
    );
  }

  #add(band: Band): void {
    const { system } = this;
    if (system) this.#setBands([...system.snapshot.design.bands, band]);
  }

  protected override renderTools(): TemplateResult {
    const { speaker } = this;
    const system = this.systemSnapshot!;
    const names = seatNames(system, speaker);
    if (names.length < 2) return html``;
    const shown = this.#seat;
    return html`<div class="tools screen-only">
      <label
        >${speaker.view('choose-seat')}
        <select
          part="seat"
          @change=${(event: Event) => {
            const at = (event.target as HTMLSelectElement).selectedIndex;
            this.seatShown = at === 0 ? null : at - 1;
          }}
        >
          <option ?selected=${shown === null}>${speaker.view('choose-mean')}</option>
          ${names.map((name, k) => html`<option ?selected=${k === shown}>${name}</option>`)}
        </select></label
      >
    </div>`;
  }

  protected override renderCanvas(): TemplateResult {
    return html`${super.renderCanvas()}
    ${renderHandles({
      bands: this.systemSnapshot!.design.bands,
      layout: () => this.#layout,
      pointOf: (event, box) => this.stageController.pointOf(event, box),
      speaker: this.speaker,
      change: (index, change) => this.#change(index, change),
      hold: (index) => {
        this.held = index;
      },
    })}`;
  }

  protected override renderMore(): TemplateResult {
    const { speaker } = this;
    const system = this.system!;
    const { snapshot } = system;
    const { bands } = snapshot.design;
    return html`${this.renderFailures()} ${this.#renderHeadroom()}
    ${renderBands({
      ...{ system: snapshot, speaker, refusal: this.refusal },
      change: (index, change) => this.#change(index, change),
      remove: (index) => this.#setBands(bands.filter((_, k) => k !== index)),
      add: (band) => this.#add(band),
      clear: () => this.#setBands([]),
    })}`;
  }

  /** What follows below the chart and its filters. */
  #renderRest(): TemplateResult {
    const { speaker } = this;
    const system = this.system!;
    const { snapshot } = system;
    const changed = (): void => this.#changed();
    return html`<div class="rest">
      ${renderAuto(system, speaker, changed)}
      ${renderRidgesAfter(
        snapshot,
        this.opened,
        (ridge) => {
          this.opened = ridge;
        },
        speaker,
      )}
      ${this.opened === null ? nothing : renderOptions(snapshot, this.opened, (band) => this.#add(band), speaker)}
      ${this.#renderAfter()} ${renderExport(system, this.recordingLabel, () => this.scope, speaker, changed)}
      ${csvControls(
        () => [remedyTable(snapshot), optionsTable(snapshot)],
        ['remedy', 'options'],
        () => this.scope,
        this.recordingLabel,
        speaker,
      )}
    </div>`;
  }

  protected override render(): TemplateResult {
    return html`${this.renderFigure()} ${this.drawable ? this.#renderRest() : nothing}`;
  }

  #renderHeadroom(): TemplateResult | typeof nothing {
    const { speaker } = this;
    const system = this.systemSnapshot!;
    if (system.design.bands.length === 0) return nothing;
    const { headroomDb } = remedyReading(system)!;
    const code = headroomDb > 0.05 ? 'gained' : headroomDb < -0.05 ? 'lost' : 'none';
    return html`<p class="hint" part="headroom" role="status">
      ${speaker.view(`headroom-${code}`, { headroomDb: Math.abs(headroomDb) })}
    </p>`;
  }

  /** Without and with the filters as pictures of the decay, on one scale. */
  #renderAfter(): TemplateResult {
    const { speaker } = this;
    const system = this.systemSnapshot!;
    const pair = this.#pair.snapshot;
    const filtered = system.design.bands.length > 0;
    const drawn = filtered && pair?.first?.grid && pair.second?.grid;
    const seat = seatNames(system, speaker)[this.#pictureSeat];
    return html`<section part="after" aria-label=${speaker.view('after-heading')}>
      <h3>${speaker.view('after-heading')}</h3>
      ${
        drawn
          ? html`<div class="tools screen-only">
                <label
                  >${speaker.view('choose-form')}
                  <select
                    part="form"
                    @change=${(event: Event) => {
                      const at = (event.target as HTMLSelectElement).selectedIndex;
                      this.form = at === 0 ? 'waterfall' : 'spectrogram';
                    }}
                  >
                    ${(['waterfall', 'spectrogram'] as const).map(
                      (form) =>
                        html`<option ?selected=${form === this.form}>
                          ${speaker.view(`form-${form}`)}
                        </option>`,
                    )}
                  </select></label
                >
                <span>${seat}</span>
              </div>
              <div class="after" data-after>
                <canvas role="img" aria-label=${speaker.view('after-name', { seat })}></canvas>
              </div>`
          : html`<p class="hint">
              ${
                filtered && system.progress
                  ? speaker.stage(system.progress.stage)
                  : speaker.view('after-nothing')
              }
            </p>`
      }
    </section>`;
  }

  protected override renderTable(): TemplateResult {
    return renderRemedyTable(this.systemSnapshot!, this.#seat, this.speaker);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-remedy': RingdownRemedy;
  }
}
