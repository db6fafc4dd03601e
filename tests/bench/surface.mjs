/* global document, requestAnimationFrame */
/**
 * The surface in Chromium beside a general-purpose charting library's WebGL surface of the same 300 x 200 grid at
 * 900 x 600 pixels: first picture, camera step, new data; and what is drawn at rest. `npm run bench -- surface`
 *
 * The library is not a dependency: it is installed into a temporary folder for the run. Both draw by the same software
 * or graphics card of the same browser, in turns, each round on fresh pages; a task ends when its pixels can be read.
 */
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';
import { browserArguments, requireBrowser } from '../../scripts/lib/browser.mjs';
import { Complaint, root, run as runProgram } from '../../scripts/lib/project.mjs';

/** MIT; its partial bundle with the surface alone, by name and version. */
const library = { name: 'plotly.js-gl3d-dist-min', version: '4.1.1', file: 'plotly-gl3d.min.js' };
const rounds = 3;
/** What is aimed at: each task so many times faster. */
const aim = 10;

async function libraryText() {
  const folder = `${tmpdir()}/ringdown-bench-${library.version}`;
  const file = `${folder}/node_modules/${library.name}/${library.file}`;
  if (!existsSync(file)) {
    mkdirSync(folder, { recursive: true });
    const code = await runProgram('npm', [
      ...['install', '--prefix', folder, '--no-save', '--no-audit', '--no-fund', '--loglevel=error'],
      `${library.name}@${library.version}`,
    ]);
    if (code !== 0 || !existsSync(file))
      throw new Complaint('The library to compare with could not be installed; npm said why above.');
  }
  return readFileSync(file, 'utf8');
}

/** Runs in the other library's page. */
async function measureLibrary(datasets) {
  const { Plotly } = globalThis;
  const host = document.createElement('div');
  document.body.append(host);
  const layout = (k) => ({
    width: 900,
    height: 600,
    margin: { l: 0, r: 0, t: 0, b: 0 },
    scene: {
      xaxis: { type: 'log' },
      zaxis: { range: [-60, 0] },
      camera: { eye: { x: 1.2 + k * 0.05, y: 1.6, z: 0.8 } },
    },
  });
  const traces = (data) => [{ type: 'surface', ...data, cmin: -60, cmax: 0, showscale: false }];
  const timed = async (task) => {
    const begin = performance.now();
    await task();
    // It draws in an animation frame of its own, asked for before this one.
    await new Promise((resolve) => requestAnimationFrame(resolve));
    const gl = host.querySelector('.gl-container canvas, canvas').getContext('webgl');
    gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4));
    return performance.now() - begin;
  };
  const first = [await timed(() => Plotly.newPlot(host, traces(datasets[0]), layout(0)))];
  const steps = [];
  for (let k = 1; k <= 4; k += 1)
    steps.push(
      await timed(() => Plotly.relayout(host, { 'scene.camera.eye': { x: 1.2 + k * 0.05, y: 1.6, z: 0.8 } })),
    );
  const data = [];
  for (const next of datasets.slice(1))
    data.push(await timed(() => Plotly.react(host, traces(next), layout(4))));
  return { first, steps, data };
}

const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];
const ms = (value) => `${value.toFixed(0)} ms`.padStart(10);

export async function run() {
  const otherText = await libraryText();
  const bundle = (format, entry) =>
    build({
      absWorkingDir: root,
      entryPoints: [entry],
      tsconfig: `${root}tsconfig.json`,
      bundle: true,
      minify: true,
      format,
      target: 'es2022',
      write: false,
    });
  const ourText = (await bundle('iife', 'tests/bench/surface-page.ts')).outputFiles[0].text;
  const browser = await chromium.launch({ executablePath: requireBrowser(), args: browserArguments });
  const openPage = async (text) => {
    const page = await browser.newPage({ viewport: { width: 1000, height: 700 } });
    page.on('pageerror', (error) => console.log(`page: ${error.message}`));
    await page.setContent('<!doctype html><title>surface</title><body></body>');
    await page.addScriptTag({ content: text });
    return page;
  };
  try {
    // The browser's own start of its graphics is nobody's first picture.
    const warm = await openPage('document.createElement("canvas").getContext("webgl2").clear(16384)');
    await warm.close();
    const ours = { first: [], steps: [], fine: [], data: [] };
    const theirs = { first: [], steps: [], data: [] };
    let rest = { frames: 0, requests: 0 };
    let contextsLeft = 0;
    for (let round = 0; round < rounds; round += 1) {
      const page = await openPage(ourText);
      const datasets = await page.evaluate('plainData()');
      const figures = await page.evaluate('measure()');
      await page.close();
      if (figures.mode !== 'webgl')
        throw new Complaint('The surface was not drawn by WebGL here, so there is nothing to compare.');
      for (const name of Object.keys(ours)) ours[name].push(...figures[name]);
      rest = {
        frames: rest.frames + figures.idle.frames,
        requests: rest.requests + figures.idle.requests,
      };
      contextsLeft += figures.contextsLeft;
      const other = await openPage(otherText);
      const otherFigures = await other.evaluate(measureLibrary, datasets);
      await other.close();
      for (const name of Object.keys(theirs)) theirs[name].push(...otherFigures[name]);
    }
    const size = (text) => `${(gzipSync(text, { level: 9 }).length / 1000).toFixed(0)} kB`;
    console.log(
      `surface, 300 x 200 cells at 900 x 600 px; medians of ${rounds} rounds in one browser; ${library.name} ${library.version}, in turns`,
    );
    console.log(`${''.padEnd(34)}${'here'.padStart(10)}${'library'.padStart(10)}${'ratio'.padStart(9)}`);
    for (const [label, name] of [
      ['first picture', 'first'],
      ['camera step', 'steps'],
      ['new data', 'data'],
    ]) {
      const [a, b] = [median(ours[name]), median(theirs[name])];
      const ratio = b / a;
      console.log(
        `${label.padEnd(34)}${ms(a)}${ms(b)}${`${ratio.toFixed(1)} x`.padStart(9)}${ratio < aim ? `   below ${aim} x` : ''}`,
      );
    }
    console.log(`${'the same step drawn with care'.padEnd(34)}${ms(median(ours.fine))}`);
    console.log(
      `${'script, gzipped (here with three)'.padEnd(34)}${size(ourText).padStart(10)}${size(otherText).padStart(10)}`,
    );
    console.log(
      `at rest for ${rounds * 1.5} s: ${rest.frames} frames drawn, ${rest.requests} asked for; contexts left after disposal: ${contextsLeft}`,
    );
  } finally {
    await browser.close();
  }
}
