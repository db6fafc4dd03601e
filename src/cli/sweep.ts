import { defaultSweep, encodeWav, highestSampleRate, makeSweep } from '../signal/index.js';
import { failureOf } from '../study/failure.js';
import type { CommandSpeaker } from '../words/command.js';
import { noFile } from './files.js';
import { exitStatus, type CommandIo } from './io.js';
import type { OptionSpecs, Words } from './options.js';
import { wrap } from './table.js';

export const sweepOptions: OptionSpecs = {
  ...{ from: {}, to: {}, seconds: {}, silence: {}, rate: {}, level: {}, out: {} },
};

/** A room that hangs for two seconds has then fallen into its noise. */
const defaultSilenceSeconds = 4;

/** `ringdown sweep`: an exponential sweep as a WAV file, to be played and recorded. */
export async function sweep(words: Words, io: CommandIo, speaker: CommandSpeaker): Promise<number> {
  noFile(words);
  const path = words.required('out');
  const params = {
    fromHz: words.number('from', 2, 20_000) ?? defaultSweep.fromHz,
    toHz: words.number('to', 10, 96_000) ?? defaultSweep.toHz,
    seconds: words.number('seconds', 0.5, 120) ?? defaultSweep.seconds,
    sampleRate: words.integer('rate', 4000, highestSampleRate) ?? defaultSweep.sampleRate,
    levelDbFs: words.number('level', -60, -3) ?? defaultSweep.levelDbFs,
  };
  const silence = words.number('silence', 0, 60) ?? defaultSilenceSeconds;
  const tone = makeSweep(params);
  const samples = new Float64Array(tone.length + Math.round(silence * params.sampleRate));
  samples.set(tone);
  const bytes = encodeWav({ channels: [samples], sampleRate: params.sampleRate, encoding: 'pcm-24' });
  try {
    await io.writeFile(path, bytes);
  } catch (thrown) {
    io.err(`${speaker.error(failureOf(thrown))}\n`);
    return exitStatus.refused;
  }
  const { fromHz, toHz, seconds, sampleRate, levelDbFs: levelDb } = params;
  const made = { path, fromHz, toHz, seconds, silenceSeconds: silence, sampleRate, levelDb };
  const lines = [
    speaker.command('sweep', made),
    speaker.command('sweep-record'),
    speaker.command('caution', { sentence: speaker.caution('sweep') }),
  ];
  io.out(`${lines.map((line) => wrap(line)).join('\n')}\n`);
  return exitStatus.done;
}
