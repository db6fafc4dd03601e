import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildProject } from '../../scripts/build.mjs';
import { browserArguments, requireBrowser } from '../../scripts/lib/browser.mjs';
import { roomWav } from '../support/packed.js';
import { openPage, serveSite, untilDrawn, type Site } from '../support/site.js';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));
const rounds = 5;

const html = (body: string): { html: string } => ({
  html: `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>asleep</title>
<script>self.shown = []; addEventListener('pageshow', ({ persisted }) => self.shown.push(persisted));</script>
<script type="module" src="/ringdown.js"></script></head><body>${body}</body></html>`,
});

/** What the study of the page says now. */
const state = (page: Page): Promise<{ status: string; recordings: number; failures: number }> =>
  page.evaluate(() => {
    const { status, recordings, failures } = (
      document.querySelector('ringdown-study') as unknown as {
        snapshot: { status: string; recordings: unknown[]; failures: unknown[] };
      }
    ).snapshot;
    return { status, recordings: recordings.length, failures: failures.length };
  });

describe('a page that is put to sleep', () => {
  let folder = '';
  let browser: Browser;
  let site: Site;

  beforeAll(async () => {
    await buildProject();
    folder = mkdtempSync(join(tmpdir(), 'ringdown-asleep-'));
    writeFileSync(join(folder, 'desk.wav'), roomWav());
    // Playwright forbids what is tried here.
    browser = await chromium.launch({
      executablePath: requireBrowser(),
      args: browserArguments,
      ignoreDefaultArgs: ['--disable-back-forward-cache'],
    });
    site = await serveSite([folder, dist], {
      '/study': html(
        '<ringdown-study room="5.6x3.9x2.7" no-files><ringdown-recording src="/desk.wav" label="Desk"></ringdown-recording><ringdown-waterfall></ringdown-waterfall><ringdown-ridges></ringdown-ridges></ringdown-study>',
      ),
      '/other': html('<p>Another page.</p>'),
    });
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it(`while it computes, ${rounds} times, goes on where it was and draws its picture`, async () => {
    const { page, messages } = await openPage(browser, `${site.address}/study`);
    const done = () =>
      expect.poll(() => state(page).then(({ status }) => status), { timeout: 120_000 }).toBe('ready');
    await done();
    for (let k = 0; k < rounds; k++) {
      // Another range of frequencies is another picture and another fit; in the same turn the page is left.
      const status = await page.evaluate((fromHz) => {
        const element = document.querySelector('ringdown-study') as unknown as {
          study: { setChoices(choices: object): void };
          snapshot: { status: string };
        };
        element.study.setChoices({ fromHz });
        location.href = '/other';
        return element.snapshot.status;
      }, 21 + k);
      expect(status).toBe('working');
      await page.waitForURL(/other/);
      await page.waitForTimeout(300);
      // Not by Playwright's own way, which waits for a page to be loaded.
      await page.evaluate('history.back()');
      await expect
        .poll(() => page.evaluate<string>('location.pathname').catch(() => ''), { timeout: 20_000 })
        .toBe('/study');
      // The very page: kept asleep and not loaded again.
      expect(await page.evaluate(() => (globalThis as unknown as { shown: boolean[] }).shown)).toEqual([
        false,
        ...Array.from({ length: k + 1 }, () => true),
      ]);
      await done();
      expect(await state(page)).toEqual({ status: 'ready', recordings: 1, failures: 0 });
      await untilDrawn(page, 'ringdown-waterfall');
    }
    console.log(
      `asleep: ${rounds} times put to sleep while it computed, ${rounds} times done and drawn after it`,
    );
    expect(messages).toEqual([]);
    await page.close();
  });

  it('behind another tab computes to its end, and is drawn when it is seen', async () => {
    const { page, messages } = await openPage(browser, `${site.address}/study`);
    const front = await browser.newPage();
    await front.goto(`${site.address}/other`);
    await front.bringToFront();
    await expect.poll(() => state(page).then(({ status }) => status), { timeout: 60_000 }).toBe('ready');
    await page.bringToFront();
    await untilDrawn(page, 'ringdown-waterfall');
    expect(messages).toEqual([]);
    await front.close();
    await page.close();
  });
});
