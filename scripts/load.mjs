/**
 * `npm run load`: what happens under load, in four parts, each bounded. The last line gives the figures.
 *
 * command: a thousand files, one of them broken, through one call of the command; memory and status.
 * long: half an hour of eight channels at 48 kHz is refused before it is decoded.
 * page: 64 recordings of ten seconds at 96 kHz on one page; the longest task of the main thread, progress, memory.
 * views: the same beside nine views and kept in the browser.
 *
 * npm run load -- [command] [long] [page] [views]
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { buildProject } from './build.mjs';
import { browserArguments, requireBrowser } from './lib/browser.mjs';
import { Complaint, root, script } from './lib/project.mjs';

const files = 1000;
const recordings = 64;
const pageMinutes = 12;

/** A decay at 50 Hz as 16-bit WAV, told from others by its number. @param {number} k @param {number} seconds @param {number} rate */
function wav(k, seconds, rate) {
  const frames = Math.round(seconds * rate);
  const bytes = Buffer.alloc(44 + 2 * frames);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(36 + 2 * frames, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(rate, 24);
  bytes.writeUInt32LE(2 * rate, 28);
  bytes.writeUInt16LE(2, 32);
  bytes.writeUInt16LE(16, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(2 * frames, 40);
  const frequency = 40 + (k % 50);
  for (let n = 0; n < frames; n++) {
    const t = n / rate - 0.02;
    const tone = t < 0 ? 0 : Math.sin(2 * Math.PI * frequency * t) * Math.exp(-6.9078 * (t / 0.4));
    // Deterministic noise 60 dB down.
    const noise = (((n * 1103515245 + k * 12345) >>> 16) & 255) / 255 - 0.5;
    bytes.writeInt16LE(Math.round(16000 * tone + 20 * noise), 44 + 2 * n);
  }
  return bytes;
}

/** @param {string} folder */
async function command(folder) {
  const names = Array.from({ length: files }, (_, k) => join(folder, `${k}.wav`));
  names.forEach((name, k) => writeFileSync(name, k === 500 ? 'RIFF, but no wave' : wav(k, 1, 4000)));
  const begin = performance.now();
  // Half of a gigabyte for all that lives: what is held grows with none of the files.
  const call = ['--max-old-space-size=256', 'dist/cli/main.js', 'diagnose', '--json', ...names];
  const child = spawn(process.execPath, call, { cwd: root });
  let lines = 0;
  let refused = 0;
  let rest = '';
  let [early, late] = [0, 0];
  child.stdout.on('data', (part) => {
    const parts = (rest + part).split('\n');
    rest = parts.pop() ?? '';
    for (const line of parts) {
      lines++;
      if ('error' in JSON.parse(line) || 'refused' in JSON.parse(line)) refused++;
      if (lines !== 100 && lines !== files) continue;
      const status = readFileSync(`/proc/${child.pid}/status`, 'utf8');
      const held = Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024;
      if (lines === 100) early = held;
      else late = held;
    }
  });
  const status = await new Promise((resolve) => child.on('close', resolve));
  const seconds = (performance.now() - begin) / 1000;
  const ok = lines === files && status === 1;
  return {
    ok,
    figure: `${lines} of ${files} files answered in ${seconds.toFixed(0)} s, status ${String(status)}, ${early.toFixed(0)} MB held after 100 and ${late.toFixed(0)} MB after all${refused ? `, ${refused} refused` : ''}`,
  };
}

/** @param {string} folder */
function long(folder) {
  const frames = 30 * 60 * 48000;
  const channels = 8;
  const path = join(folder, 'long.wav');
  const bytes = Buffer.alloc(44);
  wav(0, 0, 48000).copy(bytes, 0, 0, 44);
  bytes.writeUInt16LE(channels, 22);
  bytes.writeUInt32LE(48000 * channels * 2, 28);
  bytes.writeUInt16LE(2 * channels, 32);
  const size = frames * channels * 2;
  bytes.writeUInt32LE(size, 40);
  writeFileSync(path, bytes);
  // The rest is a hole, which reads as silence.
  spawnSync('truncate', ['-s', String(44 + size), path]);
  const begin = performance.now();
  const { status, stderr } = spawnSync('/usr/bin/env', ['node', 'dist/cli/main.js', 'diagnose', path], {
    cwd: root,
    encoding: 'utf8',
  });
  const seconds = (performance.now() - begin) / 1000;
  const sentence = stderr.trim().split('\n')[0].replace(folder, '');
  return {
    ok: status === 1 && /too (long|large)|more than|MB/i.test(sentence),
    figure: `half an hour of 8 channels (${(size / 1e6).toFixed(0)} MB) refused in ${seconds.toFixed(1)} s: ${sentence}`,
  };
}

/**
 * What the page's main thread did, by the browser's own trace: the tasks that took longer than 50 ms, and of every task the
 * time that the thread computed, which does not grow where others take the processor away.
 * @param {import('playwright-core').Browser} browser
 */
async function watchMainThread(browser) {
  const session = await browser.newBrowserCDPSession();
  /** @type {{ name: string, ph: string, pid: number, tid: number, dur: number, tdur: number, args: { name?: string } }[]} */
  const events = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(.../** @type {any[]} */ (value)));
  const traceConfig = {
    recordMode: /** @type {const} */ ('recordUntilFull'),
    includedCategories: ['toplevel'],
  };
  await session.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig });
  return async () => {
    const complete = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
    await session.send('Tracing.end');
    await complete;
    const thread = (/** @type {{ pid: number, tid: number }} */ { pid, tid }) => `${pid} ${tid}`;
    const mains = new Set(
      events.filter(({ args }) => args?.name === 'CrRendererMain').map((event) => thread(event)),
    );
    const tasks = events.filter(
      (event) => event.ph === 'X' && /RunTask$/.test(event.name) && mains.has(thread(event)),
    );
    if (tasks.length === 0) throw new Complaint('The trace holds no task of the main thread.');
    return Math.max(0, ...tasks.map(({ tdur = 0 }) => tdur / 1000));
  };
}

const nineViews = ['recordings', 'ridges', 'response', 'seats', 'decay-times', 'spectrogram', 'fit', 'modes'];

/** @param {readonly string[]} names of the views beside the surface, and whether the study is kept */
async function onPage(names, keep = false) {
  const views = ['waterfall', ...names].map((name) => `<ringdown-${name}></ringdown-${name}>`).join('');
  const html = `<!doctype html><script type="module" src="/ringdown-all.js"></script><ringdown-study room="5x4x2.5"${keep ? ' autosave="load"' : ''}>${views}</ringdown-study>`;
  // Made before: the browser shares the processor with this program.
  const made = Array.from({ length: recordings }, (_, k) => wav(k, 10, 96000));
  const server = createServer((request, response) => {
    const { url = '/' } = request;
    if (url === '/') response.writeHead(200, { 'content-type': 'text/html' }).end(html);
    else if (url.startsWith('/wav/'))
      response.writeHead(200, { 'content-type': 'audio/wav' }).end(made[Number(url.slice(5))]);
    else if (url === '/ringdown-all.js')
      response
        .writeHead(200, { 'content-type': 'text/javascript' })
        .end(readFileSync(`${root}dist/ringdown-all.js`));
    else response.writeHead(404).end();
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', () => resolve(undefined)));
  const address = /** @type {import('node:net').AddressInfo} */ (server.address());
  const browser = await chromium.launch({
    executablePath: requireBrowser(),
    args: [...browserArguments, '--enable-precise-memory-info'],
  });
  try {
    const tab = await browser.newPage();
    await tab.goto(`http://127.0.0.1:${address.port}/`);
    await tab.waitForFunction("customElements.get('ringdown-study') !== undefined");
    const { drive } = await import(`${root}tests/support/load-page.mjs`);
    const computed = await watchMainThread(browser);
    const late = new Promise((_, reject) =>
      setTimeout(
        () => reject(new Complaint(`The page was not done after ${pageMinutes} minutes.`)),
        pageMinutes * 60_000,
      ).unref(),
    );
    const got = await /** @type {Promise<any>} */ (Promise.race([tab.evaluate(drive, recordings), late]));
    const own = await computed();
    const load = loadavg()[0] / cpus().length;
    return {
      ok: got.count === recordings && got.longest <= 50 && got.fell === 0,
      figure: `${got.count} recordings of 10 s at 96 kHz in ${got.seconds.toFixed(0)} s, longest task of the main thread ${got.longest.toFixed(0)} ms by the clock (${got.tasks} over 50 ms) and ${own.toFixed(0)} ms of its own computing, machine at ${load.toFixed(1)} times its load, progress told ${got.updates} times and fell ${got.fell} times, ${got.megabytes.toFixed(0)} MB of heap, of them ${((recordings * 10 * 96000 * 8) / 2 ** 20).toFixed(0)} MB samples`,
    };
  } finally {
    await browser.close();
    server.close();
  }
}

await script(async () => {
  const parts = { command, long, page: () => onPage(['ridges']), views: () => onPage(nineViews, true) };
  const asked = process.argv.slice(2);
  const wrong = asked.find((name) => !(name in parts));
  if (wrong) throw new Complaint(`There is no part ${wrong}: command, long, page, views.`);
  await buildProject();
  const folder = mkdtempSync(join(tmpdir(), 'ringdown-load-'));
  const told = [];
  let status = 0;
  try {
    for (const [name, part] of Object.entries(parts)) {
      if (asked.length > 0 && !asked.includes(name)) continue;
      const { ok, figure } = await part(folder);
      console.log(`${name}: ${figure}${ok ? '' : ' (below its bound)'}`);
      told.push(`${name} ${ok ? 'kept' : 'not kept'}`);
      if (!ok) status = 1;
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  console.log(`load: ${told.join(', ')}`);
  return status;
});
