/**
 * What a page loads, gzipped, each with the texts of its workers: `node scripts/sizes.mjs` prints the table of
 * DEVELOPERS.md, `--write` puts it there. A suite of `npm run test:wide` holds the build to it.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { root, script } from './lib/project.mjs';
import { shrunkText } from './lib/shrink.mjs';

const page = `${root}DEVELOPERS.md`;
const [begin, end] = ['<!-- sizes -->', '<!-- /sizes -->'];

/**
 * @typedef {object} Size
 * @property {string} name
 * @property {string} holds
 * @property {number} kilobytes of 1000 bytes, gzip -9
 * @property {number | null} aim
 */

/** @param {string | Uint8Array} text */
const gzipped = (text) => gzipSync(text, { level: 9 }).length / 1000;

/** What a page that is built loads of an entry before it asks for more, minified as our own files are. @param {string} entry */
async function bundled(entry) {
  const { outputFiles, metafile } = await build({
    absWorkingDir: root,
    entryPoints: [entry],
    bundle: true,
    minify: true,
    splitting: true,
    metafile: true,
    format: 'esm',
    outdir: 'sizes',
    write: false,
    logLevel: 'error',
  });
  /** @type {Set<string>} */
  const loaded = new Set();
  /** @param {string} file */
  const load = (file) => {
    if (loaded.has(file)) return;
    loaded.add(file);
    for (const { path, kind } of metafile.outputs[file].imports) if (kind === 'import-statement') load(path);
  };
  for (const [file, { entryPoint }] of Object.entries(metafile.outputs)) if (entryPoint === entry) load(file);
  const texts = outputFiles.filter(({ path }) => [...loaded].some((file) => path.endsWith(`/${file}`)));
  const shrunk = await Promise.all(texts.map(({ path, text }) => shrunkText(text, path)));
  return shrunk.reduce((sum, { code }) => sum + gzipped(code), 0);
}

/** @returns {Promise<Size[]>} of the built dist */
export async function measureSizes() {
  const file = (/** @type {string} */ name) => gzipped(readFileSync(`${root}dist/${name}`));
  /** @type {[name: string, holds: string, aim: number | null][]} */
  const files = [
    ['ringdown-flat.js', 'the flat figures with ridges and candidates, the waterfall drawn by lines', 80],
    ['ringdown.js', 'the same with the surface', 250],
    ['ringdown-more.js', 'all else, fetched by either once it is asked for', null],
    ['ringdown-all.js', 'everything in one file', null],
    ['ringdown-de.js', 'German', 40],
    ['study/worker.js', 'the whole engine as a worker', null],
  ];
  return [
    ...files.map(([name, holds, aim]) => ({ name: `dist/${name}`, holds, kilobytes: file(name), aim })),
    {
      name: 'ringdown/engine/core, bundled',
      holds: 'a WAV file in; grid, response, resonances out',
      kilobytes: await bundled('dist/engine-core.js'),
      aim: 40,
    },
    {
      name: 'ringdown/engine, bundled',
      holds:
        'with rooms, limits, matching, seats and sources, other files; without the HDF5 reader, a chunk of its own',
      kilobytes: await bundled('dist/engine.js'),
      aim: null,
    },
  ];
}

/** @param {Size[]} sizes */
export function sizeTable(sizes) {
  const rows = sizes.map(({ name, holds, kilobytes, aim }) => [
    `\`${name}\``,
    `${Math.ceil(kilobytes)}`,
    `${aim ?? ''}`,
    holds,
  ]);
  const heads = ['what', 'kB gzipped', 'aimed at', 'holds'];
  const isText = (/** @type {number} */ k) => k === 0 || k === 3;
  const widths = heads.map((head, k) => Math.max(head.length, ...rows.map((row) => row[k].length)));
  /** @param {string[]} cells */
  const line = (cells) =>
    `| ${cells.map((cell, k) => (isText(k) ? cell.padEnd(widths[k]) : cell.padStart(widths[k]))).join(' | ')} |`;
  const rule = `| ${widths.map((width, k) => (isText(k) ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`)).join(' | ')} |`;
  return [line(heads), rule, ...rows.map(line)].join('\n');
}

/** @returns {Map<string, number>} what the page says, kB by name */
export function documentedSizes() {
  const text = readFileSync(page, 'utf8');
  const table = text.slice(text.indexOf(begin), text.indexOf(end));
  return new Map(
    [...table.matchAll(/\| `([^`]+)` *\| *(\d+) \|/g)].map(([, name, size]) => [name, Number(size)]),
  );
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  await script(async () => {
    const { buildProject } = await import('./build.mjs');
    await buildProject();
    const sizes = await measureSizes();
    const table = sizeTable(sizes);
    console.log(table);
    for (const { name, kilobytes, aim } of sizes)
      if (aim !== null && kilobytes > aim)
        console.log(`${name} is ${(kilobytes - aim).toFixed(0)} kB over what is aimed at.`);
    if (!process.argv.includes('--write')) return;
    const text = readFileSync(page, 'utf8');
    writeFileSync(
      page,
      `${text.slice(0, text.indexOf(begin))}${begin}\n\n${table}\n\n${text.slice(text.indexOf(end))}`,
    );
  });
