import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildProject } from '../../scripts/build.mjs';
import { requireRsvg } from '../../scripts/lib/rsvg.mjs';
import { roomWav } from '../support/packed.js';
import { difference, drawnSvg, halved } from '../support/pictures.js';
import { launch, openPage, serveSite, type Site } from '../support/site.js';

const path = (relative: string): string => fileURLToPath(new URL(`../../${relative}`, import.meta.url));
const differences = path('.cache/svg');
const views = ['waterfall', 'spectrogram', 'decay-times', 'fit', 'response', 'modes'];

/**
 * Two renderers smooth edges and set letters each in their way: of the pixels, and their mean of 255. Measured: 0.18 to
 * 0.32 %, and 0.4 to 1.0.
 */
const mostShare = 0.008;
const mostMean = 1.6;

describe('a saved SVG', () => {
  let folder = '';
  let browser: Browser;
  let site: Site;
  let tab: Page;
  let rsvg = '';

  beforeAll(async () => {
    rsvg = requireRsvg();
    await buildProject();
    folder = mkdtempSync(join(tmpdir(), 'ringdown-svg-'));
    writeFileSync(join(folder, 'desk.wav'), roomWav());
    browser = await launch();
    site = await serveSite([folder, path('dist')], {
      '/': {
        html: `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>svg</title>
<style>body { font-family: "DejaVu Sans", sans-serif; background: #fff; color: #14181b }</style>
<script type="module" src="/ringdown.js"></script></head><body>
<ringdown-study src="/desk.wav" room="5.6x3.9x2.7" no-files>${views.map((view) => `<ringdown-${view}></ringdown-${view}>`).join('')}</ringdown-study></body></html>`,
      },
    });
    ({ page: tab } = await openPage(browser, site.address));
    await tab.waitForFunction(() => {
      const found = document.querySelector('ringdown-study') as { snapshot?: { status: string } } | null;
      return found?.snapshot?.status === 'ready' && document.querySelectorAll(':state(busy)').length === 0;
    });
    await tab.waitForTimeout(500);
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const svgOf = (view: string): Promise<string> =>
    tab.evaluate((name) => {
      const element = document.querySelector(`ringdown-${name}`) as unknown as {
        toSvg(size: object): string | null;
      };
      return element.toSvg({ cssWidth: 900, cssHeight: 440 }) ?? '';
    }, view);

  const byRsvg = (svg: string, scale: number): string =>
    execFileSync(rsvg, ['--zoom', String(scale), '--format', 'png'], { input: svg }).toString('base64');

  it.each(views)('of ringdown-%s looks in another renderer as it does in a browser', async (view) => {
    const svg = await svgOf(view);
    expect(svg).toMatch(/^<\?xml|^<svg/);
    const here = await halved(tab, await drawnSvg(tab, svg, 2));
    const there = await halved(tab, byRsvg(svg, 2));
    const { share, mean, picture } = await difference(tab, here, there);
    console.log(`${view}: ${(100 * share).toFixed(2)} % of the pixels, ${mean.toFixed(2)} in the mean`);
    if (share > mostShare || mean > mostMean) {
      mkdirSync(differences, { recursive: true });
      const keep = (name: string, png: string): void =>
        writeFileSync(join(differences, `${view}-${name}.png`), Buffer.from(png, 'base64'));
      keep('browser', here);
      keep('rsvg', there);
      keep('differs', picture);
    }
    expect(share).toBeLessThanOrEqual(mostShare);
    expect(mean).toBeLessThanOrEqual(mostMean);
  });

  it('with its picture a few pixels off, or without its words, would be told apart', async () => {
    const svg = await svgOf('response');
    const here = await halved(tab, await drawnSvg(tab, svg, 2));
    for (const other of [
      svg.replace(/<text[\s\S]*?<\/text>/g, ''),
      svg.replace('translate(0 30)', 'translate(6 34)'),
    ]) {
      expect(other).not.toBe(svg);
      const { share, mean } = await difference(tab, here, await halved(tab, byRsvg(other, 2)));
      expect(share > mostShare || mean > mostMean, `${share}, ${mean}`).toBe(true);
    }
  });
});
