import { createRoom, synthesise } from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/index.js';
import { count } from './many-surfaces.js';
import type { ServedPage } from './site.js';

/** What a page has said and saved since it was opened. */
export interface Watched {
  readonly said: string[];
  readonly saved: { readonly name: string; readonly blob: Blob | undefined }[];
}

/**
 * Runs before the page's own scripts: keeps what goes wrong, and each file that is handed over, which is then not
 * downloaded. In the page, because only so it is the same in every engine.
 */
function watch(): void {
  const watched: Watched = { said: [], saved: [] };
  Object.assign(globalThis, { watched });
  for (const kind of ['error', 'warn'] as const) {
    const own = console[kind].bind(console);
    console[kind] = (...words: unknown[]) => {
      watched.said.push(`${kind}: ${words.map(String).join(' ')}`);
      own(...words);
    };
  }
  addEventListener(
    'error',
    (event) => watched.said.push(`error: ${event.message || (event.target as Element | null)?.localName}`),
    true,
  );
  addEventListener('unhandledrejection', (event) => watched.said.push(`rejected: ${String(event.reason)}`));
  addEventListener('securitypolicyviolation', (event) =>
    watched.said.push(`policy: ${event.violatedDirective}`),
  );
  const blobs = new Map<string, Blob>();
  const make = URL.createObjectURL.bind(URL);
  URL.createObjectURL = (blob: Blob) => {
    const address = make(blob);
    blobs.set(address, blob);
    return address;
  };
  const click: unknown = Reflect.get(HTMLElement.prototype, 'click');
  HTMLAnchorElement.prototype.click = function (this: HTMLAnchorElement) {
    if (this.download) watched.saved.push({ name: this.download, blob: blobs.get(this.href) });
    else if (typeof click === 'function') Reflect.apply(click, this, []);
  };
}

/** A plain page of somebody's with the library in one file. */
export const plainPage = (body: string): ServedPage => ({
  html: `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>A page</title>
<style>:root { color-scheme: light } body { margin: 16px; font: 15px "DejaVu Sans", sans-serif; background: #fff; color: #14181b }
main { display: grid; grid-template-columns: 1fr 1fr; gap: 1rem } main ringdown-waterfall { --ringdown-height: 240px }</style>
<script>const __name = (x) => x; (${watch.toString()})(); (${count.toString()})();</script>
<script type="module" src="/ringdown.js"></script></head><body>${body}</body></html>`,
});

/** A damped room at one seat: some ridges, far enough apart for their labels to stand alike in letters of any width. */
export function seatWav(): Uint8Array {
  const size = { lengthMetres: 5.6, widthMetres: 3.9, heightMetres: 2.7 };
  const { samples } = synthesise({
    ...{
      room: createRoom({ size, absorption: 0.3 }),
      seat: { x: 3.7, y: 3, z: 1.2 },
      source: { x: 0.5, y: 0.4, z: 0.3 },
    },
    ...{ noiseDb: -60, sampleRate: 8000, seconds: 1.6, seed: 14 },
  });
  return encodeWav({ channels: [samples], sampleRate: 8000, encoding: 'float-32' });
}

/** Makes print rules hold on the screen, and tells the elements so; undone by the second call. */
export function setPrinting(on: boolean): number {
  const [from, to] = on ? ['print', 'all'] : ['all', 'print'];
  const sheets = new Set<CSSStyleSheet>(document.styleSheets);
  const visit = (root: Document | ShadowRoot): void => {
    for (const sheet of root.adoptedStyleSheets) sheets.add(sheet);
    for (const element of root.querySelectorAll('*')) if (element.shadowRoot) visit(element.shadowRoot);
  };
  visit(document);
  let turned = 0;
  for (const sheet of sheets)
    for (const rule of sheet.cssRules)
      if (rule instanceof CSSMediaRule && rule.media.mediaText === from) {
        rule.media.mediaText = to;
        turned++;
      }
  dispatchEvent(new Event(on ? 'beforeprint' : 'afterprint'));
  return turned;
}
