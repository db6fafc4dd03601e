/** The pressure map in Chromium: main-thread work of one swing and of a new map. `npm run bench -- pressure` */
import { build } from 'esbuild';
import { chromium } from 'playwright-core';
import { browserArguments, requireBrowser } from '../../scripts/lib/browser.mjs';
import { root } from '../../scripts/lib/project.mjs';

export async function run() {
  const made = await build({
    entryPoints: [`${root}tests/bench/pressure-page.ts`],
    tsconfig: `${root}tsconfig.json`,
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    write: false,
  });
  const browser = await chromium.launch({ executablePath: requireBrowser(), args: browserArguments });
  try {
    const page = await browser.newPage({ viewport: { width: 1000, height: 700 } });
    await page.setContent('<!doctype html><title>pressure</title>');
    await page.addScriptTag({ content: made.outputFiles[0].text });
    /** @type {Record<string, number>} */
    const figures = await page.evaluate('measure()');
    console.log('pressure map, 81 x 62 and 81 x 33 points at 900 x 650 px, median of 35');
    console.log(`one picture while it swings          ${figures.swing.toFixed(2)} ms`);
    console.log(`the room while it swings             ${figures.roomSwing.toFixed(2)} ms`);
    console.log(`the room turned, with its lines      ${figures.roomTurn.toFixed(2)} ms`);
    console.log(`the room with care, to its pixels    ${figures.roomFine.toFixed(2)} ms`);
    console.log(`a new map: lines, places and colours ${figures.whole.toFixed(2)} ms`);
  } finally {
    await browser.close();
  }
}
