import { highestSampleRate, lowestSampleRate, RingdownError, type OpenOptions } from '../signal/index.js';
import type { CommandIo } from './io.js';
import type { OptionSpecs, Words } from './options.js';

/** How the files of a call are read. */
export const readingSpecs: OptionSpecs = {
  ...{ channel: {}, rate: {}, measurement: {} },
  ...{ microphone: { many: true }, calibration: { many: true } },
};

/** What is the same for every file. */
export const readingOptions = (words: Words): OpenOptions => ({
  channel: words.integer('channel', 1, 1024) ?? undefined,
  sampleRate: words.number('rate', lowestSampleRate, highestSampleRate) ?? undefined,
  measurement: words.integer('measurement', 1, 1e6) ?? undefined,
});

/**
 * One value for all files, or one for each.
 *
 * @throws RingdownError `option-count`
 */
export function ofFile<T>(words: Words, name: string, values: readonly T[], index: number): T | undefined {
  const files = words.files.length;
  if (values.length > 1 && values.length !== files)
    throw new RingdownError('option-count', { name, count: values.length, files });
  return values[index] ?? values[0];
}

/** Response of the microphone and calibration of one file: given once, or once per file. */
export async function filesBeside(words: Words, index: number, io: CommandIo): Promise<OpenOptions> {
  const path = ofFile(words, 'microphone', words.texts('microphone'), index);
  const fullScaleDb = ofFile(words, 'calibration', words.numbers('calibration', 40, 200), index);
  return {
    ...(path !== undefined && { microphone: { label: path, bytes: await io.readFile(path) } }),
    ...(fullScaleDb !== undefined && { fullScaleDb }),
  };
}
