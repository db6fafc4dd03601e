import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findProgram, installDebianPackages } from '../../scripts/lib/debian.mjs';
import { launch, openPage, serveSite, type Site } from '../support/site.js';
import { roomWav } from '../support/packed.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const axeSource = readFileSync(`${root}node_modules/axe-core/axe.min.js`, 'utf8');
const lessons = ['walk', 'kinds', 'places', 'windows', 'impostors', 'remedies'];

/** Rules that axe finds broken. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const { axe } = window as unknown as {
      axe: { run: (where: string) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    const { violations: found } = await axe.run('body');
    return found.map(({ id, nodes }) => `${id}: ${nodes[0].html.slice(0, 160)}`);
  });
}

/** Waits until no study of the page is at work. */
const settled = (page: Page): Promise<unknown> =>
  page.waitForFunction(
    () =>
      [...document.querySelectorAll('ringdown-study')].every((study) => {
        const { snapshot } = study as unknown as { snapshot: { progress: unknown; status: string } };
        return snapshot.progress === null && (snapshot.status === 'ready' || study.hasAttribute('room'));
      }) && document.querySelectorAll(':state(busy)').length === 0,
    undefined,
    { timeout: 120_000 },
  );

/** Tab until an element that matches has the focus. */
async function tabTo(page: Page, selector: string): Promise<void> {
  for (let n = 0; n < 120; n++) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) === true, selector)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`the Tab key never reaches ${selector}`);
}

/** Predicts by keyboard: the second option of every question. */
async function predict(page: Page): Promise<void> {
  const count = await page.locator('.question').count();
  expect(count).toBeGreaterThan(2);
  for (let k = 0; k < count; k++) {
    await tabTo(page, `.question:nth-of-type(${k + 1}) input`);
    await page.keyboard.press('Space');
    await page.keyboard.press('ArrowDown');
  }
  expect(await page.locator('.question input:checked').count()).toBe(count);
  await tabTo(page, '.lock');
  await page.keyboard.press('Enter');
}

/** What reaches over the right edge of the page, with the element whose shadow it stands in. */
const tooWide = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found: string[] = [];
    const clipped = (from: Element): boolean => {
      for (let node: Node | null = from; node; node = node.parentNode ?? (node as ShadowRoot).host ?? null)
        if (node instanceof Element && node !== document.documentElement && node !== from)
          if (getComputedStyle(node).overflowX !== 'visible') return true;
      return false;
    };
    const look = (root: ParentNode): void => {
      for (const element of root.querySelectorAll('*')) {
        const { right, width } = element.getBoundingClientRect();
        if (right > innerWidth + 1 && width > 0 && !clipped(element))
          found.push(`${element.localName}.${element.getAttribute('class')} ${Math.round(right)}`);
        if (element.shadowRoot) look(element.shadowRoot);
      }
    };
    look(document);
    return found;
  });

/** Presses a button of the stage that is reached by Tab from the heading on. */
async function pressChoice(page: Page, name: string): Promise<void> {
  await page.locator('#act-title').focus();
  for (let n = 0; n < 60; n++) {
    await page.keyboard.press('Tab');
    const text = await page.evaluate(() => document.activeElement?.textContent ?? '');
    if (text.startsWith(name)) {
      await page.keyboard.press('Enter');
      return;
    }
  }
  throw new Error(`the Tab key never reaches ${name}`);
}

/** What is done on each stage by keyboard, and what must come of it. */
const acts: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  async walk(page) {
    await tabTo(page, '.stage .slider input');
    for (let n = 0; n < 10; n++) await page.keyboard.press('ArrowRight');
    await page
      .locator('ringdown-pressure-map [part=caption]', { hasText: /Mode \(1,0,0\), axial, 31\.2.Hz/ })
      .waitFor();
    await page.locator('ringdown-pressure-map [part=x-slider]').focus();
    await page.keyboard.press('Home');
    await page
      .locator('ringdown-pressure-map [part=readout]', { hasText: /x 0\.00.m.* -?0.dB, above/ })
      .waitFor();
  },
  async kinds(page) {
    await pressChoice(page, '(1,1,1)');
    const caption = page.locator('ringdown-pressure-map [part=caption]');
    await caption.filter({ hasText: /\(1,1,1\), oblique/ }).waitFor();
    expect(await caption.innerText()).toMatch(/1\.03.s/);
    await page
      .locator('ringdown-listen figcaption', { hasText: /resonator of 79\.3.Hz that decays in 1\.03.s/ })
      .waitFor();
    expect(await page.locator('ringdown-listen [part=status]').innerText()).toMatch(/muted/);
  },
  async places(page) {
    const level = (): Promise<string> => page.locator('ringdown-sources [part=readout]').innerText();
    const slider = page.locator('ringdown-sources [part=frequency-slider]');
    await slider.focus();
    for (let n = 0; n < 90 && !/^4[34]\.\d/.test(await level()); n++) await page.keyboard.press('ArrowRight');
    const sum = async (): Promise<number> => Number(/sum (-?[\d.]+)/.exec(await level())![1]);
    const before = await sum();
    await page.getByLabel('Invert right').focus();
    await page.keyboard.press('Space');
    await page.waitForTimeout(300);
    // Against each other the two drives of the width's mode cancelled.
    expect((await sum()) - before).toBeGreaterThan(6);
  },
  async windows(page) {
    await pressChoice(page, '40\u00a0dB');
    await page.waitForFunction(() =>
      [...document.querySelectorAll('.three ringdown-study')].every(
        (study) =>
          (study as unknown as { snapshot: { choices: { rangeDb: number } } }).snapshot.choices.rangeDb ===
          40,
      ),
    );
    for (const seconds of ['49.ms', '0\\.15.s', '0\\.39.s'])
      await page
        .locator('.three', { hasText: new RegExp(`the window alone falls 60.dB in ${seconds}`) })
        .waitFor();
  },
  async impostors(page) {
    await pressChoice(page, 'C');
    await settled(page);
    await page.locator('.stage ringdown-recordings', { hasText: /The dip at 85\.\d.Hz/ }).waitFor();
  },
  async remedies(page) {
    await pressChoice(page, 'Cut, matched');
    await page
      .locator('.read', {
        hasText: /^Cut, matched at seat A\. Fitted here, seat A: 0\.40.s.* seat B: 0\.(39|40).s/,
      })
      .waitFor({ timeout: 60_000 });
    await pressChoice(page, 'Source moved');
    await page.locator('.read', { hasText: /seat A: no resonance found/ }).waitFor({ timeout: 60_000 });
    // A cut of the learner's own is heard, too.
    await page.locator('ringdown-remedy [part=add-cut]').focus();
    await page.keyboard.press('Enter');
    await page
      .locator('ringdown-listen figcaption', { hasText: /with the filter of this study: .* at 43\.9.Hz/ })
      .waitFor();
  },
};

describe('the class', () => {
  let browser: Browser;
  let site: Site;
  const folder = mkdtempSync(join(tmpdir(), 'ringdown-class-'));

  beforeAll(async () => {
    if (!existsSync(`${root}dist/ringdown.js`))
      execFileSync('npm', ['run', 'build'], { cwd: root, stdio: 'ignore' });
    execFileSync(process.execPath, ['scripts/make-demo.mjs'], { cwd: root, stdio: 'ignore' });
    browser = await launch();
    site = await serveSite([root]);
  });
  afterAll(async () => {
    await browser?.close();
    site?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  it.each(lessons)('goes through “%s” by keyboard: predict, act, reveal', async (id) => {
    const { page, messages } = await openPage(browser, `${site.address}/demo/class/#${id}`);
    const others: string[] = [];
    page.on('request', (request) => {
      if (!request.url().startsWith(site.address) && !/^(blob|data):/.test(request.url()))
        others.push(request.url());
    });
    await page.locator('.question').first().waitFor();
    // Before a prediction there is neither a stage nor an answer, and no way to them.
    expect(await page.locator('.answers, .stage > *').count()).toBe(0);
    expect(await page.locator('.to-reveal').isDisabled()).toBe(true);
    expect(await page.locator('.lock').isDisabled()).toBe(true);
    await page.evaluate(() => document.querySelector<HTMLButtonElement>('.to-reveal')!.click());
    expect(await page.locator('.answers').count()).toBe(0);

    await predict(page);
    // Locked: it can be changed no more, and the stage is there.
    expect(await page.locator('.question input:enabled').count()).toBe(0);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('act-title');
    await page.locator('.stage ringdown-study').first().waitFor();
    expect(await page.locator('.tasks li').count()).toBeGreaterThan(1);
    await settled(page);
    await acts[id](page);
    await settled(page);
    expect(await page.locator('.answers').count()).toBe(0);

    await tabTo(page, '.to-reveal').catch(async () => {
      // A stage of many controls: from its end on.
      await page.locator('.own summary').focus();
      await tabTo(page, '.to-reveal');
    });
    await page.keyboard.press('Enter');
    const questions = await page.locator('.question').count();
    expect(await page.locator('.answers > li').count()).toBe(questions);
    const text = await page.locator('.answers').innerText();
    expect(text).not.toMatch(/undefined|NaN|\[object/);
    expect(text).toMatch(/As you predicted\.|You predicted:/);
    expect(await violations(page)).toEqual([]);
    await page.setViewportSize({ width: 320, height: 800 });
    // Pictures follow their size in the next frames.
    await page
      .waitForFunction(() => document.documentElement.scrollWidth === 320, undefined, { timeout: 10_000 })
      .catch(() => undefined);
    expect(await tooWide(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);

    await page.locator('.again').click();
    expect(await page.locator('.question input:checked').count()).toBe(0);
    expect(await page.locator('.answers, .stage > *').count()).toBe(0);
    expect(messages).toEqual([]);
    expect(others).toEqual([]);
    await page.close();
  });

  it.each(lessons)('goes through “%s” in German, with a comma in every figure', async (id) => {
    const { page, messages } = await openPage(browser, `${site.address}/demo/class/?lang=de#${id}`);
    await page.locator('.question').first().waitFor();
    expect(await page.evaluate(() => document.documentElement.lang)).toBe('de');
    await predict(page);
    await page.locator('.stage ringdown-study').first().waitFor();
    await settled(page);
    await page.locator('.to-reveal').click();
    expect(await page.locator('.answers > li').count()).toBe(await page.locator('.question').count());
    const text = await page.locator('body').innerText();
    expect(text).not.toMatch(/undefined|NaN|\[object/);
    // Words that stand in every English lesson, in the frame or in a view.
    expect(text).not.toMatch(/\b(?:the|room|Predict|Reveal|Locked|Frequency|Save)\b/);
    // A point between two digits is English; so is one that stands in a label such as a name of a file.
    expect(text.match(/\d\.\d+(?:\s?(?:Hz|s|dB|m)\b)/g)).toBeNull();
    expect(text).toMatch(/Wie vorhergesagt\.|Ihre Vorhersage:/);
    expect(await violations(page)).toEqual([]);
    await page.setViewportSize({ width: 320, height: 800 });
    await page
      .waitForFunction(() => document.documentElement.scrollWidth === 320, undefined, { timeout: 10_000 })
      .catch(() => undefined);
    expect(await tooWide(page)).toEqual([]);
    expect(messages).toEqual([]);
    await page.close();
  });

  it('turns to the other language and back in the same lesson, with its prediction', async () => {
    const { page, messages } = await openPage(browser, `${site.address}/demo/class/#kinds`);
    await page.locator('.question').first().waitFor();
    await page.locator('.question').first().locator('input').nth(1).check();
    await page.locator('#language').click();
    await page.locator('h2', { hasText: 'Lektion 2' }).waitFor();
    expect(await page.locator('.question').first().locator('input').nth(1).isChecked()).toBe(true);
    expect(await page.locator('.question').first().innerText()).toContain('Wandpaar');
    await page.locator('#lessons a').nth(3).click();
    await page.locator('h2', { hasText: 'Lektion 4' }).waitFor();
    await page.locator('#language').click();
    await page.locator('h2', { hasText: 'Lesson 4' }).waitFor();
    expect(messages).toEqual([]);
    await page.close();
  });

  it('keeps a locked prediction over a reload, where the tab may keep something, and forgets it when told', async () => {
    const { page, messages } = await openPage(browser, `${site.address}/demo/class/#walk`);
    await page.locator('.question').first().waitFor();
    await predict(page);
    await page.reload();
    await page.locator('.stage ringdown-study').waitFor();
    expect(await page.locator('.question input:enabled').count()).toBe(0);
    await page.locator('#forget').click();
    expect(await page.locator('.question input:checked').count()).toBe(0);
    await page.close();
    const { page: refused, messages: others } = await openPage(
      browser,
      `${site.address}/demo/class/#kinds`,
      () => {
        Object.defineProperty(window, 'sessionStorage', {
          get: () => {
            throw new Error('refused');
          },
        });
      },
    );
    await refused.locator('.question').first().waitFor();
    await predict(refused);
    await refused.locator('.stage ringdown-study').waitFor();
    await refused.close();
    expect([...messages, ...others]).toEqual([]);
  });

  it('takes a recording of the learner in a lesson, and says what is wrong with what is none', async () => {
    const { page, messages } = await openPage(browser, `${site.address}/demo/class/#walk`);
    await page.locator('.question').first().waitFor();
    await predict(page);
    await page.locator('.own summary').click();
    const own = join(folder, 'own.wav');
    writeFileSync(own, roomWav());
    await page.locator('.own input[type=file]').setInputFiles(own);
    await page.locator('.own input[type=text]').fill('5.6x3.9x2.7');
    await page.locator('.own .fields button').click();
    await page.locator('.own-says', { hasText: 'is loaded' }).waitFor({ timeout: 60_000 });
    await page.locator('.own ringdown-ridges').waitFor();
    const letter = join(folder, 'letter.wav');
    writeFileSync(letter, 'This is a letter.');
    await page.locator('.own input[type=file]').setInputFiles(letter);
    await page.locator('.own .fields button').click();
    await page.locator('.own-says', { hasText: 'letter' }).waitFor({ timeout: 60_000 });
    expect(await page.locator('.own-says').innerText()).not.toMatch(/is loaded|undefined/);
    expect(messages).toEqual([]);
    await page.close();
  });

  const sheets = [
    {
      language: 'English',
      query: '',
      answers: /^\s*Answers/,
      onlyAnswers: /Morse and Bolt|ISO 9613|147/,
      onlyQuestions: /Predict|What surprised you/,
      source: /Morse and Bolt 1944/,
    },
    {
      language: 'German',
      query: '?lang=de',
      answers: /^\s*Antworten/,
      onlyAnswers: /Morse und Bolt|ISO 9613|147/,
      onlyQuestions: /Vorhersagen|Was hat Sie überrascht/,
      source: /Morse und Bolt 1944/,
    },
  ];
  it.each(sheets)('prints a worksheet in $language whose answers stand on pages apart', async (expected) => {
    const address = `${site.address}/demo/class/worksheet.html${expected.query}`;
    const { page, messages } = await openPage(browser, address);
    await page.locator('html[data-ready]').waitFor({ state: 'attached' });
    expect(await violations(page)).toEqual([]);
    await page.setViewportSize({ width: 320, height: 800 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(320);
    const file = join(folder, 'sheet.pdf');
    await page.pdf({ path: file, format: 'A4', preferCSSPageSize: true });
    if (!findProgram(['pdftotext']) && !installDebianPackages(['poppler-utils']))
      throw new Error('This test needs poppler-utils and could not install it from Debian.');
    const pages = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' }).split('\f');
    const first = pages.findIndex((text) => expected.answers.test(text));
    expect(first).toBeGreaterThan(5);
    // Nothing that only an answer says stands before its page, and no question after it.
    for (const [k, text] of pages.entries()) {
      if (k < first) expect(text, `page ${k + 1}`).not.toMatch(expected.onlyAnswers);
      else expect(text, `page ${k + 1}`).not.toMatch(expected.onlyQuestions);
    }
    expect(pages.slice(first).join(' ')).toMatch(expected.source);
    await page.locator('#with-answers').uncheck();
    await page.pdf({ path: file, format: 'A4', preferCSSPageSize: true });
    const without = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    expect(without.split('\f').some((text) => expected.answers.test(text))).toBe(false);
    expect(messages).toEqual([]);
    await page.close();
  });
});
