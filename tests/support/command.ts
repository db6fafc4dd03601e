import { readFileSync } from 'node:fs';
import { RingdownError } from '../../src/signal/index.js';
import { run } from '../../src/cli/run.js';

export interface CommandResult {
  readonly status: number;
  readonly out: string;
  readonly err: string;
  readonly written: ReadonlyMap<string, Uint8Array>;
}

/** Runs the command in this process: files are those given by name, else those of the disk. */
export async function command(
  argv: readonly string[],
  files: Readonly<Record<string, Uint8Array>> = {},
): Promise<CommandResult> {
  let [out, err] = ['', ''];
  const written = new Map<string, Uint8Array>();
  const status = await run(argv, {
    out: (text) => (out += text),
    err: (text) => (err += text),
    readFile: (path) =>
      new Promise((resolve, reject) => {
        try {
          resolve(files[path] ?? new Uint8Array(readFileSync(path)));
        } catch {
          reject(new RingdownError('file-missing'));
        }
      }),
    writeFile: (path, bytes) => Promise.resolve(void written.set(path, bytes)),
  });
  return { status, out, err, written };
}

/** Every number of a document, with its path; JSON itself knows neither NaN nor infinity, but null may stand for one. */
export function nulls(value: unknown, path = ''): string[] {
  if (value === null) return [path];
  if (typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    nulls(inner, /^\d+$/.test(key) ? `${path}[]` : `${path}.${key}`),
  );
}
