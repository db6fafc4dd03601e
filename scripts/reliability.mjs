/**
 * `npm run reliability -- LOG…`: puts the figures that bounded runs printed into the table of docs/reliability.md, each under
 * its own name. A log is what a run printed: `npm run fuzz > fuzz.log`, `npm run load > load.log`.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { Complaint, root, script } from './lib/project.mjs';

const page = `${root}docs/reliability.md`;
const marks = ['<!-- runs -->', '<!-- /runs -->'];

/** What was tried, by the word that begins its line, and the command that tries it again. */
export const runs = {
  fuzz: ['made and damaged inputs to every reader', '`npm run fuzz`'],
  command: ['a thousand files in one call, one of them broken', '`npm run load -- command`'],
  long: ['half an hour of eight channels', '`npm run load -- long`'],
  page: ['64 recordings of 10 s at 96 kHz on one page', '`npm run load -- page`'],
  views: ['the same beside nine views, and kept in the browser', '`npm run load -- views`'],
  races: [
    'src changed 100 times in a second, removed, moved, hidden, printed, adopted, crashed, out of memory, lost context, behind other tabs',
    '`npm test -- races`',
  ],
  asleep: ['a page put to sleep while it computes', '`npm run test:wide -- lifecycles`'],
  leaks: ['300 rounds of everything, garbage collected', '`npm run test:wide -- leaks`'],
  numbers: ['any room, rate, length and scale', '`npm run test:wide -- numbers`'],
  engines: ['the main path and 24 surfaces in three engines', '`npm run test:wide -- engines`'],
  'same-bits': ['the same input in Node and three engines', '`npm run test:wide -- same-bits`'],
  model: ['random steps beside a simple model', '`npm test -- model`'],
  audit: ['known weaknesses of what ships', '`npm run audit`'],
};

/** Test runners set a line in, and colour it. @param {string} line */
// eslint-disable-next-line no-control-regex -- that is what colours are
const plain = (line) => line.replace(/\x1b\[[\d;]*m/g, '').trim();

/**
 * The last line of each name; what stood in the table for names that are not in the logs stays.
 * @param {string} text of the page
 * @param {string} logs
 */
export function withRuns(text, logs) {
  const [from, to] = marks.map((mark) => text.indexOf(mark));
  if (from < 0 || to < from) throw new Complaint('docs/reliability.md has lost the marks of its table.');
  const before = text.slice(from, to);
  const rows = Object.entries(runs).map(([name, [what, how]]) => {
    const line = logs
      .split('\n')
      .map(plain)
      .findLast((one) => one.startsWith(`${name}: `));
    const known = before
      .split('\n')
      .find((one) => one.startsWith(`| ${what} |`) || one.startsWith(`| ${what}  `));
    const figure = line?.slice(name.length + 2).trim() ?? known?.split('|')[2]?.trim() ?? 'not run yet';
    return `| ${what} | ${figure.replaceAll('|', '/')} | ${how} |`;
  });
  const table = [
    '',
    '| what was tried | what came of it | how to try it again |',
    '| --- | --- | --- |',
    ...rows,
    '',
  ];
  return `${text.slice(0, from)}${marks[0]}\n${table.join('\n')}\n${text.slice(to)}`;
}

if (process.argv[1]?.endsWith('reliability.mjs'))
  await script(async () => {
    const logs = process.argv.slice(2).map((file) => readFileSync(file, 'utf8'));
    if (logs.length === 0)
      throw new Complaint('Name the logs of runs: npm run reliability -- fuzz.log load.log');
    writeFileSync(page, withRuns(readFileSync(page, 'utf8'), logs.join('\n')));
    const { resolveConfig, format } = await import('prettier');
    const config = await resolveConfig(page);
    writeFileSync(page, await format(readFileSync(page, 'utf8'), { ...config, filepath: page }));
  });
