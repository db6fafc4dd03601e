import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { esbuildPlugin } from '@web/dev-server-esbuild';
import { defaultReporter } from '@web/test-runner';
import { playwrightLauncher } from '@web/test-runner-playwright';
import { build } from 'esbuild';
import { browserArguments, requireBrowser } from './scripts/lib/browser.mjs';

const root = fileURLToPath(new URL('.', import.meta.url));
const filters = (process.env.RINGDOWN_FILTERS ?? '').split(' ').filter(Boolean);

const testFiles = readdirSync(`${root}tests`, { recursive: true })
  .map((name) => `tests/${String(name)}`)
  .filter((name) => name.endsWith('.browser.test.ts'))
  .filter((name) => filters.length === 0 || filters.some((filter) => name.includes(filter)));
const flat = testFiles.filter((name) => name.endsWith('.nogl.browser.test.ts'));
const full = testFiles.filter((name) => !flat.includes(name));

/** fft.js is CommonJS; a browser takes ES modules only. @type {import('@web/dev-server-core').Plugin} */
const commonJs = {
  name: 'common-js',
  async serve({ path }) {
    if (!path.endsWith('/node_modules/fft.js/lib/fft.js')) return;
    const made = await build({ entryPoints: [root + path], bundle: true, format: 'esm', write: false });
    return { body: made.outputFiles[0].text, type: 'js' };
  },
};

/**
 * `new URL('./worker.js', import.meta.url)` names what the build makes of worker.ts.
 * @type {import('@web/dev-server-core').Middleware}
 */
const sourceOfWorker = (context, next) => {
  const source = context.path.replace(/\.js$/, '.ts');
  if (
    source !== context.path &&
    !context.path.includes('node_modules') &&
    !existsSync(root + context.path) &&
    existsSync(root + source)
  )
    context.url = context.url.replace(/\.js(?=$|\?)/, '.ts');
  return next();
};

/**
 * Counts for `npm test`.
 * @returns {import('@web/test-runner').Reporter}
 */
function summaryReporter() {
  return {
    onTestRunFinished({ sessions }) {
      const counts = {
        passed: 0,
        failed: 0,
        skipped: 0,
        failures: /** @type {string[]} */ ([]),
        failedFiles: /** @type {string[]} */ ([]),
      };
      const count = (/** @type {import('@web/test-runner').TestSuiteResult} */ suite, path = '') => {
        const name = [path, suite.name].filter(Boolean).join(': ');
        for (const test of suite.tests) {
          counts[test.skipped ? 'skipped' : test.passed ? 'passed' : 'failed']++;
          if (!test.skipped && !test.passed)
            counts.failures.push(`${name}: ${test.name}: ${test.error?.message ?? 'no reason given'}`);
        }
        for (const inner of suite.suites) count(inner, name);
      };
      for (const session of sessions) {
        const file = String(session.testFile).replace(root, '');
        if (session.testResults) count(session.testResults, file);
        if (!session.passed && !session.testResults) {
          counts.failed++;
          counts.failures.push(`${file}: ${session.errors[0]?.message ?? 'it did not run'}`);
        }
        if (!session.passed) counts.failedFiles.push(file);
      }
      if (process.env.RINGDOWN_BROWSER_SUMMARY)
        writeFileSync(process.env.RINGDOWN_BROWSER_SUMMARY, JSON.stringify(counts));
    },
  };
}

const chromium = (/** @type {string[]} */ args) =>
  playwrightLauncher({
    product: 'chromium',
    launchOptions: { executablePath: requireBrowser(), args: [...browserArguments, ...args] },
  });

export default {
  rootDir: root,
  nodeResolve: true,
  concurrency: 1,
  testFramework: { config: { timeout: '30000' } },
  testsFinishTimeout: 300000,
  middleware: [sourceOfWorker],
  plugins: [commonJs, esbuildPlugin({ ts: true, tsconfig: `${root}tsconfig.json`, target: 'es2022' })],
  reporters: [defaultReporter(), summaryReporter()],
  groups: [
    ...(full.length ? [{ name: 'with WebGL', files: full, browsers: [chromium([])] }] : []),
    ...(flat.length
      ? [{ name: 'without WebGL', files: flat, browsers: [chromium(['--disable-3d-apis'])] }]
      : []),
  ],
};
