import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { chromium, type Browser, type Page } from 'playwright-core';
import sirv from 'sirv';
import { browserArguments, requireBrowser } from '../../scripts/lib/browser.mjs';

/** A page of ours by its path: headers and text. */
export interface ServedPage {
  readonly html: string;
  readonly headers?: Readonly<Record<string, string>>;
}

export interface Site {
  readonly address: string;
  close(): void;
}

/**
 * Serves folders and pages from a free port of this machine, another origin each time.
 * @param folders looked through in their order
 */
export async function serveSite(
  folders: readonly string[],
  pages: Readonly<Record<string, ServedPage>> = {},
  headers: Readonly<Record<string, string>> = {},
): Promise<Site> {
  const handlers = folders.map((folder) => sirv(folder, { dev: true, dotfiles: false }));
  const server: Server = createServer((request, response) => {
    for (const [name, value] of Object.entries(headers)) response.setHeader(name, value);
    const path = (request.url ?? '/').split('?')[0];
    const page = pages[path];
    if (page) {
      response.writeHead(200, { 'content-type': 'text/html; charset=utf-8', ...page.headers }).end(page.html);
      return;
    }
    // What browsers ask of every site on their own is not the page's matter.
    if (path === '/favicon.ico') {
      response.writeHead(204).end();
      return;
    }
    const next = (k: number): void => {
      if (k === handlers.length) response.writeHead(404).end();
      else handlers[k](request, response, () => next(k + 1));
    };
    next(0);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}`,
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}

export const launch = (): Promise<Browser> =>
  chromium.launch({ executablePath: requireBrowser(), args: browserArguments });

/**
 * Opens a page and keeps every console message, failed request and error.
 * @param before runs in the page before its own scripts
 */
export async function openPage(
  browser: Browser,
  address: string,
  before?: () => void,
): Promise<{ page: Page; messages: string[] }> {
  const page = await browser.newPage({ viewport: { width: 1000, height: 800 } });
  const messages: string[] = [];
  page.on('console', (message) => messages.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => messages.push(`error: ${error.message}`));
  if (before) await page.addInitScript(before);
  await page.goto(address);
  return { page, messages };
}

/** Waits until the picture of an element holds more colours than a blank one could. */
export async function untilDrawn(page: Page, selector: string): Promise<void> {
  await page.locator(selector).first().scrollIntoViewIfNeeded();
  await page.waitForFunction(
    (wanted) => {
      const element = document.querySelector(wanted);
      // What stands above may have grown since: only what is seen is drawn.
      const { top = 0, bottom = 0 } = element?.getBoundingClientRect() ?? {};
      if (top > innerHeight || bottom < 0) element?.scrollIntoView();
      const canvas = element?.shadowRoot?.querySelector('canvas');
      if (!canvas || canvas.width === 0) return false;
      // A copy: the context of the canvas itself may be of another kind.
      const copy = document.createElement('canvas');
      copy.width = canvas.width;
      copy.height = canvas.height;
      const context = copy.getContext('2d');
      if (!context) return false;
      context.drawImage(canvas, 0, 0);
      const { data } = context.getImageData(0, 0, copy.width, copy.height);
      const colours = new Set<number>();
      for (let k = 0; k < data.length; k += 4 * 2)
        colours.add((data[k] << 16) | (data[k + 1] << 8) | data[k + 2]);
      return colours.size > 60;
    },
    selector,
    { timeout: 60_000 },
  );
}
