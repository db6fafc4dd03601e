import { readFile, stat, writeFile } from 'node:fs/promises';
import { RingdownError } from '../signal/index.js';
import type { CommandIo } from './io.js';

/** Above this a file is no impulse response, and reading it would fill the memory. */
const mostBytes = 2 ** 30;

const codes: Readonly<Record<string, string>> = {
  ENOENT: 'file-missing',
  ENOTDIR: 'file-missing',
  EISDIR: 'file-folder',
  EACCES: 'file-forbidden',
  EPERM: 'file-forbidden',
};

const systemCode = (thrown: unknown): string =>
  thrown instanceof Error && 'code' in thrown ? String(thrown.code) : String(thrown);

async function read(path: string): Promise<Uint8Array> {
  try {
    const { size } = await stat(path);
    if (size > mostBytes)
      throw new RingdownError('file-too-large', { megabytes: size / 1e6, most: mostBytes / 1e6 });
    return new Uint8Array(await readFile(path));
  } catch (thrown) {
    if (thrown instanceof RingdownError) throw thrown;
    const detail = systemCode(thrown);
    throw new RingdownError(codes[detail] ?? 'file-unreadable', { detail });
  }
}

/** Names from a file must not steer the terminal: of the control characters only line ends and tabs are written. */
export const forTerminal = (text: string): string =>
  // eslint-disable-next-line no-control-regex
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f]/g, '');

/** Files and streams of this process. */
export const nodeIo: CommandIo = {
  out: (text) => void process.stdout.write(forTerminal(text)),
  err: (text) => void process.stderr.write(forTerminal(text)),
  readFile: read,
  async writeFile(path, bytes) {
    try {
      await writeFile(path, bytes);
    } catch (thrown) {
      throw new RingdownError('file-unwritable', { path, detail: systemCode(thrown) });
    }
  },
};
