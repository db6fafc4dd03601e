import { html, isServer, nothing } from 'lit';
import type { ReactiveController, ReactiveControllerHost, TemplateResult } from 'lit';
import { fileNameOf } from '../../sheet/figure-words.js';
import { documentText, lowCopies, openStudyText, resultsOf, studyDocument } from '../../study/document.js';
import { drainSliced } from '../../study/jobs.js';
import { failureOf } from '../../study/failure.js';
import type { StudyFailure, StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';
import { emit } from '../events.js';
import { Scope } from '../scope.js';
import type { Feed } from '../shared/feed.js';
import { download } from '../shared/save.js';
import { forgetStudy, keepAfterMs, keepStudy, keptStudy } from './autosave.js';

/** What of the study's element is needed here. */
export interface SavedHost extends ReactiveControllerHost, EventTarget {
  readonly feed: Feed;
  readonly snapshot: StudySnapshot;
  readonly autosave: string | null;
  describe(failure: StudyFailure): string;
}

/** Opening, saving, keeping and clearing a whole study. */
export class SavedStudy implements ReactiveController {
  readonly #host: SavedHost;
  #scope = new Scope();
  #keepSoon: (action: () => void) => void = () => undefined;
  #failure: StudyFailure | null = null;
  #isKept = false;
  /** What the kept copy was made of; null before anything was kept or restored. */
  #keptParts: readonly unknown[] | null = null;
  /** The name whose copy was looked for. */
  #restored: string | null = null;

  constructor(host: SavedHost) {
    this.#host = host;
    host.addController(this);
  }

  /** Why the browser kept nothing, or why a saved study was not opened. */
  get failures(): readonly StudyFailure[] {
    return this.#failure ? [this.#failure] : [];
  }

  hostConnected(): void {
    if (isServer) return;
    this.#scope = new Scope();
    this.#keepSoon = this.#scope.debounce(keepAfterMs);
    this.#scope.listen(window, 'pagehide', () => this.#keep());
  }

  hostDisconnected(): void {
    this.#keep();
    this.#scope.dispose();
  }

  /** Something of the study changed. */
  changed(): void {
    if (this.#host.autosave) this.#keepSoon(() => void this.#keepInTurns());
  }

  /** What takes long in slices; the text is then made at once. */
  async #keepInTurns(): Promise<void> {
    const scope = this.#scope;
    await this.#prepare();
    if (!scope.disposed) this.#keep();
  }

  #prepare(): Promise<unknown> {
    return drainSliced(lowCopies(this.#host.snapshot.recordings));
  }

  /** Brings back what was kept: once for each name, and before anything is kept under it. */
  restore(): void {
    const { autosave, feed } = this.#host;
    if (!autosave || this.#restored === autosave) return;
    this.#restored = autosave;
    const { study, failure } = keptStudy(autosave);
    this.#failure = failure;
    if (!study) return;
    this.#isKept = true;
    void feed.open(study);
  }

  text(): string {
    const { snapshot, feed } = this.#host;
    const system = feed.design ? feed.system.snapshot : null;
    return documentText(studyDocument(snapshot, feed.design, resultsOf(snapshot, system)));
  }

  /** Everything that a saved study holds, by identity. */
  #parts(): readonly unknown[] {
    const { recordings, room, choices, places, active, sheet } = this.#host.snapshot;
    return [recordings, room, choices, places, active, sheet, this.#host.feed.design];
  }

  /** Keeps the study where something of it changed; never while files are on their way. */
  #keep(): void {
    const { autosave, snapshot, feed } = this.#host;
    if (!autosave || this.#restored !== autosave || feed.fetching || snapshot.recordings.length === 0) return;
    if (snapshot.recordings.length < feed.count) {
      this.changed();
      return;
    }
    const parts = this.#parts();
    if (this.#keptParts?.every((part, k) => part === parts[k])) return;
    this.#keptParts = parts;
    this.#failure = keepStudy(autosave, this.text());
    this.#isKept = this.#failure === null;
    this.#host.requestUpdate();
  }

  clear(): void {
    const { feed, autosave } = this.#host;
    feed.clear();
    this.#keptParts = this.#parts();
    this.#isKept = false;
    this.#failure = autosave ? forgetStudy(autosave) : null;
    this.#host.requestUpdate();
  }

  async #saveFile(speaker: Speaker): Promise<void> {
    await this.#prepare();
    if (this.#scope.disposed) return;
    const { recordings, active, sheet } = this.#host.snapshot;
    const label = sheet.title.trim() || recordings[active]?.label || speaker.view('this-room');
    const file = new Blob([this.text()], { type: 'application/json' });
    download(this.#scope, file, fileNameOf(label, '', 'json'));
  }

  /** Opens a file that the user chose; a refusal leaves everything as it was. */
  async openFile(file: File): Promise<void> {
    const host = this.#host;
    this.#failure = null;
    try {
      await host.feed.open(openStudyText(await file.text()));
      emit(host, 'ringdown-study-change', { what: 'recordings', snapshot: host.snapshot });
    } catch (thrown) {
      const failure = { ...failureOf(thrown), label: file.name };
      this.#failure = failure;
      emit(host, 'ringdown-error', { failure, message: host.describe(failure) });
    }
    host.requestUpdate();
  }

  render(speaker: Speaker): TemplateResult {
    const host = this.#host;
    const some = host.snapshot.recordings.length > 0;
    const chosen = (event: Event): void => {
      const input = event.target as HTMLInputElement;
      const [file] = input.files ?? [];
      if (file) void this.openFile(file);
      input.value = '';
    };
    const press = (event: Event): void => {
      const button = event.currentTarget as HTMLElement;
      button.parentElement!.querySelector<HTMLInputElement>('input')!.click();
    };
    return html`<span class="files">
      <button type="button" part="open-button" @click=${press}>${speaker.view('open-study')}</button>
      <input type="file" accept=".json,application/json" hidden @change=${chosen} />
      ${
        some
          ? html`<button type="button" part="save-button" @click=${() => void this.#saveFile(speaker)}>
                ${speaker.view('save-study')}
              </button>
              <details class="clear" part="clear">
                <summary>${speaker.view('clear-study')}</summary>
                <div>
                  <p>${speaker.view('clear-meaning', { kept: host.autosave !== null })}</p>
                  <button
                    type="button"
                    @click=${() => {
                      this.clear();
                      emit(host, 'ringdown-study-change', { what: 'recordings', snapshot: host.snapshot });
                    }}
                  >
                    ${speaker.view('clear-all')}
                  </button>
                </div>
              </details>`
          : nothing
      }
      ${this.#isKept && some ? html`<span class="hint">${speaker.view('study-kept')}</span>` : nothing}
    </span>`;
  }
}
