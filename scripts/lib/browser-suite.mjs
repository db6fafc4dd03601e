import { existsSync, readFileSync } from 'node:fs';
import { requireBrowser } from './browser.mjs';
import { runTool } from './project.mjs';

/**
 * Runs web-test-runner in Chromium and counts. A run that ends without counts, or without one test, is a failure.
 * @param {string} name
 * @param {string} summary file for the counts
 * @param {string[]} filters
 * @returns {Promise<import('./tally.mjs').Suite>}
 */
export async function browserSuite(name, summary, filters) {
  const browser = requireBrowser();
  const code = await runTool('@web/test-runner/dist/bin.js', ['--config', 'web-test-runner.config.mjs'], {
    RINGDOWN_CHROMIUM: browser,
    RINGDOWN_BROWSER_SUMMARY: summary,
    RINGDOWN_FILTERS: filters.join(' '),
  });
  if (!existsSync(summary)) return { name, passed: 0, failed: filters.length > 0 ? 0 : 1, skipped: 0 };
  const counts = JSON.parse(readFileSync(summary, 'utf8'));
  if (counts.failed === 0 && (code !== 0 || counts.passed === 0)) counts.failed = 1;
  return { name, ...counts };
}
