/**
 * Builds dist: one module per source file by tsc, so that pages and bundlers take only what they use and see the
 * worker's URL as written; then the files that must stand alone. Made in a folder of its own and put in place whole,
 * so that a failed build leaves the last good one. `--force` builds although nothing changed.
 */
import { chmod, mkdir, readFile, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { Complaint, root, runTool, script } from './lib/project.mjs';
import { treeHash } from './lib/tree-hash.mjs';
import { setup } from './setup.mjs';

const required = [
  ...[
    'index.ts',
    'engine.ts',
    'engine-core.ts',
    'define/index.ts',
    'bundle.ts',
    'bundle-flat.ts',
    'bundle-more.ts',
    'bundle-all.ts',
    'bundle-de.ts',
    'cli/main.ts',
  ],
  ...['study/worker.ts', 'study/worker-inline.ts', 'signal/vendor/fft.ts'],
  ...['study/sofa-worker.ts', 'study/sofa-worker-inline.ts'],
];
const inputs = [
  'src',
  'scripts/build.mjs',
  'scripts/lib',
  'tsconfig.json',
  'tsconfig.build.json',
  'package-lock.json',
];
const stampFile = `${root}dist/.stamp`;

/** @param {{ force?: boolean }} [options] */
export async function buildProject({ force = false } = {}) {
  await setup();
  const missing = required.filter((file) => !existsSync(`${root}src/${file}`));
  if (missing.length > 0) {
    throw new Complaint(`The build needs these files, which are not there: src/${missing.join(', src/')}.`);
  }
  const stamp = treeHash(inputs);
  if (!force && existsSync(stampFile) && (await readFile(stampFile, 'utf8')) === stamp) {
    console.log('dist is up to date.');
    return;
  }
  const begin = performance.now();
  const folder = `.dist-${process.pid}`;
  try {
    await mkdir(root + folder);
    const { bundleStandalone, checkEntries } = await import('./lib/standalone.mjs');
    const types = await runTool('typescript/bin/tsc', ['-p', 'tsconfig.build.json', '--outDir', folder]);
    if (types !== 0) throw new Complaint('The build stopped: the sources have the type errors above.');
    await bundleStandalone(root + folder);
    await checkEntries(root + folder);
    await makeExecutable(`${root}${folder}/cli/main.js`);
    await writeFile(`${root}${folder}/.stamp`, stamp);
    await rm(`${root}dist`, { recursive: true, force: true });
    await rename(root + folder, `${root}dist`);
  } finally {
    await rm(root + folder, { recursive: true, force: true });
  }
  const count = (await readdir(`${root}dist`, { recursive: true })).filter((name) =>
    name.endsWith('.js'),
  ).length;
  console.log(`Built dist: ${count} modules in ${((performance.now() - begin) / 1000).toFixed(1)} s.`);
}

/** @param {string} file gets the line by which a shell finds Node, and the right to be run */
async function makeExecutable(file) {
  const text = await readFile(file, 'utf8');
  if (!text.startsWith('#!')) await writeFile(file, `#!/usr/bin/env node\n${text}`);
  await chmod(file, 0o755);
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  await script(() => buildProject({ force: process.argv.includes('--force') }));
}
