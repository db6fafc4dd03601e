/**
 * What a page loads, gzipped, each with the texts of its workers: `node scripts/sizes.mjs` prints the table of
 * DEVELOPERS.md, `--write` puts it there. A suite of `npm run test:wide` holds the build to it.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { root, script } from './lib/project.mjs';

const page = `${root}DEVELOPERS.md`;
const [begin, end] = ['<!-- sizes -->', '<!-- /sizes -->'];

/** @typedef {{ name: string, kilobytes: number, aim: number }} Size kilobytes of 1000 bytes, gzip -9 */

/** @param {string | Uint8Array} text */
const gzipped = (text) => gzipSync(text, { level: 9 }).length / 1000;

/** @returns {Promise<Size[]>} of the built dist */
export async function measureSizes() {
  const engine = await build({
    absWorkingDir: root,
    entryPoints: ['dist/engine.js'],
    bundle: true,
    minify: true,
    format: 'esm',
    write: false,
    logLevel: 'error',
  });
  const file = (/** @type {string} */ name) => gzipped(readFileSync(`${root}dist/${name}`));
  return [
    { name: 'dist/ringdown-flat.js', kilobytes: file('ringdown-flat.js'), aim: 80 },
    { name: 'dist/ringdown.js', kilobytes: file('ringdown.js'), aim: 250 },
    { name: 'dist/ringdown-de.js', kilobytes: file('ringdown-de.js'), aim: 40 },
    { name: 'ringdown/engine, bundled', kilobytes: gzipped(engine.outputFiles[0].contents), aim: 40 },
    { name: 'dist/study/worker.js', kilobytes: file('study/worker.js'), aim: 40 },
  ];
}

/** @param {Size[]} sizes */
export function sizeTable(sizes) {
  const rows = sizes.map(({ name, kilobytes, aim }) => [`\`${name}\``, `${Math.ceil(kilobytes)}`, `${aim}`]);
  const heads = ['what', 'kB gzipped', 'aimed at'];
  const widths = heads.map((head, k) => Math.max(head.length, ...rows.map((row) => row[k].length)));
  /** @param {string[]} cells */
  const line = (cells) =>
    `| ${cells.map((cell, k) => (k === 0 ? cell.padEnd(widths[k]) : cell.padStart(widths[k]))).join(' | ')} |`;
  const rule = `| ${widths.map((width, k) => (k === 0 ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`)).join(' | ')} |`;
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
      if (kilobytes > aim)
        console.log(`${name} is ${(kilobytes - aim).toFixed(0)} kB over what is aimed at.`);
    if (!process.argv.includes('--write')) return;
    const text = readFileSync(page, 'utf8');
    writeFileSync(
      page,
      `${text.slice(0, text.indexOf(begin))}${begin}\n\n${table}\n\n${text.slice(text.indexOf(end))}`,
    );
  });
