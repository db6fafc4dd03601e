import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { ChartLayout } from '../../draw/chart-frame.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import { drawResponseChart } from '../../draw/response-chart.js';
import type { DrawTheme } from '../../draw/types.js';
import type { LegendItem } from '../../draw/legend.js';
import { levelsTable, ridgesTable, seatsTable, spreadTable } from '../../study/tables.js';
import type { SystemPart } from '../../study/system-types.js';
import type { Cursor } from '../../study/types.js';
import { emit } from '../events.js';
import { chartStyles } from '../shared/chart-styles.js';
import { csvControls } from '../shared/csv.js';
import { figureStyles } from '../shared/figure-styles.js';
import { tokens } from '../shared/styles.js';
import { SystemChartElement } from '../shared/system-chart.js';
import { systemStyles } from '../shared/system-styles.js';
import { seatsChart, seatsReadout, stageName, stagesShown } from '../../sheet/seats-chart.js';
import type { Shown } from '../../sheet/seats-chart.js';
import { renderPoints } from './points.js';
import { renderFigures, renderGrid, renderLevels, renderRidges, renderSeats } from './tables.js';

/**
 * Whether the seats agree: the response of each with all its sources playing, their mean and spread, with weights; which
 * ridges hang at every seat and which at some; which points were measured, and what each recording is a recording of.
 *
 * @summary Responses of all seats with mean and spread, and ridges by seat.
 * @tag ringdown-seats
 *
 * @fires {CustomEvent<StudyChangeDetail>} ringdown-study-change - The user changed weights, or what recordings are of.
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name and tools.
 * @csspart title - How many sources and seats.
 * @csspart stage - Choice between measured, designed and later.
 * @csspart picture - What holds the canvas.
 * @csspart key - What the signs mean.
 * @csspart cursor - The slider and the read-out.
 * @csspart readout - The values under the cursor.
 * @csspart weights - Seats with their weights.
 * @csspart ridges - Ridges by seats.
 * @csspart grid - Which points were measured.
 * @csspart points - What each recording is a recording of.
 * @csspart csv - The tables as files.
 * @csspart save - Width and buttons to save the picture.
 * @csspart link - Button that copies a link to the view.
 * @csspart table - The picture as a table.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 * @csspart guess - Reads the points from the names of the recordings.
 * @csspart clock - Says that one clock timed all recordings.
 *
 * @cssprop [--ringdown-height=clamp(16rem, 40cqi, 24rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text and seats; the page's where not given.
 * @cssprop --ringdown-accent - Mean and cursor.
 * @cssprop --ringdown-alert - What is missing.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownSeats extends SystemChartElement {
  static override styles = [tokens, figureStyles, chartStyles, systemStyles];

  protected override readonly chartName = 'seats';
  @state() private wanted: Shown = 'designed';
  #layout: ChartLayout | null = null;

  override get systemNeeds(): readonly SystemPart[] {
    return ['sums', 'decays'];
  }

  /** What was chosen, where there is such; else as measured. */
  get #shown(): Shown {
    const stages = stagesShown(this.systemSnapshot!);
    return stages.includes(this.wanted) ? this.wanted : 'before';
  }

  protected override shownParts(): readonly unknown[] {
    const { cursor, choices, diagnosis } = this.snapshot!;
    const { matrix, afterMatrix, design } = this.systemSnapshot!;
    return [cursor, choices, diagnosis, matrix, afterMatrix, design];
  }

  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    const chart = seatsChart(this.snapshot!, this.systemSnapshot!, this.#shown, this.speaker);
    this.#layout = drawResponseChart(pen, chart, theme, size);
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    const field = this.#layout?.toField(x, y);
    return field ? this.cursorWith({ frequencyHz: field.position }) : null;
  }

  protected override readoutText(): string {
    const { snapshot, systemSnapshot } = this;
    return snapshot && systemSnapshot?.matrix
      ? seatsReadout(snapshot, systemSnapshot, this.#shown, this.speaker)
      : '';
  }

  protected override keyItems(): readonly LegendItem[] {
    const { speaker } = this;
    return [
      { sign: 'accent-line', text: speaker.view('key-mean') },
      { sign: 'text-line', text: speaker.view('key-seat') },
      { sign: 'grey', text: speaker.view('key-lowest-highest') },
    ];
  }

  protected override captionText(): string {
    const { speaker } = this;
    const system = this.systemSnapshot!;
    const { fromHz, toHz } = system.design;
    const { repeats } = system;
    return [
      speaker.view('seats-caption', {
        ...{ fromHz, toHz, sources: system.grid.sources.length },
        stage: stageName(system, this.#shown, speaker),
      }),
      speaker.view('variance-meaning'),
      ...(repeats
        ? [
            speaker.view('repeats', {
              pairs: repeats.pairs,
              levelDb: repeats.levelDb,
              variance: repeats.varianceDb2,
            }),
          ]
        : []),
      ...(system.grid.incomplete.length > 0
        ? [speaker.view('seats-left-out', { count: system.grid.incomplete.length })]
        : []),
    ].join(' ');
  }

  #changed(what: 'design' | 'recordings'): void {
    emit(this, 'ringdown-study-change', { what, snapshot: this.snapshot! });
  }

  protected override renderTools(): TemplateResult {
    const { speaker } = this;
    const system = this.systemSnapshot!;
    const stages = stagesShown(system);
    if (stages.length < 2) return html``;
    return html`<div class="tools screen-only">
      <label
        >${speaker.view('choose-stage')}
        <select
          part="stage"
          @change=${(event: Event) => {
            this.wanted = stages[(event.target as HTMLSelectElement).selectedIndex];
          }}
        >
          ${stages.map(
            (one) =>
              html`<option ?selected=${one === this.#shown}>${stageName(system, one, speaker)}</option>`,
          )}
        </select></label
      >
    </div>`;
  }

  protected override renderMore(): TemplateResult {
    const { speaker } = this;
    const system = this.system!;
    const { snapshot } = system;
    return html`${this.renderFailures()} ${renderFigures(snapshot, speaker)}
    ${renderSeats(system, speaker, () => this.#changed('design'))} ${renderRidges(snapshot, speaker)}
    ${csvControls(
      () => [
        levelsTable(snapshot),
        seatsTable(snapshot),
        spreadTable(snapshot),
        snapshot.before && ridgesTable(snapshot.before.diagnosis),
      ],
      ['levels', 'seats', 'spread', ...(snapshot.before ? ['ridges'] : [])],
      () => this.scope,
      this.recordingLabel,
      speaker,
    )}`;
  }

  protected override render(): TemplateResult {
    const { snapshot, study, speaker } = this;
    const system = this.systemSnapshot;
    const several = snapshot && study && system && snapshot.recordings.length > 0;
    return html`${this.renderFigure()}
    ${
      several
        ? html`${renderGrid(system, speaker)}
          ${renderPoints(study, speaker, () => this.#changed('recordings'))}`
        : nothing
    }`;
  }

  protected override renderTable(): TemplateResult {
    return renderLevels(this.systemSnapshot!, this.#shown, this.speaker);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-seats': RingdownSeats;
  }
}
