/**
 * The engine once in a file that holds all. A worker needs its code as text, a page without workers needs it as code:
 * kept twice it would be half of the file. So everything the worker is made of becomes one function that knows nothing
 * around it; the page calls it, and the worker's text is the function's own.
 */
import { resolve } from 'node:path';
import { build } from './bundling.mjs';
import { root } from './project.mjs';
import { exportedNames } from './shims.mjs';

const namespace = 'engine-once';
const functionName = 'function';

/** @param {string} path */
const isOurs = (path) => path.startsWith('src/') && !path.startsWith('src/study/worker');

/** @typedef {import('./shims.mjs').Names} Names */

/**
 * @param {import('esbuild').BuildOptions} common
 * @param {string[]} workerInputs sources of the worker, relative to the project
 * @param {string} entry of the page
 * @returns {Promise<import('esbuild').Plugin>} for the build of that entry
 */
export async function engineOnce(common, workerInputs, entry) {
  const all = await exportedNames(common, workerInputs.filter(isOurs));
  const taken = await takenNames(common, all, entry);
  const files = [...taken.keys()];
  const source = [
    ...files.map(
      (file, k) => `export { ${list(taken, file, (name) => `${name} as ${name}_${k}`)} } from './${file}';`,
    ),
    "import { startJob, transferables } from './src/study/jobs.ts';",
    "import { serve } from './src/study/worker-host.ts';",
    'export const serveAll = (port) => serve(port, { start: startJob, transferables });',
  ].join('\n');
  const made = await build({
    ...common,
    minify: true,
    write: false,
    format: 'iife',
    globalName: 'parts',
    stdin: { contents: source, resolveDir: root, loader: 'ts', sourcefile: 'engine-once.ts' },
  });
  const text = made.outputFiles?.[0].text ?? '';
  // A string of the function's text would be the code twice again: the function is asked for its own.
  const once = [
    `function engine() { ${text}; return parts; }`,
    'export const parts = engine();',
    'export const workerText = `(${engine})().serveAll(self)`;',
  ].join('\n');
  return shims(all, once, (file, name) => `parts.${name}_${files.indexOf(file)}`);
}

/**
 * @param {Names} names
 * @param {string} file
 * @param {(name: string) => string} text
 */
const list = (names, file, text) => (names.get(file) ?? []).map(text).join(', ');

/**
 * Puts small modules in the place of the worker's sources.
 * @param {Names} all
 * @param {string} once the module with the function
 * @param {(file: string, name: string) => string} valueOf what a name of a source is made of
 * @returns {import('esbuild').Plugin}
 */
function shims(all, once, valueOf) {
  return {
    name: 'engine-once',
    setup({ onResolve, onLoad }) {
      onResolve({ filter: /^engine-once:/ }, () => ({ path: functionName, namespace }));
      onResolve({ filter: /^\./ }, ({ path, resolveDir }) => {
        const file = sourceOf(path, resolveDir);
        return file !== undefined && all.has(file)
          ? { path: file, namespace, sideEffects: false }
          : undefined;
      });
      onLoad({ filter: /.*/, namespace }, ({ path }) => ({
        loader: 'js',
        contents:
          path === functionName
            ? once
            : [
                `import { parts } from 'engine-once:${functionName}';`,
                // As a call without side effects, so that what the page does not use is left out.
                ...(all.get(path) ?? []).map(
                  (name) => `export const ${name} = /* @__PURE__ */ (() => ${valueOf(path, name)})();`,
                ),
              ].join('\n'),
      }));
      onLoad({ filter: /[\\/]study[\\/]worker-inline\.ts$/ }, () => ({
        contents: `import { workerText } from 'engine-once:${functionName}'; export default workerText;`,
        loader: 'js',
        resolveDir: root,
      }));
    },
  };
}

/**
 * @param {string} specifier
 * @param {string} folder
 * @returns {string | undefined} the source it names, relative to the project
 */
function sourceOf(specifier, folder) {
  const path = resolve(folder, specifier).replaceAll('\\', '/');
  return path.startsWith(`${root}src/`) ? path.slice(root.length).replace(/\.js$/, '.ts') : undefined;
}

/**
 * What the page takes from each source of the worker once all that it does not use has been left out.
 * @param {import('esbuild').BuildOptions} common
 * @param {Names} all
 * @param {string} entry
 * @returns {Promise<Names>}
 */
async function takenNames(common, all, entry) {
  const mark = 'TAKEN_FROM_THE_ENGINE';
  const { outputFiles } = await build({
    ...common,
    write: false,
    minify: false,
    entryPoints: [entry],
    outfile: 'taken.js',
    plugins: [
      shims(
        all,
        'export const parts = {}; export const workerText = "";',
        (file, name) => `${mark}('${file}', '${name}')`,
      ),
    ],
  });
  /** @type {Names} */
  const taken = new Map();
  const text = outputFiles?.[0].text ?? '';
  for (const [, file, name] of text.matchAll(
    new RegExp(`${mark}\\(["']([^"']+)["'], ["']([^"']+)["']\\)`, 'g'),
  ))
    taken.set(file, [...new Set([...(taken.get(file) ?? []), name])].sort());
  return taken;
}
