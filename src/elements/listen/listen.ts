/**
 * Long because what is wanted, what is rendered and what sounds are one state, which the controls read and set;
 * player, picture, table and sentences stand beside it.
 */
import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import {
  heardKinds,
  heardWav,
  listenPlan,
  materialKinds,
  renderListen,
  responseKinds,
  responsesAt,
} from '../../study/listen.js';
import type {
  Heard,
  HeardKind,
  Listened,
  ListenPlan,
  MaterialKind,
  ResponseKind,
} from '../../study/listen.js';
import type { Part } from '../../study/types.js';
import type { FigureSize } from '../../draw/figure.js';
import { fileNameOf, figureWords } from '../../sheet/figure-words.js';
import type { Scope } from '../scope.js';
import { drawingPng, drawingSvg, renderSave } from '../shared/drawing.js';
import { figureStyles } from '../shared/figure-styles.js';
import { roomName } from '../../sheet/room-name.js';
import { download } from '../shared/save.js';
import { failed } from '../shared/settings.js';
import { tokens } from '../shared/styles.js';
import { ViewElement } from '../shared/view-element.js';
import { HeardFigure, type ShownSounds } from './figure.js';
import { heardChart, heardKey } from './picture.js';
import { newContext, Player } from './player.js';
import { aboutSounds, whyLines } from './sentences.js';
import { listenStyles } from './styles.js';
import { renderTable } from './table.js';

/** Level range of the slider, dB below the level of the rendering. */
const lowestVolumeDb = -40;
const firstVolumeDb = -20;
/** A filter that is dragged rests this long before its sound is worked out again, ms. */
const restMilliseconds = 250;

/**
 * Hear a room: a bass line, a walk of tones or bursts, made here, dry, through the measured or the predicted response,
 * treated by the study's filters, or through the mode in view alone; switched in the middle of a note. It starts muted
 * and its level is limited. The browser's audio is asked for when somebody presses Play, and given back with Stop.
 *
 * @summary A bass line dry, through the room, and treated; muted until asked, limited in level.
 * @tag ringdown-listen
 *
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - Of its own study, where it has a source.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - The whole.
 * @csspart head - Name and choices.
 * @csspart title - Name of the recording, or of the room.
 * @csspart material - Choice of what is played.
 * @csspart response - Choice of what it is played through.
 * @csspart heard - Choice of what is heard.
 * @csspart play - The button that plays and stops.
 * @csspart mute - The button that lets it sound.
 * @csspart volume - The slider of the level.
 * @csspart status - What is going on, in words.
 * @csspart picture - Level over time of each sound.
 * @csspart why - Why it is muted and limited, and what to take care of.
 * @csspart table - The sounds with their levels.
 * @csspart key - What the lines mean.
 * @csspart save - The button that saves what is heard.
 * @csspart save-picture - Width and buttons to save the picture.
 * @csspart caption - What is played and through what.
 * @csspart message - Why there is nothing.
 *
 * @cssprop [--ringdown-height=clamp(12rem, 26cqi, 16rem)] - Height of the picture.
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text and lines; the page's where not given.
 * @cssprop --ringdown-accent - What is chosen.
 *
 * @cssstate busy - Something is being computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 * @cssstate playing - Something is playing, be it muted.
 * @cssstate muted - Nothing is heard.
 */
export class RingdownListen extends ViewElement {
  static override styles = [tokens, figureStyles, listenStyles];

  /** What is played: "bass-line", "tone-walk" or "burst". */
  @property() material: MaterialKind = 'bass-line';
  /** What is heard: "dry", "room", "treated" or "mode". */
  @property() heard: HeardKind = 'room';
  /** What it is played through: "measured" or "predicted"; what is there, where the other is not. */
  @property() response: ResponseKind = 'measured';

  @state() private sound = false;
  @state() private volumeDb = firstVolumeDb;
  @state() private playing = false;
  @state() private blocked = false;
  @state() private refused = false;
  @state() private fraction: number | null = null;
  @state() private listened: Listened | null = null;
  @state() private wrong: string | null = null;
  @state() private saveFailed = false;
  readonly #figure = new HeardFigure(this, () => this.#shown());
  #player: Player | null = null;
  #rendering: AbortController | null = null;
  /** Key of what is rendered, or being rendered. */
  #wanted: string | null = null;
  #frame: (action: () => void) => void = () => undefined;
  #rest: (action: () => void) => void = () => undefined;

  override get needs(): readonly Part[] {
    return ['prediction'];
  }

  /**
   * An element that names a room and is in no study shows that room.
   * @internal
   */
  get ownsRoom(): boolean {
    return this.namesOwnRoom;
  }

  /** Whether nothing is heard, playing or not. True until somebody lets it sound. */
  get muted(): boolean {
    return !this.sound;
  }

  set muted(muted: boolean) {
    this.sound = !muted;
  }

  protected override connected(scope: Scope): void {
    super.connected(scope);
    this.#frame = scope.frames();
    this.#rest = scope.debounce(restMilliseconds);
    scope.add(() => this.stop());
  }

  protected override disconnected(): void {
    this.#rendering?.abort();
    this.#rendering = null;
    this.#wanted = this.listened ? this.#wanted : null;
    this.fraction = null;
    // Whoever puts it back into a page is to ask for the sound again.
    this.sound = false;
  }

  get #plan(): ListenPlan | null {
    const { snapshot } = this;
    if (!snapshot) return null;
    const { material, response } = this;
    const choice = {
      material: materialKinds.includes(material) ? material : 'bass-line',
      response: responseKinds.includes(response) ? response : 'measured',
    } as const;
    return listenPlan(snapshot, this.found.feed?.system.snapshot ?? null, choice);
  }

  /** Whether the browser plays nothing here. */
  get #silent(): boolean {
    return this.refused || typeof AudioContext === 'undefined';
  }

  /** What can be heard of a plan. */
  #available(plan: ListenPlan): HeardKind[] {
    const there: Record<HeardKind, boolean> = {
      dry: true,
      room: plan.response !== null,
      treated: plan.treatment !== null,
      mode: plan.mode !== null,
    };
    return heardKinds.filter((kind) => there[kind]);
  }

  /** What is heard: the one chosen, else the first that is there. */
  #chosen(plan: ListenPlan): HeardKind {
    const available = this.#available(plan);
    return available.includes(this.heard) ? this.heard : (available[1] ?? 'dry');
  }

  /** Plays, muted until told otherwise. Called in a user's gesture, which browsers ask for before they make any sound. */
  async play(): Promise<void> {
    const plan = this.#plan;
    if (!plan || this.playing || !this.isConnected) return;
    this.wrong = null;
    const context = newContext();
    const player = (this.#player = context && new Player(context));
    this.playing = player !== null;
    this.refused = player === null;
    await this.#render(plan);
    if (!player || this.#player !== player) return;
    // Sound that the browser holds back is said to be held back.
    this.scope?.timeout(() => {
      this.blocked = this.#player === player && !player.running;
    }, 500);
  }

  /** Silence at once; the browser's audio is given back. */
  stop(): void {
    this.#player?.close();
    this.#player = null;
    this.playing = false;
    this.blocked = false;
    this.#figure.movePlayhead(null);
  }

  async #render(plan: ListenPlan): Promise<void> {
    const { snapshot } = this;
    if (!snapshot) return;
    if (this.#wanted === plan.key && this.listened) {
      this.#begin(plan);
      return;
    }
    this.#rendering?.abort();
    const controller = (this.#rendering = new AbortController());
    this.#wanted = plan.key;
    this.fraction = 0;
    try {
      const listened = await renderListen(snapshot, plan, {
        signal: controller.signal,
        onProgress: ({ fraction }) => {
          if (this.#rendering === controller) this.fraction = fraction;
        },
      });
      if (this.#rendering !== controller) return;
      this.listened = listened;
      this.#begin(plan);
    } catch (thrown) {
      if (this.#rendering !== controller) return;
      this.#wanted = null;
      this.listened = null;
      this.stop();
      this.wrong = this.describe(failed(thrown));
    } finally {
      if (this.#rendering === controller) {
        this.#rendering = null;
        this.fraction = null;
      }
    }
  }

  #begin(plan: ListenPlan): void {
    if (!this.#player || !this.listened) return;
    this.#player.start(this.listened, this.#chosen(plan));
    this.#player.volume = this.#gain;
    this.#follow();
  }

  get #gain(): number {
    return this.sound ? 10 ** (this.volumeDb / 20) : 0;
  }

  /** Moves the playhead while something plays. */
  #follow(): void {
    this.#frame(() => {
      if (!this.#player || !this.listened) return;
      this.#figure.movePlayhead(this.#player.position);
      this.#follow();
    });
  }

  protected override themeChanged(): void {
    if (this.themeController.printing) this.#figure.drawNow();
    else this.#figure.request();
  }

  /** What the picture shows; null before the sound is worked out. */
  #shown(): ShownSounds | null {
    const { listened, snapshot, speaker } = this;
    const plan = this.#plan;
    if (!listened || !snapshot || !plan) return null;
    const chosen = this.#chosen(plan);
    const legend = heardKey(listened, chosen, speaker);
    return {
      chart: heardChart(listened, chosen, speaker),
      ...{ key: legend, theme: this.themeController.theme },
      words: () =>
        figureWords(snapshot, speaker, 'listen', {
          ...{ label: this.recordingLabel, legend },
          caption: aboutSounds(plan, listened, snapshot, speaker),
        }),
    };
  }

  /** The picture as a vector document; null before the sound is worked out. */
  toSvg(size: Partial<FigureSize> = {}): string | null {
    const drawing = this.#figure.drawing(size);
    return drawing && drawingSvg(drawing);
  }

  /** The same as a PNG file so many pixels wide. Rejects with a RangeError where the browser makes none that large. */
  async toPng(widthPixels = 2400, size: Partial<FigureSize> = {}): Promise<Blob | null> {
    const drawing = this.#figure.drawing(size);
    return drawing && drawingPng(drawing, widthPixels);
  }

  #renderPicture(listened: Listened, chosen: HeardKind): TemplateResult {
    const { speaker, saveFailed } = this;
    const label = speaker.view('listen-picture', { heard: speaker.view(`heard-${chosen}`) });
    return html`${this.#figure.render(label, heardKey(listened, chosen, speaker))}
    ${renderSave({
      ...{ speaker, scope: () => this.scope, label: this.recordingLabel, hasFailed: saveFailed },
      part: 'save-picture',
      drawing: () => this.#figure.drawing({}),
      failed: (hasFailed) => {
        this.saveFailed = hasFailed;
      },
    })}`;
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    this.#figure.request();
    this.setState('playing', this.playing);
    this.setState('muted', !this.sound);
    const plan = this.#plan;
    if (!plan) return;
    if (this.#player) {
      this.#player.choose(this.#chosen(plan));
      this.#player.volume = this.#gain;
    }
    // What was worked out once is kept up to date; before that nothing is computed.
    if (this.#wanted !== null && this.#wanted !== plan.key)
      this.#rest(() => {
        const now = this.#plan;
        if (now && this.#wanted !== null && this.#wanted !== now.key) void this.#render(now);
      });
  }

  protected override get recordingLabel(): string {
    const { snapshot, speaker } = this;
    const label = snapshot?.recordings[snapshot.active]?.label;
    if (label) return label;
    return snapshot?.room ? roomName(snapshot.room, speaker) : speaker.view('this-room');
  }

  #statusText(plan: ListenPlan): string {
    const { speaker, volumeDb, playing, sound, fraction } = this;
    if (this.wrong) return this.wrong;
    if (fraction !== null)
      return speaker.view('listen-working', { fraction: Math.floor(10 * fraction) / 10 });
    if (this.blocked) return speaker.view('listen-blocked');
    if (playing)
      return speaker.view(sound ? 'listen-playing' : 'listen-playing-muted', {
        material: speaker.view(`material-${plan.material}`),
        heard: speaker.view(`heard-${this.#chosen(plan)}`),
        volumeDb: Math.abs(volumeDb),
      });
    if (this.#silent) return speaker.view(this.listened ? 'listen-ready' : 'listen-no-audio');
    return speaker.view(sound ? 'listen-idle-loud' : 'listen-idle');
  }

  #select<T extends string>(
    part: 'material' | 'response',
    kinds: readonly T[],
    chosen: T,
    take: (kind: T) => void,
  ): TemplateResult {
    const { speaker } = this;
    return html`<label
      >${speaker.view(`listen-${part}`)}
      <select
        part=${part}
        @change=${(event: Event) => take(kinds[(event.target as HTMLSelectElement).selectedIndex])}
      >
        ${kinds.map(
          (kind) => html`<option ?selected=${kind === chosen}>${speaker.view(`${part}-${kind}`)}</option>`,
        )}
      </select></label
    >`;
  }

  #renderHeard(plan: ListenPlan): TemplateResult {
    const { speaker } = this;
    const available = this.#available(plan);
    const chosen = this.#chosen(plan);
    return html`<fieldset part="heard" class="screen-only">
      <legend>${speaker.view('listen-heard')}</legend>
      ${heardKinds.map(
        (kind) =>
          html`<label class="choice">
            <input
              type="radio"
              name="heard"
              value=${kind}
              .checked=${live(kind === chosen)}
              ?disabled=${!available.includes(kind)}
              @change=${() => {
                this.heard = kind;
              }}
            />
            ${speaker.view(`heard-${kind}`)}
          </label>`,
      )}
    </fieldset>`;
  }

  #renderTransport(): TemplateResult {
    const { speaker, playing, sound, volumeDb } = this;
    const silent = this.#silent;
    const label = playing ? 'listen-stop' : silent ? 'listen-render' : 'listen-play';
    return html`<div class="transport screen-only">
      <button type="button" part="play" @click=${() => (playing ? this.stop() : void this.play())}>
        ${speaker.view(label)}
      </button>
      ${
        silent
          ? nothing
          : html`<button
                type="button"
                part="mute"
                aria-pressed=${!sound}
                @click=${() => {
                  this.sound = !sound;
                }}
              >
                ${speaker.view('listen-mute')}
              </button>
              <label
                >${speaker.view('listen-volume')}
                <input
                  type="range"
                  part="volume"
                  min=${lowestVolumeDb}
                  max="0"
                  step="1"
                  .value=${live(String(volumeDb))}
                  aria-valuetext=${speaker.n.decibels(volumeDb)}
                  @input=${(event: Event) => {
                    this.volumeDb = (event.target as HTMLInputElement).valueAsNumber;
                  }}
                /><output>${speaker.n.decibels(volumeDb)}</output></label
              >`
      }
    </div>`;
  }

  #renderSave(one: Heard, sampleRate: number): TemplateResult {
    const { speaker } = this;
    return html`<div class="tools screen-only">
      <button
        type="button"
        part="save"
        @click=${() => {
          if (!this.scope) return;
          const file = new Blob([heardWav(one, sampleRate)], { type: 'audio/wav' });
          download(this.scope, file, fileNameOf(this.recordingLabel, `${this.material} ${one.kind}`, 'wav'));
        }}
      >
        ${speaker.view('listen-save', { heard: speaker.view(`heard-${one.kind}`) })}
      </button>
    </div>`;
  }

  protected override render(): TemplateResult {
    const { snapshot, speaker, listened } = this;
    const plan = this.#plan;
    const there = snapshot !== null && (snapshot.recordings.length > 0 || snapshot.room !== null);
    if (!plan || !snapshot || !there)
      return html`<figure part="base">
        <div class="head" part="head"><div class="title" part="title">${speaker.view('listen')}</div></div>
        ${this.veil(false)}
      </figure>`;
    const chosen = this.#chosen(plan);
    const one = listened?.heard.find(({ kind }) => kind === chosen);
    const responses = responsesAt(snapshot);
    return html`<figure part="base" class="listen">
      <div class="head" part="head">
        <div class="title" part="title">${this.recordingLabel}<small>${speaker.view('listen')}</small></div>
        <div class="tools screen-only">
          ${this.#select('material', materialKinds, plan.material, (kind) => {
            this.material = kind;
          })}
          ${
            responses.length > 1
              ? this.#select('response', responses, plan.response!, (kind) => {
                  this.response = kind;
                })
              : nothing
          }
        </div>
      </div>
      ${this.#renderHeard(plan)} ${this.#renderTransport()}
      <p class=${this.wrong ? 'says wrong' : 'says'} part="status" role="status" aria-live="polite">
        ${this.#statusText(plan)}
      </p>
      ${listened && one ? this.#renderPicture(listened, chosen) : nothing}
      <ul class="why" part="why">
        ${whyLines(plan, speaker).map((line) => html`<li>${line}</li>`)}
      </ul>
      ${
        listened && one
          ? html`${this.#renderSave(one, listened.sampleRate)}
              <details class="twin" part="table">
                <summary>${speaker.view('as-table')}</summary>
                <div class="scroll" tabindex="0" role="group" aria-label=${speaker.view('as-table')}>
                  ${renderTable(listened, chosen, this.sound ? this.volumeDb : null, speaker)}
                </div>
              </details>`
          : nothing
      }
      <figcaption part="caption">${aboutSounds(plan, listened, snapshot, speaker)}</figcaption>
    </figure>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-listen': RingdownListen;
  }
}
