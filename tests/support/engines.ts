import type { Browser } from 'playwright-core';
import { launch } from './site.js';
import { firefoxWire, scriptMs, webkitWire, type Wire } from './webdriver.js';

export const engineNames = ['chromium', 'firefox', 'webkit'] as const;
export type EngineName = (typeof engineNames)[number];

/** What can be sent to a page, and comes back of it. */
export type Plain = string | number | boolean | null | readonly Plain[] | { readonly [name: string]: Plain };
export type Point = readonly [x: number, y: number];

/** One tab of an engine; the same for all three, so that a test is written once. */
export interface Engine {
  readonly name: EngineName;
  readonly version: string;
  open(address: string): Promise<void>;
  /** Runs a function in the page: it sees nothing but what it is given, and may return a promise. */
  run<Given extends readonly Plain[], Got>(
    work: (...given: Given) => Got,
    ...given: Given
  ): Promise<Awaited<Got>>;
  /** Presses keys one after the other, by the names of the UI Events standard. */
  press(...keys: readonly string[]): Promise<void>;
  /** Presses the mouse at the first point and lets it go at the last. */
  drag(points: readonly Point[]): Promise<void>;
  /** Chooses a file of this machine in the file input that a function finds. */
  choose(find: () => Element | null | undefined, path: string): Promise<void>;
  /** What is seen, as the base64 of a PNG. */
  shot(): Promise<string>;
  /** The page as it is printed, base64 of a PDF; null where the engine's driver prints nothing. */
  pdf(): Promise<string | null>;
  close(): Promise<void>;
}

const viewport = { width: 1000, height: 800 };

const source = (work: (...given: never[]) => unknown, given: readonly Plain[]): string =>
  `(${work.toString()})(...${JSON.stringify(given)})`;

async function chromiumEngine(): Promise<Engine> {
  const browser: Browser = await launch();
  const page = await browser.newPage({ viewport, locale: 'en-GB' });
  return {
    name: 'chromium',
    version: browser.version(),
    open: async (address) => void (await page.goto(address)),
    run: (work, ...given) => page.evaluate<never>(source(work, given)),
    press: async (...keys) => {
      for (const key of keys) await page.keyboard.press(key);
    },
    drag: async (points) => {
      await page.mouse.move(...points[0]);
      await page.mouse.down();
      for (const point of points.slice(1)) await page.mouse.move(...point);
      await page.mouse.up();
    },
    choose: async (find, path) => {
      const input = await page.evaluateHandle(source(find, []));
      await (input as unknown as { setInputFiles(path: string): Promise<void> }).setInputFiles(path);
    },
    shot: async () => (await page.screenshot({ caret: 'hide' })).toString('base64'),
    pdf: async () => (await page.pdf({ format: 'A4' })).toString('base64'),
    close: () => browser.close(),
  };
}

/** Keys that write no letter, by their code points in WebDriver. */
const keyCodes: Readonly<Record<string, string>> = {
  ...{ Enter: '\uE007', Tab: '\uE004', Escape: '\uE00C', Space: ' ' },
  ...{ ArrowLeft: '\uE012', ArrowUp: '\uE013', ArrowRight: '\uE014', ArrowDown: '\uE015' },
};

const elementKey = 'element-6066-11e4-a52e-4f735466cecf';

async function wiredEngine(name: EngineName, wire: Wire): Promise<Engine> {
  const script = (text: string): Promise<unknown> =>
    wire.send('POST /execute/sync', { script: `return ${text}`, args: [] });
  await wire.send('POST /timeouts', { script: scriptMs, pageLoad: scriptMs });
  // A window has a frame, of which only its driver knows how thick it is.
  const fit = async (): Promise<void> => {
    let wanted = { ...viewport };
    for (let k = 0; k < 3; k++) {
      await wire.send('POST /window/rect', { x: 0, y: 0, ...wanted });
      const [width, height] = (await script(
        'new Promise((done) => setTimeout(() => done([innerWidth, innerHeight]), 300))',
      )) as [number, number];
      if (width === viewport.width && height === viewport.height) return;
      wanted = {
        width: wanted.width + viewport.width - width,
        height: wanted.height + viewport.height - height,
      };
    }
  };
  return {
    name,
    version: wire.version,
    open: async (address) => {
      await wire.send('POST /url', { url: address });
      await fit();
    },
    run: (work, ...given) => script(source(work, given)) as never,
    press: async (...keys) => {
      const actions = keys.flatMap((key) => {
        const value = keyCodes[key] ?? key;
        return [
          { type: 'keyDown', value },
          { type: 'keyUp', value },
        ];
      });
      await wire.send('POST /actions', { actions: [{ type: 'key', id: 'keyboard', actions }] });
    },
    drag: async ([first, ...rest]) => {
      const to = ([x, y]: Point) => ({
        ...{ type: 'pointerMove', origin: 'viewport', duration: 20, x: Math.round(x), y: Math.round(y) },
      });
      const actions = [
        ...[to(first), { type: 'pointerDown', button: 0 }],
        ...[...rest.map(to), { type: 'pointerUp', button: 0 }],
      ];
      const mouse = { type: 'pointer', id: 'mouse', parameters: { pointerType: 'mouse' }, actions };
      await wire.send('POST /actions', { actions: [mouse] });
    },
    choose: async (find, path) => {
      const found = (await script(source(find, []))) as Record<string, string>;
      await wire.send(`POST /element/${found[elementKey]}/value`, { text: path });
    },
    shot: async () => (await wire.send('GET /screenshot')) as string,
    pdf: async () =>
      name === 'firefox'
        ? ((await wire.send('POST /print', { background: true, shrinkToFit: true })) as string)
        : null,
    close: () => wire.close(),
  };
}

/** Starts an engine with one tab of 1000 by 800 CSS pixels. */
export async function openEngine(name: EngineName): Promise<Engine> {
  if (name === 'chromium') return chromiumEngine();
  const wire = await (name === 'firefox' ? firefoxWire() : webkitWire());
  try {
    return await wiredEngine(name, wire);
  } catch (error) {
    await wire.close();
    throw error;
  }
}
