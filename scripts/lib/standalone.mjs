/**
 * The files of dist that must stand alone, made by esbuild from the sources, and the promises about who loads what.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { transform } from 'esbuild';
import { build } from './bundling.mjs';
import { engineOnce } from './engine-once.mjs';
import { leanThree } from './lean-three.mjs';
import { isAllowed, licenceOf, licencesText, noticesComment, packagesIn } from './licences.mjs';
import { Complaint, root } from './project.mjs';
import { shrink, shrunkText } from './shrink.mjs';
import { splitFiles } from './split.mjs';

/** @satisfies {import('esbuild').BuildOptions} */
const common = {
  absWorkingDir: root,
  bundle: true,
  format: 'esm',
  target: 'es2022',
  conditions: ['production'],
  legalComments: 'none',
  logLevel: 'error',
  metafile: true,
};

/**
 * @param {string} out absolute path of the folder that holds the modules emitted by tsc
 */
export async function bundleStandalone(out) {
  const worker = await build({
    ...common,
    minify: true,
    write: false,
    entryPoints: ['src/study/worker.ts'],
    platform: 'browser',
  });
  const workerText = (await shrunkText(worker.outputFiles[0].text, 'worker.js')).code;
  const sofaWorker = await build({
    ...common,
    minify: true,
    write: false,
    entryPoints: ['src/study/sofa-worker.ts'],
    platform: 'browser',
  });
  const sofaText = (await shrunkText(sofaWorker.outputFiles[0].text, 'sofa-worker.js')).code;
  const moduleOf = (/** @type {string} */ text) => `export default ${JSON.stringify(text)};\n`;
  for (const [name, text] of [
    ['worker', workerText],
    ['sofa-worker', sofaText],
  ]) {
    await writeFile(`${out}/study/${name}.js`, text);
    await writeFile(`${out}/study/${name}-inline.js`, moduleOf(text));
  }

  /** The stub's place is taken by the worker's text; that of the engine's worker by `engineOnce`. @type {import('esbuild').Plugin} */
  const inlineSofaWorker = {
    name: 'inline-sofa-worker',
    setup({ onLoad }) {
      onLoad({ filter: /[\\/]study[\\/]sofa-worker-inline\.ts$/ }, () => ({
        contents: moduleOf(sofaText),
        loader: 'js',
      }));
    },
  };
  /** A single file requests no code: it knows no language that would have to be fetched. @type {import('esbuild').Plugin} */
  const withoutLanguages = {
    name: 'without-languages',
    setup({ onLoad }) {
      onLoad({ filter: /[\\/]elements[\\/]shared[\\/]language-modules\.ts$/ }, () => ({
        contents: 'export const languageModules = {};',
        loader: 'js',
      }));
    },
  };
  const workerInputs = Object.keys(worker.metafile.inputs);
  const oneFile = {
    ...common,
    minify: true,
    sourcemap: /** @type {const} */ ('linked'),
    sourcesContent: false,
  };
  const plugins = [inlineSofaWorker, withoutLanguages, leanThree()];
  const { version } = JSON.parse(await readFile(`${root}package.json`, 'utf8'));
  const split = await splitFiles(common, {
    ...{ workerInputs, version, plugins, second: 'src/bundle-more.ts' },
    entries: ['src/bundle-flat.ts', 'src/bundle.ts'],
  });
  const oneOf = (
    /** @type {{ contents: string, plugins: import('esbuild').Plugin[] }} */ made,
    /** @type {string} */ file,
  ) =>
    build({
      ...oneFile,
      plugins: [...made.plugins, withoutIndents],
      stdin: { contents: made.contents, resolveDir: root, loader: 'ts', sourcefile: file },
      outfile: `${out}/${file}`,
    });
  const [all, whole, flat, more, german] = await Promise.all([
    build({
      ...oneFile,
      plugins: [...plugins, await engineOnce(common, workerInputs, 'src/bundle-all.ts'), withoutIndents],
      entryPoints: ['src/bundle-all.ts'],
      outfile: `${out}/ringdown-all.js`,
    }),
    oneOf(split.figures(1), 'ringdown.js'),
    oneOf(split.figures(0), 'ringdown-flat.js'),
    oneOf(split.more, 'ringdown-more.js'),
    build({
      ...oneFile,
      entryPoints: ['src/bundle-de.ts'],
      charset: 'utf8',
      outfile: `${out}/ringdown-de.js`,
    }),
    // A CommonJS dependency made a plain module, so that a page without a bundler can load the engine.
    build({
      ...common,
      entryPoints: ['src/signal/vendor/fft.ts'],
      outfile: `${out}/signal/vendor/fft.js`,
      allowOverwrite: true,
    }),
  ]);
  const singles = {
    'ringdown-all.js': all,
    'ringdown.js': whole,
    'ringdown-flat.js': flat,
    'ringdown-more.js': more,
  };
  await Promise.all([...Object.keys(singles), 'ringdown-de.js'].map((file) => shrink(`${out}/${file}`)));
  const sources = (/** @type {string[]} */ files) => ({
    inputs: Object.fromEntries(files.map((file) => [file, {}])),
  });
  const inside = [
    packagesIn([all.metafile, worker.metafile, sofaWorker.metafile]),
    ...[whole, flat].map(({ metafile }) => packagesIn([metafile, sources(split.inside.figures)])),
    packagesIn([more.metafile, sources(split.inside.more), sofaWorker.metafile]),
  ];
  const licences = new Map(inside.flat().map((name) => [name, licenceOf(name)]));
  for (const { name, licence } of licences.values())
    promise(isAllowed(licence), `${name} is under the licence ${licence}, which may not be bundled.`);
  const sorted = [...licences.values()].sort((a, b) => a.name.localeCompare(b.name, 'en'));
  await writeFile(`${out}/LICENSES.txt`, licencesText(sorted));
  for (const [k, file] of Object.keys(singles).entries()) {
    promise(
      !(await readFile(`${out}/${file}`, 'utf8')).includes(String(split.notThere)),
      `dist/${file} takes from another file what that one does not give.`,
    );
    await addNotices(`${out}/${file}`, noticesComment(sorted.filter(({ name }) => inside[k].includes(name))));
  }
  promise(standsAlone(worker.metafile), 'dist/study/worker.js must be one file, but it imports others.');
  for (const [file, { metafile }] of Object.entries(singles))
    promise(standsAlone(metafile), `dist/${file} must be one file, but it imports others.`);
  promise(standsAlone(german.metafile), 'dist/ringdown-de.js must be one file, but it imports others.');
  promise(
    !holds(german.metafile, /words\/en\//),
    'dist/ringdown-de.js must hold German alone, but it holds English too.',
  );
  promise(
    !Object.values(singles).some(({ metafile }) => holds(metafile, /words\/de\//)),
    'The single files must be without German, which is a file of its own.',
  );
  promise(
    ![flat, more].some(({ metafile }) => holds(metafile, /node_modules\/three\//)),
    'dist/ringdown-flat.js and ringdown-more.js must be without three, but one holds it.',
  );
  promise(
    !holds(worker.metafile, /node_modules\/(three|lit|jsfive)\//),
    'The worker must be without three, lit and the HDF5 reader.',
  );
  promise(
    !holds(all.metafile, /node_modules\/jsfive\//),
    'dist/ringdown-all.js must hold the HDF5 reader within the text of its worker only.',
  );
  promise(
    standsAlone(sofaWorker.metafile),
    'dist/study/sofa-worker.js must be one file, but it imports others.',
  );
  promise(
    !holds(sofaWorker.metafile, /node_modules\/(three|lit)\//),
    'The worker for AES69 must be without three and lit.',
  );
}

/** Styles made short, markup and shaders without the indentation of their lines. @type {import('esbuild').Plugin} */
const withoutIndents = {
  name: 'without-indents',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]src[\\/](elements|draw)[\\/].*\.ts$/ }, async ({ path }) => ({
      contents: (await shortStyles(await readFile(path, 'utf8'))).replace(/\n +/g, '\n'),
      loader: 'ts',
    }));
  },
};

/** @param {string} source whose style sheets hold no expression, or stay as they are */
async function shortStyles(source) {
  const sheets = /\bcss`([^`$\\]*)`/g;
  const short = await Promise.all(
    [...source.matchAll(sheets)].map(([, text]) =>
      transform(text, { loader: 'css', minify: true, logLevel: 'error' }),
    ),
  );
  return source.replace(
    sheets,
    () => `css\`${/** @type {{ code: string }} */ (short.shift()).code.trim()}\``,
  );
}

/**
 * Before the line that names the source map, which must be the last.
 * @param {string} file
 * @param {string} notices
 */
async function addNotices(file, notices) {
  const text = await readFile(file, 'utf8');
  const at = text.lastIndexOf('//# sourceMappingURL=');
  await writeFile(file, at < 0 ? text + notices : text.slice(0, at) + notices + text.slice(at));
}

/**
 * The modules that each entry loads before it is asked for more: the engine knows no page, and three comes only with
 * the first visible surface.
 * @param {string} out absolute path of the finished folder
 */
export async function checkEntries(out) {
  const { metafile } = await build({
    ...common,
    entryPoints: ['index.js', 'engine.js', 'engine-core.js', 'define/index.js'].map(
      (entry) => `${out}/${entry}`,
    ),
    outdir: out,
    packages: 'external',
    splitting: true,
    write: false,
  });
  const relative = out.slice(root.length);
  /** @param {string} entry */
  const loads = (entry) => packagesLoadedBy(metafile, `${relative}/${entry}`);
  for (const entry of ['index.js', 'define/index.js']) {
    promise(
      ![...loads(entry)].some((name) => /^three(\/|$)/.test(name)),
      `dist/${entry} must load three only when a surface becomes visible, but it imports three at once.`,
    );
  }
  for (const entry of ['index.js', 'engine.js', 'engine-core.js', 'define/index.js']) {
    promise(
      !filesLoadedBy(metafile, `${relative}/${entry}`).some((file) => /\/words\/de\//.test(file)),
      `dist/${entry} must load German only for a page in German, but it imports it at once.`,
    );
    promise(
      ![...loads(entry)].some((name) => /^jsfive/.test(name)),
      `dist/${entry} must load the HDF5 reader only for a file that needs it, but it imports it at once.`,
    );
  }
  const inEngine = [...loads('engine.js')].filter((name) => /^(three|lit|@lit|node:)/.test(name));
  promise(inEngine.length === 0, `dist/engine.js must know no page, but it imports ${inEngine.join(', ')}.`);
}

/**
 * @param {import('esbuild').Metafile} metafile
 * @param {string} entry
 * @param {Set<string>} [seen]
 * @returns {Set<string>} every package reached by static imports
 */
function packagesLoadedBy(metafile, entry, seen = new Set()) {
  /** @type {Set<string>} */
  const packages = new Set();
  if (seen.has(entry)) return packages;
  seen.add(entry);
  for (const { path, kind, external } of metafile.inputs[entry].imports) {
    if (kind !== 'import-statement') continue;
    if (external) packages.add(path);
    else for (const name of packagesLoadedBy(metafile, path, seen)) packages.add(name);
  }
  return packages;
}

/**
 * @param {import('esbuild').Metafile} metafile
 * @param {string} entry
 * @param {Set<string>} [seen]
 * @returns {string[]} every file reached by static imports
 */
function filesLoadedBy(metafile, entry, seen = new Set()) {
  if (seen.has(entry)) return [];
  seen.add(entry);
  for (const { path, kind, external } of metafile.inputs[entry].imports)
    if (kind === 'import-statement' && !external) filesLoadedBy(metafile, path, seen);
  return [...seen];
}

/** @param {import('esbuild').Metafile} metafile */
function standsAlone(metafile) {
  return Object.values(metafile.outputs).every((output) => output.imports.length === 0);
}

/**
 * @param {import('esbuild').Metafile} metafile
 * @param {RegExp} pattern of the path of a source
 */
function holds(metafile, pattern) {
  return Object.values(metafile.outputs).some(({ inputs }) =>
    Object.entries(inputs).some(([path, { bytesInOutput }]) => bytesInOutput > 0 && pattern.test(path)),
  );
}

/**
 * @param {boolean} kept
 * @param {string} sentence
 */
function promise(kept, sentence) {
  if (!kept) throw new Complaint(`The build stopped: ${sentence}`);
}
