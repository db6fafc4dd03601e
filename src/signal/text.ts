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
function rateOf(times: Float64Array, lines: Uint32Array): number {
  const last = times.length - 1;
  const step = (times[last] - times[0]) / last;
  for (let i = 0; i <= last; i++) {
    if (!(step > 0) || Math.abs(times[i] - times[0] - i * step) > 0.75 * step)
      throw refusal('text-times-uneven', { line: lines[i] });
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

/** Numbers of a text, row by row, and where each row stands; the lines of the head, before the first number. */
interface TextNumbers {
  readonly columns: number;
  readonly count: number;
  readonly values: Float64Array;
  /** 1-based. */
  readonly lines: Uint32Array;
  readonly head: string;
}

/** Megabytes of text: a minute at 48 kHz with its times, and more than any response takes. */
const mostMegabytes = 64;
/** No more of the head is looked at, characters. */
const mostHead = 4096;

interface Line {
  readonly text: string;
  readonly number: number;
}

/** The lines from a place on, trimmed, one at a time: all of them at once take many times the memory of their text. */
function* linesOf(text: string, from = 0, number = 1): Generator<Line & { readonly at: number }> {
  for (let at = from; at <= text.length; number++) {
    let end = at;
    for (; end < text.length; end++) {
      const code = text.charCodeAt(end);
      if (code === 10 || code === 13) break;
    }
    yield { text: text.slice(at, end).trim(), number, at };
    at = end + (text.charCodeAt(end) === 13 && text.charCodeAt(end + 1) === 10 ? 2 : 1);
  }
}

const isData = (line: string): boolean =>
  !isComment(line) &&
  /^[+\-.,\d]/.test(line) &&
  line.split(/[\s;,]+/).every((part) => part === '' || /\d/.test(part));

/** Twice as long, with what it holds. */
function grown<T extends Float64Array | Uint32Array>(array: T): T {
  const longer = new (array.constructor as new (length: number) => T)(2 * array.length);
  longer.set(array);
  return longer;
}

function numbersOf(bytes: Uint8Array, leastColumns: number, mostColumns = Infinity): TextNumbers {
  if (bytes.length > mostMegabytes * 2 ** 20)
    throw refusal('text-too-large', { megabytes: bytes.length / 2 ** 20, mostMegabytes });
  const text = textOf(bytes);
  let head = '';
  let first: (Line & { readonly at: number }) | null = null;
  for (const line of linesOf(text)) {
    if (isData(line.text)) {
      first = line;
      break;
    }
    if (head.length < mostHead) head += ` ${line.text.slice(0, mostHead)}`;
  }
  head = head.toLowerCase();
  if (!first) return { columns: 0, count: 0, values: new Float64Array(0), lines: new Uint32Array(0), head };

  const few: string[] = [];
  for (const line of linesOf(text, first.at)) {
    if (!isComment(line.text)) few.push(line.text);
    if (few.length === 200) break;
  }
  const split = splitterFor(few, leastColumns);
  let [columns, count] = [0, 0];
  let values = new Float64Array(1024);
  let lines = new Uint32Array(1024);
  for (const { text: line, number: place } of linesOf(text, first.at, first.number)) {
    if (isComment(line)) continue;
    const parts = split(line).filter((part) => part !== '');
    if (parts.length > mostColumns) throw refusal('text-columns', { columns: parts.length, line: place });
    if (count === 0) columns = parts.length;
    if (parts.length !== columns || parts.length === 0)
      throw refusal('text-line', { line: place, text: line.slice(0, 40) });
    if (count === lines.length) lines = grown(lines);
    lines[count] = place;
    for (const [k, part] of parts.entries()) {
      const value = number.test(part) ? toNumber(part) : NaN;
      if (!Number.isFinite(value)) throw refusal('text-line', { line: place, text: line.slice(0, 40) });
      if (count * columns + k >= values.length) values = grown(values);
      values[count * columns + k] = value;
    }
    count++;
  }
  return { columns, count, values, lines, head };
}

/** Megabytes of a text whose rows are handed out one by one. */
const mostRowMegabytes = 4;

/**
 * Numbers in columns, parted by comma, semicolon, tab or blanks; with a point or a comma as decimal sign, never as a
 * thousand. Lines before the numbers and lines that begin with # ; * % // or a quote are passed over.
 *
 * @param leastColumns Two where one column would say nothing.
 * @throws RingdownError `text-line`, `text-ambiguous`, `text-too-large`
 */
export function columnsOf(bytes: Uint8Array, leastColumns: 1 | 2 = 1): readonly TextRow[] {
  if (bytes.length > mostRowMegabytes * 2 ** 20)
    throw refusal('text-too-large', { megabytes: bytes.length / 2 ** 20, mostMegabytes: mostRowMegabytes });
  const { columns, count, values, lines } = numbersOf(bytes, leastColumns);
  return Array.from({ length: count }, (_, k) => ({
    values: Array.from(values.subarray(k * columns, (k + 1) * columns)),
    line: lines[k],
  }));
}

/**
 * Reads an impulse response written as text: one column of amplitudes, or two of time and amplitude, as `columnsOf`
 * reads them. Times are seconds, or milliseconds where the head says `ms`.
 *
 * @param sampleRate Hz; needed for one column, and held against the times of two.
 * @throws RingdownError those whose code begins with `text-`, `rate`, `no-samples`, `too-long`
 */
export function decodeText(bytes: Uint8Array, sampleRate: number | null = null): DecodedAudio {
  const { columns, count, values, lines, head } = numbersOf(bytes, 1, 2);
  if (count === 0) throw refusal('no-samples', {});
  const samples = Float64Array.from({ length: count }, (_, k) => values[k * columns + columns - 1]);
  let rate = sampleRate;
  if (columns === 2) {
    if (count < 2) throw refusal('no-samples', {});
    const unit = /\bms\b|millisec/.test(head) ? 1e-3 : 1;
    const found = rateOf(
      Float64Array.from({ length: count }, (_, k) => values[2 * k] * unit),
      lines,
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
