import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { requireFont } from '../../scripts/lib/browser.mjs';
import { buildProject } from '../../scripts/build.mjs';
import { createRoom, synthesise } from '../../src/room/index.js';
import { encodeWav } from '../../src/signal/index.js';
import { difference, halved } from '../support/pictures.js';
import { launch, openPage, serveSite, type Site } from '../support/site.js';

const path = (relative: string): string => fileURLToPath(new URL(`../../${relative}`, import.meta.url));
const goldens = path('tests/golden');
/** Where what differs is put, to be looked at. */
const differences = path('.cache/golden');
/** `npm run golden` writes them anew. */
const writing = process.env.npm_lifecycle_event === 'golden';

/**
 * Of the pixels and their mean of 255. Two runs of one browser differ by nothing; the least of the changes below
 * is ten times beyond.
 */
const mostShare = 0.004;
const mostMean = 0.5;

const looks = ['light', 'dark', 'print'] as const;
const views = [
  ...[
    'waterfall',
    'spectrogram',
    'decay-times',
    'fit',
    'response',
    'recordings',
    'modes',
    'pressure-map',
    'room',
  ],
  ...['seats', 'sources', 'waterfall-flat', 'pressure-map-room', 'remedy', 'comparison'],
];

const size = { lengthMetres: 5.6, widthMetres: 3.9, heightMetres: 2.7 };
const sources = { A: [0.5, 0.4, 0.3], B: [5.1, 3.5, 0.3] } as const;
const seats = { desk: [3.7, 3, 1.2], sofa: [4.6, 1.9, 1.2] } as const;

function wav(source: keyof typeof sources, seat: keyof typeof seats, absorption = 0.3): Uint8Array {
  const at = ([x, y, z]: readonly [number, number, number]) => ({ x, y, z });
  const { samples } = synthesise({
    ...{ room: createRoom({ size, absorption }), seat: at(seats[seat]), source: at(sources[source]) },
    ...{ noiseDb: -60, sampleRate: 8000, seconds: 1.6, seed: seat.length + (source === 'A' ? 10 : 20) },
  });
  return encodeWav({ channels: [samples], sampleRate: 8000, encoding: 'float-32' });
}

const recording = (source: keyof typeof sources, seat: keyof typeof seats): string =>
  `<ringdown-recording src="/${source}-${seat}.wav" label="Source ${source}, ${seat}" clock="common" seat="${seat}" source="${source}"></ringdown-recording>`;
/** Before and after the walls took up more. */
const stages = (['before', 'after'] as const)
  .map(
    (stage) =>
      `<ringdown-recording src="/${stage === 'before' ? 'A-desk' : 'treated'}.wav" label="Desk, ${stage}" seat="desk" source="A" stage="${stage}"></ringdown-recording>`,
  )
  .join('');
const places = [...Object.entries(seats), ...Object.entries(sources)]
  .map(
    ([name, at]) =>
      `<ringdown-place kind="${name in seats ? 'seat' : 'source'}" name="${name}" at="${at.join(' ')}"></ringdown-place>`,
  )
  .join('');
const study = (recordings: string, tags: readonly string[]): string =>
  `<ringdown-study room="5.6x3.9x2.7" no-files no-choices>${places}${recordings}${tags.map((tag) => `<ringdown-${tag}></ringdown-${tag.split(' ')[0]}>`).join('')}</ringdown-study>`;
const page = (script: string, body: string) => ({
  html: `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>golden</title>
<style>:root { color-scheme: light dark } body { margin: 16px; font-family: "DejaVu Sans", sans-serif; background: light-dark(#fff, #14181b); color: light-dark(#14181b, #e4e8ea) }</style>
<script type="module" src="/${script}"></script></head><body>${body}</body></html>`,
});

/** The picture of a view once it stands still: two shots that are the same. */
async function shot(tab: Page, tag: string): Promise<string> {
  const picture = tab.locator(`ringdown-${tag} [part~=picture]`).first();
  await picture.scrollIntoViewIfNeeded();
  let before = '';
  for (let k = 0; k < 40; k++) {
    await tab.waitForTimeout(350);
    const now = (await picture.screenshot({ animations: 'disabled', caret: 'hide' })).toString('base64');
    if (now === before && now.length > 4000) return now;
    before = now;
  }
  throw new Error(`The picture of ringdown-${tag} does not come to rest.`);
}

describe(`the pictures${writing ? ', written anew' : ''}`, () => {
  let folder = '';
  let browser: Browser;
  let site: Site;

  beforeAll(async () => {
    requireFont();
    await buildProject();
    folder = mkdtempSync(join(tmpdir(), 'ringdown-golden-'));
    for (const source of ['A', 'B'] as const)
      for (const seat of ['desk', 'sofa'] as const)
        writeFileSync(join(folder, `${source}-${seat}.wav`), wav(source, seat));
    writeFileSync(join(folder, 'treated.wav'), wav('A', 'desk', 0.5));
    browser = await launch();
    site = await serveSite([folder, path('dist')], {
      '/one': page('ringdown.js', study(recording('A', 'desk'), views.slice(0, 9))),
      '/several': page(
        'ringdown.js',
        study(
          [
            recording('A', 'desk'),
            recording('A', 'sofa'),
            recording('B', 'desk'),
            recording('B', 'sofa'),
          ].join(''),
          ['seats', 'sources'],
        ),
      ),
      '/change': page('ringdown.js', study(stages, ['remedy', 'comparison'])),
      '/room': page('ringdown.js', study(recording('A', 'desk'), ['pressure-map view="room"'])),
      '/flat': page('ringdown-flat.js', study(recording('A', 'desk'), ['waterfall'])),
    });
    mkdirSync(goldens, { recursive: true });
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const pageOf = (view: string): string =>
    view === 'pressure-map-room'
      ? '/room'
      : view === 'waterfall-flat'
        ? '/flat'
        : view === 'seats' || view === 'sources'
          ? '/several'
          : view === 'remedy' || view === 'comparison'
            ? '/change'
            : '/one';
  const open = async (address: string, look: (typeof looks)[number]): Promise<Page> => {
    const { page: tab } = await openPage(browser, 'about:blank');
    await tab.setViewportSize({ width: 932, height: 900 });
    await tab.emulateMedia({ colorScheme: look === 'dark' ? 'dark' : 'light', reducedMotion: 'reduce' });
    await tab.goto(site.address + address);
    await tab.waitForFunction(() => {
      const found = [...document.querySelectorAll('ringdown-study')];
      const ready = found.every(
        (one) => 'snapshot' in one && (one.snapshot as { status: string }).status === 'ready',
      );
      return ready && document.querySelectorAll(':state(busy)').length === 0;
    });
    if (look === 'print') {
      await tab.evaluate(() => dispatchEvent(new Event('beforeprint')));
      await tab.emulateMedia({ media: 'print', reducedMotion: 'reduce' });
    }
    return tab;
  };

  for (const look of looks)
    it(`are as they were approved: ${look}`, async () => {
      const wrong: string[] = [];
      for (const address of ['/one', '/several', '/flat', '/room', '/change']) {
        const tab = await open(address, look);
        for (const view of views.filter((one) => pageOf(one) === address)) {
          const now = await halved(tab, await shot(tab, view.replace(/-(flat|room)$/, '')));
          const file = join(goldens, `${view}-${look}.png`);
          if (writing) {
            writeFileSync(file, Buffer.from(now, 'base64'));
            continue;
          }
          if (!existsSync(file)) {
            wrong.push(`${view} has no approved picture`);
            continue;
          }
          const found = await difference(tab, readFileSync(file).toString('base64'), now);
          if (found.share <= mostShare && found.mean <= mostMean) continue;
          mkdirSync(differences, { recursive: true });
          writeFileSync(join(differences, `${view}-${look}.png`), Buffer.from(now, 'base64'));
          writeFileSync(
            join(differences, `${view}-${look}-differs.png`),
            Buffer.from(found.picture, 'base64'),
          );
          wrong.push(
            `${view}: ${(100 * found.share).toFixed(2)} % of the pixels, ${found.mean.toFixed(2)} in the mean; see .cache/golden/${view}-${look}-differs.png`,
          );
        }
        await tab.close();
      }
      expect(wrong).toEqual([]);
    });

  it('would be refused with another range of levels, another camera, another axis or another smoothing', async () => {
    const tab = await open('/one', 'light');
    const changes: Record<string, string> = {
      spectrogram: '1;range=40',
      waterfall: '1;waterfall=-30,28,1',
      'decay-times': '1;axis=linear',
      response: '1;smoothing=1/6',
      modes: '1;to=150',
    };
    for (const [view, link] of Object.entries(changes)) {
      await tab.evaluate((text) => {
        const found = document.querySelector('ringdown-study') as unknown as {
          applyViewLink(text: string): boolean;
        };
        if (!found.applyViewLink(text)) throw new Error(text);
      }, link);
      await tab.waitForFunction(() => document.querySelectorAll(':state(busy)').length === 0);
      const now = await halved(tab, await shot(tab, view));
      const golden = readFileSync(join(goldens, `${view}-light.png`)).toString('base64');
      const { share, mean } = await difference(tab, golden, now);
      console.log(
        `${view} with ${link}: ${(100 * share).toFixed(2)} % of the pixels, ${mean.toFixed(2)} in the mean`,
      );
      expect(share > mostShare || mean > mostMean, `${view} with ${link}`).toBe(true);
    }
    await tab.close();
  });
});
