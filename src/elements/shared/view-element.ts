import { html, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { property } from 'lit/decorators.js';
import type { Part, Study, StudySnapshot } from '../../study/types.js';
import type { DrawTheme } from '../../draw/types.js';
import { chosenLook } from '../../sheet/looks.js';
import type { LinkedViewName, LinkValue } from '../../study/view-link.js';
import { emit } from '../events.js';
import type { Cursor } from '../../study/types.js';
import { SettingsElement } from './settings-element.js';
import { StudySource } from './source.js';
import { ThemeController } from './theme.js';
import { styleValues } from './style-values.js';

/** An element that shows a study: its own, the one it is in, or the one named by `for`. */
export abstract class ViewElement extends SettingsElement {
  /** Id of a ringdown-study elsewhere on the page. */
  @property({ attribute: 'for' }) htmlFor: string | null = null;

  /**
   * Results that only some views show.
   * @internal
   */
  get needs(): readonly Part[] {
    return [];
  }

  /**
   * Under which name the view keeps something of its own in a link.
   * @internal
   */
  readonly linkName: LinkedViewName | null = null;

  /** Whether a room is named here and no study holds the element: then it shows that room. */
  protected get namesOwnRoom(): boolean {
    const given = [this.room, this.plan].some(
      (value) => value !== null && value !== undefined && value !== '',
    );
    return given && this.closest('ringdown-study') === null;
  }

  /** @internal */
  linkValues(): readonly LinkValue[] {
    return [];
  }

  /** @internal */
  takeLink(_values: readonly LinkValue[]): void {}

  protected readonly themeController = new ThemeController(this, () => this.themeChanged());
  protected readonly found = new StudySource(this, (progressOnly) => this.#studyChanged(progressOnly));

  /** The colours of pictures: the page's, with those of level that the study's reader chose, also on paper. */
  protected get look(): DrawTheme {
    return chosenLook(this.themeController.theme, this.snapshot?.choices.scale);
  }

  /** The study that is shown, once there is one. */
  get study(): Study | null {
    return this.found.feed?.study ?? null;
  }

  /** What is shown, as data. */
  get snapshot(): StudySnapshot | null {
    return this.found.snapshot;
  }

  /** Whether how far the work has come stands in what was rendered last. */
  protected showsProgress = false;

  #studyChanged(progressOnly: boolean): void {
    if (progressOnly && !this.showsProgress) return;
    this.setState('busy', this.snapshot?.status === 'working' || this.found.feed?.fetching === true);
    this.setState('error', this.snapshot?.status === 'error');
    this.requestUpdate();
    this.snapshotChanged();
  }

  protected snapshotChanged(): void {}

  protected themeChanged(): void {}

  protected override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    this.showsProgress = false;
    if (changed.size > 0) this.found.resolve();
  }

  protected moveCursor(cursor: Cursor | null): void {
    const { study } = this;
    if (!study) return;
    study.setCursor(cursor);
    emit(this, 'ringdown-cursor-change', { cursor });
  }

  protected selectRidge(ridge: number | null): void {
    const { study } = this;
    if (!study || study.snapshot.selectedRidge === ridge) return;
    study.selectRidge(ridge);
    emit(this, 'ringdown-ridge-select', { ridge });
  }

  /** Selects a resonance, flagged or not. */
  protected selectResonance(resonance: number | null): void {
    const { study } = this;
    if (!study || study.snapshot.selectedResonance === resonance) return;
    const before = study.snapshot.selectedRidge;
    study.selectResonance(resonance);
    const ridge = study.snapshot.selectedRidge;
    if (ridge !== before) emit(this, 'ringdown-ridge-select', { ridge });
  }

  /** Chooses a predicted mode to look at. */
  protected selectMode(order: StudySnapshot['selectedMode']): void {
    const { study } = this;
    if (!study) return;
    study.selectMode(order);
    emit(this, 'ringdown-mode-select', { order });
  }

  protected get recordingLabel(): string {
    const { snapshot } = this;
    return snapshot?.recordings[snapshot.active]?.label || this.speaker.view('this-recording');
  }

  /** What a study without anything to show says. */
  protected nothingText(): string {
    return this.speaker.view('empty');
  }

  /**
   * Why there is nothing to show, or nothing yet; null where there is.
   *
   * @param reason What a study that is done has to say for it.
   */
  protected veil(shown: boolean, reason: string | null = null): TemplateResult | null {
    const { snapshot, speaker } = this;
    const fetching = this.found.feed?.fetching === true;
    const failures = this.found.failures;
    if (shown) return null;
    if (snapshot?.status === 'working' || fetching) {
      const stage = snapshot?.progress ? speaker.stage(snapshot.progress.stage) : speaker.view('fetching');
      const fraction = snapshot?.progress?.fraction ?? 0;
      this.showsProgress = true;
      return html`<div class="veil" part="message">
        <p class="sentence">${stage}</p>
        <div class="bar" style=${styleValues({ '--fraction': fraction })}><i></i></div>
      </div>`;
    }
    if (reason !== null && snapshot?.status === 'ready')
      return html`<div class="veil" part="message"><p class="sentence">${reason}</p></div>`;
    if (failures.length > 0)
      return html`<div class="veil error" part="message" role=${this.found.isOwn ? 'alert' : nothing}>
        ${failures.map((failure) => html`<p class="sentence">${this.describe(failure)}</p>`)}
      </div>`;
    return html`<div class="veil" part="message"><p class="sentence">${this.nothingText()}</p></div>`;
  }
}
