import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command } from '../support/command.js';
import { roomWav } from '../support/packed.js';
import { launch, openPage, serveSite, untilDrawn, type ServedPage, type Site } from '../support/site.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
const dist = `${root}dist`;
const integrity = () =>
  `sha384-${createHash('sha384')
    .update(readFileSync(`${dist}/ringdown.js`))
    .digest('base64')}`;

/** The README's lines for a page, as they stand there. */
const readmeLines = (): string[] =>
  [...readFileSync(`${root}README.md`, 'utf8').matchAll(/```html\n([\s\S]*?)```/g)].map(([, lines]) => lines);
/** Those that hold an element. */
const readmeOf = (tag: string): string => readmeLines().find((lines) => lines.includes(`<ringdown-${tag}`))!;

const page = (body: string, headers: Record<string, string> = {}): ServedPage => ({
  html: `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>figure</title></head><body>${body}</body></html>`,
  headers,
});
const figure =
  '<ringdown-waterfall src="/desk.wav" room="5.6x3.9x2.7" label="Live room"></ringdown-waterfall>';
const file = '<script type="module" src="/ringdown.js"></script>';

describe('a page of another', () => {
  let folder = '';
  let browser: Browser;
  const sites: Site[] = [];

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'ringdown-embed-'));
    writeFileSync(join(folder, 'desk.wav'), roomWav());
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    for (const site of sites) site.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const served = async (what: ServedPage, headers = {}): Promise<string> => {
    const site = await serveSite([folder, dist], { '/': what }, headers);
    sites.push(site);
    return site.address;
  };

  /** How the page computes; the script's own module is asked, by the address that the page loaded it from. */
  const wayOf = (address: string) =>
    `import(${JSON.stringify(address)}).then(({ workerWay }) => workerWay())`;

  it('shows the figures of the README from its own lines, without a console message', async () => {
    const lines = readmeLines();
    expect(lines.length).toBeGreaterThanOrEqual(7);
    expect(lines[0].trim().split('\n').length).toBeLessThanOrEqual(5);
    const scripts = lines[0].split('\n')[0];
    for (const body of [lines[0], `${scripts}\n${lines[1]}`]) {
      const { page: tab, messages } = await openPage(browser, await served(page(body)));
      await untilDrawn(tab, 'ringdown-waterfall');
      expect(await tab.evaluate(wayOf('/ringdown.js'))).toBe('inline');
      expect(messages).toEqual([]);
      await tab.close();
    }
  });

  it('works out a recorded sweep with its microphone, as the README has it', async () => {
    const lines = readmeLines();
    const sweep = (await command(['sweep', '--seconds', '3', '--out', 'sweep.wav'])).written.get(
      'sweep.wav',
    )!;
    // Recorded through a wire: the same sounds.
    for (const name of ['sweep.wav', 'recorded.wav']) writeFileSync(join(folder, name), sweep);
    writeFileSync(join(folder, 'mic.txt'), '20 0\n1000 0\n');
    const body = `${lines[0].split('\n')[0]}\n${readmeOf('response')}`;
    const { page: tab, messages } = await openPage(browser, await served(page(body)));
    await untilDrawn(tab, 'ringdown-response');
    expect(messages).toEqual([]);
    await tab.close();
  });

  it('shows a room without recordings, and several sources at a seat, as the README has them', async () => {
    const lines = readmeLines();
    for (const name of ['left-desk.wav', 'right-desk.wav']) writeFileSync(join(folder, name), roomWav());
    const views = [
      [readmeOf('modes'), 'ringdown-modes', 'ringdown-pressure-map'],
      [readmeOf('seats'), 'ringdown-seats', 'ringdown-sources'],
    ];
    for (const [body, ...names] of views) {
      const whole = page(`${lines[0].split('\n')[0]}\n${body}`);
      const { page: tab, messages } = await openPage(browser, await served(whole));
      for (const name of names) await untilDrawn(tab, name);
      expect(messages).toEqual([]);
      await tab.close();
    }
  });

  it('lets a room be heard as the README has it', async () => {
    const lines = readmeLines();
    const whole = page(`${lines[0].split('\n')[0]}\n${readmeOf('listen')}`);
    const { page: tab, messages } = await openPage(browser, await served(whole));
    await tab.locator('ringdown-listen [part=play]').click();
    await tab.locator('ringdown-listen [part=picture]').waitFor({ timeout: 60_000 });
    await tab.locator('ringdown-listen [part=status]', { hasText: /^\s*Playing .*, muted\./ }).waitFor();
    expect(messages).toEqual([]);
    await tab.close();
  });

  it('speaks German with a second tag, before or after the first, and with words of the page over it', async () => {
    const lines = readmeLines()
      .find((body) => body.includes('ringdown-de.js'))!
      .trim()
      .split('\n');
    const own = `<script type="module">
      import { addWords } from '/ringdown.js';
      addWords({ language: 'de', views: { waterfall: 'Zerfallsspektrum <b>' } });
    </script>`;
    const [library, german, ...rest] = lines;
    const figureLine = rest.join('\n');
    for (const head of [library + german, german + library, own + german + library]) {
      const { page: tab, messages } = await openPage(browser, await served(page(`${head}${figureLine}`)));
      await untilDrawn(tab, 'ringdown-waterfall');
      const text = await tab.evaluate(
        () => document.querySelector('ringdown-waterfall')!.shadowRoot!.textContent,
      );
      expect(text).toMatch(/Gleitendes Hann-Fenster von 0,30/);
      expect(text).toContain(head.startsWith(own) ? 'Zerfallsspektrum <b>' : 'Wasserfall');
      expect(messages).toEqual([]);
      await tab.close();
    }
    // Without the second tag: English words with the numbers of the language, and no request for more.
    const { page: tab, messages } = await openPage(browser, await served(page(`${library}${figureLine}`)));
    await untilDrawn(tab, 'ringdown-waterfall');
    expect(
      await tab.evaluate(() => document.querySelector('ringdown-waterfall')!.shadowRoot!.textContent),
    ).toMatch(/Sliding Hann window of 0,30/);
    const asked = await tab.evaluate(() =>
      performance.getEntriesByType('resource').map(({ name }) => name.replace(/.*\//, '')),
    );
    expect(asked.filter((name) => name !== 'favicon.ico').sort()).toEqual(['desk.wav', 'ringdown.js']);
    expect(messages).toEqual([]);
    await tab.close();
  });

  it('loads the library from another origin, held to its hash, and computes in a worker', async () => {
    const library = await serveSite([dist], {}, { 'access-control-allow-origin': '*' });
    sites.push(library);
    const tag = `<script type="module" crossorigin="anonymous" src="${library.address}/ringdown.js" integrity="${integrity()}"></script>`;
    const { page: tab, messages } = await openPage(browser, await served(page(tag + figure)));
    await untilDrawn(tab, 'ringdown-waterfall');
    expect(await tab.evaluate(wayOf(`${library.address}/ringdown.js`))).toBe('inline');
    expect(messages).toEqual([]);
    await tab.close();
  });

  it("works under default-src 'self' with a worker that the page places, without a console message", async () => {
    const place = await served(
      page(`<script type="module" src="/place.js"></script>${figure}`, {
        'content-security-policy': "default-src 'self'",
      }),
    );
    writeFileSync(
      join(folder, 'place.js'),
      "import { setWorkerFactory } from '/ringdown.js';\nsetWorkerFactory(() => new Worker('/study/worker.js', { type: 'module' }));\n",
    );
    const { page: tab, messages } = await openPage(browser, place);
    await untilDrawn(tab, 'ringdown-waterfall');
    expect(await tab.evaluate(wayOf('/ringdown.js'))).toBe('factory');
    expect(messages).toEqual([]);
    await tab.close();
  });

  it.each([
    ["under default-src 'self' alone", "default-src 'self'"],
    ['where workers are forbidden', "worker-src 'none'"],
    ['where scripts need trusted types', "require-trusted-types-for 'script'"],
  ])('computes on its own thread %s, and says nothing but what the policy says', async (_, policy) => {
    const { page: tab, messages } = await openPage(
      browser,
      await served(page(file + figure, { 'content-security-policy': policy })),
    );
    await untilDrawn(tab, 'ringdown-waterfall');
    expect(['main', 'sibling']).toContain(await tab.evaluate(wayOf('/ringdown.js')));
    expect(messages.filter((message) => !/Content Security Policy|violates|Trusted/i.test(message))).toEqual(
      [],
    );
    await tab.close();
  });

  /** A site that has but one of the library's files beside the recordings. */
  const lonely = async (name: string, body: string): Promise<string> => {
    const alone = mkdtempSync(join(tmpdir(), 'ringdown-alone-'));
    writeFileSync(join(alone, name), readFileSync(`${dist}/${name}`));
    const site = await serveSite([folder, alone], {
      '/': page(`<script type="module" src="/${name}"></script>${body}`),
    });
    sites.push({ ...site, close: () => (site.close(), rmSync(alone, { recursive: true })) });
    return site.address;
  };
  const every = ['waterfall', 'spectrogram', 'ridges', 'decay-times', 'modes', 'response'];

  it.each(['ringdown.js', 'ringdown-flat.js'])(
    'shows every figure of %s with nothing else of the library there, and each word of it',
    async (name) => {
      const body = `<ringdown-study src="/desk.wav" room="5.6x3.9x2.7">${every
        .map((tag) => `<ringdown-${tag}></ringdown-${tag}>`)
        .join('')}</ringdown-study>`;
      const { page: tab, messages } = await openPage(browser, await lonely(name, body));
      for (const tag of every.filter((one) => one !== 'ridges')) await untilDrawn(tab, `ringdown-${tag}`);
      await tab.locator('ringdown-ridges tbody tr').first().waitFor();
      const texts = await tab.evaluate(() =>
        [...document.querySelectorAll('*')].map((element) => element.shadowRoot?.textContent ?? '').join(' '),
      );
      expect(texts).not.toMatch(/no sentence yet|undefined|ringdown-more/);
      const asked = await tab.evaluate(() =>
        performance.getEntriesByType('resource').map((entry) => entry.name.replace(/.*\//, '')),
      );
      expect(asked.filter((one) => /\.js$/.test(one))).toEqual([name]);
      expect(messages).toEqual([]);
      await tab.close();
    },
  );

  it('says in one sentence what is missing where the second file is not beside the first', async () => {
    writeFileSync(join(folder, 'desk.txt'), '0 0\n0.001 1\n0.002 0\n');
    const body = `<ringdown-listen src="/desk.wav">Fallback</ringdown-listen>
      <ringdown-spectrogram src="/desk.txt"></ringdown-spectrogram>
      <ringdown-spectrogram src="/desk.wav" plan="0,0 6,0 6,3.2 3.5,3.2 3.5,5 0,5" height="2.5"></ringdown-spectrogram>`;
    const { page: tab, messages } = await openPage(browser, await lonely('ringdown-flat.js', body));
    const missing = /needs the file ringdown-more\.js beside the one that the page loads/;
    await tab.locator('ringdown-listen [role=alert]', { hasText: missing }).waitFor();
    expect(await tab.locator('ringdown-listen slot').count()).toBe(1);
    await tab.locator('ringdown-spectrogram [part=message]', { hasText: missing }).first().waitFor();
    await untilDrawn(tab, 'ringdown-spectrogram:last-of-type');
    expect(messages.filter((message) => !/404/.test(message))).toEqual([]);
    await tab.close();
  });

  it('says why a file is refused in the words of the second file, fetched for them', async () => {
    writeFileSync(join(folder, 'broken.wav'), 'RIFF\x00\x00\x00\x00WAVEnothing');
    const body = `<script type="module" src="/ringdown-flat.js"></script><script>
      addEventListener('ringdown-error', (event) => { window.said = event.detail.message; });
      </script><ringdown-spectrogram src="/broken.wav"></ringdown-spectrogram>`;
    const { page: tab, messages } = await openPage(browser, await served(page(body)));
    await tab.waitForFunction(() => 'said' in window);
    const said = await tab.evaluate(() => (window as unknown as { said: string }).said);
    expect(said).toMatch(/WAV/);
    expect(said).not.toMatch(/ringdown-more|no sentence/);
    await tab.locator('ringdown-spectrogram [part=message]', { hasText: 'WAV' }).waitFor();
    expect(messages).toEqual([]);
    await tab.close();
  });

  it('has everything in ringdown-all.js, which asks for no other file', async () => {
    const body =
      '<ringdown-study src="/desk.wav" room="5.6x3.9x2.7"><ringdown-recordings></ringdown-recordings><ringdown-pressure-map></ringdown-pressure-map><ringdown-waterfall></ringdown-waterfall></ringdown-study>';
    const { page: tab, messages } = await openPage(browser, await lonely('ringdown-all.js', body));
    await untilDrawn(tab, 'ringdown-waterfall');
    await tab.locator('ringdown-pressure-map canvas').first().waitFor({ state: 'attached' });
    await tab.locator('ringdown-recordings tbody tr', { hasText: 'fit to be read' }).first().waitFor();
    expect(messages).toEqual([]);
    await tab.close();
  });

  it('lives with a second copy of the library: one warning, and both figures', async () => {
    writeFileSync(join(folder, 'copy.js'), readFileSync(`${dist}/ringdown-flat.js`));
    const two = `${file}<script type="module" src="/copy.js"></script>${figure}<ringdown-spectrogram src="/desk.wav"></ringdown-spectrogram>`;
    const { page: tab, messages } = await openPage(browser, await served(page(two)));
    await untilDrawn(tab, 'ringdown-waterfall');
    await untilDrawn(tab, 'ringdown-spectrogram');
    expect(messages).toHaveLength(1);
    expect(messages[0]).toMatch(/already defined by another copy/);
    await tab.close();
  });

  it('says in one sentence what is wrong with an address that answers 404', async () => {
    const lost = figure.replace('/desk.wav', '/lost.wav');
    const { page: tab, messages } = await openPage(browser, await served(page(file + lost)));
    await tab.waitForFunction(() =>
      /404/.test(document.querySelector('ringdown-waterfall')?.shadowRoot?.textContent ?? ''),
    );
    expect(messages.filter((message) => !/404/.test(message))).toEqual([]);
    await tab.close();
  });
});
