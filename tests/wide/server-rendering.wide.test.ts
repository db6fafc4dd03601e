import { build } from 'esbuild';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packedSuite } from '../support/packed-suite.js';
import { Project, roomWav } from '../support/packed.js';
import { openPage, serveSite, untilDrawn } from '../support/site.js';

/** Renders every element of the manifest on the server, each alone, and all views in a study. */
const server = `
import { readFileSync, writeFileSync } from 'node:fs';
import { render } from '@lit-labs/ssr';
import { collectResult } from '@lit-labs/ssr/lib/render-result.js';
import { html } from 'lit';
import 'ringdown/define';

const manifest = JSON.parse(readFileSync('node_modules/ringdown/custom-elements.json', 'utf8'));
const tags = manifest.modules.flatMap(({ declarations = [] }) => declarations).flatMap(({ tagName }) => tagName ?? []);
const views = tags.filter((tag) => !/-(study|recording|place)$/.test(tag));
const alone = tags.map((tag) => '<' + tag + '></' + tag + '>').join('');
const study = '<ringdown-study src="/desk.wav" room="5.6x3.9x2.7">' + views.map((tag) => '<' + tag + '></' + tag + '>').join('') + '</ringdown-study>';
// A template without a hole, as its compiler would make it.
const strings = Object.assign([alone + study], { raw: [alone + study] });
const body = await collectResult(render(html(strings)));
writeFileSync('public/index.html', '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Rooms</title></head><body>' + body + '<script type="module" src="/app.js"></script></body></html>');
writeFileSync('tags.json', JSON.stringify(tags));
`;

describe('rendered on a server', () => {
  const suite = packedSuite();

  it('every element stands in the page before its script, and wakes without a mismatch', async () => {
    const project = new Project({
      'package.json': '{"name":"page","private":true,"type":"module"}',
      'server.js': server,
      'app.js': "import '@lit-labs/ssr-client/lit-element-hydrate-support.js';\nimport 'ringdown/define';\n",
      'public/desk.wav': roomWav(),
    });
    try {
      project.install(
        suite.tarball,
        '@lit-labs/ssr@4.1.0',
        '@lit-labs/ssr-client@1',
        'lit@3',
        'three@0.187.0',
      );
      project.run('node', 'server.js');
      await build({
        absWorkingDir: project.folder,
        entryPoints: ['app.js'],
        outdir: join(project.folder, 'public'),
        bundle: true,
        splitting: true,
        format: 'esm',
        logLevel: 'silent',
      });
      const site = await serveSite([join(project.folder, 'public')]);
      const plain = await suite.browser.newContext({ javaScriptEnabled: false });
      const before = await plain.newPage();
      await before.goto(site.address);
      const tags = JSON.parse(readFileSync(join(project.folder, 'tags.json'), 'utf8')) as string[];
      expect(tags.length).toBeGreaterThan(5);
      const markup = readFileSync(join(project.folder, 'public/index.html'), 'utf8');
      for (const tag of tags)
        expect(markup).toMatch(new RegExp(`<${tag}[^>]*>(<!--.*?-->)*<template shadowroot`));
      // The study's own button, out of its declared shadow root, with no script.
      expect(await before.locator('ringdown-study button').first().isVisible()).toBe(true);
      await plain.close();
      const { page, messages } = await openPage(suite.browser, site.address);
      await untilDrawn(page, 'ringdown-study ringdown-waterfall');
      expect(messages.filter((message) => !/404|dev mode/.test(message))).toEqual([]);
      await page.close();
      site.close();
    } finally {
      project.remove();
    }
  });
});
