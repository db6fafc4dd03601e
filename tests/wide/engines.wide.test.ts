import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { requirePdfText } from '../../scripts/lib/pdf.mjs';
import { buildProject } from '../../scripts/build.mjs';
import { engineNames, openEngine, type Engine, type EngineName } from '../support/engines.js';
import { plainPage, seatWav, setPrinting, type Watched } from '../support/engine-page.js';
import { surfacesInWindow } from '../support/many-surfaces.js';
import { differ, halve } from '../support/pictures.js';
import { serveSite, type Site } from '../support/site.js';

const path = (relative: string): string => fileURLToPath(new URL(`../../${relative}`, import.meta.url));
/** Where the pictures of each engine are put, to be looked at. */
const seen = path('.cache/engines');

const surfaces = 24;
/**
 * Of a picture at half its size, the share of pixels that may be another's than Chromium's, and their mean difference of
 * 255. Letters stand elsewhere by a pixel, and WebKit as Debian has it rounds the advance of each letter to whole pixels;
 * a surface turned by one step of its slider differs by more, which is tried below.
 */
const most = {
  firefox: { share: 0.005, mean: 1 },
  webkit: { share: 0.045, mean: 4 },
} as const;
/** A channel that differs by less than this, of 255, is the same. */
const forgiven = 32;

/** What came of the main path in one engine. */
interface Came {
  rows?: string[];
  study?: string;
  turned?: string;
  files?: Record<string, string>;
  shown?: string;
}

declare global {
  var watched: Watched;
}

interface StudyInPage extends Element {
  readonly study: { settled(): Promise<void> };
  readonly snapshot: { readonly status: string; readonly recordings: readonly unknown[] };
  readonly viewLink: string;
  toJson(): string;
  addFiles(files: readonly File[]): Promise<void>;
  applyViewLink(text: string): boolean;
}

const viewLink = (): string => document.querySelector<StudyInPage>('ringdown-study')!.viewLink;

/** Until so many recordings are read and everything is drawn. */
const untilRead = async (count: number): Promise<void> => {
  const study = document.querySelector<StudyInPage>('ringdown-study')!;
  const end = performance.now() + 60_000;
  while (study.snapshot.recordings.length < count || study.snapshot.status !== 'ready') {
    if (performance.now() > end) throw new Error(`Still ${study.snapshot.status} after a minute.`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  await study.study.settled();
  await new Promise((resolve) => setTimeout(resolve, 800));
};

const bodyText =
  '<ringdown-study room="5.6x3.9x2.7"><ringdown-waterfall></ringdown-waterfall><ringdown-ridges></ringdown-ridges><ringdown-spectrogram></ringdown-spectrogram><ringdown-decay-times></ringdown-decay-times></ringdown-study>';

const versions: string[] = [];
const came: Record<EngineName, Came> = { chromium: {}, firefox: {}, webkit: {} };
let folder = '';
let site: Site;

beforeAll(async () => {
  await buildProject();
  mkdirSync(seen, { recursive: true });
  folder = mkdtempSync(join(tmpdir(), 'ringdown-engines-'));
  writeFileSync(join(folder, 'seat.wav'), seatWav());
  const figure = (k: number) =>
    `<ringdown-waterfall src="/seat.wav" label="Seat ${k + 1}"></ringdown-waterfall>`;
  const many = Array.from({ length: surfaces }, (_, k) => figure(k)).join('');
  const pages = { '/': plainPage(bodyText), '/many': plainPage(`<main>${many}</main>`) };
  site = await serveSite([folder, path('dist')], pages);
});
afterAll(() => {
  site?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe.each(engineNames)('in %s', (name) => {
  let engine: Engine;
  const said = (): Promise<string[]> => engine.run(() => globalThis.watched.said);
  const keep = (what: string, base64: string): void =>
    writeFileSync(join(seen, `${name}-${what}.png`), Buffer.from(base64, 'base64'));

  beforeAll(async () => {
    engine = await openEngine(name);
    versions.push(`${name} ${engine.version}`);
    await engine.open(`${site.address}/`);
  });
  afterAll(() => engine?.close());

  it('a file that is dropped on the page is read, and its ridges stand in the table', async () => {
    await engine.run(async () => {
      const blob = await (await fetch('/seat.wav')).blob();
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([blob], 'seat.wav', { type: 'audio/wav' }));
      const study = document.querySelector('ringdown-study')!;
      for (const kind of ['dragover', 'drop'])
        study.dispatchEvent(
          new DragEvent(kind, { bubbles: true, cancelable: true, composed: true, dataTransfer }),
        );
    });
    await engine.run(untilRead, 1);
    const { rows, study } = await engine.run(() => {
      const table = document.querySelector('ringdown-ridges')!.shadowRoot!;
      return {
        rows: [...table.querySelectorAll('tbody tr')].map((row) =>
          (row.textContent ?? '').replace(/\s+/g, ' ').trim(),
        ),
        study: document.querySelector<StudyInPage>('ringdown-study')!.toJson(),
      };
    });
    Object.assign(came[name], { rows, study });
    expect(rows.length).toBeGreaterThan(2);
    expect(rows[0]).toMatch(/Hz.*s/);
    const shot = await engine.shot();
    keep('page', shot);
    came[name].shown = shot;
    expect(await said()).toEqual([]);
  });

  it('a file that is chosen by the button is read beside it', async () => {
    await engine.choose(
      () => document.querySelector('ringdown-study')!.shadowRoot!.querySelector('input[type=file]'),
      join(folder, 'seat.wav'),
    );
    await engine.run(untilRead, 2);
    expect(await said()).toEqual([]);
  });

  it('the surface is turned by keys and by the mouse', async () => {
    const before = await engine.run(viewLink);
    await engine.run(() => {
      const shadow = document.querySelector('ringdown-waterfall')!.shadowRoot!;
      shadow.querySelector<HTMLDetailsElement>('details.turning')!.open = true;
      shadow.querySelector<HTMLInputElement>('.turning input')!.focus();
    });
    await engine.press('ArrowRight', 'ArrowRight');
    const byKeys = await engine.run(viewLink);
    expect(byKeys).not.toBe(before);
    const [x, y] = await engine.run(() => {
      const canvas = document.querySelector('ringdown-waterfall')!.shadowRoot!.querySelector('canvas')!;
      canvas.scrollIntoView({ block: 'center' });
      const { left, top, width, height } = canvas.getBoundingClientRect();
      return [left + width / 2, top + height / 2] as const;
    });
    await engine.drag([0, 20, 40, 60].map((step) => [x + step, y + step / 4] as const));
    const turned = await engine.run(viewLink);
    expect(turned).not.toBe(byKeys);
    came[name].turned = `${byKeys} ${turned}`;
    expect(await said()).toEqual([]);
  });

  it('pictures are saved as PNG and SVG', async () => {
    const files: Record<string, string> = {};
    await engine.run(() => {
      const corner = document
        .querySelector('ringdown-waterfall')!
        .shadowRoot!.querySelectorAll<HTMLElement>('.views button');
      corner[1].click();
    });
    for (const tag of ['waterfall', 'spectrogram'])
      for (const kind of ['PNG', 'SVG']) {
        const file = await engine.run(
          async (element, wanted) => {
            const { saved } = globalThis.watched;
            const count = saved.length;
            const save = document
              .querySelector(`ringdown-${element}`)!
              .shadowRoot!.querySelector('details.save')!;
            save.setAttribute('open', '');
            [...save.querySelectorAll('button')]
              .find(({ textContent }) => textContent.trim() === wanted)!
              .click();
            const end = performance.now() + 30_000;
            while (saved.length === count && performance.now() < end)
              await new Promise((resolve) => setTimeout(resolve, 50));
            const { name: called, blob } = saved[count];
            const bytes = new Uint8Array(await blob!.arrayBuffer());
            let text = '';
            for (const byte of bytes) text += String.fromCharCode(byte);
            return { called, base64: btoa(text) };
          },
          tag,
          kind,
        );
        expect(file.called).toMatch(kind === 'PNG' ? /^[\w-]+\.png$/ : /^[\w-]+\.svg$/);
        files[`${tag}.${kind.toLowerCase()}`] = file.base64;
      }
    came[name].files = files;
    for (const [file, base64] of Object.entries(files)) {
      const bytes = Buffer.from(base64, 'base64');
      writeFileSync(join(seen, `${name}-${file}`), bytes);
      if (file.endsWith('.png')) {
        expect(bytes.subarray(1, 4).toString()).toBe('PNG');
        expect(bytes.readUInt32BE(16)).toBe(1200);
      } else {
        const texts = await engine.run((svg) => {
          const parsed = new DOMParser().parseFromString(svg, 'image/svg+xml');
          return parsed.querySelector('parsererror') ? -1 : parsed.querySelectorAll('text').length;
        }, bytes.toString());
        expect(texts).toBeGreaterThan(10);
      }
    }
    expect(await said()).toEqual([]);
  });

  it('the printed page has figures and table and no controls, and fits the paper', async () => {
    // The width of A4 less margins of 15 mm, CSS pixels.
    await engine.run((width) => void (document.body.style.width = `${width}px`), 680);
    expect(await engine.run(setPrinting, true)).toBeGreaterThanOrEqual(3);
    const { controls, wide, blank } = await engine.run(async () => {
      scrollTo(0, 0);
      await new Promise((resolve) => setTimeout(resolve, 800));
      const shadows = [...document.querySelectorAll('ringdown-study, ringdown-study > *')].map(
        ({ shadowRoot }) => shadowRoot!,
      );
      const canvas = shadows[1].querySelector('canvas')!;
      const copy = Object.assign(document.createElement('canvas'), { width: 60, height: 40 });
      const context = copy.getContext('2d')!;
      context.drawImage(canvas, 0, 0, 60, 40);
      return {
        controls: shadows
          .flatMap((shadow) => [...shadow.querySelectorAll<HTMLElement>('button, select, input[type=range]')])
          .filter((control) => control.closest('.screen-only') && control.getClientRects().length > 0)
          .map((control) => control.outerHTML.slice(0, 80)),
        wide:
          Math.max(
            ...shadows
              .flatMap((shadow) => [...shadow.querySelectorAll('canvas, table, figcaption')])
              .map((part) => part.getBoundingClientRect().right),
          ) - document.body.getBoundingClientRect().right,
        blank: new Set(context.getImageData(0, 0, 60, 40).data).size < 20,
      };
    });
    keep('print', await engine.shot());
    await engine.run(setPrinting, false);
    await engine.run(() => void (document.body.style.width = ''));
    expect(controls).toEqual([]);
    expect(wide).toBeLessThanOrEqual(1);
    expect(blank).toBe(false);
    const pdf = await engine.pdf();
    if (pdf !== null) {
      const file = join(seen, `${name}-print.pdf`);
      writeFileSync(file, Buffer.from(pdf, 'base64'));
      const text = execFileSync(requirePdfText(), ['-layout', file, '-'], { encoding: 'utf8' });
      const [frequency] = came[name].rows![0].split(' ');
      expect(text).toContain(frequency);
      expect(text).not.toContain('Choose a file');
    }
    expect(await said()).toEqual([]);
  });

  it(`${surfaces} surfaces on one page are all drawn, by one context`, async () => {
    await engine.open(`${site.address}/many`);
    const bottom = (): Promise<number> =>
      engine.run(() => document.documentElement.scrollHeight - innerHeight);
    const unread = (): Promise<number> =>
      engine.run(
        () =>
          [...document.querySelectorAll('ringdown-waterfall')].filter(
            (one) => !one.shadowRoot?.querySelector('canvas'),
          ).length,
      );
    await expect.poll(unread, { timeout: 60_000 }).toBe(0);
    let drawn = 0;
    // What stands below grows while it is read.
    for (let top = 0; top < (await bottom()) + 700; top += 700) {
      await engine.run((y) => scrollTo(0, y), top);
      const blanks = (): Promise<number> => engine.run(surfacesInWindow).then(({ blank }) => blank);
      await expect.poll(blanks, { timeout: 15_000 }).toBe(0);
      drawn += (await engine.run(surfacesInWindow)).shown;
    }
    keep('many', await engine.shot());
    expect(drawn).toBeGreaterThanOrEqual(surfaces);
    const held = await engine.run(() =>
      (globalThis as unknown as { heldByWebGl(): { contexts: number } }).heldByWebGl(),
    );
    expect(held.contexts).toBe(1);
    expect(await said()).toEqual([]);
  });
});

describe('the three engines', () => {
  const others = ['firefox', 'webkit'] as const;

  it('say the same of the file: every row of the table, every number and letter of the saved study', () => {
    for (const name of others) {
      expect(came[name].rows).toEqual(came.chromium.rows);
      expect(came[name].study).toBe(came.chromium.study);
    }
  });

  it('turn the surface by the same angles', () => {
    for (const name of others) expect(came[name].turned).toBe(came.chromium.turned);
  });

  it('draw the same pictures but for the edges of letters and lines', async () => {
    const engine = await openEngine('chromium');
    try {
      await engine.open(`${site.address}/`);
      const figures: string[] = [];
      const small = (png: string): Promise<string> => engine.run(halve, png);
      for (const name of others)
        for (const file of ['waterfall.png', 'spectrogram.png']) {
          const [mine, theirs] = [
            await small(came.chromium.files![file]),
            await small(came[name].files![file]),
          ];
          const { share, mean, picture } = await engine.run(differ, [mine, theirs, forgiven] as const);
          figures.push(`${file} in ${name} ${(100 * share).toFixed(2)} % (mean ${mean.toFixed(1)} of 255)`);
          writeFileSync(join(seen, `${name}-differs-${file}`), Buffer.from(picture, 'base64'));
          expect.soft(share, `${file} in ${name}`).toBeLessThan(most[name].share);
          expect.soft(mean, `${file} in ${name}`).toBeLessThan(most[name].mean);
        }
      const turned = await engine.run(async () => {
        const blob = await (await fetch('/seat.wav')).blob();
        const study = document.querySelector<StudyInPage>('ringdown-study')!;
        await study.addFiles([new File([blob], 'seat.wav')]);
        await study.study.settled();
        const waterfall = document.querySelector('ringdown-waterfall')!;
        const pictures: string[] = [];
        for (const turn of [-30, -25]) {
          study.applyViewLink(`1;waterfall=${turn},28,1`);
          const bytes = new Uint8Array(await (await waterfall.toPng(1200))!.arrayBuffer());
          let text = '';
          for (const byte of bytes) text += String.fromCharCode(byte);
          pictures.push(btoa(text));
        }
        return pictures;
      });
      const [straight, askew] = [await small(turned[0]), await small(turned[1])];
      const { share, mean } = await engine.run(differ, [straight, askew, forgiven] as const);
      const turned5 = `a surface turned by 5° ${(100 * share).toFixed(1)} % (${mean.toFixed(1)})`;
      console.log(
        `engines: the main path and ${surfaces} surfaces in ${versions.join(', ')}; pixels unlike Chromium's: ${figures.join(', ')}; for comparison ${turned5}`,
      );
      expect(share).toBeGreaterThan(most.webkit.share);
      expect(mean).toBeGreaterThan(most.webkit.mean);
    } finally {
      await engine.close();
    }
  });
});
