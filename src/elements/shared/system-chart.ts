import { html, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { FigureWords } from '../../draw/figure.js';
import type { System, SystemPart, SystemSnapshot } from '../../study/system-types.js';
import { ChartElement } from './chart-element.js';

/** A chart of sources and seats: of all the recordings of a study together. */
export abstract class SystemChartElement extends ChartElement {
  /** @internal */
  get systemNeeds(): readonly SystemPart[] {
    return ['sums'];
  }

  /** Sources and seats of the study, once there is one. */
  get system(): System | null {
    return this.found.feed?.system ?? null;
  }

  protected get systemSnapshot(): SystemSnapshot | null {
    return this.system?.snapshot ?? null;
  }

  /** A saved picture names every file that it was made of, and what the design makes of them. */
  protected override savedWords(): FigureWords {
    const words = super.savedWords();
    const { recordings } = this.snapshot!;
    const files = recordings.map(({ label, hash, channel }) => ({ label, hash, channel }));
    const { version, parameters, room, picture } = words.origin as Record<string, unknown>;
    const { design } = this.systemSnapshot!;
    const origin = { version, parameters, room, picture, files, design };
    const said = this.speaker.view('figure-origin-several', {
      count: files.length,
      version: String(version),
    });
    return { ...words, caption: [...words.caption!.slice(0, -1), said], origin };
  }

  protected override get drawable(): boolean {
    return Boolean(this.systemSnapshot?.matrix);
  }

  protected override get recordingLabel(): string {
    const { arrangement, grid } = this.systemSnapshot!;
    return this.speaker.view('system-title', {
      sources: grid.sources.length || arrangement.sources.length,
      seats: grid.seats.length || arrangement.seats.length,
    });
  }

  /** What keeps the sums from being there; the veil says it where nothing can be drawn. */
  protected override emptyText(): string | null {
    const system = this.systemSnapshot;
    if (!system) return null;
    if (system.progress) return this.speaker.stage(system.progress.stage);
    const [failure] = system.failures;
    return failure ? this.describe({ ...failure, label: null }) : null;
  }

  /** Refusals that leave something to draw. */
  protected renderFailures(): TemplateResult | typeof nothing {
    const failures = this.drawable ? (this.systemSnapshot?.failures ?? []) : [];
    return failures.length === 0
      ? nothing
      : html`<div role="status">
          ${failures.map((failure) => html`<p class="wrong">${this.describe({ ...failure, label: null })}</p>`)}
        </div>`;
  }
}
