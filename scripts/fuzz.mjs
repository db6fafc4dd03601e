/**
 * `npm run fuzz`: tries every reader with made and damaged inputs, guided by the code that they reach. What goes wrong is
 * kept in tests/fuzz/kept, where the tests find it again. The last line gives the figures.
 *
 * npm run fuzz -- [--inputs 200000] [--seed 1] [--reader wav] [--minutes 25]
 */
import { createHash } from 'node:crypto';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { Worker } from 'node:worker_threads';
import { build } from 'esbuild';
import { Complaint, root, script } from './lib/project.mjs';

/** A thread that says nothing for so long hangs, seconds; the readers' own bound is far shorter. */
const hangSeconds = 20;
const mostBytes = 65_536;

/**
 * @typedef {{ inputs: number, results: number, refusals: number, codes: string[], corpus: number, stretches: number, slowestMilliseconds: number, mostTimesInput: number }} Figures
 * @typedef {{ name: string, share: number }} Reader
 */

/**
 * @param {string} reader
 * @param {Uint8Array} input
 * @param {string} complaint
 */
function keep(reader, input, complaint) {
  const name = createHash('sha256').update(input).digest('hex').slice(0, 12);
  const folder = `${root}tests/fuzz/kept/${reader}`;
  mkdirSync(folder, { recursive: true });
  writeFileSync(`${folder}/${name}.bin`, input);
  console.log(
    `${reader}: ${complaint.slice(0, 400).split('\n').slice(0, 3).join(' ')}\n  kept as tests/fuzz/kept/${reader}/${name}.bin`,
  );
}

/**
 * One reader in a thread of its own.
 * @param {string} bundle
 * @param {string} reader
 * @param {number} inputs
 * @param {number} seed
 * @returns {Promise<{ figures: Figures | null, found: number }>}
 */
function tryReader(bundle, reader, inputs, seed) {
  const shared = new SharedArrayBuffer(8 + mostBytes);
  const numbers = new Int32Array(shared, 0, 2);
  const workerData = { reader, inputs, seed, shared, script: bundle.slice(bundle.lastIndexOf('/')) };
  const thread = new Worker(bundle, { workerData, resourceLimits: { maxOldGenerationSizeMb: 512 } });
  const current = () => new Uint8Array(shared, 8, numbers[1]).slice();
  return new Promise((resolve) => {
    let found = 0;
    let turn = -1;
    let quiet = 0;
    const end = (/** @type {Figures | null} */ figures) => {
      clearInterval(watch);
      void thread.terminate();
      resolve({ figures, found });
    };
    const complain = (/** @type {Uint8Array} */ input, /** @type {string} */ complaint) => {
      found++;
      keep(reader, input, complaint);
    };
    const watch = setInterval(() => {
      const now = Atomics.load(numbers, 0);
      quiet = now === turn ? quiet + 1 : 0;
      turn = now;
      // Before its first input it makes its seeds, which a busy machine can hold up.
      if (quiet < (now === 0 ? 15 : 1) * hangSeconds) return;
      complain(current(), `no answer within ${hangSeconds} s`);
      end(null);
    }, 1000);
    thread.on('message', (message) => {
      if (message.type === 'found') complain(message.input, message.complaint);
      else end(message.type === 'done' ? message.figures : null);
    });
    thread.on('error', (error) => {
      complain(current(), String(error));
      end(null);
    });
  });
}

await script(async () => {
  const { values } = parseArgs({
    options: {
      inputs: { type: 'string', default: '200000' },
      seed: { type: 'string', default: '1' },
      minutes: { type: 'string', default: '25' },
      reader: { type: 'string' },
    },
  });
  const [inputs, seed, minutes] = [values.inputs, values.seed, values.minutes].map(Number);
  if (!(inputs > 0 && seed >= 0 && minutes > 0))
    throw new Complaint('Give numbers: npm run fuzz -- --inputs 200000 --seed 1 --minutes 25');
  const folder = `${root}node_modules/.cache/ringdown-fuzz-${process.pid}`;
  const common = {
    ...{ absWorkingDir: root, bundle: true, logLevel: /** @type {const} */ ('error') },
    ...{
      format: /** @type {const} */ ('esm'),
      platform: /** @type {const} */ ('node'),
      external: ['h5wasm/node'],
    },
  };
  process.chdir(root);
  try {
    await build({
      ...common,
      entryPoints: ['tests/fuzz/thread.ts', 'tests/fuzz/names.ts'],
      outdir: folder,
      outExtension: { '.js': '.mjs' },
    });
    /** @type {{ shares: Readonly<Record<string, number>> }} */
    const { shares } = await import(`${folder}/names.mjs`);
    const names = Object.keys(shares).filter((name) => !values.reader || name === values.reader);
    if (names.length === 0)
      throw new Complaint(`There is no reader ${values.reader}: ${Object.keys(shares).join(', ')}.`);
    const all = names.reduce((sum, name) => sum + shares[name], 0);
    const begin = performance.now();
    const total = { inputs: 0, results: 0, refusals: 0, found: 0, slowest: 0, readers: 0, codes: new Set() };
    for (const name of names) {
      const seconds = (performance.now() - begin) / 1000;
      if (seconds > minutes * 60) throw new Complaint(`Stopped after ${minutes} minutes, before ${name}.`);
      const count = Math.ceil((inputs * shares[name]) / all);
      const { figures, found } = await tryReader(`${folder}/thread.mjs`, name, count, seed);
      total.found += found;
      if (!figures) {
        console.log(`${name}: given up`);
        continue;
      }
      total.readers++;
      total.inputs += figures.inputs;
      total.results += figures.results;
      total.refusals += figures.refusals;
      total.slowest = Math.max(total.slowest, figures.slowestMilliseconds);
      for (const code of figures.codes) total.codes.add(code);
      console.log(
        `${name}: ${figures.inputs} inputs, ${figures.results} read, ${figures.refusals} refused with ${figures.codes.filter((code) => code !== 'read').length} codes; ${figures.stretches} stretches of code reached beyond the first input, ${figures.corpus} inputs in the corpus, slowest ${figures.slowestMilliseconds.toFixed(0)} ms, arrays up to ${figures.mostTimesInput.toFixed(1)} times the input`,
      );
    }
    total.codes.delete('read');
    console.log(
      `fuzz: ${total.inputs} inputs to ${total.readers} of ${names.length} readers, ${total.results} read, ${total.refusals} refused with ${total.codes.size} codes, slowest ${total.slowest.toFixed(0)} ms, ${((performance.now() - begin) / 1000).toFixed(0)} s, seed ${seed}, ${total.found} found`,
    );
    return total.found === 0 && total.readers === names.length ? 0 : 1;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
