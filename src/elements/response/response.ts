/**
 * Long because header and properties are the documented interface, and the tolerance window is read, moved and drawn by the
 * same few values.
 */
import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { ChartLayout } from '../../draw/chart-frame.js';
import type { Pen } from '../../draw/pen.js';
import type { DrawSize } from '../../draw/picture.js';
import { drawResponseChart } from '../../draw/response-chart.js';
import type { DrawTheme } from '../../draw/types.js';
import { smoothings } from '../../study/inputs.js';
import type { Cursor, Part } from '../../study/types.js';
import { ChartElement } from '../shared/chart-element.js';
import type { LegendItem } from '../../draw/legend.js';
import { chartStyles } from '../shared/chart-styles.js';
import { figureStyles } from '../shared/figure-styles.js';
import { failed, readNumber } from '../shared/settings.js';
import type { Given } from '../shared/settings.js';
import type { LinkValue } from '../../study/view-link.js';
import { parseNumber } from '../../words/index.js';
import { tokens } from '../shared/styles.js';
import {
  bestLevel,
  levelRange,
  responseCaption,
  responseChart,
  responseKey,
  responseReadout,
  seatsOf,
  toleranceText,
} from '../../sheet/response-chart.js';
import type { Seat, Tolerance } from '../../sheet/response-chart.js';
import { responseStyles } from './styles.js';
import { responseTable } from './table.js';

/** Half heights of the window that are offered, dB: what is called very good, and what fine work reaches (common practice). */
const presetsDb = [2.5, 1] as const;

/**
 * The magnitude response with nothing smoothed unless asked for, and it says what is on; a tolerance window that can be
 * moved and tells how much lies inside it; peaks and dips marked; the other seats overlaid with their spread. What is
 * noise is greyed.
 *
 * @summary Magnitude response with a tolerance window, seats overlaid.
 * @tag ringdown-response
 *
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
 * @csspart tolerance - What moves the tolerance window, and what lies inside it.
 * @csspart cursor - The slider and the read-out.
 * @csspart readout - The level under the cursor.
 * @csspart table - Levels, peaks and dips as tables.
 * @csspart caption - How the picture was made.
 * @csspart message - Why there is no picture.
 * @csspart smoothing - Choice of the smoothing.
 * @csspart tolerance-slider - The slider that moves the tolerance window.
 * @csspart canvas - The picture itself.
 *
 * @cssprop [--ringdown-height=clamp(16rem, 40cqi, 24rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text and other seats; the page's where not given.
 * @cssprop --ringdown-accent - The shown seat, the window and the cursor.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownResponse extends ChartElement {
  static override styles = [tokens, figureStyles, chartStyles, responseStyles];

  protected override readonly chartName = 'response';
  /** Half the height of the tolerance window, dB: 2.5 where not given; "none" for no window. */
  @property() tolerance: Given = null;
  /** Middle of the window, dB; where most lies inside it, where not given. */
  @property({ attribute: 'tolerance-level' }) toleranceLevel: Given = null;
  /** Lowest frequency of the window, Hz; the lowest shown where not given. */
  @property({ attribute: 'tolerance-from' }) toleranceFrom: Given = null;
  /** Highest frequency of the window, Hz; the highest shown where not given. */
  @property({ attribute: 'tolerance-to' }) toleranceTo: Given = null;
  /** Only the shown recording, without the other seats. */
  @property({ type: Boolean, attribute: 'no-seats' }) noSeats = false;

  @state() private alone = false;
  /** @internal */
  override readonly linkName = 'response';
  #layout: ChartLayout | null = null;
  /** While the window is dragged: level under the pointer less that of the window. */
  #held: number | null = null;

  /** @internal */
  override linkValues(): readonly LinkValue[] {
    const number = (value: Given): number | null => {
      const read = value === null || value === undefined || value === '' ? NaN : parseNumber(String(value));
      return read === null || Number.isNaN(read) ? null : read;
    };
    const half = String(this.tolerance ?? '').trim() === 'none' ? 0 : number(this.tolerance);
    const { toleranceLevel, toleranceFrom, toleranceTo } = this;
    const window = [toleranceLevel, toleranceFrom, toleranceTo].map(number);
    return [half, ...window, this.alone ? 'alone' : null];
  }

  /** @internal */
  override takeLink([
    half = null,
    level = null,
    from = null,
    to = null,
    alone = null,
  ]: readonly LinkValue[]): void {
    this.tolerance = half === 0 ? 'none' : half;
    this.toleranceLevel = level;
    this.toleranceFrom = from;
    this.toleranceTo = to;
    this.alone = alone !== null;
  }

  override get needs(): readonly Part[] {
    return ['responses'];
  }

  protected override get drawable(): boolean {
    return Boolean(this.snapshot?.responses[this.snapshot.active]);
  }

  protected override shownParts(): readonly unknown[] {
    const { responses, recordings, active, cursor, choices, diagnosis } = this.snapshot!;
    return [responses, recordings, active, cursor, choices, diagnosis];
  }

  get #seats(): Seat[] {
    return seatsOf(this.snapshot!, !this.noSeats && !this.alone, this.speaker);
  }

  get #main(): Seat {
    const { active } = this.snapshot!;
    return this.#seats.find(({ index }) => index === active)!;
  }

  /** The window as attributes and hand have it; sentences where an attribute cannot be read. */
  #window(): { tolerance: Tolerance | null; problems: string[] } {
    const problems: string[] = [];
    const read = (name: string, value: Given, range: readonly [number, number]): number | null => {
      try {
        return readNumber(name, value, range);
      } catch (error) {
        problems.push(this.describe(failed(error)));
        return null;
      }
    };
    const { choices } = this.snapshot!;
    if (String(this.tolerance ?? '').trim() === 'none') return { tolerance: null, problems };
    const halfDb = read('tolerance', this.tolerance, [0.1, 30]) ?? presetsDb[0];
    const bounds = [choices.fromHz, choices.toHz] as const;
    const from = read('tolerance-from', this.toleranceFrom, [1, 2000]) ?? choices.fromHz;
    const to = read('tolerance-to', this.toleranceTo, [1, 2000]) ?? choices.toHz;
    const fromHz = Math.max(bounds[0], Math.min(from, to));
    const toHz = Math.min(bounds[1], Math.max(from, to));
    if (!(toHz > fromHz)) return { tolerance: null, problems };
    const level = read('tolerance-level', this.toleranceLevel, [-300, 300]);
    const levelDb = level ?? bestLevel(this.#main.response, { halfDb, fromHz, toHz });
    return { tolerance: { halfDb, levelDb, fromHz, toHz }, problems };
  }

  protected override paint(pen: Pen, theme: DrawTheme, size: DrawSize): void {
    const { tolerance } = this.#window();
    const chart = responseChart(this.snapshot!, this.#seats, tolerance, this.speaker);
    this.#layout = drawResponseChart(pen, chart, theme, size);
  }

  protected override cursorAt(x: number, y: number): Cursor | null {
    const field = this.#layout?.toField(x, y);
    return field ? this.cursorWith({ frequencyHz: field.position }) : null;
  }

  protected override readoutText(): string {
    return this.snapshot ? responseReadout(this.snapshot, this.#seats, this.speaker) : '';
  }

  protected override keyItems(): readonly LegendItem[] {
    return responseKey(this.#seats, this.#main, this.speaker);
  }

  protected override captionText(): string {
    return responseCaption(this.#seats, this.#main, this.speaker);
  }

  protected override renderTools(): TemplateResult {
    const { speaker, snapshot } = this;
    const { smoothing } = snapshot!.choices;
    const others = seatsOf(snapshot!, !this.noSeats, speaker).length - 1;
    return html`<div class="tools screen-only">
      <label
        >${speaker.view('choose-smoothing')}
        <select
          part="smoothing"
          @change=${(event: Event) =>
            this.study?.setChoices({
              smoothing: smoothings[(event.target as HTMLSelectElement).selectedIndex],
            })}
        >
          ${smoothings.map(
            (one) =>
              html`<option ?selected=${one === smoothing}>
                ${
                  one === 'none' || one === 'erb'
                    ? speaker.view(`smooth-${one}`)
                    : speaker.view('smooth-octave', { fraction: one })
                }
              </option>`,
          )}
        </select></label
      >
      ${
        others > 0
          ? html`<label
              ><input
                type="checkbox"
                .checked=${live(!this.alone)}
                @change=${() => {
                  this.alone = !this.alone;
                }}
              />
              ${speaker.view('show-seats', { count: others })}</label
            >`
          : nothing
      }
    </div>`;
  }

  protected override renderMore(): TemplateResult {
    const { speaker } = this;
    const { n } = speaker;
    const { tolerance, problems } = this.#window();
    const half = tolerance?.halfDb ?? null;
    const offered = [...new Set([...presetsDb, ...(half === null ? [] : [half])])].sort((a, b) => b - a);
    const [bottom, top] = levelRange(this.#seats, this.snapshot!.choices.rangeDb);
    return html`${problems.map((problem) => html`<p class="alert">${problem}</p>`)}
      <div class="tolerance" part="tolerance" role="group" aria-label=${speaker.view('tolerance-window')}>
        <label class="screen-only"
          >${speaker.view('tolerance-window')}
          <select
            @change=${(event: Event) => {
              const { value } = event.target as HTMLSelectElement;
              this.tolerance = value;
            }}
          >
            <option value="none" ?selected=${half === null}>${speaker.view('tolerance-none')}</option>
            ${offered.map(
              (one) =>
                html`<option value=${one} ?selected=${one === half}>
                  ${speaker.view('plus-minus-db', { halfDb: n.significant(one, 3) })}
                </option>`,
            )}
          </select></label
        >
        ${
          tolerance
            ? html`<label class="screen-only level"
                  >${speaker.view('tolerance-level')}
                  <input
                    type="range"
                    part="tolerance-slider"
                    min=${bottom}
                    max=${top}
                    step="0.1"
                    .value=${live(String(tolerance.levelDb))}
                    aria-valuetext=${n.decibels(tolerance.levelDb, 1)}
                    @input=${(event: Event) => {
                      this.toleranceLevel = (event.target as HTMLInputElement).valueAsNumber;
                    }}
                /></label>
                ${this.#rangeInput('tolerance-from', tolerance.fromHz, (value) => {
                  this.toleranceFrom = value;
                })}
                ${this.#rangeInput('tolerance-to', tolerance.toHz, (value) => {
                  this.toleranceTo = value;
                })}
                <button
                  type="button"
                  class="screen-only"
                  ?disabled=${this.toleranceLevel === null}
                  @click=${() => {
                    this.toleranceLevel = null;
                  }}
                >
                  ${speaker.view('tolerance-best')}
                </button>
                <output class="share"
                  >${toleranceText(this.#main.response, tolerance, speaker)}${speaker.view(
                    'tolerance-where',
                    {
                      fromHz: tolerance.fromHz,
                      toHz: tolerance.toHz,
                      levelDb: tolerance.levelDb,
                    },
                  )}</output
                >`
            : nothing
        }
      </div>`;
  }

  #rangeInput(name: string, value: number, changed: (text: string) => void): TemplateResult {
    return html`<label class="screen-only"
      >${this.speaker.view(name)}
      <input
        type="text"
        inputmode="decimal"
        size="4"
        part=${name}
        .value=${live(this.speaker.n.significant(value, 4))}
        @change=${(event: Event) => changed((event.target as HTMLInputElement).value)}
    /></label>`;
  }

  /** The window can be taken by a mouse or a pen; a finger scrolls the page and uses the slider. */
  #grab(event: PointerEvent): void {
    const { x, y } = this.pointOf(event);
    const field = this.#layout?.toField(x, y);
    const { tolerance } = this.#window();
    if (!field || !tolerance || event.pointerType === 'touch' || event.button !== 0) return;
    const inside =
      field.position >= tolerance.fromHz &&
      field.position <= tolerance.toHz &&
      Math.abs(field.value - tolerance.levelDb) <= tolerance.halfDb;
    if (!inside) return;
    this.#held = field.value - tolerance.levelDb;
    this.canvas!.setPointerCapture(event.pointerId);
  }

  #drag(event: PointerEvent): void {
    if (this.#held === null) {
      this.hover(event);
      return;
    }
    const value = this.#layout!.valueAxis.atPixel(this.pointOf(event).y);
    const [bottom, top] = levelRange(this.#seats, this.snapshot!.choices.rangeDb);
    const level = Math.min(top, Math.max(bottom, value - this.#held));
    this.toleranceLevel = Math.round(level * 10) / 10;
  }

  protected override renderCanvas(): TemplateResult {
    return html`<canvas
      part="canvas"
      role="img"
      aria-label=${this.speaker.view('response-name', { label: this.recordingLabel })}
      aria-describedby="help"
      @pointerdown=${(event: PointerEvent) => this.#grab(event)}
      @pointermove=${(event: PointerEvent) => this.#drag(event)}
      @pointerup=${() => {
        this.#held = null;
      }}
      @pointercancel=${() => {
        this.#held = null;
      }}
      @pointerleave=${() => this.leave()}
      @click=${(event: MouseEvent) => this.press(event)}
    ></canvas>`;
  }

  protected override renderTable(): TemplateResult {
    return responseTable(this.#seats, this.snapshot!.active, this.speaker);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-response': RingdownResponse;
  }
}
