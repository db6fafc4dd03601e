import { writeFileSync } from 'node:fs';

/**
 * @typedef {{ name: string, passed: number, failed: number, skipped: number, failures?: string[] }} Suite
 */

/**
 * "12 passed, 0 failed", and the skipped where there are any.
 * @param {{ passed: number, failed: number, skipped: number }} counts
 */
export function countsLine({ passed, failed, skipped }) {
  return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;
}

/**
 * @param {Suite[]} suites
 */
export function sum(suites) {
  const total = { passed: 0, failed: 0, skipped: 0 };
  for (const suite of suites) {
    total.passed += suite.passed;
    total.failed += suite.failed;
    total.skipped += suite.skipped;
  }
  return total;
}

/**
 * What failed, by name: printed last, since the end of a log is what is read.
 * @param {Suite[]} suites
 */
export function printFailures(suites) {
  for (const { name, failures = [] } of suites)
    for (const failure of failures) console.log(`failed in ${name}: ${failure.slice(0, 500)}`);
}

/**
 * Prints a line per suite and the closing line. Where another program adds these suites to its own (RINGDOWN_SUMMARY
 * names a file), the counts go there and the closing line bears a name, so that only one such line ends the whole.
 * @param {string} name of the whole
 * @param {Suite[]} suites
 * @returns {number} exit status
 */
export function close(name, suites) {
  const total = sum(suites);
  console.log('');
  printFailures(suites);
  for (const suite of suites) console.log(`${suite.name}: ${countsLine(suite)}`);
  const summaryFile = process.env.RINGDOWN_SUMMARY;
  if (summaryFile) writeFileSync(summaryFile, JSON.stringify(suites));
  console.log(summaryFile ? `${name}, all suites: ${countsLine(total)}` : countsLine(total));
  return total.failed === 0 && total.passed > 0 ? 0 : 1;
}
