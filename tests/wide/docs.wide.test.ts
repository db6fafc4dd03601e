import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { packPackage, Project, roomWav } from '../support/packed.js';
import { launch, openPage, serveSite, untilDrawn, type Site } from '../support/site.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const out = join(root, 'docs/.vitepress/dist');
const axeSource = readFileSync(`${root}node_modules/axe-core/axe.min.js`, 'utf8');

/** The documentation as it would be published: links that lead nowhere stop its build. */
describe('the documentation', () => {
  let browser: Browser;
  let site: Site;

  beforeAll(async () => {
    execFileSync(process.execPath, ['scripts/docs.mjs'], {
      cwd: root,
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, NODE_ENV: 'production' },
    });
    site = await serveSite([out]);
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
  });

  it('has a page for every element, and for the engine', () => {
    const { modules } = JSON.parse(readFileSync(`${root}custom-elements.json`, 'utf8')) as {
      modules: { declarations?: { tagName?: string }[] }[];
    };
    const tags = modules.flatMap(({ declarations = [] }) =>
      declarations.flatMap(({ tagName }) => tagName ?? []),
    );
    expect(tags.length).toBeGreaterThan(14);
    for (const tag of tags) expect(readdirSync(join(out, 'elements'))).toContain(`${tag}.html`);
    const engine = readFileSync(join(out, 'engine/index.html'), 'utf8');
    for (const name of ['diagnose', 'openFile', 'boxModes', 'drainSliced']) expect(engine).toContain(name);
  });

  it('draws its live figure, in a worker, and asks no other site for anything', async () => {
    const { page, messages } = await openPage(browser, `${site.address}/`, () => {
      addEventListener('ringdown-ready', (event) => {
        (window as { way?: unknown }).way = (event as CustomEvent<{ way: unknown }>).detail.way;
      });
    });
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await untilDrawn(page, 'ringdown-waterfall');
    await page.waitForFunction(() => 'way' in window);
    expect(await page.evaluate(() => (window as { way?: unknown }).way)).toBe('sibling');
    expect(
      asked.filter(
        (url) => !url.startsWith(site.address) && !url.startsWith('data:') && !url.startsWith('blob:'),
      ),
    ).toEqual([]);
    expect(messages).toEqual([]);
    await page.close();
  });

  it('opens page by page without a console message, and axe finds nothing in its text and figures', async () => {
    const pages = [
      ...readdirSync(out).filter((file) => file.endsWith('.html') && file !== '404.html'),
      ...readdirSync(join(out, 'elements')).map((file) => `elements/${file}`),
    ];
    const found: string[] = [];
    for (const path of pages) {
      const { page, messages } = await openPage(browser, `${site.address}/${path}`);
      await page.waitForLoadState('networkidle');
      await page.addScriptTag({ content: axeSource });
      const violations = await page.evaluate(async () => {
        const { axe } = window as unknown as {
          axe: {
            run: (where: string) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
          };
        };
        // The text is ours; the frame around it is the generator's.
        return (await axe.run('.vp-doc')).violations;
      });
      found.push(
        ...messages.map((message) => `${path}: ${message}`),
        ...violations.map(({ id, nodes }) => `${path}: ${id}: ${nodes[0].html}`),
      );
      await page.close();
    }
    expect(found).toEqual([]);
  });

  it('tells how a static site is made with the engine, in lines that run', () => {
    const text = readFileSync(`${root}docs/engine-in-node.md`, 'utf8');
    const files = [...text.matchAll(/^```js \[([^\]]+)\]\n([\s\S]*?)^```$/gm)];
    expect(files.map(([, name]) => name)).toContain('ridges.mjs');
    const packed = packPackage();
    const project = new Project({
      'package.json': '{"name":"page","private":true,"type":"module"}',
      'desk.wav': roomWav(),
      ...Object.fromEntries(files.map(([, name, code]) => [name, code])),
    });
    try {
      // Neither lit nor three is there: the engine needs no page.
      project.run('npm', 'install', '--omit=peer', '--no-audit', '--no-fund', packed.tarball);
      project.run('node', 'ridges.mjs');
      const table = readFileSync(join(project.folder, 'ridges.md'), 'utf8');
      expect(table).toMatch(/^\| \d+\.\d Hz \| \d\.\d\d ± \d\.\d\d s \| \(\d,\d,\d\) \d+ % \|$/m);
      project.run('npm', 'install', '--no-audit', '--no-fund', 'lit@3', 'three@0.187.0');
      project.run('node', 'study.mjs');
      project.run('npx', 'ringdown', 'figure', 'desk.json', '--view', 'waterfall', '--out', 'desk.svg');
      expect(readFileSync(join(project.folder, 'desk.svg'), 'utf8')).toContain('Live room, desk');
    } finally {
      project.remove();
      packed.remove();
    }
  });
});
