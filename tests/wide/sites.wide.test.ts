import { copyFileSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { findProgram, installDebianPackages } from '../../scripts/lib/debian.mjs';
import { packedSuite } from '../support/packed-suite.js';
import { Project, roomWav } from '../support/packed.js';
import { openPage, serveSite, untilDrawn } from '../support/site.js';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));
const figure =
  '<ringdown-waterfall src="/desk.wav" room="5.6x3.9x2.7" label="Live room"><p>The live room rings at 44 Hz.</p></ringdown-waterfall>';
const module = '{"name":"site","private":true,"type":"module"}';

interface Site {
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
    files: {
      'package.json': module,
      '.vitepress/config.mjs':
        "export default { title: 'Rooms', vue: { template: { compilerOptions: { isCustomElement: (tag) => tag.startsWith('ringdown-') } } } };",
      '.vitepress/theme/index.js':
        "import DefaultTheme from 'vitepress/theme';\nexport default { extends: DefaultTheme, async enhanceApp() { if (!import.meta.env.SSR) await import('ringdown/define'); } };",
      'index.md': `# The live room\n\n${figure}\n`,
    },
    static: 'public',
    packages: ['vitepress@1.6.4', 'lit@3', 'three@0.187.0'],
    build: ['npx', 'vitepress', 'build'],
    out: '.vitepress/dist',
    ways: ['sibling'],
  },
  'Eleventy 3.1.8': {
    files: {
      'package.json': module,
      'eleventy.config.js':
        "export default (config) => { config.addPassthroughCopy({ 'node_modules/ringdown/dist/ringdown.js': 'ringdown.js', static: '/' }); };",
      'index.md': `<script type="module" src="/ringdown.js"></script>\n\n# The live room\n\n${figure}\n`,
    },
    static: 'static',
    packages: ['@11ty/eleventy@3.1.8'],
    build: ['npx', '@11ty/eleventy'],
    out: '_site',
    ways: ['inline'],
  },
  'Astro 5.18.2': {
    files: {
      'package.json': module,
      'astro.config.mjs': 'export default {};',
      'src/pages/index.astro': `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Rooms</title></head><body><h1>The live room</h1>${figure}<script>import 'ringdown/define';</script></body></html>`,
    },
    static: 'public',
    packages: ['astro@5.18.2', 'lit@3', 'three@0.187.0'],
    build: ['npx', 'astro', 'build'],
    out: 'dist',
    ways: ['sibling'],
  },
  'Docusaurus 3.10.2': {
    files: {
      'package.json': '{"name":"site","private":true}',
      'docusaurus.config.js':
        "module.exports = { title: 'Rooms', url: 'https://example.org', baseUrl: '/', clientModules: ['./ringdown.client.js'], presets: [['classic', { docs: false, blog: false }]] };",
      'ringdown.client.js':
        "import ExecutionEnvironment from '@docusaurus/ExecutionEnvironment';\nif (ExecutionEnvironment.canUseDOM) import('ringdown/define');",
      'src/pages/index.js': `import React from 'react';\nexport default () => <main><h1>The live room</h1>${figure}</main>;`,
    },
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
    files: {
      // Its theme asks other servers for a highlighter unless told not to.
      'mkdocs.yml':
        'site_name: Rooms\nuse_directory_urls: false\ntheme:\n  name: mkdocs\n  highlightjs: false\nplugins: []\n',
      'docs/index.md': `<script type="module" src="ringdown.js"></script>\n\n# The live room\n\n${figure}\n`,
    },
    static: 'docs',
    debian: 'mkdocs',
    build: ['mkdocs', 'build', '--quiet'],
    out: 'site',
    oneFile: true,
    ways: ['inline'],
  },
  'Hugo of Debian': {
    files: {
      'config.toml':
        'baseURL = "/"\ntitle = "Rooms"\ndisableKinds = ["taxonomy", "term", "RSS", "sitemap"]\n',
      'layouts/shortcodes/ringdown.html':
        '<ringdown-waterfall src="{{ .Get "src" }}" room="{{ .Get "room" }}" label="{{ .Get "label" }}"></ringdown-waterfall>',
      'layouts/index.html':
        '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Rooms</title><script type="module" src="/ringdown.js"></script></head><body>{{ .Content }}</body></html>',
      'content/_index.md':
        '# The live room\n\n{{< ringdown src="/desk.wav" room="5.6x3.9x2.7" label="Live room" >}}\n',
    },
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
    async (_, site) => {
      const project = new Project(site.files);
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
