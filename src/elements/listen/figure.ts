import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { paintCanvas } from '../../draw/canvas.js';
import type { FigureSize, FigureWords } from '../../draw/figure.js';
import { drawHeardChart } from '../../draw/heard-chart.js';
import type { HeardChart } from '../../draw/heard-chart.js';
import type { LegendItem } from '../../draw/legend.js';
import type { Plot } from '../../draw/plot.js';
import type { DrawTheme } from '../../draw/types.js';
import type { Drawing } from '../shared/drawing.js';
import type { RingdownElement } from '../shared/element.js';
import { legendList } from '../shared/legend.js';
import { StageController } from '../shared/stage.js';

export interface ShownSounds {
  readonly chart: HeardChart;
  readonly key: readonly LegendItem[];
  readonly theme: DrawTheme;
  readonly words: () => FigureWords;
}

/** The picture of the sounds, with a line at what is heard now. */
export class HeardFigure {
  readonly #host: RingdownElement;
  readonly #shown: () => ShownSounds | null;
  readonly #stage: StageController;
  #plot: Plot | null = null;

  /** @param shown is asked each time it draws; null while nothing is worked out */
  constructor(host: RingdownElement, shown: () => ShownSounds | null) {
    this.#host = host;
    this.#shown = shown;
    this.#stage = new StageController(host, () => this.#draw());
  }

  request(): void {
    this.#stage.request();
  }

  /** For print, where nothing waits for a frame. */
  drawNow(): void {
    this.#stage.drawNow();
  }

  #draw(): void {
    const context = this.#host.renderRoot.querySelector('canvas')?.getContext('2d');
    const shown = this.#shown();
    if (!context || !shown) return;
    const { chart, theme } = shown;
    const { size } = this.#stage;
    this.#plot = paintCanvas(context, theme, size, (pen) => drawHeardChart(pen, chart, theme, size));
  }

  /** Puts the line to a time, s; null hides it. */
  movePlayhead(position: number | null): void {
    if (!this.#host.hasUpdated) return;
    const line = this.#host.renderRoot.querySelector<HTMLElement>('.playhead');
    if (!line) return;
    line.hidden = position === null || !this.#plot;
    if (position === null || !this.#plot) return;
    const { box, columnAxis } = this.#plot;
    const { scale } = this.#stage;
    line.style.translate = `${columnAxis.pixel(position) * scale}px ${box.top * scale}px`;
    line.style.blockSize = `${(box.bottom - box.top) * scale}px`;
  }

  /** For a file, of the size on the page unless told otherwise; null while nothing is worked out. */
  drawing(size: Partial<FigureSize>): Drawing | null {
    const shown = this.#shown();
    if (!shown) return null;
    const { cssWidth, cssHeight } = this.#stage.size;
    const saved = { cssWidth: cssWidth || 900, cssHeight: cssHeight || 240, ...size };
    const { chart, theme, words } = shown;
    return {
      ...{ name: 'listen', words: words(), theme, size: saved },
      paint: (pen) => void drawHeardChart(pen, chart, theme, saved),
    };
  }

  render(label: string, key: readonly LegendItem[]): TemplateResult {
    return html`<div class="picture" part="picture" data-stage>
        <canvas role="img" aria-label=${label}></canvas>
        <div class="playhead" hidden></div>
      </div>
      ${legendList(key)}`;
  }
}
