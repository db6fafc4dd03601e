import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';
import { arrows, mayImport } from '../../scripts/lint/arrows.mjs';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Only the house's rules, so that files which do not exist can be judged without type information. */
const eslint = new ESLint({
  cwd: root,
  overrideConfigFile: true,
  overrideConfig: [{ files: ['**/*.ts'], languageOptions: { parser: tseslint.parser } }, ...arrows],
});

async function complaints(filePath: string, text: string): Promise<string[]> {
  const [result] = await eslint.lintText(text, { filePath: root + filePath });
  return result.messages.map((message) => message.ruleId ?? `not linted: ${message.message}`);
}

const fileIn = (folder: string) => (folder.endsWith('.ts') ? `src/${folder}` : `src/${folder}/virtual.ts`);
const specifierOf = (from: string, to: string) =>
  `${from.endsWith('.ts') ? './' : '../'}${to.endsWith('.ts') ? to.replace('.ts', '.js') : `${to}/virtual.js`}`;

const folders = Object.keys(mayImport);

describe('the arrows between the folders of src', () => {
  it.each(folders)('let %s import what it may, and nothing else of ours', async (from) => {
    for (const to of folders.filter((folder) => folder !== from)) {
      const found = await complaints(fileIn(from), `export * from '${specifierOf(from, to)}';`);
      expect(found, `${from} imports ${to}`).toEqual(mayImport[from].includes(to) ? [] : ['house/arrows']);
    }
  });

  it('never run back: no folder may import one that leads to it', () => {
    const reachable = (from: string): string[] => mayImport[from].flatMap((to) => [to, ...reachable(to)]);
    for (const from of folders) expect(reachable(from)).not.toContain(from);
  });

  it.each([
    ["import type { A } from '../study/a.js'; export type B = A;", 'a type import'],
    ["export type B = import('../study/a.js').A;", 'an import type'],
    ["export const b = () => import('../study/a.js');", 'a dynamic import'],
    ["export { a } from '../study/a.js';", 'a re-export'],
    ["export * as a from '../study/deep/a.js';", 'a namespace re-export'],
    ["import '../decay/../study/a.js';", 'a detour'],
    ["import 'ringdown/engine';", 'the package by its own name'],
  ])('see through %s', async (text) => {
    expect(await complaints('src/decay/virtual.ts', text)).toEqual(['house/arrows']);
  });

  it('see how deep an element lies', async () => {
    const file = 'src/elements/waterfall/virtual.ts';
    expect(await complaints(file, "import '../scope.js'; import '../../study/a.js';")).toEqual([]);
    expect(await complaints(file, "import '../../decay/a.js';")).toEqual(['house/arrows']);
  });

  it('refuse a folder that has no place in the design', async () => {
    expect(await complaints('src/misc/virtual.ts', "import '../signal/a.js';")).toEqual(['house/arrows']);
  });
});

describe('what a folder may touch', () => {
  it.each([
    ['src/signal/virtual.ts', "import 'lit';", 'house/arrows'],
    ['src/room/virtual.ts', "import 'three';", 'house/arrows'],
    ['src/elements/virtual.ts', "import 'three';", 'house/arrows'],
    ['src/decay/virtual.ts', "import 'fft.js';", 'house/arrows'],
    ['src/study/virtual.ts', "import 'node:fs';", 'house/arrows'],
    ['src/decay/virtual.ts', 'document.title;', 'no-restricted-globals'],
    ['src/resonance/virtual.ts', 'setTimeout(() => {});', 'no-restricted-globals'],
    ['src/room/virtual.ts', 'export const a = Math.random();', 'no-restricted-properties'],
    ['src/elements/virtual.ts', "this.addEventListener('x', f);", 'no-restricted-syntax'],
    ['src/elements/virtual.ts', 'setTimeout(f);', 'no-restricted-globals'],
    ['src/elements/virtual.ts', 'requestAnimationFrame(f);', 'no-restricted-globals'],
    ['src/elements/virtual.ts', 'new ResizeObserver(f);', 'no-restricted-syntax'],
    ['src/elements/virtual.ts', "new Worker('x');", 'no-restricted-syntax'],
    ['src/study/virtual.ts', "new Worker('x');", 'no-restricted-syntax'],
  ])('%s may not: %s', async (file, text, rule) => {
    expect(await complaints(file, text)).toEqual([rule]);
  });

  it.each([
    ['src/draw/virtual.ts', "import 'three';"],
    ['src/elements/virtual.ts', "import 'lit'; import '@lit/context';"],
    ['src/signal/virtual.ts', "import 'fft.js';"],
    ['src/cli/virtual.ts', "import 'node:fs'; import '../signal/a.js'; console.log(process.argv);"],
    ['src/elements/scope.ts', "target.addEventListener('x', f); new ResizeObserver(f); setTimeout(f);"],
    ['src/study/pool.ts', "new Worker(new URL('./worker.js', import.meta.url));"],
  ])('%s may: %s', async (file, text) => {
    expect(await complaints(file, text)).toEqual([]);
  });
});

describe('npm run lint', () => {
  it.each(folders)('holds the arrows of %s', async (folder) => {
    const config = (await new ESLint({ cwd: root }).calculateConfigForFile(root + fileIn(folder))) as {
      rules: Record<string, [number]>;
    };
    expect(config.rules['house/arrows'][0]).toBe(2);
  });
});
