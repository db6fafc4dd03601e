import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildProject } from '../../scripts/build.mjs';
import { encodeWav } from '../../src/signal/index.js';
import { holdings, openHolding } from '../support/held.js';
import { addMode } from '../support/signals.js';
import { launch, serveSite, untilDrawn, type Site } from '../support/site.js';

const dist = fileURLToPath(new URL('../../dist', import.meta.url));
const rounds = 300;
/** Rounds before the first count: what is made once for the page, and the results that it keeps, is there then. */
const firstRounds = 20;

/** What may be more after 300 rounds than before them: less than a hundredth of what one round makes, times 300. */
const most = { heapMegabytes: 4, nodes: 600, detachedNodes: 400, listeners: 20 };

const views = [
  ...['recordings', 'waterfall', 'spectrogram', 'response', 'decay-times', 'fit', 'ridges', 'modes', 'room'],
  ...['pressure-map', 'seats', 'sources', 'remedy', 'comparison', 'listen', 'report'],
];

/** A short decay at a low rate, so that 300 rounds of it are over in minutes. */
function wav(frequencyHz: number): Uint8Array {
  const rate = 2000;
  const samples = new Float64Array(rate);
  addMode(samples, rate, frequencyHz, 0.7, 0.4, 0.05);
  addMode(samples, rate, 71, 0.2, 0.2, 0.05);
  for (let n = 0; n < samples.length; n++) samples[n] += 1e-4 * Math.sin(n * n);
  return encodeWav({ channels: [samples], sampleRate: rate, encoding: 'float-32' });
}

/**
 * All of it stands in the window, small, so that every view is drawn. A surface beside it stays, and with it the one context:
 * its textures and buffers are then counted, and no round waits for compilers.
 */
const html = `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>rounds</title>
<script type="module" src="/ringdown-all.js"></script>
<style>body { margin: 0 } main { --ringdown-height: 100px; width: 600px; transform: scale(0.1); transform-origin: 0 0; height: 0 }
#keeper { display: block; width: 300px; --ringdown-height: 150px; position: absolute; top: 1300px }</style>
</head><body><main></main><ringdown-waterfall id="keeper" src="/one.wav"></ringdown-waterfall></body></html>`;

/** Mounts a study with every view, draws, changes, saves, removes; so many times. */
const round = (page: Page, count: number): Promise<string[]> =>
  page.evaluate(
    async ({ times, names }) => {
      const main = document.querySelector('main')!;
      const frames = async (n: number): Promise<void> => {
        for (let k = 0; k < n; k++) await new Promise((resolve) => requestAnimationFrame(resolve));
      };
      const problems: string[] = [];
      for (let k = 0; k < times; k++) {
        const study = document.createElement('ringdown-study') as unknown as HTMLElement & {
          study: {
            settled(): Promise<{ status: string; recordings: unknown[] }>;
            setChoices(choices: object): void;
            setCursor(cursor: object): void;
            setActive(index: number): void;
          };
          toJson(): string;
        };
        study.setAttribute('room', '5x4x2.5');
        for (const [n, name] of ['one', 'two'].entries()) {
          const recording = document.createElement('ringdown-recording');
          for (const [attribute, value] of Object.entries({
            src: `/${name}.wav`,
            label: name,
            stage: n === 0 ? 'before' : 'after',
          }))
            recording.setAttribute(attribute, value);
          study.append(recording);
        }
        for (const name of names) study.append(document.createElement(`ringdown-${name}`));
        const ready = new Promise((resolve) =>
          study.addEventListener('ringdown-ready', resolve, { once: true }),
        );
        study.addEventListener('ringdown-error', (event) =>
          problems.push((event as CustomEvent<{ message: string }>).detail.message),
        );
        main.append(study);
        await ready;
        await frames(2);
        study.study.setCursor({ frequencyHz: 60, timeSeconds: 0.1 });
        study.study.setChoices({ rangeDb: 40 + (k % 2) * 10 });
        study.study.setActive(1);
        // A study may rest between the arrival of its two files.
        let { recordings } = await study.study.settled();
        for (let k = 0; recordings.length < 2 && k < 100; k++) {
          await new Promise((resolve) => setTimeout(resolve, 20));
          ({ recordings } = await study.study.settled());
        }
        if (recordings.length !== 2) problems.push(`${recordings.length} recordings`);
        await frames(2);
        if (!study.toJson().includes('ringdown-study')) problems.push('not saved');
        for (const name of ['spectrogram', 'response']) {
          const view = study.querySelector(`ringdown-${name}`) as unknown as { toSvg(): string | null };
          if (!view.toSvg()?.startsWith('<svg')) problems.push(`${name} not saved`);
        }
        study.remove();
      }
      // Longer than what a moved element keeps, and than what a picture at rest waits for.
      await new Promise((resolve) => setTimeout(resolve, 600));
      return problems;
    },
    { times: count, names: views },
  );

describe('everything', () => {
  let folder = '';
  let browser: Browser;
  let site: Site;

  beforeAll(async () => {
    await buildProject();
    folder = mkdtempSync(join(tmpdir(), 'ringdown-leaks-'));
    writeFileSync(join(folder, 'one.wav'), wav(41));
    writeFileSync(join(folder, 'two.wav'), wav(44));
    browser = await launch();
    site = await serveSite([folder, dist], { '/': { html } });
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it(`comes and goes ${rounds} times and leaves heap, nodes, listeners, workers, textures and addresses where they were`, async () => {
    const { page, messages } = await openHolding(browser, site.address);
    await page.setViewportSize({ width: 1000, height: 1600 });
    const session = await page.context().newCDPSession(page);
    for (const domain of ['Performance', 'DOM'] as const) await session.send(`${domain}.enable`);
    await page.waitForFunction("customElements.get('ringdown-report') !== undefined");
    await untilDrawn(page, '#keeper');
    const problems = await round(page, firstRounds);
    const before = await holdings(page, session);
    const begin = performance.now();
    problems.push(...(await round(page, rounds)));
    const seconds = (performance.now() - begin) / 1000;
    const after = await holdings(page, session);
    const changes = (Object.keys(after) as (keyof typeof after)[]).map(
      (name) => `${name} ${before[name].toFixed(1)} to ${after[name].toFixed(1)}`,
    );
    console.log(
      `leaks: ${rounds} rounds of a study with ${views.length} views in ${seconds.toFixed(0)} s: ${changes.join(', ')}`,
    );
    expect(problems).toEqual([]);
    expect(messages).toEqual([]);
    for (const [name, allowed] of Object.entries(most))
      expect(after[name as keyof typeof most] - before[name as keyof typeof most], name).toBeLessThanOrEqual(
        allowed,
      );
    for (const name of ['workers', 'contexts', 'textures', 'buffers', 'objectUrls', 'audioContexts'] as const)
      expect(after[name], name).toBeLessThanOrEqual(before[name]);
    expect(after.contexts).toBe(1);
    expect(after.textures).toBeGreaterThan(0);
    await page.evaluate(() => document.querySelector('#keeper')!.remove());
    const left = async () => {
      const { contexts, textures, buffers } = await holdings(page, session);
      return { contexts, textures, buffers };
    };
    await expect.poll(left, { timeout: 20_000 }).toEqual({ contexts: 0, textures: 0, buffers: 0 });
  }, 1_500_000);
});
