import { html, unsafeCSS } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { query, state } from 'lit/decorators.js';
import { fileNameOf } from '../../sheet/figure-words.js';
import { documentCss, sheetBody, sheetDocument, sheetTitle } from '../../sheet/report/report.js';
import type { SheetInput } from '../../sheet/report/report.js';
import { sheetCss } from '../../sheet/report/style.js';
import { subjectOf } from '../../sheet/report/subject.js';
import type { Part } from '../../study/types.js';
import {
  comparisonTable,
  levelsTable,
  recordingsTable,
  resonancesTable,
  ridgesTable,
  seatsTable,
  sourcesTable,
  spreadTable,
} from '../../study/tables.js';
import type { Table } from '../../study/tables.js';
import { createSheetPair } from '../../study/sheet-pair.js';
import type { SheetPairOwner } from '../../study/sheet-pair.js';
import type { SheetTexts } from '../../study/sheet-texts.js';
import { emit } from '../events.js';
import type { Scope } from '../scope.js';
import type { Feed } from '../shared/feed.js';
import { csvControls } from '../shared/csv.js';
import { download } from '../shared/save.js';
import { tokens } from '../shared/styles.js';
import { ViewElement } from '../shared/view-element.js';
import { renderForm } from './form.js';
import { nodesOf } from './nodes.js';
import { reportStyles } from './styles.js';

/** How long hands and results must rest before the sheet is set anew, ms: it is a long page. */
const restMs = 250;

/**
 * The sheet that stays with the client: what was measured, what hangs, what was decided about it, what came of it, what was
 * not done and why. Printed by the browser on A4 or Letter (only the sheet is printed), or saved as one HTML file without
 * script, its pictures vector drawings. Nothing personal stands on it but what is typed into its form.
 *
 * @summary Printable sheet of the whole study, to print or to save as one HTML file.
 * @tag ringdown-report
 *
 * @fires {CustomEvent<StudyChangeDetail>} ringdown-study-change - The user wrote on the sheet.
 * @fires {CustomEvent<ErrorDetail>} ringdown-error - Its own study refused something.
 *
 * @csspart base - All of it.
 * @csspart form - Title, client, author, date, notes, paper, seat.
 * @csspart paper - Choice of the paper.
 * @csspart seat - Choice of the seat that the pictures show.
 * @csspart decisions - What was decided, ridge by ridge.
 * @csspart print - The button that prints.
 * @csspart save - The button that saves HTML.
 * @csspart csv - Every table of the study as a file.
 * @csspart sheet - The sheet itself, always ink on white.
 * @csspart message - Why there is no sheet.
 *
 * @cssprop --ringdown-background - Ground around the sheet; the page's where not given.
 * @cssprop --ringdown-text - Text of the form; the page's where not given.
 * @cssprop --ringdown-accent - What has the focus.
 * @cssprop --ringdown-alert - What went wrong.
 *
 * @cssstate busy - Something is being read or computed.
 * @cssstate error - Nothing can be shown.
 * @cssstate dark - The ground is darker than the text.
 */
export class RingdownReport extends ViewElement {
  static override styles = [tokens, unsafeCSS(sheetCss), reportStyles];

  @query('[part=sheet]') private desk!: HTMLElement | null;
  @state() private shownSeat: string | null = null;
  #pair: SheetPairOwner | null = null;
  #pairOf: Feed['study'] | null = null;
  #settle: (action: () => void) => void = () => undefined;
  #set = '';

  /** @internal */
  override get needs(): readonly Part[] {
    return ['responses'];
  }

  /** What the sheet is made of; null while there is no study. */
  get input(): SheetInput | null {
    const feed = this.found.feed;
    const { snapshot } = this;
    if (!feed || !snapshot || !this.#pair) return null;
    return { study: snapshot, system: feed.system.snapshot, pair: this.#pair.snapshot };
  }

  /** The sheet as one HTML document; null while there is nothing to tell. */
  toHtml(): string | null {
    const { input } = this;
    return input && input.study.recordings.length > 0 ? sheetDocument(input, this.speaker) : null;
  }

  protected override connected(scope: Scope): void {
    super.connected(scope);
    this.#settle = scope.debounce(restMs);
    this.#set = '';
  }

  protected override disconnected(): void {
    super.disconnected();
    this.#letGo();
  }

  #letGo(): void {
    this.#pair?.dispose();
    this.#pair = null;
    this.#pairOf = null;
  }

  protected override snapshotChanged(): void {
    const feed = this.found.feed;
    if (!feed) {
      this.#letGo();
      return;
    }
    if (this.#pairOf === feed.study) return;
    this.#letGo();
    this.#pairOf = feed.study;
    this.#pair = createSheetPair(feed.study, feed.system);
    this.#pair.setSeat(this.shownSeat);
    this.#pair.subscribe(() => this.requestUpdate());
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    if (this.desk) this.#settle(() => this.#setSheet());
    else this.#set = '';
  }

  #setSheet(): void {
    const { input, desk } = this;
    if (!desk || !input) return;
    const text = sheetBody(input, this.speaker);
    if (text === this.#set && desk.hasChildNodes()) return;
    this.#set = text;
    desk.replaceChildren(nodesOf(text, desk.ownerDocument));
  }

  #write(change: Partial<SheetTexts>): void {
    const { study } = this;
    if (!study) return;
    study.setSheet(change);
    emit(this, 'ringdown-study-change', { what: 'sheet', snapshot: study.snapshot });
  }

  /** Every table that the study has. */
  #tables(): Table[] {
    const { input } = this;
    if (!input) return [];
    const { study, system, pair } = input;
    const [before, after] = [pair.before?.diagnosis, pair.after?.diagnosis];
    const list = [
      recordingsTable(study),
      before && ridgesTable(before),
      before && resonancesTable(before),
      before && after && comparisonTable(before, after),
      levelsTable(system),
      seatsTable(system),
      spreadTable(system),
      system.grid.sources.length > 0 && sourcesTable(system),
    ];
    return list.filter((table): table is Table => Boolean(table));
  }

  #save(): void {
    const { input, scope } = this;
    const text = this.toHtml();
    if (!text || !input || !scope) return;
    const name = fileNameOf(sheetTitle(input, this.speaker), '', 'html');
    download(scope, new Blob([text], { type: 'text/html' }), name);
  }

  /** Opens the browser's print dialog for the sheet alone. */
  print(): void {
    const { input, scope, speaker } = this;
    if (!input || !scope || input.study.recordings.length === 0) return;
    // A document of its own: of the page around nothing is printed, and its margins are the sheet's.
    const frame = document.createElement('iframe');
    frame.title = speaker.view('report-preview');
    frame.setAttribute('aria-hidden', 'true');
    frame.tabIndex = -1;
    const remove = scope.add(() => frame.remove());
    const focused = this.shadowRoot?.activeElement as HTMLElement | null | undefined;
    this.renderRoot.append(frame);
    const view = frame.contentWindow as (Window & typeof globalThis) | null;
    if (!view) return;
    const { document: page } = view;
    page.documentElement.lang = speaker.words.language;
    page.title = sheetTitle(input, speaker);
    const style = new view.CSSStyleSheet();
    style.replaceSync(documentCss(input, speaker));
    page.adoptedStyleSheets = [style];
    page.body.replaceChildren(nodesOf(sheetBody(input, speaker), page));
    scope.listen<EventTarget, string>(view, 'afterprint', () => scope.timeout(remove, 1000), { once: true });
    view.print();
    // Who came by keyboard stays where they were.
    focused?.focus();
  }

  protected override render(): TemplateResult {
    const { speaker, snapshot, input } = this;
    const there = input !== null && input.study.recordings.length > 0;
    if (!there || !snapshot)
      return html`<div class="base" part="base">${this.veil(false, speaker.view('report-empty'))}</div>`;
    this.showsProgress = true;
    const busy = input.pair.progress ?? input.system.progress ?? snapshot.progress;
    return html`<div class="base" part="base">
      <div class="screen-only">
        ${renderForm({
          texts: snapshot.sheet,
          pair: input.pair,
          seat: this.shownSeat,
          ridges: subjectOf(input, speaker).ridges,
          speaker,
          write: (change) => this.#write(change),
          chooseSeat: (key) => {
            this.shownSeat = key;
            this.#pair?.setSeat(key);
          },
        })}
        <div class="actions">
          <button type="button" part="print" @click=${() => this.print()}>
            ${speaker.view('report-print')}
          </button>
          <button type="button" part="save" @click=${() => this.#save()}>
            ${speaker.view('report-save')}
          </button>
          <span role="status"
            >${busy ? speaker.view('working', { stage: speaker.stage(busy.stage), fraction: busy.fraction }) : null}</span
          >
        </div>
        ${csvControls(
          () => this.#tables(),
          this.#tables().map(({ name }) => name),
          () => this.scope,
          sheetTitle(input, speaker),
          speaker,
        )}
      </div>
      <div class="desk" part="sheet" role="region" aria-label=${speaker.view('report-preview')}></div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'ringdown-report': RingdownReport;
  }
}
