import { synthesiseJob } from '../room/index.js';
import { encodeWav, highestSampleRate, lowestSampleRate, RingdownError } from '../signal/index.js';
import { drain } from '../signal/drain.js';
import { failureOf } from '../study/failure.js';
import type { CommandSpeaker } from '../words/command.js';
import { parseNumber } from '../words/index.js';
import { noFile } from './files.js';
import { exitStatus, type CommandIo } from './io.js';
import type { OptionSpecs, Words } from './options.js';
import { readPlace, requireRoom, roomOptions } from './room-words.js';
import { wrap } from './table.js';

export const synthOptions: OptionSpecs = {
  ...roomOptions,
  ...{ seat: {}, source: {}, absorption: {}, walls: {}, seconds: {}, rate: {}, noise: {}, seed: {}, out: {} },
};

/** A quiet measurement: a response without any noise is met nowhere, and misleads whoever tries a tool with it. */
const defaultNoiseDb = -70;

function noiseOf(words: Words): number | null {
  const text = words.text('noise');
  if (text === 'none') return null;
  if (text !== null && parseNumber(text) === null)
    throw new RingdownError('option-number', { name: 'noise', text });
  return words.number('noise', -200, 0) ?? defaultNoiseDb;
}

/** `ringdown synth`: the impulse response of a box as a WAV file. */
export async function synth(words: Words, io: CommandIo, speaker: CommandSpeaker): Promise<number> {
  noFile(words);
  const room = requireRoom(words);
  const path = words.required('out');
  const params = {
    room,
    seat: readPlace(words.required('seat'), room),
    source: readPlace(words.required('source'), room),
    seconds: words.number('seconds', 0.05, 60) ?? 2,
    sampleRate: words.integer('rate', lowestSampleRate, highestSampleRate) ?? 48000,
    noiseDb: noiseOf(words),
    seed: words.integer('seed', 0, 2 ** 32 - 1) ?? 1,
  };
  const { samples, sampleRate, onsetSeconds, modes } = drain(synthesiseJob(params));
  const bytes = encodeWav({ channels: [samples], sampleRate, encoding: 'float-32' });
  try {
    await io.writeFile(path, bytes);
  } catch (thrown) {
    io.err(`${speaker.error(failureOf(thrown))}\n`);
    return exitStatus.refused;
  }
  const { seconds } = params;
  const made = speaker.command('synth', { path, seconds, sampleRate, modes: modes.length, onsetSeconds });
  const what = `${made} ${speaker.caution('playback')}`;
  io.out(`${wrap(what)}\n`);
  return exitStatus.done;
}
