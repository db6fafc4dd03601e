/**
 * Small modules in the place of sources: what a file takes from another file that is on the page already.
 */
import { resolve } from 'node:path';
import { build } from './bundling.mjs';
import { root } from './project.mjs';

/** @typedef {Map<string, string[]>} Names names by source, relative to the project */

/**
 * @typedef {object} Shims
 * @property {(file: string) => boolean} has whether a source, relative to the project, is replaced
 * @property {(file: string, name: string) => string} valueOf a call that gives one of its names
 * @property {string} [head] of each such module
 */

/**
 * @param {Names} names
 * @param {Shims} shims
 * @returns {import('esbuild').Plugin}
 */
export function shimPlugin(names, { has, valueOf, head = '' }) {
  const namespace = 'shim';
  return {
    name: 'shims',
    setup(plugins) {
      plugins.onResolve({ filter: /.*/ }, async ({ path, resolveDir, kind, importer, pluginData }) => {
        if (pluginData === namespace || kind === 'entry-point' || /^[\w-]+:/.test(path)) return undefined;
        const file = await sourceOf(plugins, path, resolveDir, kind, importer, namespace);
        return file !== undefined && has(file)
          ? { path: file, namespace, sideEffects: false, pluginData: undefined }
          : undefined;
      });
      plugins.onLoad({ filter: /.*/, namespace }, ({ path }) => ({
        loader: 'js',
        resolveDir: root,
        contents: [
          head,
          // As a call without side effects, so that what is not used is left out.
          ...(names.get(path) ?? []).map((name) =>
            name === 'default'
              ? `export default /* @__PURE__ */ ${valueOf(path, name)};`
              : `export const ${name} = /* @__PURE__ */ ${valueOf(path, name)};`,
          ),
        ].join('\n'),
      }));
    },
  };
}

/**
 * @param {import('esbuild').PluginBuild} plugins
 * @param {string} path
 * @param {string} resolveDir
 * @param {import('esbuild').ImportKind} kind
 * @param {string} importer
 * @param {string} mark
 * @returns {Promise<string | undefined>} the source that an import names, relative to the project
 */
async function sourceOf(plugins, path, resolveDir, kind, importer, mark) {
  if (path.startsWith('.')) {
    const full = resolve(resolveDir, path).replaceAll('\\', '/');
    if (full.startsWith(`${root}src/`)) return full.slice(root.length).replace(/\.js$/, '.ts');
  }
  const found = await plugins.resolve(path, { resolveDir, kind, importer, pluginData: mark });
  const full = found.path.replaceAll('\\', '/');
  return full.startsWith(root) ? full.slice(root.length) : undefined;
}

/**
 * @param {import('esbuild').BuildOptions} common
 * @param {string[]} files relative to the project
 * @returns {Promise<Names>} what each exports
 */
export async function exportedNames(common, files) {
  const { metafile } = await build({
    ...common,
    write: false,
    metafile: true,
    entryPoints: files,
    outdir: 'names',
    outbase: '.',
    splitting: true,
  });
  return new Map(
    Object.values(metafile.outputs).flatMap(({ entryPoint, exports }) =>
      entryPoint ? [/** @type {[string, string[]]} */ ([entryPoint, exports])] : [],
    ),
  );
}

/** In a text, the place of a name that is taken from a source. */
const mark = 'TAKEN_FROM';

/** @param {string} file @param {string} name */
export const taking = (file, name) => `${mark}('${file}', '${name}')`;

/**
 * @param {string} text built with `taking`, not minified
 * @returns {Names} what is left of it once all that is not used has been left out
 */
export function takenIn(text) {
  /** @type {Names} */
  const taken = new Map();
  for (const [, file, name] of text.matchAll(
    new RegExp(`${mark}\\(["']([^"']+)["'], ["']([^"']+)["']\\)`, 'g'),
  ))
    taken.set(file, [...new Set([...(taken.get(file) ?? []), name])].sort());
  return taken;
}

/** @param {Names[]} lists @returns {Names} */
export function together(...lists) {
  /** @type {Names} */
  const all = new Map();
  for (const list of lists)
    for (const [file, names] of list)
      all.set(file, [...new Set([...(all.get(file) ?? []), ...names])].sort());
  return new Map([...all].sort(([a], [b]) => (a < b ? -1 : 1)));
}
