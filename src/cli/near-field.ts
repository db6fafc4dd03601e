import type { Room } from '../room/index.js';
import { openFile, RingdownError, type Recording } from '../signal/index.js';
import { nearFieldBounds, nearFieldMetres } from '../signal/limits.js';
import type { CommandIo } from './io.js';
import type { OptionSpecs, Words } from './options.js';
import { readingOptions } from './reading.js';
import { readPlace } from './room-words.js';

/** Recordings close to a source. */
export const nearFieldSpecs: OptionSpecs = {
  'near-field': { many: true },
  'near-distance': { many: true },
  'near-source': { many: true },
};

/** One value for all recordings close to a source, or one for each. */
function each<T>(name: string, values: readonly T[], files: number): (index: number) => T | undefined {
  if (values.length > 0 && files === 0)
    throw new RingdownError('option-needs', { name, other: 'near-field' });
  if (values.length > 1 && values.length !== files)
    throw new RingdownError('option-count', { name, count: values.length, files });
  return (index) => values[index] ?? values[0];
}

/**
 * A file that is refused is said and left out.
 *
 * @param refused Called for each such file.
 * @throws RingdownError `option-count`, `option-needs`, `option-range`
 */
export async function openNearFields(
  words: Words,
  room: Room | null,
  io: CommandIo,
  refused: (file: string, thrown: unknown) => void,
): Promise<Recording[]> {
  const files = words.texts('near-field');
  const distances = words.numbers('near-distance', ...nearFieldBounds);
  const distance = each('near-distance', distances, files.length);
  const places = words.texts('near-source').map((text) => readPlace(text, room));
  const source = each('near-source', places, files.length);
  const list: Recording[] = [];
  for (const [index, file] of files.entries()) {
    const about = { source: source(index) ?? null, nearFieldMetres: distance(index) ?? nearFieldMetres };
    try {
      list.push(await openFile(await io.readFile(file), { label: file, ...readingOptions(words), ...about }));
    } catch (thrown) {
      refused(file, thrown);
    }
  }
  return list;
}
