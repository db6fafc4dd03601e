import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildProject } from '../../scripts/build.mjs';
import { heldBy, inWindow, openCounted } from '../support/many-surfaces.js';
import { roomWav } from '../support/packed.js';
import { launch, serveSite, untilDrawn, type Site } from '../support/site.js';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));
const surfaces = 48;
const rounds = 200;
/** A frame in which the browser itself keeps something of the last round. */
const nodesOfOneRound = 150;

const page = (body: string) => ({
  html: `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>many</title><script type="module" src="/ringdown.js"></script></head><body>${body}</body></html>`,
});

describe('many surfaces', () => {
  let folder = '';
  let browser: Browser;
  let site: Site;

  beforeAll(async () => {
    await buildProject();
    folder = mkdtempSync(join(tmpdir(), 'ringdown-many-'));
    writeFileSync(join(folder, 'desk.wav'), roomWav());
    browser = await launch();
    const figure = (k: number) =>
      `<ringdown-waterfall src="/desk.wav" label="Seat ${k + 1}"></ringdown-waterfall>`;
    site = await serveSite([folder, dist], {
      '/many': page(
        `<style>main { display: grid; grid-template-columns: 1fr 1fr; gap: 1rem } ringdown-waterfall { --ringdown-height: 240px }</style><main>${Array.from({ length: surfaces }, (_, k) => figure(k)).join('\n')}</main>`,
      ),
      '/rounds': page(`${figure(0)}<main></main>`),
    });
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('on one page share one context, say nothing, and are never blank while the page scrolls', async () => {
    const { page: tab, messages } = await openCounted(browser, `${site.address}/many`);
    const session = await tab.context().newCDPSession(tab);
    await session.send('Performance.enable');
    await expect
      .poll(() => inWindow(tab).then(({ shown, blank }) => (blank === 0 ? shown : 0)), { timeout: 30_000 })
      .toBeGreaterThanOrEqual(4);
    console.log(
      `first screen drawn ${await tab.evaluate(() => performance.now().toFixed(0))} ms after the page began`,
    );
    let seen = 0;
    const height = await tab.evaluate(() => document.documentElement.scrollHeight);
    for (let y = 0; y < height; y += 500) {
      await tab.evaluate((top) => scrollTo(0, top), y);
      await expect.poll(() => inWindow(tab).then(({ blank }) => blank), { timeout: 5_000 }).toBe(0);
      seen += (await inWindow(tab)).shown;
    }
    expect(seen).toBeGreaterThanOrEqual(surfaces);
    expect((await heldBy(tab, session)).contexts).toBe(1);
    expect(messages).toEqual([]);
    await tab.close();
  });

  it(`come and go ${rounds} times and leave listeners, textures, buffers and nodes where they were`, async () => {
    const { page: tab, messages } = await openCounted(browser, `${site.address}/rounds`);
    const session = await tab.context().newCDPSession(tab);
    await session.send('Performance.enable');
    const round = (count: number) =>
      tab.evaluate(async (times) => {
        const main = document.querySelector('main')!;
        for (let k = 0; k < times; k++) {
          const element = document.createElement('ringdown-waterfall');
          element.setAttribute('src', '/desk.wav');
          const drawn = new Promise((resolve) =>
            element.addEventListener('ringdown-ready', resolve, { once: true }),
          );
          main.append(element);
          await drawn;
          for (let frame = 0; frame < 2; frame++)
            await new Promise((resolve) => requestAnimationFrame(resolve));
          element.remove();
        }
      }, count);
    await untilDrawn(tab, 'ringdown-waterfall');
    await round(10);
    const before = await heldBy(tab, session);
    await round(rounds);
    const after = await heldBy(tab, session);
    console.log('held before and after', before, after);
    expect(after.contexts).toBe(before.contexts);
    expect(after.textures).toBe(before.textures);
    expect(after.buffers).toBe(before.buffers);
    expect(after.listeners).toBeLessThanOrEqual(before.listeners);
    expect(after.nodes).toBeLessThanOrEqual(before.nodes + nodesOfOneRound);
    expect(messages).toEqual([]);
    await tab.close();
  });
});
