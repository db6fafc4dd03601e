import { existsSync, readFileSync } from 'node:fs';
import { root, runTool } from './project.mjs';

/**
 * Runs vitest and counts. A run that ends without counts, or without one test, is a failure.
 * @param {string} name
 * @param {string} config
 * @param {string} summary file for vitest's JSON
 * @param {string[]} filters
 * @param {string | undefined} python with SciPy
 * @returns {Promise<import('./tally.mjs').Suite>}
 */
export async function vitestSuite(name, config, summary, filters, python) {
  const code = await runTool(
    'vitest/vitest.mjs',
    [
      'run',
      '--config',
      config,
      '--reporter=dot',
      '--reporter=json',
      `--outputFile.json=${summary}`,
      ...filters,
    ],
    python ? { RINGDOWN_PYTHON: python } : {},
  );
  if (!existsSync(summary)) return { name, passed: 0, failed: 1, skipped: 0 };
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(
    readFileSync(summary, 'utf8'),
  );
  const broken = numFailedTests === 0 && (code !== 0 || numPassedTests === 0) ? 1 : 0;
  return {
    name,
    passed: numPassedTests,
    failed: numFailedTests + broken,
    skipped: numPendingTests + numTodoTests,
    failures: failuresOf(testResults),
  };
}

/**
 * One line per test that failed: its file, its name and the first line of the reason.
 * @param {{ name: string, status: string, message?: string, assertionResults: { status: string, fullName: string,
 *   failureMessages?: string[] }[] }[]} files
 */
function failuresOf(files) {
  return files.flatMap(({ name, status, message, assertionResults }) => {
    const file = name.replace(root, '');
    const failed = assertionResults.filter((test) => test.status === 'failed');
    if (failed.length === 0 && status === 'failed') return [`${file}: ${firstLine(message)}`];
    return failed.map((test) => `${file}: ${test.fullName}: ${firstLine(test.failureMessages?.[0])}`);
  });
}

/** @param {string | undefined} text */
const firstLine = (text) => text?.split('\n')[0] || 'no reason given';
