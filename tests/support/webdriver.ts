import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { connect, createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { requireEngine } from '../../scripts/lib/engines.mjs';

/** Commands of W3C WebDriver by the method and path of its table, whatever carries them. */
export interface Wire {
  readonly version: string;
  /** @param command as in the table of commands, from the session on: `POST /url` */
  send(command: string, body?: object): Promise<unknown>;
  close(): Promise<void>;
}

const startMs = 60_000;
/** Of one command; scripts have their own limit below it. */
const commandMs = 150_000;
export const scriptMs = 120_000;

const pause = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

/** Asks until there is an answer, or says what did not come. */
async function until<T>(what: string, ask: () => Promise<T | null> | T | null): Promise<T> {
  const end = Date.now() + startMs;
  for (;;) {
    const answer = await ask();
    if (answer !== null) return answer;
    if (Date.now() > end) throw new Error(`${what} did not start within ${startMs / 1000} s.`);
    await pause(50);
  }
}

async function ended(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  child.kill();
  await Promise.race([gone, pause(3000).then(() => child.kill('SIGKILL'))]);
}

/** A screen that nobody sees, and a home that holds nothing: a browser's own state ends with it. */
async function openRoom(screen: string) {
  const home = mkdtempSync(join(tmpdir(), 'ringdown-engine-'));
  const shown = spawn(screen, ['-displayfd', '3', '-screen', '0', '1400x1200x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  });
  const display = await new Promise<string>((resolve, reject) => {
    shown.once('error', reject);
    shown.once('exit', (code) => reject(new Error(`Xvfb ended with ${String(code)}.`)));
    shown.stdio[3]!.once('data', (number: Buffer) => resolve(`:${number.toString().trim()}`));
  });
  const environment = {
    ...process.env,
    ...{
      HOME: home,
      XDG_RUNTIME_DIR: home,
      DISPLAY: display,
      LIBGL_ALWAYS_SOFTWARE: '1',
      GDK_BACKEND: 'x11',
    },
    // Pages of this project alone are opened; as root in a container a browser's sandbox cannot start.
    ...{
      WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1',
      NO_AT_BRIDGE: '1',
      LANG: 'C.UTF-8',
      LC_ALL: 'C.UTF-8',
    },
  };
  const close = async (): Promise<void> => {
    await ended(shown);
    rmSync(home, { recursive: true, force: true, maxRetries: 5 });
  };
  return { home, environment, close };
}

async function freePort(): Promise<number> {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** WebKit as WebKitGTK has it: a driver that speaks WebDriver over HTTP. */
export async function webkitWire(): Promise<Wire> {
  const { browser, driver, screen } = requireEngine('webkit');
  const room = await openRoom(screen);
  const port = await freePort();
  const child = spawn(driver, [`--port=${port}`], { env: room.environment, stdio: 'ignore' });
  const ask = async (method: string, path: string, body?: object): Promise<unknown> => {
    const response = await fetch(`http://127.0.0.1:${port}${path}`, {
      ...{ method, signal: AbortSignal.timeout(commandMs) },
      ...(method === 'POST' && { body: JSON.stringify(body ?? {}) }),
    });
    const { value } = (await response.json()) as { value: { error?: string; message?: string } };
    if (!response.ok) throw new Error(`${method} ${path}: ${value.error}: ${value.message}`);
    return value;
  };
  try {
    await until('WebKitWebDriver', () => ask('GET', '/status').then(Boolean, () => null));
    const options = { 'webkitgtk:browserOptions': { binary: browser, args: ['--automation'] } };
    const { sessionId, capabilities } = (await ask('POST', '/session', {
      capabilities: { alwaysMatch: options },
    })) as { sessionId: string; capabilities: { browserVersion: string } };
    return {
      version: capabilities.browserVersion,
      send: (command, body) => {
        const [method, path] = command.split(' ');
        return ask(method, `/session/${sessionId}${path}`, body);
      },
      close: async () => {
        await ask('DELETE', `/session/${sessionId}`).catch(() => undefined);
        await ended(child);
        await room.close();
      },
    };
  } catch (error) {
    await ended(child);
    await room.close();
    throw error;
  }
}

/** What Firefox calls the same commands. */
const marionette: Readonly<Record<string, string>> = {
  'POST /url': 'WebDriver:Navigate',
  'POST /execute/sync': 'WebDriver:ExecuteScript',
  'POST /actions': 'WebDriver:PerformActions',
  'GET /screenshot': 'WebDriver:TakeScreenshot',
  'POST /window/rect': 'WebDriver:SetWindowRect',
  'POST /timeouts': 'WebDriver:SetTimeouts',
  'POST /print': 'WebDriver:Print',
};

/** Of a profile that asks nobody for anything and draws in software. */
const preferences = {
  'marionette.port': 0,
  'webgl.force-enabled': true,
  'app.normandy.enabled': false,
  'app.update.disabledForTesting': true,
  'browser.aboutwelcome.enabled': false,
  'browser.shell.checkDefaultBrowser': false,
  'browser.startup.homepage_override.mstone': 'ignore',
  'datareporting.policy.dataSubmissionEnabled': false,
  'toolkit.telemetry.enabled': false,
  'network.captive-portal-service.enabled': false,
  'network.connectivity-service.enabled': false,
  'services.settings.server': 'data:,#remote-settings-dummy/v1',
  'intl.accept_languages': 'en-GB,en',
};

/** Firefox: it carries the same commands itself, as length and JSON over a socket. */
export async function firefoxWire(): Promise<Wire> {
  const { browser, screen } = requireEngine('firefox');
  const room = await openRoom(screen);
  const lines = Object.entries(preferences).map(
    ([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});`,
  );
  writeFileSync(join(room.home, 'user.js'), lines.join('\n'));
  const child = spawn(browser, ['--marionette', '--no-remote', '--profile', room.home, 'about:blank'], {
    ...{ env: room.environment, stdio: 'ignore' },
  });
  const leave = async (): Promise<void> => {
    await ended(child);
    await room.close();
  };
  try {
    const port = await until('Firefox', () => {
      try {
        return Number(readFileSync(join(room.home, 'MarionetteActivePort'), 'utf8')) || null;
      } catch {
        return null;
      }
    });
    const socket = connect(port, '127.0.0.1');
    const waiting = new Map<
      number,
      (error: { error: string; message: string } | null, value: unknown) => void
    >();
    let rest = Buffer.alloc(0);
    socket.on('data', (part: Buffer) => {
      rest = Buffer.concat([rest, part]);
      for (;;) {
        const colon = rest.indexOf(':');
        const length = Number(rest.subarray(0, Math.max(colon, 0)).toString());
        if (colon < 0 || rest.length < colon + 1 + length) return;
        const message = JSON.parse(rest.subarray(colon + 1, colon + 1 + length).toString()) as unknown;
        rest = rest.subarray(colon + 1 + length);
        if (!Array.isArray(message)) continue; // its greeting
        const [, id, error, value] = message as [
          number,
          number,
          { error: string; message: string } | null,
          unknown,
        ];
        waiting.get(id)?.(error, value);
        waiting.delete(id);
      }
    });
    const fail = (why: string) => (): void => {
      for (const answer of waiting.values()) answer({ error: 'gone', message: why }, null);
      waiting.clear();
    };
    socket.on('error', fail('The connection broke.')).on('close', fail('Firefox has ended.'));
    let last = 0;
    const ask = (name: string, body: object = {}): Promise<unknown> =>
      new Promise((resolve, reject) => {
        const id = ++last;
        const late = setTimeout(() => {
          waiting.delete(id);
          reject(new Error(`${name} was not answered within ${commandMs / 1000} s.`));
        }, commandMs);
        waiting.set(id, (error, value) => {
          clearTimeout(late);
          if (error) reject(new Error(`${name}: ${error.error}: ${error.message}`));
          else resolve(value);
        });
        const text = Buffer.from(JSON.stringify([0, id, name, body]));
        socket.write(Buffer.concat([Buffer.from(`${text.length}:`), text]));
      });
    const { capabilities } = (await ask('WebDriver:NewSession', { capabilities: {} })) as {
      capabilities: { browserVersion: string };
    };
    return {
      version: capabilities.browserVersion,
      send: async (command, body) => {
        const keys = /^POST \/element\/(.+)\/value$/.exec(command);
        const answer = keys
          ? await ask('WebDriver:ElementSendKeys', { id: keys[1], ...body })
          : await ask(marionette[command] ?? command, command === 'GET /screenshot' ? { full: false } : body);
        return typeof answer === 'object' && answer !== null && 'value' in answer ? answer.value : answer;
      },
      close: async () => {
        socket.removeAllListeners('close').destroy();
        await leave();
      },
    };
  } catch (error) {
    await leave();
    throw error;
  }
}
