import { existsSync, readFileSync, rmSync } from 'node:fs';
import { requireBrowser } from './browser.mjs';
import { runTool } from './project.mjs';

/**
 * Runs web-test-runner in Chromium and counts. A run that ends without counts, or without one test, is a failure.
 * Files that fail are run once more, alone, on a machine that is quiet by then; what failed at first is printed either
 * way, so that a test that hangs on the clock is seen and not only forgiven.
 * @param {string} name
 * @param {string} summary file for the counts
 * @param {string[]} filters
 * @returns {Promise<import('./tally.mjs').Suite>}
 */
export async function browserSuite(name, summary, filters) {
  const first = await run(summary, filters);
  if (!first) return { name, passed: 0, failed: filters.length > 0 ? 0 : 1, skipped: 0 };
  if (first.failedFiles.length === 0 || first.failedFiles.length > 4) return { name, ...first };
  console.log(`\nFailed at first, and run once more:\n${first.failures.join('\n')}`);
  const second = await run(summary, first.failedFiles);
  if (!second) return { name, ...first };
  const again = first.failed - second.failed;
  return { ...first, name, passed: first.passed + again, failed: second.failed, failures: second.failures };
}

/**
 * @param {string} summary
 * @param {string[]} filters
 */
async function run(summary, filters) {
  const browser = requireBrowser();
  rmSync(summary, { force: true });
  const code = await runTool('@web/test-runner/dist/bin.js', ['--config', 'web-test-runner.config.mjs'], {
    RINGDOWN_CHROMIUM: browser,
    RINGDOWN_BROWSER_SUMMARY: summary,
    RINGDOWN_FILTERS: filters.join(' '),
  });
  if (!existsSync(summary)) return undefined;
  const counts = JSON.parse(readFileSync(summary, 'utf8'));
  if (counts.failed === 0 && (code !== 0 || counts.passed === 0)) counts.failed = 1;
  return counts;
}
