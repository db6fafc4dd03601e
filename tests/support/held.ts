import type { Browser, CDPSession, Page } from 'playwright-core';
import { openPage } from './site.js';

/** What a page holds that must not grow, counted by the browser after a collection and by the calls that make and end. */
export interface Holdings {
  readonly heapMegabytes: number;
  readonly nodes: number;
  readonly detachedNodes: number;
  readonly listeners: number;
  readonly workers: number;
  readonly contexts: number;
  readonly textures: number;
  readonly buffers: number;
  readonly objectUrls: number;
  readonly audioContexts: number;
}

type Counted = Pick<
  Holdings,
  'workers' | 'contexts' | 'textures' | 'buffers' | 'objectUrls' | 'audioContexts'
>;

/** Runs before the page's scripts: stands in for what makes workers, contexts, textures and addresses of objects. */
function count(): void {
  const contexts = new Set<WebGL2RenderingContext>();
  const held = { workers: 0, textures: 0, buffers: 0, objectUrls: 0, audioContexts: 0 };
  const watch = (of: object, name: string, after: (given: unknown, first: unknown) => void): void => {
    const method = Reflect.get(of, name) as (...words: unknown[]) => unknown;
    Reflect.set(of, name, function (this: unknown, ...words: unknown[]) {
      const given = Reflect.apply(method, this, words);
      after(given, words[0]);
      return given;
    });
  };
  const gl = WebGL2RenderingContext.prototype;
  watch(HTMLCanvasElement.prototype, 'getContext', (context) => {
    if (context instanceof WebGL2RenderingContext) contexts.add(context);
  });
  watch(gl, 'createTexture', () => held.textures++);
  watch(gl, 'deleteTexture', (_, texture) => (held.textures -= texture ? 1 : 0));
  watch(gl, 'createBuffer', () => held.buffers++);
  watch(gl, 'deleteBuffer', (_, buffer) => (held.buffers -= buffer ? 1 : 0));
  watch(URL, 'createObjectURL', () => held.objectUrls++);
  watch(URL, 'revokeObjectURL', () => held.objectUrls--);
  const counted = <T extends object>(made: T, name: 'workers' | 'audioContexts'): T =>
    new Proxy(made, {
      construct(target, words) {
        held[name]++;
        return Reflect.construct(target as typeof Worker, words as [string]);
      },
    });
  watch(Worker.prototype, 'terminate', () => held.workers--);
  watch(AudioContext.prototype, 'close', () => held.audioContexts--);
  globalThis.Worker = counted(Worker, 'workers');
  globalThis.AudioContext = counted(AudioContext, 'audioContexts');
  Object.assign(globalThis, {
    counted: (): Counted => {
      for (const context of contexts) if (context.isContextLost()) contexts.delete(context);
      const none = contexts.size === 0;
      return {
        ...held,
        contexts: contexts.size,
        textures: none ? 0 : held.textures,
        buffers: none ? 0 : held.buffers,
      };
    },
  });
}

export const openHolding = (browser: Browser, address: string) => openPage(browser, address, count);

export async function holdings(page: Page, session: CDPSession): Promise<Holdings> {
  // Three times: what one collection frees may hold more, and finalisers run between them.
  for (let k = 0; k < 3; k++) {
    await session.send('HeapProfiler.collectGarbage');
    await page.waitForTimeout(100);
  }
  const { metrics } = await session.send('Performance.getMetrics');
  const metric = (name: string): number => metrics.find((one) => one.name === name)?.value ?? NaN;
  const { detachedNodes } = await session.send('DOM.getDetachedDomNodes');
  const sizes = (node: { children?: unknown[] }): number =>
    1 + (node.children ?? []).reduce((sum: number, child) => sum + sizes(child as typeof node), 0);
  const counted = await page.evaluate(() => (globalThis as unknown as { counted(): Counted }).counted());
  return {
    heapMegabytes: metric('JSHeapUsedSize') / 2 ** 20,
    nodes: metric('Nodes'),
    detachedNodes: detachedNodes.reduce((sum, { treeNode }) => sum + sizes(treeNode), 0),
    listeners: metric('JSEventListeners'),
    ...counted,
  };
}
