/**
 * Long because header and properties are the documented interface of the element; opening, saving and choosing stand beside
 * it.
 */
import { ContextProvider } from '@lit/context';
import { html, isServer, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { property, query, state } from 'lit/decorators.js';
import { openStudyText } from '../../study/document.js';
import { positionFromText } from '../../study/inputs.js';
import type { Study, StudyChoices, StudyPlace, StudySnapshot } from '../../study/types.js';
import { emit } from '../events.js';
import type { Scope } from '../scope.js';
import { feedContext } from '../shared/context.js';
import { dataChanged } from '../shared/data-element.js';
import type { Feed } from '../shared/feed.js';
import type { PageSource } from '../shared/page-files.js';
import { SettingsElement } from '../shared/settings-element.js';
import { OwnFeed } from '../shared/source.js';
import { tokens } from '../shared/styles.js';
import { ThemeController } from '../shared/theme.js';
import type { RingdownPlace } from '../place/place.js';
import type { RingdownRecording } from '../recording/recording.js';
import { choiceControls } from './choices.js';
import { SavedStudy } from './saved.js';
import { studyStyles } from './styles.js';
import { styleValues } from '../shared/style-values.js';

/** How long a message stands before the next may take its place for a screen reader, ms. */
const messageAfterMs = 400;

/**
 * Holds recordings, room and limits; computes once for all the elements in it and links their cursors. A file dropped on
 * it, or chosen by its button, is analysed; what goes on and what goes wrong is said in words.
 *
 * @summary One investigation: recordings and room in, results for all the elements inside.
 * @tag ringdown-study
 *
 * @slot - Elements that show the study, `ringdown-recording`, `ringdown-place`, and anything else.
 *
 * @fires {CustomEvent<ProgressDetail>} ringdown-progress - The computation went on.
 * @fires {CustomEvent<ReadyDetail>} ringdown-ready - Everything is computed.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Something was refused, with the sentence that is shown.
 * @fires {CustomEvent<StudyChangeDetail>} ringdown-study-change - The user added a file, or chose another recording or another way to show it.
 *
 * @csspart base - All of it.
 * @csspart bar - File button, choice of recording, progress.
 * @csspart file-button - The button that opens the file dialog.
 * @csspart choices - Frequencies, axis, times, range, slices, limit and colours of all the views.
 * @csspart open-button - The button that opens a saved study.
 * @csspart save-button - The button that saves the study as a file.
 * @csspart clear - What takes everything away.
 * @csspart result - What came out, in one sentence.
 * @csspart messages - What goes on and what went wrong.
 * @csspart notes - Notes on the recording.
 *
 * @cssprop --ringdown-background - Ground; the page's where not given.
 * @cssprop --ringdown-text - Text; the page's where not given.
 * @cssprop --ringdown-accent - Buttons with the focus, progress.
 * @cssprop --ringdown-alert - What went wrong.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate drop - A file is held over it.
 */
export class RingdownStudy extends SettingsElement {
  static override styles = [tokens, studyStyles];

  readonly #own = new OwnFeed(this);
  protected readonly themeController = new ThemeController(this, () => undefined);

  @query('input[type=file]') private input!: HTMLInputElement;
  @state() private dropping = false;
  @state() private spoken = '';
  /** Without file button and drop: for pages that bring their own recordings. */
  @property({ type: Boolean, attribute: 'no-files' }) noFiles = false;
  /**
   * A name under which this browser keeps the study from visit to visit, in the storage of the page's origin. Without it
   * nothing is kept.
   */
  @property() autosave: string | null = null;

  /** Without the choices of axes, colours and reading, which then stand as the page has them. */
  @property({ type: Boolean, attribute: 'no-choices' }) noChoices = false;
  @state() private problem: string | null = null;

  #speakSoon: (action: () => void) => void = () => undefined;
  #gather: (action: () => void) => void = () => undefined;

  readonly #saved = new SavedStudy(this);

  constructor() {
    super();
    new ContextProvider(this, { context: feedContext, initialValue: this.#own.feed });
    this.#own.feed.subscribe(() => this.#changed());
  }

  /** @internal */
  readonly htmlFor = null;
  /** @internal */
  readonly needs = [];

  /**
   * What elements named by `for` connect to.
   * @internal
   */
  get feed(): Feed {
    return this.#own.feed;
  }

  /** What holds the recordings, the room and the choices, for scripts. */
  get study(): Study {
    return this.feed.study;
  }

  /** All that is known at this moment; a new object on every change. */
  get snapshot(): StudySnapshot {
    return this.feed.snapshot;
  }

  /** What is shown and how, as a short text: choices, recording, cursor, selection, and each view's own state. */
  get viewLink(): string {
    return this.feed.links.text;
  }

  /**
   * Shows what such a text says. What cannot be read is said in one sentence and changes nothing.
   *
   * @returns Whether it was taken.
   */
  applyViewLink(text: string): boolean {
    return this.feed.links.apply(text);
  }

  /** Adds files as if the user had chosen them. */
  addFiles(files: readonly File[]): Promise<void> {
    return this.feed.addFiles(files);
  }

  /** The study as the text of one JSON file, from which it opens again without its recordings. */
  toJson(): string {
    return this.#saved.text();
  }

  /**
   * Opens the text of a saved study in the place of all that is there. Rejects with a `RingdownError` (`study-not-json`,
   * `study-not-ours`, `study-newer`, `study-broken`, `study-too-large`), and nothing is lost then.
   */
  async openJson(text: string): Promise<void> {
    await this.feed.open(openStudyText(text));
    await this.study.settled();
  }

  /** Takes everything away, and the copy that the browser keeps. */
  clear(): void {
    this.#saved.clear();
  }

  override connectedCallback(): void {
    // Before the elements inside ask for it.
    if (!isServer) this.#own.connect();
    super.connectedCallback();
  }

  protected override connected(scope: Scope): void {
    this.#speakSoon = scope.debounce(messageAfterMs);
    this.#gather = scope.debounce(0);
    const later = (): void => this.#gather(() => this.#readChildren());
    scope.observeMutations(this, { childList: true, subtree: true }, later);
    scope.listen<EventTarget, string>(this, dataChanged, later);
    const holdsFiles = (event: DragEvent): boolean =>
      !this.noFiles && (event.dataTransfer?.types.includes('Files') ?? false);
    scope.listen<HTMLElement, 'dragover'>(this, 'dragover', (event) => {
      if (!holdsFiles(event)) return;
      event.preventDefault();
      event.dataTransfer!.dropEffect = 'copy';
      this.#setDropping(true);
    });
    scope.listen<HTMLElement, 'dragleave'>(this, 'dragleave', (event) => {
      if (!this.contains(event.relatedTarget as Node | null)) this.#setDropping(false);
    });
    scope.listen<HTMLElement, 'drop'>(this, 'drop', (event) => {
      this.#setDropping(false);
      if (!holdsFiles(event)) return;
      event.preventDefault();
      void this.#userFiles([...event.dataTransfer!.files]);
    });
    this.#readChildren();
  }

  protected override disconnected(): void {
    this.#own.disconnect();
  }

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    if (isServer) return;
    this.feed.configure(this.ownSettings());
    this.#readChildren();
    if (this.isConnected) this.#saved.restore();
    this.#own.useAddress();
  }

  #setDropping(on: boolean): void {
    this.dropping = on;
    this.setState('drop', on);
  }

  #readChildren(): void {
    const places = new Map<string, ReturnType<typeof positionFromText>>();
    const named: StudyPlace[] = [];
    for (const place of this.querySelectorAll<RingdownPlace>('ringdown-place')) {
      if (!place.name || !place.at) continue;
      try {
        const at = positionFromText(place.at);
        places.set(place.name, at);
        named.push({ kind: place.kind === 'source' ? 'source' : 'seat', name: place.name, at });
      } catch {
        // The recording that names this place says so: it then finds no such place.
      }
    }
    const recordings = [...this.querySelectorAll<RingdownRecording>('ringdown-recording')].flatMap(
      (recording): PageSource[] => ('pageSource' in recording ? [recording.pageSource] : []),
    );
    const own = this.ownSource();
    this.feed.setSources([...(own ? [own] : []), ...recordings], places);
    this.feed.setPlaces(named);
  }

  async #userFiles(files: readonly File[]): Promise<void> {
    if (files.length === 0) return;
    const saved = files.find(({ name }) => /\.json$/i.test(name));
    if (saved) {
      await this.#saved.openFile(saved);
      return;
    }
    const before = this.snapshot.recordings.length;
    await this.feed.addFiles(files);
    await this.study.settled();
    const { recordings } = this.snapshot;
    // What was just added is what its bringer wants to see.
    if (recordings.length > before) this.study.setActive(recordings.length - 1);
    emit(this, 'ringdown-study-change', { what: 'recordings', snapshot: this.snapshot });
  }

  #choose(event: Event): void {
    this.study.setActive((event.target as HTMLSelectElement).selectedIndex);
    emit(this, 'ringdown-study-change', { what: 'active', snapshot: this.snapshot });
  }

  #changed(): void {
    const { status } = this.snapshot;
    this.setState('busy', status === 'working' || this.feed.fetching);
    this.setState('error', status === 'error');
    this.requestUpdate();
    this.#saved.changed();
    this.#speakSoon(() => {
      this.spoken = this.#statusText();
    });
  }

  protected override wordsChanged(): void {
    this.#changed();
  }

  /** What goes on, or what came out, as one sentence. */
  #statusText(): string {
    const { speaker, snapshot } = this;
    const { status, progress, diagnosis, choices } = snapshot;
    if (this.feed.fetching && !progress) return speaker.view('fetching');
    if (status === 'working' && progress)
      return speaker.view('working', { stage: speaker.stage(progress.stage), fraction: progress.fraction });
    if (status !== 'ready' || !diagnosis) return '';
    const limit = speaker.term('limits', choices.limit);
    if (diagnosis.ridges.length === 0)
      return diagnosis.resonances.length === 0 && diagnosis.fit.notes.length > 0
        ? speaker.view('refused')
        : speaker.view('ready-none', { limit });
    const { frequencyHz, decayTimeSeconds, limitSeconds } = diagnosis.ridges[0];
    return speaker.view('ready', {
      ...{ limit, frequencyHz, decayTimeSeconds, limitSeconds },
      count: diagnosis.ridges.length,
    });
  }

  protected override render(): TemplateResult {
    const { speaker, snapshot } = this;
    const failures = [...this.feed.failures, ...this.#saved.failures];
    return html`<div class="base" part="base">
      ${this.noFiles && snapshot.recordings.length < 2 ? nothing : this.#renderBar()}
      ${this.noChoices || !(snapshot.recordings.length > 0 || snapshot.room) ? nothing : this.#renderChoices()}
      <div class="messages" part="messages" role="status">
        ${failures.map((failure) => html`<p class="alert">${this.describe(failure)}</p>`)}
        <p class="unseen">${this.spoken}</p>
      </div>
      <p class="result" part="result" aria-hidden="true">${this.#statusText()}</p>
      ${this.#renderNotes()}
      <slot></slot>
      ${this.dropping ? html`<div class="drop" aria-hidden="true">${speaker.view('drop-now')}</div>` : nothing}
    </div>`;
  }

  #renderBar(): TemplateResult {
    const { speaker, snapshot } = this;
    const busy = snapshot.status === 'working' || this.feed.fetching;
    return html`<div class="bar screen-only" part="bar">
      ${
        this.noFiles
          ? nothing
          : html`<span class="files">
                <button type="button" part="file-button" @click=${() => this.input.click()}>
                  ${speaker.view('choose-file')}
                </button>
                <input
                  type="file"
                  accept=".json,.wav,.wave,.flac,.sofa,.txt,.csv,audio/wav,audio/x-wav,audio/vnd.wave,audio/flac"
                  multiple
                  hidden
                  @change=${() => {
                    void this.#userFiles([...(this.input.files ?? [])]);
                    this.input.value = '';
                  }}
                />
                <span class="hint">${speaker.view('drop-hint')}</span>
              </span>
              ${this.#saved.render(speaker)}`
      }
      ${
        snapshot.recordings.length > 1
          ? html`<label class="chooser">
              ${speaker.view('choose-recording')}
              <select @change=${(event: Event) => this.#choose(event)}>
                ${snapshot.recordings.map(
                  ({ label, stage }, index) =>
                    html`<option ?selected=${index === snapshot.active}>
                      ${label || speaker.view('this-recording')}${stage ? ` (${stage})` : ''}
                    </option>`,
                )}
              </select>
            </label>`
          : nothing
      }
      <span
        class="progress ${busy ? 'on' : ''}"
        style=${styleValues({ '--fraction': busy ? (snapshot.progress?.fraction ?? 0) : 0 })}
      ></span>
    </div>`;
  }

  #renderChoices(): TemplateResult {
    const choose = (change: Partial<StudyChoices>): void => {
      this.problem = null;
      this.study.setChoices(change);
      emit(this, 'ringdown-study-change', { what: 'choices', snapshot: this.snapshot });
    };
    return choiceControls(this.snapshot.choices, this.speaker, this.problem, choose, (sentence) => {
      this.problem = sentence;
    });
  }

  #renderNotes(): TemplateResult | typeof nothing {
    const { speaker, snapshot } = this;
    const { active, recordings, examinations, diagnosis } = snapshot;
    const notes = diagnosis?.files[0]?.notes ?? [
      ...(recordings[active]?.notes ?? []),
      ...(examinations[active]?.notes ?? []),
    ];
    if (notes.length === 0) return nothing;
    return html`<details class="notes" part="notes">
      <summary>${speaker.view('notes-summary', { count: notes.length })}</summary>
      <ul>
        ${notes.map((note) => html`<li>${speaker.note(note)}</li>`)}
      </ul>
    </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-study': RingdownStudy;
  }
}
