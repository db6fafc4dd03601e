import { build } from 'esbuild';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { packedSuite } from '../support/packed-suite.js';
import { Project, roomWav } from '../support/packed.js';
import { openPage, serveSite, untilDrawn } from '../support/site.js';

const app = `
import React, { useState } from 'react';
import { createRoot } from 'react-dom/client';
import { Ridges, Study, Waterfall } from 'ringdown/react';

function App() {
  const [count, setCount] = useState(null);
  return React.createElement(Study, { src: '/desk.wav', room: '5.6x3.9x2.7', onRingdownReady: ({ detail }) => setCount(detail.snapshot.diagnosis.ridges.length) },
    React.createElement('output', null, count === null ? 'at work' : count + ' ridges'),
    React.createElement(Waterfall), React.createElement(Ridges));
}
createRoot(document.querySelector('#app')).render(React.createElement(App));
`;

describe('in React', () => {
  const suite = packedSuite();

  it.each(['18', '19'])('%s the wrappers draw, and tell their events', async (version) => {
    const project = new Project({
      'package.json': '{"name":"page","private":true,"type":"module"}',
      'app.js': app,
      'public/index.html':
        '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Rooms</title></head><body><div id="app"></div><script type="module" src="/app.js"></script></body></html>',
      'public/desk.wav': roomWav(),
    });
    try {
      project.install(
        suite.tarball,
        `react@${version}`,
        `react-dom@${version}`,
        '@lit/react@1',
        'lit@3',
        'three@0.187.0',
      );
      await build({
        absWorkingDir: project.folder,
        entryPoints: ['app.js'],
        outfile: join(project.folder, 'public/app.js'),
        bundle: true,
        format: 'esm',
        define: { 'process.env.NODE_ENV': '"production"' },
        logLevel: 'silent',
      });
      const site = await serveSite([join(project.folder, 'public')]);
      const { page, messages } = await openPage(suite.browser, site.address);
      await untilDrawn(page, 'ringdown-waterfall');
      await page.waitForFunction(() =>
        /^\d+ ridges$/.test(document.querySelector('output')?.textContent ?? ''),
      );
      // This bundler leaves no worker file beside the bundle: asking for it is answered by 404, then its text is used.
      expect(messages.filter((message) => !/404/.test(message))).toEqual([]);
      await page.close();
      site.close();
    } finally {
      project.remove();
    }
  });
});
