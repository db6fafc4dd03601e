import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { requireFont } from '../../scripts/lib/browser.mjs';
import { buildProject } from '../../scripts/build.mjs';
import { difference, halved } from '../support/pictures.js';
import { allReady, roomFiles, studyOf } from '../support/room-pages.js';
import { launch, openPage, serveSite, type Site } from '../support/site.js';

const path = (relative: string): string => fileURLToPath(new URL(`../../${relative}`, import.meta.url));
const goldens = path('tests/golden');
/** Where what differs is put, to be looked at. */
const differences = path('.cache/golden');
/** `npm run golden` writes them anew. */
const writing = process.env.npm_lifecycle_event === 'golden';

/**
 * Of the pixels and their mean of 255. Two runs of one browser differ by nothing; the least of the changes below
 * is ten times beyond.
 */
const mostShare = 0.004;
const mostMean = 0.5;

const looks = ['light', 'dark', 'print'] as const;
/** Those that stand on one page with one recording. */
const figures = [
  ...['waterfall', 'spectrogram', 'decay-times', 'fit', 'response', 'recordings', 'modes'],
  ...['pressure-map', 'room'],
];

/** Of the long sheet: from the top of the first to the foot of the last. */
const stretches: Readonly<Record<string, readonly [string, string]>> = {
  report: ['[part=base]', '[part=sheet] section:nth-of-type(2)'],
  'report-result': ['[part=sheet] section:nth-of-type(3)', '[part=sheet] section:nth-of-type(3)'],
  'report-rest': ['[part=sheet] section:nth-of-type(4)', '[part=sheet] section:last-of-type'],
};

/** Which pictures are taken of which page. */
const pages: Readonly<Record<string, readonly string[]>> = {
  '/one': figures,
  '/several': ['seats', 'sources'],
  '/flat': ['waterfall-flat'],
  '/room': ['pressure-map-room'],
  '/change': ['remedy', 'comparison'],
  '/sheet': ['listen', ...Object.keys(stretches)],
};

const page = (script: string, body: string) => ({
  html: `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>golden</title>
<style>:root { color-scheme: light dark } body { margin: 16px; font-family: "DejaVu Sans", sans-serif; background: light-dark(#fff, #14181b); color: light-dark(#14181b, #e4e8ea) }</style>
<script type="module" src="/${script}"></script></head><body>${body}</body></html>`,
});

/**
 * Moves an element by part of a pixel, so that one of its boxes begins on a whole one: else whatever stands above it in
 * the page would smooth all its edges in another way.
 */
function onWholePixels(box: Element): void {
  const host = (box.getRootNode() as ShadowRoot).host as HTMLElement;
  host.style.position = 'relative';
  host.style.top = '0px';
  const top = box.getBoundingClientRect().top + scrollY;
  host.style.top = `${Math.round(top) - top}px`;
}

const still = { animations: 'disabled', caret: 'hide' } as const;

/** A stretch of the sheet as wide as its element. */
async function stretch(tab: Page, [first, last]: readonly [string, string]): Promise<Buffer> {
  await tab.locator(`ringdown-report ${first}`).evaluate(onWholePixels);
  const clip = await tab.evaluate(
    ([from, to]) => {
      const report = document.querySelector('ringdown-report')!;
      const boxOf = (one: string): DOMRect => report.shadowRoot!.querySelector(one)!.getBoundingClientRect();
      const { x, width } = report.getBoundingClientRect();
      const [top, bottom] = [boxOf(from).top, boxOf(to).bottom].map((y) => Math.round(y + scrollY));
      return { x, y: top, width, height: bottom - top };
    },
    [first, last] as const,
  );
  return tab.screenshot({ ...still, clip, fullPage: true });
}

/** The picture of a view once it stands still: two shots that are the same. */
async function shot(tab: Page, view: string): Promise<string> {
  const tag = view.replace(/-(flat|room|result|rest)$/, '');
  const picture = tab.locator(`ringdown-${tag} [part~=picture]`).first();
  const taken = (): Promise<Buffer> =>
    stretches[view] ? stretch(tab, stretches[view]) : picture.screenshot(still);
  if (!stretches[view]) {
    await picture.evaluate(onWholePixels);
    await picture.scrollIntoViewIfNeeded();
  }
  let before = '';
  for (let k = 0; k < 40; k++) {
    await tab.waitForTimeout(350);
    const now = (await taken()).toString('base64');
    if (now === before && now.length > 4000) return now;
    before = now;
  }
  throw new Error(`The picture of ringdown-${tag} does not come to rest.`);
}

/** Somebody has listened, muted, and written on the sheet. */
async function used(tab: Page): Promise<void> {
  await tab.locator('ringdown-listen [part=play]').click();
  await tab.locator('ringdown-listen [part=picture]').waitFor();
  await tab.locator('ringdown-listen [part=play]').click();
  const fields = tab.locator('ringdown-report [part=form] :is(input, textarea)');
  const texts = ['Control room, second visit', 'Radio Quillmarsh', 'The commissioner', '30 November'];
  for (const [k, text] of [...texts, 'Doors were shut.\nThe desk was in its place.'].entries())
    await fields.nth(k).fill(text);
  const decisions = tab.locator('ringdown-report [part=decisions]');
  await decisions.locator('summary').click();
  await decisions.locator('select').first().selectOption({ label: 'absorb' });
  await decisions.locator('input').first().fill('Two traps in the corners behind the desk.');
  await decisions.locator('input').first().press('Tab');
  await decisions.locator('summary').click();
}

describe(`the pictures${writing ? ', written anew' : ''}`, () => {
  let folder = '';
  let browser: Browser;
  let site: Site;

  beforeAll(async () => {
    requireFont();
    await buildProject();
    folder = mkdtempSync(join(tmpdir(), 'ringdown-golden-'));
    for (const [name, wav] of Object.entries(roomFiles())) writeFileSync(join(folder, name), wav);
    browser = await launch();
    site = await serveSite([folder, path('dist')], {
      '/one': page('ringdown.js', studyOf('one', figures)),
      '/several': page('ringdown.js', studyOf('several', ['seats', 'sources'])),
      '/change': page('ringdown.js', studyOf('stages', ['remedy', 'comparison'])),
      '/room': page('ringdown.js', studyOf('one', ['pressure-map view="room"'])),
      '/sheet': page('ringdown.js', studyOf('stages', ['listen', 'report'])),
      '/flat': page('ringdown-flat.js', studyOf('one', ['waterfall'])),
    });
    mkdirSync(goldens, { recursive: true });
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const open = async (address: string, look: (typeof looks)[number]): Promise<Page> => {
    const { page: tab } = await openPage(browser, 'about:blank');
    await tab.setViewportSize({ width: 932, height: 900 });
    await tab.emulateMedia({ colorScheme: look === 'dark' ? 'dark' : 'light', reducedMotion: 'reduce' });
    await tab.goto(site.address + address);
    await tab.waitForFunction(allReady);
    if (address === '/sheet') await used(tab);
    if (look === 'print') {
      await tab.evaluate(() => dispatchEvent(new Event('beforeprint')));
      await tab.emulateMedia({ media: 'print', reducedMotion: 'reduce' });
    }
    return tab;
  };

  for (const look of looks)
    it(`are as they were approved: ${look}`, async () => {
      const wrong: string[] = [];
      for (const [address, shown] of Object.entries(pages)) {
        const tab = await open(address, look);
        for (const view of shown) {
          const now = await halved(tab, await shot(tab, view));
          const file = join(goldens, `${view}-${look}.png`);
          if (writing) {
            writeFileSync(file, Buffer.from(now, 'base64'));
            continue;
          }
          if (!existsSync(file)) {
            wrong.push(`${view} has no approved picture`);
            continue;
          }
          const found = await difference(tab, readFileSync(file).toString('base64'), now);
          if (found.share <= mostShare && found.mean <= mostMean) continue;
          mkdirSync(differences, { recursive: true });
          writeFileSync(join(differences, `${view}-${look}.png`), Buffer.from(now, 'base64'));
          writeFileSync(
            join(differences, `${view}-${look}-differs.png`),
            Buffer.from(found.picture, 'base64'),
          );
          wrong.push(
            `${view}: ${(100 * found.share).toFixed(2)} % of the pixels, ${found.mean.toFixed(2)} in the mean; see .cache/golden/${view}-${look}-differs.png`,
          );
        }
        await tab.close();
      }
      expect(wrong).toEqual([]);
    });

  it('would be refused with another range of levels, another camera, another axis or another smoothing', async () => {
    const tab = await open('/one', 'light');
    const changes: Record<string, string> = {
      spectrogram: '1;range=40',
      waterfall: '1;waterfall=-30,28,1',
      'decay-times': '1;axis=linear',
      response: '1;smoothing=1/6',
      modes: '1;to=150',
    };
    for (const [view, link] of Object.entries(changes)) {
      await tab.evaluate((text) => {
        const found = document.querySelector('ringdown-study') as unknown as {
          applyViewLink(text: string): boolean;
        };
        if (!found.applyViewLink(text)) throw new Error(text);
      }, link);
      await tab.waitForFunction(() => document.querySelectorAll(':state(busy)').length === 0);
      const now = await halved(tab, await shot(tab, view));
      const golden = readFileSync(join(goldens, `${view}-light.png`)).toString('base64');
      const { share, mean } = await difference(tab, golden, now);
      console.log(
        `${view} with ${link}: ${(100 * share).toFixed(2)} % of the pixels, ${mean.toFixed(2)} in the mean`,
      );
      expect(share > mostShare || mean > mostMean, `${view} with ${link}`).toBe(true);
    }
    await tab.close();
  });
});
