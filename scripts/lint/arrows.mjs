/**
 * The arrows of the house: which folder of src may import which. A rule of our own instead of path patterns, because
 * it resolves the specifier, and so also sees `export … from`, `import()`, types, and any depth of `../`.
 */
import { dirname, relative, resolve } from 'node:path';
import { root } from '../lib/project.mjs';

const engine = ['signal', 'decay', 'resonance', 'room', 'seats', 'diagnosis'];
const reading = [...engine, 'study', 'words', 'draw', 'sheet'];

/**
 * Folder of src to the folders it may import besides itself. Errors and notes live in signal, the base of all.
 * @type {Record<string, string[]>}
 */
export const mayImport = {
  signal: [],
  decay: ['signal'],
  resonance: ['signal', 'decay'],
  room: ['signal'],
  seats: ['signal', 'decay', 'resonance'],
  diagnosis: ['signal', 'decay', 'resonance', 'room', 'seats'],
  study: engine,
  words: [],
  draw: [],
  sheet: ['study', 'words', 'draw'],
  elements: ['study', 'words', 'draw', 'sheet'],
  cli: reading,
  define: ['elements'],
  'engine.ts': engine,
  'index.ts': ['elements', 'study', 'words'],
  'engine-core.ts': engine,
  'bundle.ts': ['define', 'elements', 'study', 'words', 'bundle-figures.ts'],
  'bundle-all.ts': ['define', 'study', 'index.ts'],
  'bundle-de.ts': ['words'],
  'bundle-figures.ts': ['elements', 'study'],
  'bundle-flat.ts': ['define', 'elements', 'study', 'words', 'bundle-figures.ts'],
  'bundle-more.ts': ['define', 'elements', 'words'],
};

/** Packages that only some folders may import; every other folder may not. */
const packageHomes = [
  {
    name: /^(lit|@lit|lit-html|lit-element|@lit-labs)(\/|$)/,
    folders: ['elements', 'draw', 'sheet', 'define'],
  },
  { name: /^three(\/|$)/, folders: ['draw'] },
  { name: /^d3-/, folders: ['draw', 'sheet', 'elements', 'words'] },
  { name: /^fft\.js(\/|$)/, folders: ['signal'] },
  { name: /^jsfive(\/|$)/, folders: ['signal'] },
  { name: /^node:/, folders: ['cli'] },
  { name: /^ringdown(\/|$)/, folders: [] },
];

/**
 * @param {string} file absolute path
 * @returns {string | undefined} the folder of src it lives in, or its own name where it lies in src itself
 */
function folderOf(file) {
  const path = relative(`${root}src`, file).replaceAll('\\', '/');
  if (path.startsWith('..')) return undefined;
  return path.split('/')[0].replace(/\.(js|ts)$/, '.ts');
}

/**
 * @param {string} folder the importing one
 * @param {string} file absolute path of the importing file
 * @param {string} specifier
 * @returns {string | undefined} what is wrong with it
 */
function objection(folder, file, specifier) {
  if (!specifier.startsWith('.')) {
    const home = packageHomes.find(({ name }) => name.test(specifier));
    if (!home || home.folders.includes(folder)) return undefined;
    return `src/${folder} may not import '${specifier}'${home.folders.length ? `; it belongs in ${home.folders.join(', ')}` : ''}.`;
  }
  const target = folderOf(resolve(dirname(file), specifier));
  if (target === undefined) return `src/${folder} may not import '${specifier}', which lies outside src.`;
  if (target === folder) return undefined;
  if (!(folder in mayImport))
    return `src/${folder} has no place among the arrows: add it to scripts/lint/arrows.mjs.`;
  const allowed = mayImport[folder];
  if (allowed.includes(target)) return undefined;
  return `src/${folder} may not import src/${target} (it may import ${allowed.join(', ') || 'nothing of ours'}).`;
}

/** @type {import('eslint').Rule.RuleModule} */
const arrowsRule = {
  meta: { type: 'problem', schema: [], docs: { description: 'imports between folders of src run one way' } },
  create(context) {
    const folder = folderOf(context.filename);
    if (folder === undefined) return {};
    /** @param {import('estree').Node | null | undefined} source */
    const check = (source) => {
      if (source?.type !== 'Literal' || typeof source.value !== 'string') return;
      const message = objection(folder, context.filename, source.value);
      if (message) context.report({ node: source, message });
    };
    return {
      ImportDeclaration: (node) => check(node.source),
      ExportNamedDeclaration: (node) => check(node.source),
      ExportAllDeclaration: (node) => check(node.source),
      ImportExpression: (node) => check(node.source),
      /** `import('x').T` in a type. */
      TSImportType: (/** @type {any} */ node) => check(node.source ?? node.argument?.literal),
    };
  },
};

const timers = ['setTimeout', 'setInterval', 'requestAnimationFrame', 'requestIdleCallback'];
const observers = ['ResizeObserver', 'IntersectionObserver', 'MutationObserver', 'Worker', 'SharedWorker'];

/** What exists only in a page, only in Node, or differs between two runs: the engine knows none of it. */
const hostGlobals = [
  ...[
    'window',
    'document',
    'self',
    'globalThis',
    'navigator',
    'location',
    'localStorage',
    'sessionStorage',
    'indexedDB',
  ],
  ...[
    'fetch',
    'XMLHttpRequest',
    'crypto',
    'customElements',
    'HTMLElement',
    'Element',
    'Event',
    'CustomEvent',
  ],
  ...[
    'EventTarget',
    'OffscreenCanvas',
    'AudioContext',
    'process',
    'Buffer',
    'console',
    ...timers,
    ...observers,
  ],
];

const ownedElsewhere = 'A resource has one owner: take it through src/elements/scope.ts.';
const restrictWorker = {
  selector: "NewExpression[callee.name='Worker']",
  message: 'Workers are made by src/study/pool only.',
};

/**
 * Configurations for src: the arrows, and who may touch what. Needs a TypeScript parser set by the caller.
 * @type {import('eslint').Linter.Config[]}
 */
export const arrows = [
  {
    name: 'house/arrows',
    files: ['src/**/*.ts'],
    plugins: { house: { rules: { arrows: arrowsRule } } },
    rules: {
      'house/arrows': 'error',
      'no-restricted-syntax': ['error', restrictWorker],
    },
  },
  {
    name: 'house/engine',
    files: engine.map((folder) => `src/${folder}/**/*.ts`),
    rules: {
      'no-restricted-globals': [
        'error',
        ...hostGlobals.map((name) => ({
          name,
          message: 'The engine is the same in a page, a worker and Node.',
        })),
      ],
      'no-restricted-properties': [
        'error',
        {
          object: 'Math',
          property: 'random',
          message: 'Take a seeded generator: the same input gives the same study.',
        },
        { object: 'Date', property: 'now', message: 'The same input gives the same study.' },
      ],
    },
  },
  {
    name: 'house/one-owner',
    files: ['src/elements/**/*.ts'],
    ignores: ['src/elements/scope.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...[...timers, 'addEventListener'].map((name) => ({ name, message: ownedElsewhere })),
      ],
      'no-restricted-syntax': [
        'error',
        restrictWorker,
        {
          selector:
            'CallExpression[callee.property.name=/^(addEventListener|requestAnimationFrame|setTimeout|setInterval)$/]',
          message: ownedElsewhere,
        },
        {
          selector: 'NewExpression[callee.name=/^(Resize|Intersection|Mutation)Observer$/]',
          message: ownedElsewhere,
        },
      ],
    },
  },
  {
    name: 'house/pool',
    files: ['src/study/pool.ts', 'src/study/pool/**/*.ts'],
    rules: { 'no-restricted-syntax': 'off' },
  },
];
