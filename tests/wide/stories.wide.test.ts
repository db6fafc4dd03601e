import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser } from 'playwright-core';
import sirv from 'sirv';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { browserArguments, requireBrowser } from '../../scripts/lib/browser.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));
const axeSource = readFileSync(`${root}node_modules/axe-core/axe.min.js`, 'utf8');

interface Entry {
  readonly id: string;
  readonly importPath: string;
  readonly type: 'story' | 'docs';
}

/** Storybook as it would be published, each story opened in Chromium. */
describe('the stories', () => {
  let folder = '';
  let server: Server;
  let browser: Browser;
  let address = '';

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'ringdown-stories-'));
    const options = {
      cwd: root,
      stdio: 'ignore',
      env: { ...process.env, CI: 'true', NODE_ENV: 'production' },
    } as const;
    execFileSync(process.execPath, ['scripts/make-demo.mjs'], options);
    execFileSync('npm', ['run', 'manifest'], options);
    execFileSync(
      'npx',
      ['storybook', 'build', '--output-dir', folder, '--disable-telemetry', '--quiet'],
      options,
    );
    const serve = sirv(folder, { dev: true });
    // What browsers ask of every site on their own is not the stories' matter.
    server = createServer((request, response) =>
      request.url === '/favicon.ico' ? response.writeHead(204).end() : serve(request, response),
    );
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    browser = await chromium.launch({ executablePath: requireBrowser(), args: browserArguments });
  });
  afterAll(async () => {
    await browser?.close();
    server?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('open in Chromium without a console message, and axe finds nothing', async () => {
    const index = JSON.parse(readFileSync(join(folder, 'index.json'), 'utf8')) as {
      entries: Record<string, Entry>;
    };
    const stories = Object.values(index.entries).filter(({ type }) => type === 'story');
    expect(stories.length).toBeGreaterThan(20);
    const found: string[] = [];
    const page = await browser.newPage();
    let open = '';
    page.on('console', (message) =>
      found.push(`${open}: ${message.type()} ${message.text()} ${message.location().url}`),
    );
    page.on('pageerror', (error) => found.push(`${open}: ${error.message}`));
    for (const { id } of stories) {
      open = id;
      await page.emulateMedia({ media: id.endsWith('--printed') ? 'print' : 'screen' });
      // The page's own run of axe would be in the way of this one.
      await page.goto(`${address}/iframe.html?viewMode=story&id=${id}&globals=a11y.manual:!true`);
      await page.waitForFunction(() =>
        document.querySelector('#storybook-root')?.firstElementChild?.matches(':defined, div'),
      );
      // Until no element says any more that it is at work; one story shows just that.
      await page.waitForFunction(
        (busy) => document.querySelectorAll(':state(busy)').length > 0 === busy,
        /--(loading|at-work)$/.test(id),
      );
      await page.evaluate(axeSource);
      const violations = await page.evaluate(async () => {
        const { axe } = window as unknown as {
          axe: { run: (where: string) => Promise<{ violations: { id: string; help: string }[] }> };
        };
        return (await axe.run('#storybook-root')).violations.map(({ id: rule, help }) => `${rule}, ${help}`);
      });
      found.push(...violations.map((violation) => `${id}: ${violation}`));
    }
    expect(found).toEqual([]);
  });

  it('show every element in every state of a page, and each alone with controls', () => {
    const { entries } = JSON.parse(readFileSync(join(folder, 'index.json'), 'utf8')) as {
      entries: Record<string, Entry>;
    };
    const ids = Object.keys(entries);
    const controlled = Object.values(entries)
      .filter(({ id }) => id.endsWith('--with-controls'))
      .map(({ importPath }) => importPath.replace(/^.*\/(.*)\.stories\.ts$/, '$1'));
    const states = [
      'filled',
      'empty',
      'loading',
      'at-work',
      'refused',
      'too-short',
      'in-the-noise',
      'more-than-a-hundred-ridges',
    ];
    const surroundings = [
      'without-web-gl',
      'without-workers',
      'on-a-dark-page',
      'from-right-to-left',
      'narrow',
      'printed',
    ];
    for (const state of [...states, ...surroundings]) expect(ids).toContain(`all-elements--${state}`);
    const shown = readFileSync(`${root}stories/everything.ts`, 'utf8');
    const parts = ['place', 'recording', 'study'];
    for (const file of readdirSync(`${root}src/define`)) {
      const name = file.replace(/\.ts$/, '');
      if (['index', 'define-element'].includes(name) || name.endsWith('-flat')) continue;
      expect(shown, `stories/everything.ts shows ringdown-${name}`).toContain(`<ringdown-${name}`);
      if (!parts.includes(name)) expect(controlled).toContain(name);
    }
  });

  it('hold more than a hundred ridges where they say so', async () => {
    const page = await browser.newPage();
    await page.goto(`${address}/iframe.html?viewMode=story&id=all-elements--more-than-a-hundred-ridges`);
    await page.waitForFunction(
      () =>
        (document.querySelector('ringdown-study') as { snapshot?: { diagnosis: object | null } } | null)
          ?.snapshot?.diagnosis ?? false,
    );
    const count = await page.evaluate(
      () =>
        (
          document.querySelector('ringdown-study') as unknown as {
            snapshot: { diagnosis: { ridges: unknown[] } };
          }
        ).snapshot.diagnosis.ridges.length,
    );
    expect(count).toBeGreaterThan(100);
    await page.close();
  });

  it('follow their controls', async () => {
    const page = await browser.newPage();
    await page.goto(
      `${address}/iframe.html?viewMode=story&id=spectrogram--with-controls&args=label:Studio+5;method:constant-q`,
    );
    const element = page.locator('ringdown-spectrogram');
    await element.waitFor();
    expect(await element.getAttribute('label')).toBe('Studio 5');
    expect(await element.getAttribute('method')).toBe('constant-q');
    await page.close();
  });
});
