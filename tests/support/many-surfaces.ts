import type { Browser, CDPSession, Page } from 'playwright-core';
import { openPage } from './site.js';

/** What a page holds that must not grow: counted by the browser, and by the calls that make and delete. */
export interface Held {
  readonly contexts: number;
  readonly textures: number;
  readonly buffers: number;
  readonly listeners: number;
  readonly nodes: number;
}

/** Counts WebGL contexts that live, and their textures and buffers; runs before the page's scripts. */
export function count(): void {
  const held = { textures: 0, buffers: 0 };
  const contexts = new Set<WebGL2RenderingContext>();
  /** Calls `after` with what a method of a prototype got and gave. */
  const watch = (prototype: object, name: string, after: (given: unknown, first: unknown) => void): void => {
    const method = Reflect.get(prototype, name) as (...words: unknown[]) => unknown;
    Reflect.set(prototype, name, function (this: unknown, ...words: unknown[]) {
      const given = Reflect.apply(method, this, words);
      after(given, words[0]);
      return given;
    });
  };
  watch(HTMLCanvasElement.prototype, 'getContext', (context) => {
    if (context instanceof WebGL2RenderingContext) contexts.add(context);
  });
  const gl = WebGL2RenderingContext.prototype;
  watch(gl, 'createTexture', () => held.textures++);
  watch(gl, 'deleteTexture', (_, texture) => (held.textures -= texture ? 1 : 0));
  watch(gl, 'createBuffer', () => held.buffers++);
  watch(gl, 'deleteBuffer', (_, buffer) => (held.buffers -= buffer ? 1 : 0));
  Object.assign(globalThis, {
    heldByWebGl: () => {
      for (const context of contexts) if (context.isContextLost()) contexts.delete(context);
      return { contexts: contexts.size, ...(contexts.size > 0 ? held : { textures: 0, buffers: 0 }) };
    },
  });
}

/** Opens a page on which WebGL is counted. */
export const openCounted = (browser: Browser, address: string) => openPage(browser, address, count);

export async function heldBy(page: Page, session: CDPSession): Promise<Held> {
  // At rest: the picture of care that follows a quick one has geometries of its own.
  await page.waitForTimeout(2000);
  // Twice: what the first collection frees may hold more.
  for (let k = 0; k < 2; k++) await session.send('HeapProfiler.collectGarbage');
  const { metrics } = await session.send('Performance.getMetrics');
  const metric = (name: string): number => metrics.find((one) => one.name === name)?.value ?? NaN;
  const webGl = await page.evaluate(() =>
    (
      globalThis as unknown as { heldByWebGl(): { contexts: number; textures: number; buffers: number } }
    ).heldByWebGl(),
  );
  return { ...webGl, listeners: metric('JSEventListeners'), nodes: metric('Nodes') };
}

/** Of the surfaces in the window: how many there are, and how many are blank. */
export const inWindow = (page: Page): Promise<{ shown: number; blank: number }> =>
  page.evaluate(surfacesInWindow);

/** The same, in a page of any engine. */
export function surfacesInWindow(): { shown: number; blank: number } {
  let [shown, blank] = [0, 0];
  for (const element of document.querySelectorAll('ringdown-waterfall')) {
    const canvas = element.shadowRoot?.querySelector('canvas');
    const box = (canvas ?? element).getBoundingClientRect();
    if (box.bottom < 40 || box.top > innerHeight - 40) continue;
    shown++;
    const copy = document.createElement('canvas');
    [copy.width, copy.height] = [60, 40];
    const context = copy.getContext('2d');
    if (canvas && canvas.width > 0) context?.drawImage(canvas, 0, 0, 60, 40);
    const { data } = context!.getImageData(0, 0, 60, 40);
    const colours = new Set<number>();
    for (let k = 0; k < data.length; k += 4) colours.add((data[k] << 16) | (data[k + 1] << 8) | data[k + 2]);
    if (colours.size < 60) blank++;
  }
  return { shown, blank };
}
