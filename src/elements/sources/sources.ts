import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { LegendItem } from '../../draw/legend.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import { drawSourcesChart } from '../../draw/sources-chart.js';
import type { SourcesLayout } from '../../draw/sources-chart.js';
import type { DrawTheme } from '../../draw/types.js';
import { alignedSettings, checkedFilter } from '../../study/source-readings.js';
import type { Band, SourceSetting } from '../../study/source-readings.js';
import { sourcesTable } from '../../study/tables.js';
import type { SystemPart } from '../../study/system-types.js';
import type { Cursor } from '../../study/types.js';
import { emit } from '../events.js';
import { chartStyles } from '../shared/chart-styles.js';
import { csvControls } from '../shared/csv.js';
import { figureStyles } from '../shared/figure-styles.js';
import { seatNames, sourceNames } from '../../sheet/point-name.js';
import { failed } from '../shared/settings.js';
import { tokens } from '../shared/styles.js';
import { SystemChartElement } from '../shared/system-chart.js';
import { systemStyles } from '../shared/system-styles.js';
import { keyOf, settingOf, sourcesChart, sourcesReadout } from './chart.js';
import { renderControls } from './controls.js';
import { renderProposal } from './proposal.js';
import { sourcesStyles } from './styles.js';
import { renderLevels } from './table.js';

/**
 * Several sources together: each at one seat with its level and its phase against another, and their complex sum, live
 * while gain, delay, polarity and filters are turned. Sources are matched in phase over the band they share, not by the
 * peak of the impulse. Better settings can be looked for within bounds, with what they cost.
 *
 * @summary Level and phase of each source at a seat, their sum, and their settings.
 * @tag ringdown-sources
 *
 * @fires {CustomEvent<StudyChangeDetail>} ringdown-study-change - The user changed a setting.
 * @fires {CustomEvent<CursorChangeDetail>} ringdown-cursor-change - The user moved the cursor.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The figure.
 * @csspart head - Name and tools.
 * @csspart title - How many sources and seats.
 * @csspart seat - Choice of the seat.
 * @csspart against - Choice of the source that the others are held against.
 * @csspart picture - What holds the canvas.
 * @csspart key - What the signs mean.
 * @csspart cursor - The slider and the read-out.
 * @csspart readout - The values under the cursor.
 * @csspart settings - Gain, delay, polarity and filters of each source.
 * @csspart align - The button that brings all sources into phase.
 * @csspart proposal - Better settings, with bounds and cost.
 * @csspart csv - The settings as a file.
 * @csspart save - Width and buttons to save the picture.
 * @csspart link - Button that copies a link to the view.
 * @csspart table - The picture as a table.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 * @csspart add-filter - Adds a filter to a source.
 * @csspart cancel - Stops the search.
 * @csspart propose - Starts the search for better settings.
 * @csspart reset - Sets all sources as measured.
 * @csspart trade-off - What less spread costs in output.
 *
 * @cssprop [--ringdown-height=clamp(20rem, 52cqi, 30rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text and sources; the page's where not given.
 * @cssprop --ringdown-accent - Sum and cursor.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownSources extends SystemChartElement {
  static override styles = [tokens, figureStyles, chartStyles, systemStyles, sourcesStyles];

  protected override readonly chartName = 'sources';
  @state() private seatShown = 0;
  @state() private against = 0;
  @state() private wrong: ReadonlyMap<number, string> = new Map();
  #layout: SourcesLayout | null = null;

  override get systemNeeds(): readonly SystemPart[] {
    // The ridges say which settings let the bass hang.
    return ['sums', 'decays'];
  }

  get #seat(): number {
    return Math.min(this.seatShown, this.systemSnapshot!.grid.seats.length - 1);
  }

  get #reference(): number {
    return Math.min(this.against, this.systemSnapshot!.grid.sources.length - 1);
  }

  protected override shownParts(): readonly unknown[] {
    const { cursor, choices } = this.snapshot!;
    const { matrix, design } = this.systemSnapshot!;
    return [cursor, choices, matrix, design];
  }

  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    const chart = sourcesChart(
      this.snapshot!,
      this.systemSnapshot!,
      this.#seat,
      this.#reference,
      this.speaker,
    );
    this.#layout = drawSourcesChart(pen, chart, theme, size);
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    const frequencyHz = this.#layout?.toPosition(x, y) ?? null;
    return frequencyHz === null ? null : this.cursorWith({ frequencyHz });
  }

  protected override readoutText(): string {
    const { snapshot, systemSnapshot } = this;
    return snapshot && systemSnapshot?.matrix
      ? sourcesReadout(snapshot, systemSnapshot, this.#seat, this.#reference, this.speaker)
      : '';
  }

  protected override keyItems(): readonly LegendItem[] {
    const { speaker } = this;
    return [
      { sign: 'accent-line', text: speaker.view('key-sum') },
      { sign: 'text-line', text: speaker.view('key-source') },
      { sign: 'faint-line', text: speaker.view('key-phase-faint') },
    ];
  }

  protected override captionText(): string {
    const { speaker } = this;
    const system = this.systemSnapshot!;
    const { fromHz, toHz } = system.design;
    return speaker.view('sources-caption', {
      ...{ fromHz, toHz },
      seat: seatNames(system, speaker)[this.#seat],
      reference: sourceNames(system, speaker)[this.#reference],
    });
  }

  #changed(): void {
    emit(this, 'ringdown-study-change', { what: 'design', snapshot: this.snapshot! });
  }

  #set(source: number, change: Partial<SourceSetting>): void {
    const { system } = this;
    if (!system) return;
    system.setSource(keyOf(system.snapshot, source), change);
    this.#changed();
  }

  #setBand(source: number, index: number, band: Band | null): void {
    const { system } = this;
    if (!system) return;
    const bands = [...settingOf(system.snapshot, source).bands];
    bands.splice(index, 1, ...(band ? [band] : []));
    try {
      for (const one of bands) checkedFilter(one, system.snapshot.design.sampleRate);
    } catch (error) {
      this.wrong = new Map([...this.wrong, [source, this.describe(failed(error))]]);
      return;
    }
    this.wrong = new Map([...this.wrong].filter(([k]) => k !== source));
    this.#set(source, { bands });
  }

  protected override renderTools(): TemplateResult {
    const { speaker } = this;
    const system = this.systemSnapshot!;
    const choice = (
      part: string,
      names: readonly string[],
      at: number,
      set: (index: number) => void,
    ): TemplateResult =>
      html`<label
        >${speaker.view(`choose-${part}`)}
        <select
          part=${part}
          @change=${(event: Event) => set((event.target as HTMLSelectElement).selectedIndex)}
        >
          ${names.map((name, k) => html`<option ?selected=${k === at}>${name}</option>`)}
        </select></label
      >`;
    return html`<div class="tools screen-only">
      ${choice('seat', seatNames(system, speaker), this.#seat, (seat) => {
        this.seatShown = seat;
      })}
      ${
        system.grid.sources.length > 1
          ? choice('against', sourceNames(system, speaker), this.#reference, (source) => {
              this.against = source;
            })
          : nothing
      }
    </div>`;
  }

  protected override renderMore(): TemplateResult {
    const { speaker } = this;
    const system = this.system!;
    const study = this.snapshot!;
    return html`${this.renderFailures()}
    ${renderControls({
      ...{ system, study, seat: this.#seat, reference: this.#reference, speaker, wrong: this.wrong },
      set: (source, change) => this.#set(source, change),
      setBand: (source, index, band) => this.#setBand(source, index, band),
    })}
    ${
      system.snapshot.grid.sources.length > 1
        ? html`<div class="tools screen-only">
              <button
                type="button"
                part="align"
                @click=${() => {
                  system.setDesign({ settings: alignedSettings(system.snapshot, this.#reference) });
                  this.#changed();
                }}
              >
                ${speaker.view('align', { name: sourceNames(system.snapshot, speaker)[this.#reference] })}
              </button>
              <span>${speaker.view('align-hint')}</span>
            </div>
            ${renderProposal(system, speaker, () => this.#changed())}`
        : nothing
    }
    ${csvControls(
      () => [sourcesTable(system.snapshot)],
      ['sources'],
      () => this.scope,
      this.recordingLabel,
      speaker,
    )}`;
  }

  protected override renderTable(): TemplateResult {
    return renderLevels(this.systemSnapshot!, this.#seat, this.#reference, this.speaker);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-sources': RingdownSources;
  }
}
