/** `node scripts/make-picture.mjs`: the pictures of the README, drawn in Chromium from an invented recording. */
import { createServer } from 'node:http';
import { chromium } from 'playwright-core';
import sirv from 'sirv';
import { buildProject } from './build.mjs';
import { browserArguments, requireBrowser } from './lib/browser.mjs';
import { root, run, script } from './lib/project.mjs';

const page = `<!doctype html><html lang="en"><meta charset="utf-8"><title>picture</title>
<link rel="stylesheet" href="/demo/page.css">
<style>body { margin: 0; padding: 20px 24px; inline-size: 852px }</style>
<script type="module" src="/dist/ringdown.js"></script>
<ringdown-waterfall src="/demo/recordings/live-room-desk.wav" label="Live room, desk" room="5.6x3.9x2.7"></ringdown-waterfall>`;

await script(async () => {
  await buildProject();
  await run(process.execPath, ['scripts/make-demo.mjs']);
  const serve = sirv(root, { dev: true });
  const server = createServer((request, response) =>
    request.url === '/'
      ? response.writeHead(200, { 'content-type': 'text/html' }).end(page)
      : serve(request, response, () => {
          response.writeHead(404).end();
        }),
  );
  await new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve(undefined)));
  const address = /** @type {import('node:net').AddressInfo} */ (server.address());
  const browser = await chromium.launch({ executablePath: requireBrowser(), args: browserArguments });
  try {
    for (const colorScheme of /** @type {const} */ (['light', 'dark'])) {
      const tab = await browser.newPage({
        viewport: { width: 900, height: 640 },
        deviceScaleFactor: 1.5,
        colorScheme,
      });
      await tab.goto(`http://127.0.0.1:${address.port}/`);
      await tab.waitForFunction('document.querySelectorAll("ringdown-waterfall:state(busy)").length === 0');
      await tab.waitForTimeout(2500);
      await tab.screenshot({
        path: `${root}demo/waterfall-${colorScheme}.png`,
        clip: { x: 0, y: 0, width: 900, height: 520 },
      });
      await tab.close();
    }
  } finally {
    await browser.close();
    server.close();
  }
});
