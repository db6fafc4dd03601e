import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { Speaker } from '../../words/index.js';
import type { Scope } from '../scope.js';

/** Widths of a saved picture, device pixels: a page on the screen, a page on paper, a wall. */
export const savedWidths = [1200, 2400, 4800] as const;

/** Width, and one button per kind of file. */
export function saveControls(
  speaker: Speaker,
  failed: boolean,
  save: (kind: 'png' | 'svg', widthPixels: number) => void,
  part = 'save',
): TemplateResult {
  const press = (event: Event, kind: 'png' | 'svg'): void => {
    const select = (event.target as HTMLElement).parentElement!.querySelector('select')!;
    save(kind, Number(select.value));
  };
  return html`<details class="save screen-only" part=${part}>
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

/** Hands a picture to the user once it is made; `scope` is asked then, and null where the element is gone. */
export function handOver(
  made: Promise<Blob | null>,
  name: string,
  scope: () => Scope | null,
  failed: () => void,
): void {
  made.then((file) => {
    const there = scope();
    if (file && there) download(there, file, name);
  }, failed);
}
