import { parseArgs } from 'node:util';
import { RingdownError } from '../signal/index.js';
import { parseNumber, parseNumberList } from '../words/index.js';

/** An option of a command: a flag without value, or text that comes once or several times. */
export interface OptionSpec {
  readonly flag?: boolean;
  readonly many?: boolean;
}

export type OptionSpecs = Readonly<Record<string, OptionSpec>>;

/** The words of a call, sorted. Every method throws the code of an `option-` sentence. */
export interface Words {
  readonly command: string;
  readonly files: readonly string[];
  has(name: string): boolean;
  text(name: string): string | null;
  texts(name: string): readonly string[];
  /** Decimal point or comma. */
  number(name: string, from: number, to: number): number | null;
  /** Of an option that may come several times. */
  numbers(name: string, from: number, to: number): readonly number[];
  integer(name: string, from: number, to: number): number | null;
  list(name: string): readonly number[] | null;
  choice<T extends string>(name: string, choices: readonly T[]): T | null;
  required(name: string): string;
}

/** `--temperature -5`: a value that begins with a dash, joined to its option so that it is not read as one. */
function joinNegatives(args: readonly string[], specs: OptionSpecs): string[] {
  const joined: string[] = [];
  for (let i = 0; i < args.length; i++) {
    if (args[i] === '--') return [...joined, ...args.slice(i)];
    const spec = args[i].startsWith('--') ? specs[args[i].slice(2)] : undefined;
    if (spec && !spec.flag && /^-[\d.,]/.test(args[i + 1] ?? '')) joined.push(`${args[i]}=${args[++i]}`);
    else joined.push(args[i]);
  }
  return joined;
}

/** @throws RingdownError `option-unknown`, `option-value`, `option-flag`, `option-once` */
export function readWords(command: string, args: readonly string[], specs: OptionSpecs): Words {
  const { tokens } = parseArgs({
    args: joinNegatives(args, specs),
    options: Object.fromEntries(
      Object.entries(specs).map(([name, { flag }]) => [
        name,
        { type: flag ? ('boolean' as const) : ('string' as const), multiple: true },
      ]),
    ),
    strict: false,
    tokens: true,
  });
  const files: string[] = [];
  const given = new Map<string, string[]>();
  for (const token of tokens) {
    if (token.kind === 'positional') files.push(token.value);
    if (token.kind !== 'option') continue;
    const { name, rawName, value } = token;
    const spec = rawName.startsWith('--') && Object.hasOwn(specs, name) ? specs[name] : null;
    if (!spec) throw new RingdownError('option-unknown', { name: rawName, command });
    if (spec.flag && value !== undefined) throw new RingdownError('option-flag', { name });
    if (!spec.flag && !value) throw new RingdownError('option-value', { name });
    const values = given.get(name) ?? [];
    if (values.length > 0 && !spec.many && !spec.flag) throw new RingdownError('option-once', { name });
    given.set(name, [...values, value ?? '']);
  }

  const text = (name: string): string | null => given.get(name)?.[0] ?? null;
  const checked = (name: string, written: string, from: number, to: number): number => {
    const value = parseNumber(written);
    if (value === null) throw new RingdownError('option-number', { name, text: written });
    if (!(value >= from && value <= to)) throw new RingdownError('option-range', { name, value, from, to });
    return value;
  };
  const number = (name: string, from: number, to: number): number | null => {
    const written = text(name);
    return written === null ? null : checked(name, written, from, to);
  };
  return {
    command,
    files,
    has: (name) => given.has(name),
    text,
    texts: (name) => given.get(name) ?? [],
    number,
    numbers: (name, from, to) => (given.get(name) ?? []).map((written) => checked(name, written, from, to)),
    integer(name, from, to) {
      const value = number(name, from, to);
      if (value !== null && !Number.isInteger(value))
        throw new RingdownError('option-integer', { name, value });
      return value;
    },
    list(name) {
      const written = text(name);
      if (written === null) return null;
      const list = parseNumberList(written);
      if (!list) throw new RingdownError('option-list', { name, text: written });
      return list;
    },
    choice(name, choices) {
      const written = text(name);
      if (written === null) return null;
      const found = choices.find((choice) => choice === written);
      if (!found)
        throw new RingdownError('option-choice', { name, text: written, choices: choices.join(', ') });
      return found;
    },
    required(name) {
      const written = text(name);
      if (written === null) throw new RingdownError('option-missing', { command, name });
      return written;
    },
  };
}
