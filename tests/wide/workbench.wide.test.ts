import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Browser, FileChooser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeStation } from '../../scripts/make-station.mjs';
import { requirePdfText } from '../../scripts/lib/pdf.mjs';
import { launch, openPage, serveSite, type Site } from '../support/site.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const axeSource = readFileSync(`${root}node_modules/axe-core/axe.min.js`, 'utf8');

interface Focused {
  readonly tag: string;
  readonly part: string;
  readonly text: string;
}

/** What has the focus, through shadow roots. */
const focused = (page: Page): Promise<Focused> =>
  page.evaluate(() => {
    let active: Element | null = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    const label = active?.closest('label')?.textContent ?? '';
    return {
      tag: active?.localName ?? '',
      part: active?.getAttribute('part') ?? active?.id ?? '',
      text: `${active?.getAttribute('aria-label') ?? ''} ${label} ${active?.textContent ?? ''}`.replace(
        /\s+/g,
        ' ',
      ),
    };
  });

/** Presses Tab until something is reached, as somebody would who looks for it. */
async function tabTo(page: Page, what: (now: Focused) => boolean, most = 1500): Promise<Focused> {
  const seen: string[] = [];
  for (let n = 0; n < most; n += 1) {
    await page.keyboard.press('Tab');
    const now = await focused(page);
    if (what(now)) return now;
    seen.push(`${now.tag} ${now.part} ${now.text.slice(0, 30)}`);
  }
  throw new Error(`Not reached within ${most} presses; the last: ${seen.slice(-12).join(' | ')}`);
}

const sheetText = (page: Page): Promise<string> =>
  page.evaluate(
    () =>
      document.querySelector('ringdown-report')?.shadowRoot?.querySelector('[part=sheet]')?.textContent ?? '',
  );

/** Until the sheet holds both stages and nothing is under way. */
const untilSheet = (page: Page): Promise<unknown> =>
  page.waitForFunction(
    () => {
      const report = document.querySelector('ringdown-report') as unknown as {
        input: {
          pair: { progress: unknown; after: { grid: unknown } | null };
          system: { progress: unknown; after: unknown };
        } | null;
        shadowRoot: ShadowRoot;
      };
      const { pair, system } = report.input ?? {};
      return (
        pair?.progress === null &&
        pair.after?.grid &&
        system?.progress === null &&
        system.after !== null &&
        report.shadowRoot.querySelectorAll('[part=sheet] svg').length >= 7
      );
    },
    undefined,
    { timeout: 240_000 },
  );

describe('the workbench', () => {
  let folder = '';
  let browser: Browser;
  let site: Site;
  let files: string[] = [];

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'ringdown-workbench-'));
    const engine: unknown = await import(pathToFileURL(`${root}dist/engine.js`).href);
    files = await makeStation({ folder: `${folder}/`, engine });
    browser = await launch();
    site = await serveSite([root]);
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it('takes who has never seen it from 36 files and 9 later ones to the printed sheet with the keyboard alone', async () => {
    const { page, messages } = await openPage(browser, `${site.address}/demo/workbench/`);
    await page.setViewportSize({ width: 1280, height: 900 });
    const recordings = files.filter((file) => file.endsWith('.wav'));
    expect(recordings.filter((file) => file.endsWith('_before.wav'))).toHaveLength(36);
    expect(recordings).toHaveLength(45);

    // Listened for from the start, since the browser is only then told not to open a dialog of its own.
    const chooser = new Promise<FileChooser>((resolve) => page.once('filechooser', resolve));
    await tabTo(page, ({ part }) => part === 'file-button');
    await page.keyboard.press('Enter');
    await (await chooser).setFiles(recordings.map((file) => join(folder, file)));
    await page.waitForFunction(
      () =>
        (document.querySelector('ringdown-study') as unknown as { snapshot: { recordings: unknown[] } })
          .snapshot.recordings.length === 45,
      undefined,
      { timeout: 120_000 },
    );

    await tabTo(page, ({ part }) => part === 'names');
    await page.keyboard.press('Enter');
    expect(await page.locator('#said').textContent()).toContain('45 of 45 names were read');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    expect(await page.locator('#clock').isChecked()).toBe(true);

    await tabTo(page, ({ tag, text }) => tag === 'input' && /^\s*Length/.test(text.trim()));
    for (const side of ['6.2', '4.6', '2.8']) {
      await page.keyboard.type(side);
      await page.keyboard.press('Tab');
    }
    await untilSheet(page);

    await tabTo(page, ({ tag, text }) => tag === 'input' && /^\s*Title/.test(text));
    for (const text of ['Listening room', 'Radio Quillmarsh', 'The commissioner', 'an afternoon in May']) {
      await page.keyboard.type(text);
      await page.keyboard.press('Tab');
    }
    await page.keyboard.type('The door to the corridor was shut.');
    await tabTo(page, ({ tag, text }) => tag === 'summary' && text.includes('What was decided'));
    await page.keyboard.press('Enter');
    await tabTo(page, ({ tag, text }) => tag === 'select' && text.includes('Decision on the ridge'));
    for (let n = 0; n < 4; n += 1) await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Tab');
    await page.keyboard.type('deep panels on the far end and the ceiling');
    await page.keyboard.press('Tab');
    await page.waitForFunction(
      () =>
        document
          .querySelector('ringdown-report')!
          .shadowRoot!.querySelector('[part=sheet]')!
          .textContent.includes('deep panels on the far end'),
      undefined,
      { timeout: 20_000 },
    );
    const text = await sheetText(page);
    expect(text).toContain('with 4 sources at 9 seats, at 2 stages of the work');
    expect(text).toContain('The door to the corridor was shut.');

    // The dialog itself is the browser's; that it is asked for by the sheet's own frame is what can be seen.
    await page.evaluate(() => {
      const own = Object.getOwnPropertyDescriptor(HTMLIFrameElement.prototype, 'contentWindow')!;
      Object.defineProperty(HTMLIFrameElement.prototype, 'contentWindow', {
        get(this: HTMLIFrameElement) {
          const view = own.get!.call(this) as Window;
          view.print = () => (document.documentElement.dataset.printed = view.document.title);
          return view;
        },
      });
    });
    await tabTo(page, ({ part }) => part === 'print');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.documentElement.dataset.printed)).toBe('Listening room');
    const download = page.waitForEvent('download');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    const saved = join(folder, 'sheet.html');
    await (await download).saveAs(saved);
    expect(messages.filter((message) => !message.startsWith('log'))).toEqual([]);
    await page.close();

    const { pages, words } = await printed(saved);
    expect(pages).toBeGreaterThanOrEqual(4);
    expect(pages).toBeLessThanOrEqual(14);
    for (const said of [
      'Listening room',
      'Radio Quillmarsh',
      'In plain words',
      'with 4 sources at 9 seats',
      'Before and after',
      'deep panels on the far end',
      'What was not done, and why',
      'sub4_seat9_before',
      'all_seat9_after',
      'Cautions',
      `Page 1 of ${pages}`,
      `Page ${pages} of ${pages}`,
    ])
      expect(words).toContain(said);
    const html = readFileSync(saved, 'utf8');
    expect(html).not.toMatch(/<script|<link|<img/);
  });

  /** The saved file on paper: number of its pages, and its text. */
  async function printed(file: string): Promise<{ pages: number; words: string }> {
    const sheet = await browser.newPage();
    await sheet.goto(pathToFileURL(file).href);
    const pdf = await sheet.pdf({ preferCSSPageSize: true, printBackground: true });
    await sheet.close();
    const path = process.env.RINGDOWN_KEEP_PDF ?? join(folder, 'sheet.pdf');
    writeFileSync(path, pdf);
    const text = execFileSync(requirePdfText(), [path, '-'], { encoding: 'utf8' });
    // One form feed ends each page.
    return { pages: text.split('\f').length - 1, words: text.replace(/\s+/g, ' ') };
  }

  it.each([
    [320, 'light'],
    [1600, 'dark'],
  ] as const)('stands right at %i pixels, %s, and axe finds nothing', async (width, colorScheme) => {
    const { page } = await openPage(browser, `${site.address}/demo/workbench/`);
    await page.setViewportSize({ width, height: 900 });
    await page.emulateMedia({ colorScheme });
    // The elements take their colours from the page once it rests.
    await page.waitForTimeout(500);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await page.evaluate(axeSource);
    const violations = await page.evaluate(async () => {
      const { axe } = window as unknown as {
        axe: {
          run: () => Promise<{ violations: { id: string; help: string; nodes: { html: string }[] }[] }>;
        };
      };
      return (await axe.run()).violations.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 160)}`);
    });
    expect(violations).toEqual([]);
    await page.close();
  });
});
