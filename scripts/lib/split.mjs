/**
 * Files for the figures of a page, and one beside them with all else, which is fetched once it is asked for. They are made
 * from the same sources so that nothing stands in both: the second takes from the first what that one holds.
 *
 * The engine of a file of figures is one function, as in the file that holds all (`engine-once.mjs`): the worker's text is
 * its own. What `laterInEngine` names is left out of it: a job that comes to such a place stops with `more-missing`; the
 * pool has the second file fetched, which makes the engine whole, and runs the job again.
 */
import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { build } from './bundling.mjs';
import { Complaint, root } from './project.mjs';
import { exportedNames, shimPlugin, takenIn, taking, together } from './shims.mjs';

/** @typedef {import('./shims.mjs').Names} Names */
/** @typedef {import('esbuild').BuildOptions} Options */
/** @typedef {import('esbuild').Plugin} Plugin */

/** Sources of the engine that no first picture needs. What they export is called and never read. */
export const laterInEngine = [
  ...['room/plan-room', 'room/synth', 'room/pressure', 'diagnosis/fit-room', 'resonance/belonging'],
  ...['signal/text', 'signal/microphone', 'signal/swept'],
  ...['combine', 'listen', 'optimise', 'points', 'repeats', 'residues', 'transfer'].map(
    (name) => `seats/${name}`,
  ),
].map((name) => `src/${name}.ts`);

/** The same of the page. */
export const laterOnPage = ['src/study/system.ts'];

/** Tables of words that nothing in a file of figures says. */
export const laterWords = [
  ...['views-remedy', 'views-sheet', 'views-system', 'views-listen', 'views-recordings', 'views-room'],
  ...['errors-files', 'errors-house', 'errors-seats', 'errors-study', 'errors-command'],
].map((name) => `src/words/en/${name}.ts`);

/** Imported once a surface is seen: one of the files of figures holds them, the other never asks. */
const surfaceModule = /^src\/draw\/(surface|room-view)\.ts$/;

/** @param {string} file barrels hold nothing: what they name is taken from where it is */
const isBarrel = (file) => /\/index\.ts$/.test(file) && !file.includes('/words/');
/** @param {string} file */
const isEngine = (file) => file.startsWith('src/') && !file.startsWith('src/study/worker') && !isBarrel(file);

const notThere = 987654321;

/** @param {Names} names @returns {{ text: string, at: (file: string, name: string) => number }} imports as n0, n1 … */
function numbered(names) {
  const flat = [...names].flatMap(([file, list]) => list.map((name) => ({ file, name })));
  const places = new Map(flat.map(({ file, name }, k) => [`${file} ${name}`, k]));
  return {
    text: [
      ...flat.map(({ file, name }, k) => `import { ${name} as n${k} } from './${file}';`),
      `export const list = [${flat.map((_, k) => `n${k}`).join(', ')}];`,
    ].join('\n'),
    // What is in no list is left out of the file, too; the build looks for this number in what is left.
    at: (file, name) => places.get(`${file} ${name}`) ?? notThere,
  };
}

/** @param {string} text of a list, with the way to one of it */
const withAt = (text) => `${text}\nexport const at = (k) => list[k];`;

/** Modules of the build's own, by what follows `split:` in an import. @param {Record<string, string>} contents @returns {Plugin} */
const ownModules = (contents) => ({
  name: 'split-modules',
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^split:/ }, ({ path }) => ({ path: path.slice(6), namespace: 'split' }));
    onLoad({ filter: /.*/, namespace: 'split' }, ({ path }) => ({
      contents: contents[path],
      loader: 'js',
      resolveDir: root,
    }));
  },
});

/** Puts a text in the place of a source. @param {string} file @param {string} contents @returns {Plugin} */
const instead = (file, contents) => ({
  name: `instead of ${file}`,
  setup({ onLoad }) {
    onLoad({ filter: new RegExp(`${file.replace(/[./]/g, '[./\\\\]')}$`) }, () => ({
      contents,
      loader: 'js',
      resolveDir: root,
    }));
  },
});

/**
 * Dynamic imports of a file of figures: what they name comes from the file beside it.
 *
 * @param {string[]} found grows by what is named, relative to the project
 * @returns {Plugin}
 */
const fromMore = (found) => ({
  name: 'from-more',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]src[\\/].*\.ts$/ }, async ({ path }) => {
      const text = await readFile(path, 'utf8');
      if (!/\bimport\('\./.test(text)) return undefined;
      let contents = text.replace(/\bimport\('(\.[^']+)\.js'\)/g, (whole, /** @type {string} */ name) => {
        const file = `${resolve(dirname(path), name).replaceAll('\\', '/').slice(root.length)}.ts`;
        if (surfaceModule.test(file) || file === 'src/study/worker-inline.ts') return whole;
        if (!found.includes(file)) found.push(file);
        return `fromMore<typeof import('${name}.js')>('${file}')`;
      });
      // What is imported once it is needed is not looked through for what is never used.
      contents = contents.replace("import('./worker-inline.js')", 'Promise.resolve(workerInline)');
      if (contents === text) return undefined;
      return {
        contents: [
          `import { fromMore } from '${root}src/study/more.ts';`,
          `import * as workerInline from '${root}src/study/worker-inline.ts';`,
          contents,
        ].join('\n'),
        loader: 'ts',
        resolveDir: dirname(path),
      };
    });
  },
});

const laterModule = `
import { RingdownError } from './src/signal/errors.ts';
const there = [];
export const provide = (list) => { there.push(...list); };
export const later = (k) => (...args) => {
  if (!there[k]) throw new RingdownError('more-missing', {});
  return there[k](...args);
};`;

/** @param {import('esbuild').Metafile | undefined} metafile @returns {string[]} sources of which something is left */
const usedIn = (metafile) =>
  Object.values(metafile?.outputs ?? {}).flatMap(({ inputs }) =>
    Object.entries(inputs).flatMap(([file, { bytesInOutput }]) => (bytesInOutput > 0 ? [file] : [])),
  );

/** @param {Names} names @param {string[]} files */
const only = (names, files) => new Map([...names].filter(([file]) => files.includes(file)));

/**
 * @typedef {object} Split
 * @property {(k: number) => { contents: string, plugins: Plugin[] }} figures what makes the file of the k-th entry
 * @property {{ contents: string, plugins: Plugin[] }} more what makes the file beside them
 * @property {{ figures: string[], more: string[] }} inside sources in the part of the engine that each holds
 * @property {number} notThere stands in a file that takes what another does not give
 */

/**
 * @param {Options} common
 * @param {object} what
 * @param {string[]} what.workerInputs sources of the worker, relative to the project
 * @param {string[]} what.entries of the files of figures, relative to the project; all that the first holds the others hold too
 * @param {string} what.second the entry of the file beside them
 * @param {string} what.version
 * @param {Plugin[]} what.plugins for all of them
 * @returns {Promise<Split>}
 */
export async function splitFiles(common, { workerInputs, entries, second, version, plugins }) {
  const loose = { ...common, minify: false, write: false };
  /** @param {string} contents @param {Plugin[]} own @param {Options} [options] */
  const inMemory = async (contents, own, options = loose) => {
    const { metafile, outputFiles } = await build({
      ...options,
      write: false,
      plugins: own,
      stdin: { contents, resolveDir: root, loader: 'ts', sourcefile: 'split.ts' },
    });
    return { inputs: usedIn(metafile), text: outputFiles?.[0].text ?? '' };
  };
  const engineFiles = workerInputs.filter(isEngine);
  const engineNames = await exportedNames(common, engineFiles);
  const serving = [
    "import { startJob, transferables } from './src/study/jobs.ts';",
    "import { serve } from './src/study/worker-host.ts';",
    "export { later as called, provide } from 'split:later';",
    'export const serveAll = (port) => serve(port, { start: startJob, transferables });',
  ].join('\n');
  const [laterEngine, laterPage] = [new Set(laterInEngine), new Set(laterOnPage)];
  const ownLater = ownModules({ later: laterModule });

  // What is left of the engine, and what it would call of the rest.
  const bare = await inMemory(serving, [
    ownLater,
    shimPlugin(engineNames, { has: (file) => laterEngine.has(file), valueOf: taking }),
  ]);
  const kept = new Set(bare.inputs.filter(isEngine));
  const inEngine = (/** @type {string} */ file) => engineNames.has(file);

  // What the pages of figures take of the engine, and what they leave to the second file.
  /** @type {string[]} */
  const asked = [];
  const pageNames = await exportedNames(common, laterOnPage);
  const bothNames = together(engineNames, pageNames);
  const wordNames = await exportedNames(common, laterWords);
  const withoutWords = laterWords.map((file) =>
    instead(file, (wordNames.get(file) ?? []).map((name) => `export const ${name} = {};`).join('\n')),
  );
  /** @param {string} also */
  const markedPages = (also = '') =>
    Promise.all(
      entries.map((entry) =>
        inMemory(`export * from './${entry}';\n${also}`, [
          ...withoutWords,
          ...plugins,
          instead('src/study/worker-inline.ts', 'export default "";'),
          shimPlugin(bothNames, { has: (file) => inEngine(file) || laterPage.has(file), valueOf: taking }),
          fromMore(asked),
        ]),
      ),
    );
  const pages = await markedPages();
  const onceTaken = together(...pages.map(({ text }) => takenIn(text)));
  const laterPageNames = numbered(only(onceTaken, laterOnPage));
  // What they use themselves stays with them.
  for (const file of onceTaken.keys()) if (inEngine(file) && !laterEngine.has(file)) kept.add(file);

  // What the second file takes of both.
  const held = pages[0].inputs.filter(
    (file) =>
      !inEngine(file) &&
      !isBarrel(file) &&
      !/^(split|shim):|split\.ts$/.test(file) &&
      !laterWords.includes(file) &&
      !laterPage.has(file) &&
      file !== second,
  );
  const heldNames = await exportedNames(common, held);
  asked.sort();
  const moreSource = [
    `export * from './${second}';`,
    ...asked.map((file, k) => `import * as m${k} from './${file}';`),
    `export const modules = { ${asked.map((file, k) => `'${file}': m${k}`).join(', ')} };`,
  ].join('\n');
  const surface = surfaceFrom('parts.surface');
  const takenByMore = takenIn(
    (
      await inMemory(`${moreSource}\n${laterPageNames.text}`, [
        ...plugins,
        surface,
        ownModules({ parts: 'export const parts = {};' }),
        shimPlugin(together(engineNames, heldNames), {
          has: (file) => inEngine(file) || heldNames.has(file),
          valueOf: taking,
        }),
      ])
    ).text,
  );
  const ofEngine = new Map([...takenByMore].filter(([file]) => inEngine(file)));
  const ofPage = new Map([...takenByMore].filter(([file]) => heldNames.has(file)));
  // What the second file takes is held for it, and takes more of the engine.
  const pageList = numbered(ofPage);
  const byPages = together(onceTaken, ...(await markedPages(pageList.text)).map(({ text }) => takenIn(text)));
  for (const file of byPages.keys()) if (inEngine(file) && !laterEngine.has(file)) kept.add(file);
  const ofKept = new Map([...ofEngine].filter(([file]) => kept.has(file)));
  const ofRest = new Map([...ofEngine].filter(([file]) => !kept.has(file)));

  // The rest of the engine, and what it takes of what is kept.
  const asFar = together(new Map([...byPages].filter(([file]) => kept.has(file))), ofKept);
  const withPages = await inMemory(`${serving}\n${numbered(asFar).text}`, [
    ownLater,
    shimPlugin(engineNames, { has: (file) => laterEngine.has(file), valueOf: taking }),
  ]);
  const called = together(takenIn(withPages.text), only(byPages, laterInEngine));
  await promiseCallable(called);
  const calledList = numbered(called);
  const restList = numbered(ofRest);
  const restSource = [
    withAt(restList.text),
    calledList.text.replaceAll(/\bn(\d+)\b/g, 'c$1').replace('const list', 'const called'),
  ].join('\n');
  const keptNames = new Map([...engineNames].filter(([file]) => kept.has(file)));
  const takenByRest = takenIn(
    (await inMemory(restSource, [shimPlugin(keptNames, { has: (file) => kept.has(file), valueOf: taking })]))
      .text,
  );
  const engineList = numbered(together(asFar, takenByRest));

  const minified = { ...common, minify: true, format: /** @type {const} */ ('iife'), globalName: 'parts' };
  const laterShims = shimPlugin(together(engineNames, pageNames), {
    has: (file) => laterEngine.has(file),
    valueOf: (file, name) => `later(${calledList.at(file, name)})`,
    head: "import { later } from 'split:later';",
  });
  const engine = await inMemory(`${serving}\n${withAt(engineList.text)}`, [ownLater, laterShims], minified);
  const rest = await inMemory(
    restSource,
    [
      shimPlugin(keptNames, {
        has: (file) => kept.has(file),
        valueOf: (file, name) => `core.at(${engineList.at(file, name)})`,
      }),
    ],
    minified,
  );
  const key = `${version}-${createHash('sha256')
    .update([pageList.text, engineList.text, calledList.text, laterPageNames.text].join())
    .digest('hex')
    .slice(0, 8)}`;

  const engineModule = [
    // A string of the function's text would be the code twice again: the function is asked for its own.
    `export function engine() { ${engine.text}; return parts; }`,
    'export const parts = /* @__PURE__ */ engine();',
  ].join('\n');
  const workerModule = [
    "import { engine } from 'split:engine';",
    'let text = `(${engine})().serveAll(self)`;',
    'export { text as default };',
    'export const setText = (whole) => { text = whole; };',
  ].join('\n');
  const partsModule = [
    "import { engine, parts } from 'split:engine';",
    "import { provide } from 'split:later-on-page';",
    "import { setText } from './src/study/worker-inline.ts';",
    withAt(pageList.text),
    "const page = (globalThis[Symbol.for('ringdown.parts')] ??= {});",
    `page['${key}'] ??= { at, engine, parts, provide, setText, surface: SURFACE };`,
  ].join('\n');
  const engineShims = shimPlugin(bothNames, {
    has: (file) => inEngine(file) || laterPage.has(file),
    head: "import { parts } from 'split:engine'; import { later } from 'split:later-on-page';",
    valueOf: (file, name) =>
      laterPage.has(file)
        ? `later(${laterPageNames.at(file, name)})`
        : laterEngine.has(file)
          ? `parts.called(${calledList.at(file, name)})`
          : `parts.at(${engineList.at(file, name)})`,
  });

  return {
    notThere,
    inside: { figures: engine.inputs, more: rest.inputs },
    figures: (k) => ({
      contents: `export * from './${entries[k]}';\nimport 'split:parts';`,
      plugins: [
        ...withoutWords,
        ...plugins,
        instead('src/study/worker-inline.ts', workerModule),
        ownModules({
          engine: engineModule,
          parts: partsModule.replace('SURFACE', k === 0 ? 'null' : "() => import('./src/draw/room-view.ts')"),
          'later-on-page': laterModule,
        }),
        engineShims,
        fromMore([]),
      ],
    }),
    more: {
      contents: `import 'split:provided';\n${moreSource}`,
      plugins: [
        ...plugins,
        surface,
        ownModules({
          parts: [
            `const parts = globalThis[Symbol.for('ringdown.parts')]?.['${key}'];`,
            `if (!parts) throw new Error('ringdown-more.js and the file that asked for it are not of one release.');`,
            `function rest(core) { ${rest.text}; core.provide(parts.called); return parts; }`,
            'export const whole = rest(parts.parts);',
            'parts.setText(`((core) => { (${rest})(core); core.serveAll(self); })((${parts.engine})())`);',
            'export { parts };',
          ].join('\n'),
          provided: [
            "import { parts } from 'split:parts';",
            laterPageNames.text,
            'parts.provide(list);',
          ].join('\n'),
        }),
        shimPlugin(together(engineNames, heldNames), {
          has: (file) => inEngine(file) || heldNames.has(file),
          head: "import { parts, whole } from 'split:parts';",
          valueOf: (file, name) =>
            !inEngine(file)
              ? `parts.at(${pageList.at(file, name)})`
              : kept.has(file)
                ? `parts.parts.at(${engineList.at(file, name)})`
                : `whole.at(${restList.at(file, name)})`,
        }),
      ],
    },
  };
}

/** What is left out is called and never read: a number in its place would be a function. @param {Names} called */
async function promiseCallable(called) {
  const { outputFiles } = await build({
    absWorkingDir: root,
    bundle: true,
    format: 'iife',
    globalName: 'parts',
    write: false,
    stdin: { contents: numbered(called).text, resolveDir: root, loader: 'ts', sourcefile: 'called.ts' },
  });
  const { list } = new Function(`${outputFiles[0].text}; return parts;`)();
  const names = [...called].flatMap(([file, some]) => some.map((name) => `${name} of ${file}`));
  const read = names.filter((_, k) => typeof list[k] !== 'function');
  if (read.length > 0)
    throw new Complaint(`The build stopped: left out of a file, but not a function: ${read.join(', ')}.`);
}

/** In the second file a surface is one that the first holds. @param {string} value @returns {Plugin} */
const surfaceFrom = (value) => ({
  name: 'surface-from-first',
  setup({ onLoad }) {
    onLoad({ filter: /[\\/]pressure-map[\\/]pressure-map\.ts$/ }, async ({ path }) => ({
      contents: `import { parts } from 'split:parts';\n${await readFile(path, 'utf8')}`.replace(
        /import\('\.\.\/\.\.\/draw\/room-view\.js'\)/,
        `${value}()`,
      ),
      loader: 'ts',
      resolveDir: dirname(path),
    }));
  },
});
