/**
 * `npm test`: installs what is missing, then types, lint and format, the build, the engine's tests in Node and the
 * elements' tests in Chromium. Words after `--` narrow both suites to files whose path holds them.
 */
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root, runTool, script } from './lib/project.mjs';
import { provideScipyPython } from './lib/python.mjs';
import { close } from './lib/tally.mjs';
import { vitestSuite } from './lib/vitest-suite.mjs';
import { setup } from './setup.mjs';

/**
 * A step that passes or fails as a whole counts as one test.
 * @param {string} name
 * @param {() => Promise<number>} step
 */
async function step(name, step) {
  console.log(`\n── ${name}`);
  const code = await step();
  return { name, passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 };
}

/** @param {string} pattern end of a file name */
function anyFile(pattern) {
  return readdirSync(`${root}tests`, { recursive: true }).some((name) => String(name).endsWith(pattern));
}

async function main() {
  await setup();
  const filters = process.argv.slice(2);
  const folder = mkdtempSync(join(tmpdir(), 'ringdown-test-'));
  const python = provideScipyPython();
  if (!python) {
    console.log(
      'No Python with SciPy was found: the comparisons with SciPy are skipped. RINGDOWN_PYTHON names one.',
    );
  }
  const suites = [];
  try {
    if (filters.length === 0) {
      suites.push(await step('types', () => runTool('typescript/bin/tsc', ['-p', 'tsconfig.json'])));
      suites.push(
        await step('types of scripts', () => runTool('typescript/bin/tsc', ['-p', 'tsconfig.scripts.json'])),
      );
      suites.push(await step('lint', () => runTool('eslint/bin/eslint.js', ['.', '--max-warnings', '0'])));
      suites.push(
        await step('format', () =>
          runTool('prettier/bin/prettier.cjs', ['--check', '--log-level=warn', '.']),
        ),
      );
    }
    if (existsSync(`${root}src/bundle.ts`)) {
      const { buildProject } = await import('./build.mjs');
      suites.push(
        await step('build', () =>
          buildProject().then(
            () => 0,
            (error) => (console.error(error.message), 1),
          ),
        ),
      );
    }
    console.log('\n── engine, in Node');
    suites.push(
      await vitestSuite('engine, in Node', 'vitest.config.ts', join(folder, 'node.json'), filters, python),
    );
    if (anyFile('.browser.test.ts')) {
      console.log('\n── elements, in Chromium');
      const { browserSuite } = await import('./lib/browser-suite.mjs');
      suites.push(await browserSuite('elements, in Chromium', join(folder, 'browser.json'), filters));
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return close('npm test', suites);
}

await script(main);
