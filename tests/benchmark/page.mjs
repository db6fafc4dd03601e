/** Puts the figures of a run into docs/resonances.md, between its markers, and the reliability diagram beside it. */
import { readFileSync, writeFileSync } from 'node:fs';
import { firstHeldSeed } from './cells.mjs';
import { missed, missedAims, prototypeFigures } from './gate.mjs';
import { curvesOf, nominal, reliabilitySvg } from './reliability.mjs';

const page = new URL('../../docs/resonances.md', import.meta.url);
const picture = new URL('../../docs/resonances-reliability.svg', import.meta.url);

const n = (/** @type {number} */ value, digits = 2) => value.toFixed(digits);

/** A Markdown table whose columns are padded as the formatter would. @param {string[]} heads @param {string[][]} rows */
export function table(heads, rows) {
  const widths = heads.map((head, k) => Math.max(head.length, 3, ...rows.map((row) => row[k].length)));
  const line = (/** @type {string[]} */ cells) =>
    `| ${cells.map((cell, k) => (k === 0 ? cell.padEnd(widths[k]) : cell.padStart(widths[k]))).join(' | ')} |`;
  const rule = `| ${widths.map((width, k) => (k === 0 ? '-'.repeat(width) : `${'-'.repeat(width - 1)}:`)).join(' | ')} |`;
  return [line(heads), rule, ...rows.map(line)].join('\n');
}

const heads = [
  'set, dB',
  'identifiable',
  'recall',
  'z frequency',
  'z decay',
  'rms error',
  'confident',
  'wrong',
  'covered, f and T',
  'width, f and T',
  'gate',
];

function rowOf(cell) {
  const prototype = prototypeFigures[`${cell.kind} ${cell.snr}`];
  const beside = (/** @type {string} */ ours, /** @type {number | null | undefined} */ theirs, digits) =>
    theirs === undefined ? ours : `${ours} (${theirs === null ? '-' : n(theirs, digits)})`;
  return [
    `${cell.kind} ${cell.snr}`,
    n(cell.identifiable, 1),
    beside(n(cell.recall, 3), prototype?.[0], 3),
    beside(n(cell.zf), prototype?.[1]),
    beside(n(cell.zT), prototype?.[2]),
    `${n(cell.rmsF, 3)} Hz, ${n(100 * cell.rmsT, 1)} %`,
    beside(n(cell.confident, 1), prototype?.[4], 1),
    beside(n(cell.wrong), prototype?.[3]),
    `${n(cell.coverageF)}, ${n(cell.coverageT)}`,
    `${n(cell.widthF)}, ${n(cell.widthT)}`,
    missed(cell).join(', ') || 'kept',
  ];
}

const missRows = (cells) =>
  cells.flatMap((cell) =>
    missedAims(cell).map(({ what, is, bound }) => {
      const digits = what === 'recall' ? 3 : 2;
      return [`${cell.kind} ${cell.snr}`, what, n(is, digits), n(bound, digits)];
    }),
  );

const missTable = (rows) =>
  rows.length === 0 ? 'None.' : table(['set, dB', 'what', 'measured', 'aimed at'], rows);

/** @param {{ cell: string, ratio: number, bound: number }[] | null} ratios */
function speedTable(ratios) {
  if (!ratios) return 'The prototype was not at hand in this run.';
  const rows = ratios.map(({ cell, ratio, bound }) => [
    cell,
    n(ratio),
    n(bound),
    ratio <= bound + 5e-3 ? 'yes' : 'no',
  ]);
  return table(['set, dB', "share of the prototype's time", 'aimed at', 'reached'], rows);
}

/** @param {import('./first.mjs').First[] | null} answers */
function firstTable(answers) {
  const rows = (answers ?? []).map(({ cell, ms, worstMs, wholeMs, recall, zf, zT, wrong }) => [
    cell,
    `${n(ms, 0)} (${n(worstMs, 0)})`,
    n(wholeMs, 0),
    n(recall),
    `${n(zf)}, ${n(zT)}`,
    n(wrong),
  ]);
  const heads = ['set, dB', 'first answer, ms (worst)', 'whole fit, ms', 'recall', 'z, f and T', 'wrong'];
  return table(heads, rows);
}

function reliabilityTable(curves) {
  const percent = (/** @type {number} */ share) => `${Math.round(100 * share)}`;
  const rows = curves.flatMap((curve) => [
    [`frequency, ${curve.name}`, `${curve.count}`, ...curve.frequency.map(percent)],
    [`decay time, ${curve.name}`, `${curve.count}`, ...curve.decay.map(percent)],
  ]);
  return table(['held the truth, %', 'reports', ...nominal.map(({ share }) => `${percent(share)} %`)], rows);
}

/** How many recordings each cell is of. */
function countsOf(cells) {
  const kinds = new Map(cells.map(({ kind, seeds }) => [kind, seeds]));
  const usual = cells[0]?.seeds ?? 0;
  const others = [...kinds].filter(([, seeds]) => seeds !== usual);
  return `Recordings per cell: ${[`${usual}`, ...others.map(([kind, seeds]) => `${kind} ${seeds}`)].join('; ')}.`;
}

/** @returns {Record<string, string>} by the name of the marker */
export function partsOf(cells, ratios, answers) {
  const held = cells.filter(({ from }) => from >= firstHeldSeed);
  const published = cells.filter(({ from }) => from < firstHeldSeed);
  const times = { speed: speedTable(ratios), first: firstTable(answers) };
  if (cells.length === 0) return times;
  return {
    ...times,
    table: `${table(heads, published.map(rowOf))}\n\n${countsOf(published)}`,
    misses: missTable(missRows(published)),
    held: table(
      heads,
      held.map((cell) => rowOf(cell).map((text, k) => (k === 0 ? text : text.replace(/ \(.*\)$/, '')))),
    ),
    'held-misses': missTable(missRows(held)),
    reliability: reliabilityTable(curvesOf(cells, firstHeldSeed)),
  };
}

export function writePage(cells, ratios, answers) {
  let text = readFileSync(page, 'utf8');
  for (const [name, part] of Object.entries(partsOf(cells, ratios, answers))) {
    const [begin, end] = [`<!-- ${name} -->`, `<!-- /${name} -->`];
    const from = text.indexOf(begin);
    const to = text.indexOf(end);
    if (from < 0 || to < from) throw new Error(`docs/resonances.md has no place for ${name}.`);
    text = `${text.slice(0, from + begin.length)}\n\n${part}\n\n${text.slice(to)}`;
  }
  writeFileSync(page, text);
  if (cells.length > 0) writeFileSync(picture, reliabilitySvg(curvesOf(cells, firstHeldSeed)));
}
