import { RingdownError } from '../signal/index.js';
import { failureOf } from '../study/failure.js';
import type { Speaker } from '../words/index.js';
import type { CommandIo } from './io.js';
import type { Words } from './options.js';

/** @throws RingdownError `files-none`, `files-many` */
export function oneFile({ command, files }: Words): string {
  if (files.length > 1)
    throw new RingdownError('files-many', { command, count: files.length, most: 1, extra: files[1] });
  return someFiles({ command, files })[0];
}

/** @throws RingdownError `files-none` */
export function someFiles({ command, files }: Pick<Words, 'command' | 'files'>): readonly string[] {
  if (files.length === 0) throw new RingdownError('files-none', { command });
  return files;
}

/** @throws RingdownError `files-many` */
export function noFile({ command, files }: Words): void {
  if (files.length > 0)
    throw new RingdownError('files-many', { command, count: files.length, most: 0, extra: files[0] });
}

/** Says on standard error why a file is refused. */
export function refuse(
  file: string,
  thrown: unknown,
  io: CommandIo,
  speaker: Speaker,
): { code: string; message: string } {
  const { code, params } = failureOf(thrown);
  const message = speaker.error({ code, params });
  io.err(`${file}: ${message}\n`);
  return { code, message };
}
