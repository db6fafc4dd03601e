import { encodeWav, readAudio, responsesOfSweep, RingdownError, type Swept } from '../signal/index.js';
import { drain } from '../signal/drain.js';
import type { CommandSpeaker } from '../words/command.js';
import { refuse } from './files.js';
import { exitStatus, type CommandIo } from './io.js';
import type { OptionSpecs, Words } from './options.js';
import { table, wrap } from './table.js';

export const responseOptions: OptionSpecs = { channel: {}, out: {} };

/** `ringdown response`: the impulse response of a room from the recording of a sweep, as a WAV file. */
export async function response(words: Words, io: CommandIo, speaker: CommandSpeaker): Promise<number> {
  const { command, files } = words;
  if (files.length < 2) throw new RingdownError('files-two', { command, count: files.length });
  if (files.length > 2)
    throw new RingdownError('files-many', { command, count: files.length, most: 2, extra: files[2] });
  const path = words.required('out');
  const channel = words.integer('channel', 1, 1024) ?? undefined;
  const [sweepFile, recordingFile] = files;
  let file = sweepFile;
  try {
    const sweep = readAudio(await io.readFile(file));
    file = recordingFile;
    const recording = readAudio(await io.readFile(file));
    const swept = drain(responsesOfSweep(recording, sweep, channel));
    const { channels, sampleRate } = swept.audio;
    file = path;
    await io.writeFile(path, encodeWav({ channels, sampleRate, encoding: 'float-32' }));
    io.out(`${responseText(path, swept, channel ?? 1, speaker)}\n`);
    return exitStatus.done;
  } catch (thrown) {
    refuse(file, thrown, io, speaker);
    return exitStatus.refused;
  }
}

function responseText(
  path: string,
  { audio, law, responses }: Swept,
  first: number,
  speaker: CommandSpeaker,
): string {
  const { n } = speaker;
  const { sampleRate, channels, notes } = audio;
  const seconds = channels[0].length / sampleRate;
  const columns = [
    { head: speaker.command('head-channel'), right: true },
    { head: speaker.command('head-arrival'), right: true },
    ...[2, 3, 4, 5].map((order) => ({ head: speaker.command('head-order', { order }), right: true })),
  ];
  const rows = responses.map(({ arrivalIndex, zeroIndex, distortion }, i) => [
    n.integer(first + i),
    n.seconds((arrivalIndex - zeroIndex) / sampleRate, 4),
    ...distortion.map(({ levelDb }) => n.decibels(levelDb)),
  ]);
  return [
    wrap(
      speaker.command('response', {
        ...{ path, seconds, sampleRate },
        ...{ fromHz: law.fromHz, toHz: law.toHz, sweepSeconds: law.seconds },
      }),
    ),
    '',
    speaker.command('response-table'),
    table(columns, rows),
    ...notes.filter(({ code }) => code !== 'swept').map((note) => wrap(`! ${speaker.note(note)}`)),
  ].join('\n');
}
