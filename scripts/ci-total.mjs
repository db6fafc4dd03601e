/** The closing line of CI: `node scripts/ci-total.mjs STATUS SUMMARY.json …`. A run without a summary is a failure. */
import { existsSync, readFileSync } from 'node:fs';
import { countsLine, printFailures, sum } from './lib/tally.mjs';

const [status, ...files] = process.argv.slice(2);
const suites = files.flatMap((file) =>
  existsSync(file)
    ? JSON.parse(readFileSync(file, 'utf8'))
    : [{ name: file, passed: 0, failed: 1, skipped: 0 }],
);
const total = sum(suites);
if (status !== '0' && total.failed === 0) total.failed = 1;
printFailures(suites);
console.log(countsLine(total));
process.exitCode = total.failed === 0 ? 0 : 1;
