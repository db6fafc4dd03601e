import { refusal } from './error-codes.js';
import { highestSampleRate, lowestSampleRate, requireFits } from './limits.js';
import type { DecodedAudio } from './types.js';

/** Rates of the trade, Hz: times rounded to some digits give them only nearly. */
const usualRates = [
  8000, 11025, 12000, 16000, 22050, 24000, 32000, 44100, 48000, 88200, 96000, 176400, 192000, 352800, 384000,
];
const rateTolerance = 5e-4;

/** One number with a point or a comma as its decimal sign. */
const number = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)([eE][+-]?\d+)?$/;
const toNumber = (text: string): number => Number(text.replace(',', '.'));

const isComment = (line: string): boolean => line === '' || /^[#;*%"']|^\/\//.test(line);

type Splitter = (line: string) => string[];

/**
 * How the lines are parted. A semicolon, a tab or a blank parts columns, and leaves the comma to be a decimal sign.
 * Where only commas stand, they part columns if a point is the decimal sign or if the left parts are evenly counting
 * numbers; one comma per line is else a decimal sign, and three are two decimal signs about one that parts.
 *
 * @param leastColumns Two where one column would say nothing: a comma alone then parts them.
 * @throws RingdownError `text-ambiguous`
 */
function splitterFor(lines: readonly string[], leastColumns: number): Splitter {
  if (lines.some((line) => line.includes(';'))) return (line) => line.split(';').map((part) => part.trim());
  if (lines.some((line) => line.includes('\t'))) return (line) => line.split('\t').map((part) => part.trim());
  const plain = lines.map((line) => line.replace(/\s*,\s*/g, ','));
  if (plain.some((line) => /\S\s+\S/.test(line))) return (line) => line.split(/\s+/);
  const byComma: Splitter = (line) => line.split(',').map((part) => part.trim());
  if (!plain.some((line) => line.includes(','))) return byComma;
  if (plain.some((line) => line.includes('.'))) return byComma;
  const counts = new Set(plain.map((line) => line.split(',').length));
  if (counts.size === 1 && counts.has(4))
    return (line) => {
      const parts = byComma(line);
      return [`${parts[0]}.${parts[1]}`, `${parts[2]}.${parts[3]}`];
    };
  if (leastColumns === 2 && counts.size === 1 && counts.has(2)) return byComma;
  if (counts.size === 1 && counts.has(6))
    return (line) => {
      const parts = byComma(line);
      return [0, 2, 4].map((k) => `${parts[k]}.${parts[k + 1]}`);
    };
  if ([...counts].some((count) => count > 2)) throw refusal('text-ambiguous', {});
  const left = plain.slice(0, 50).map((line) => Number(line.split(',')[0]));
  const step = left[1] - left[0];
  const counting =
    left.length > 2 && step > 0 && left.every((value, i) => Math.abs(value - left[0] - i * step) < 1e-9);
  return counting ? byComma : (line) => [line.replace(',', '.')];
}

/**
 * Sample rate of evenly spaced times, which may be rounded to some digits.
 *
 * @throws RingdownError `text-times-uneven` with the line where the times leave the even spacing
 */
function rateOf(times: Float64Array, firstLine: number): number {
  const last = times.length - 1;
  const step = (times[last] - times[0]) / last;
  for (let i = 0; i <= last; i++) {
    if (!(step > 0) || Math.abs(times[i] - times[0] - i * step) > 0.75 * step)
      throw refusal('text-times-uneven', { line: firstLine + i });
  }
  const rate = 1 / step;
  return usualRates.find((usual) => Math.abs(rate / usual - 1) < rateTolerance) ?? rate;
}

/** The characters of a text file: UTF-8, or UTF-16 where its first two bytes say so, as spreadsheets write it. */
export function textOf(bytes: Uint8Array): string {
  const [first, second] = bytes;
  const wide =
    first === 0xff && second === 0xfe ? 'utf-16le' : first === 0xfe && second === 0xff ? 'utf-16be' : null;
  return new TextDecoder(wide ?? 'utf-8').decode(bytes).replace(/^\uFEFF/, '');
}

/** One line of numbers and where it stands in the file, 1-based. */
export interface TextRow {
  readonly values: readonly number[];
  readonly line: number;
}

/** The lines of the head, before the first number. */
const headOf = (lines: readonly string[]): string => lines.join(' ').toLowerCase();

function numbersOf(
  bytes: Uint8Array,
  leastColumns: number,
  mostColumns = Infinity,
): { rows: TextRow[]; head: string } {
  const lines = textOf(bytes)
    .split(/\r\n|\r|\n/)
    .map((line) => line.trim());
  const isData = (line: string): boolean =>
    !isComment(line) &&
    line.split(/[\s;,]+/).every((part) => part === '' || /\d/.test(part)) &&
    /^[+\-.,\d]/.test(line);
  const first = lines.findIndex(isData);
  if (first < 0) return { rows: [], head: headOf(lines) };
  const given = lines
    .slice(first)
    .map((text, i) => ({ text, line: first + i + 1 }))
    .filter(({ text }) => !isComment(text));
  const split = splitterFor(
    given.slice(0, 200).map(({ text }) => text),
    leastColumns,
  );
  const rows = given.map(({ text, line }): TextRow => {
    const parts = split(text).filter((part) => part !== '');
    if (parts.length > mostColumns) throw refusal('text-columns', { columns: parts.length, line });
    const bad = parts.find((part) => !number.test(part) || !Number.isFinite(toNumber(part)));
    if (bad !== undefined || parts.length === 0)
      throw refusal('text-line', { line, text: text.slice(0, 40) });
    return { values: parts.map(toNumber), line };
  });
  const odd = rows.find(({ values }) => values.length !== rows[0].values.length);
  if (odd) throw refusal('text-line', { line: odd.line, text: lines[odd.line - 1].slice(0, 40) });
  return { rows, head: headOf(lines.slice(0, first)) };
}

/**
 * Numbers in columns, parted by comma, semicolon, tab or blanks; with a point or a comma as decimal sign, never as a
 * thousand. Lines before the numbers and lines that begin with # ; * % // or a quote are passed over.
 *
 * @param leastColumns Two where one column would say nothing.
 * @throws RingdownError `text-line`, `text-ambiguous`
 */
export const columnsOf = (bytes: Uint8Array, leastColumns: 1 | 2 = 1): readonly TextRow[] =>
  numbersOf(bytes, leastColumns).rows;

/**
 * Reads an impulse response written as text: one column of amplitudes, or two of time and amplitude, as `columnsOf`
 * reads them. Times are seconds, or milliseconds where the head says `ms`.
 *
 * @param sampleRate Hz; needed for one column, and held against the times of two.
 * @throws RingdownError those whose code begins with `text-`, `rate`, `no-samples`, `too-long`
 */
export function decodeText(bytes: Uint8Array, sampleRate: number | null = null): DecodedAudio {
  const { rows, head } = numbersOf(bytes, 1, 2);
  if (rows.length === 0) throw refusal('no-samples', {});
  const columns = rows[0].values.length;
  const samples = Float64Array.from(rows, ({ values }) => values[columns - 1]);
  let rate = sampleRate;
  if (columns === 2) {
    if (rows.length < 2) throw refusal('no-samples', {});
    const unit = /\bms\b|millisec/.test(head) ? 1e-3 : 1;
    const found = rateOf(
      Float64Array.from(rows, ({ values }) => values[0] * unit),
      rows[0].line,
    );
    if (rate !== null && Math.abs(found / rate - 1) > 0.01)
      throw refusal('text-rate-differs', { rate, found });
    rate ??= found;
  }
  if (rate === null) throw refusal('text-rate-needed', {});
  if (!(rate >= lowestSampleRate && rate <= highestSampleRate))
    throw refusal('rate', { rate, lowest: lowestSampleRate, highest: highestSampleRate });
  requireFits(samples.length, 1, rate);
  return { sampleRate: rate, channels: [samples], encoding: 'text', notes: [] };
}
