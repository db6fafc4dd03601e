import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { runs, withRuns } from '../../scripts/reliability.mjs';

const page = readFileSync(fileURLToPath(new URL('../../docs/reliability.md', import.meta.url)), 'utf8');

it('the table of what was tried has a row for every run, from the last line of its log', () => {
  for (const [what] of Object.values(runs)) expect(page).toContain(`| ${what} `);
  const told = withRuns(page, 'noise\nfuzz: 1 inputs, 0 found\nfuzz: 2 inputs, 0 found\n');
  expect(told).toContain('| 2 inputs, 0 found |');
  // What is not in the logs stays as it was.
  const row = (text: string, what: string): string =>
    text
      .split('\n')
      .find((line) => line.startsWith(`| ${what}`))!
      .replace(/\s+/g, ' ');
  expect(row(told, runs.numbers[0])).toBe(row(page, runs.numbers[0]));
});
