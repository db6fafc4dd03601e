import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { FigureWords } from '../../draw/figure.js';
import type { LegendItem } from '../../draw/legend.js';
import { originOf } from '../../study/origin.js';
import type { StudySnapshot } from '../../study/types.js';
import { gridCaption } from '../../words/index.js';
import type { Speaker } from '../../words/index.js';
import type { Scope } from '../scope.js';

/** Widths of a saved picture, device pixels: a page on the screen, a page on paper, a wall. */
export const savedWidths = [1200, 2400, 4800] as const;

/** Letters of a hash that are printed; the whole of it is in the file. */
const printedHash = 12;

/** What a saved picture of a grid says beside itself; null while there is nothing to save. */
export function figureWords(
  snapshot: StudySnapshot,
  speaker: Speaker,
  pictureName: string,
  label: string,
  legend: readonly LegendItem[],
): FigureWords | null {
  const origin = originOf(snapshot);
  if (!origin || !snapshot.grid) return null;
  return {
    title: speaker.view('figure-title', { label, picture: speaker.view(pictureName) }),
    description: speaker.view(`${pictureName}-name`, { label }),
    legend,
    caption: [
      gridCaption(speaker, snapshot.grid, snapshot.choices.rangeDb, snapshot.recordings[snapshot.active]),
      speaker.view('figure-origin', { hash: origin.hash.slice(0, printedHash), version: origin.version }),
    ],
    origin: { ...origin, picture: pictureName },
  };
}

/** Width, and one button per kind of file. */
export function saveControls(
  speaker: Speaker,
  failed: boolean,
  save: (kind: 'png' | 'svg', widthPixels: number) => void,
): TemplateResult {
  const press = (event: Event, kind: 'png' | 'svg'): void => {
    const select = (event.target as HTMLElement).parentElement!.querySelector('select')!;
    save(kind, Number(select.value));
  };
  return html`<details class="save screen-only" part="save">
    <summary>${speaker.view('save')}</summary>
    <div>
      <label>
        <span>${speaker.view('save-width')}</span>
        <select>
          ${savedWidths.map((width) => html`<option value=${width}>${speaker.view('pixels', { width })}</option>`)}
        </select>
      </label>
      <button type="button" @click=${(event: Event) => press(event, 'png')}>PNG</button>
      <button type="button" @click=${(event: Event) => press(event, 'svg')}>SVG</button>
      <span role="status">${failed ? speaker.view('save-failed') : null}</span>
    </div>
  </details>`;
}

/** Hands a file to the user. Its address is let go once the browser has surely taken it. */
export function download(scope: Scope, file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  const release = scope.add(() => URL.revokeObjectURL(address));
  scope.timeout(release, 30_000);
}

/** A file name that every system takes. */
export const fileNameOf = (label: string, pictureName: string, kind: string): string =>
  `${`${label} ${pictureName}`
    .normalize('NFKC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()}.${kind}`;
