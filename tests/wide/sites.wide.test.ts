import { copyFileSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { findProgram, installDebianPackages } from '../../scripts/lib/debian.mjs';
import { packedSuite } from '../support/packed-suite.js';
import { Project, roomWav } from '../support/packed.js';
import { openPage, serveSite, untilDrawn } from '../support/site.js';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));
const module = '{"name":"site","private":true,"type":"module"}';
const recipes = fileURLToPath(new URL('../../docs/recipes.md', import.meta.url));

/** The files of a recipe as the documentation prints them: each fence that carries a path in brackets. */
function filesOf(title: string): Record<string, string> {
  const page = readFileSync(recipes, 'utf8');
  const part = page.split(/^## /m).find((text) => text.startsWith(`${title}\n`));
  if (part === undefined) throw new Error(`docs/recipes.md has no recipe “${title}”.`);
  return Object.fromEntries(
    [...part.matchAll(/^```[\w-]+ \[([^\]]+)\]\n([\s\S]*?)^```$/gm)].map(([, path, text]) => [path, text]),
  );
}

interface Site {
  /** What a project of this kind has beside the files of the recipe. */
  readonly files: Readonly<Record<string, string>>;
  /** Where the site keeps files that are served as they are. */
  readonly static: string;
  readonly packages?: readonly string[];
  /** A program of Debian, and its package. */
  readonly debian?: string;
  readonly build: readonly string[];
  readonly out: string;
  /** The recipes of single-file pages take the library in one file. */
  readonly oneFile?: boolean;
  readonly ways: readonly string[];
}

/** The recipes of the documentation, one per generator; versions as tried. */
const sites: Record<string, Site> = {
  'VitePress 1.6.4': {
    files: { 'package.json': module },
    static: 'public',
    packages: ['vitepress@1.6.4', 'lit@3', 'three@0.187.0'],
    build: ['npx', 'vitepress', 'build'],
    out: '.vitepress/dist',
    ways: ['sibling'],
  },
  'Eleventy 3.1.8': {
    files: { 'package.json': module },
    static: 'static',
    packages: ['@11ty/eleventy@3.1.8'],
    build: ['npx', '@11ty/eleventy'],
    out: '_site',
    ways: ['inline'],
  },
  'Astro 5.18.2': {
    files: { 'package.json': module },
    static: 'public',
    packages: ['astro@5.18.2', 'lit@3', 'three@0.187.0'],
    build: ['npx', 'astro', 'build'],
    out: 'dist',
    ways: ['sibling'],
  },
  'Docusaurus 3.10.2': {
    files: { 'package.json': '{"name":"site","private":true}' },
    static: 'static',
    packages: [
      '@docusaurus/core@3.10.2',
      '@docusaurus/preset-classic@3.10.2',
      'react@19',
      'react-dom@19',
      'lit@3',
      'three@0.187.0',
    ],
    build: ['npx', 'docusaurus', 'build'],
    out: 'build',
    // Its bundler breaks worker chunks: the text of the worker takes over.
    ways: ['sibling', 'inline'],
  },
  'MkDocs of Debian': {
    files: {},
    static: 'docs',
    debian: 'mkdocs',
    build: ['mkdocs', 'build', '--quiet'],
    out: 'site',
    oneFile: true,
    ways: ['inline'],
  },
  'Hugo of Debian': {
    files: {},
    static: 'static',
    debian: 'hugo',
    build: ['hugo', '--quiet'],
    out: 'public',
    oneFile: true,
    ways: ['inline'],
  },
};

describe('a figure in a documentation site', () => {
  const suite = packedSuite();
  const wav = roomWav();

  it.each(Object.entries(sites))(
    'of %s is built, drawn, and says nothing on the console',
    async (title, site) => {
      const recipe = filesOf(title);
      expect(Object.keys(recipe).length).toBeGreaterThan(1);
      const project = new Project({ ...site.files, ...recipe });
      try {
        project.write(join(site.static, 'desk.wav'), wav);
        if (site.oneFile) {
          mkdirSync(join(project.folder, site.static), { recursive: true });
          copyFileSync(join(dist, 'ringdown.js'), join(project.folder, site.static, 'ringdown.js'));
        }
        if (site.packages) project.install(suite.tarball, ...site.packages);
        if (site.debian && !findProgram([site.debian]) && !installDebianPackages([site.debian]))
          throw new Error(`This test needs ${site.debian} and could not install it from Debian.`);
        project.run(site.build[0], ...site.build.slice(1));
        const served = await serveSite([join(project.folder, site.out)]);
        const { page, messages } = await openPage(suite.browser, `${served.address}/`, () => {
          addEventListener('ringdown-ready', (event) => {
            (window as { way?: unknown }).way = (event as CustomEvent<{ way: unknown }>).detail.way;
          });
        });
        await untilDrawn(page, 'ringdown-waterfall');
        await page.waitForFunction(() => 'way' in window);
        expect(site.ways).toContain(await page.evaluate(() => (window as { way?: unknown }).way));
        expect(messages).toEqual([]);
        await page.close();
        served.close();
      } finally {
        project.remove();
      }
    },
  );
});
