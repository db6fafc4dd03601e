import { modeKindMarks } from './say-room.js';
import { predictRoom, transitionBand, type RoomPrediction } from '../room/index.js';
import type { Speaker } from '../words/index.js';
import { noFile } from './files.js';
import { exitStatus, type CommandIo } from './io.js';
import { roomDocument } from './json.js';
import type { OptionSpecs, Words } from './options.js';
import { requireRoom, roomOptions } from './room-words.js';
import { table, wrap } from './table.js';

export const modesOptions: OptionSpecs = { ...roomOptions, absorption: {}, to: {}, json: { flag: true } };

/** `ringdown modes`: the standing waves of a box. */
export function modes(words: Words, io: CommandIo, speaker: Speaker): number {
  noFile(words);
  const room = requireRoom(words);
  const toHz = words.number('to', 5, 1000) ?? 200;
  const prediction = predictRoom(room, { toHz });
  io.out(
    words.has('json')
      ? `${JSON.stringify(roomDocument(prediction))}\n`
      : `${modesText(prediction, toHz, speaker)}\n`,
  );
  return exitStatus.done;
}

function modesText(prediction: RoomPrediction, toHz: number, speaker: Speaker): string {
  const { n } = speaker;
  const { room, volumeCubicMetres, transitionFrequencyHz, modes: list } = prediction;
  const { lengthMetres: l, widthMetres: w, heightMetres: h } = room.size;
  const sides = [l, w, h].map((side) => n.significant(side, 4)).join(' x ');
  const band = transitionFrequencyHz === null ? null : transitionBand(transitionFrequencyHz);
  const head = [
    `Room of ${sides} m, ${n.number(volumeCubicMetres, 1)} m3, speed of sound ${n.number(room.speedOfSoundMetresPerSecond, 1)} m/s.`,
    band
      ? `Single modes give way to a crowd between about ${n.hertz(band.fromHz, 0)} and ${n.hertz(band.toHz, 0)} (around ${n.hertz(transitionFrequencyHz, 0)}).`
      : 'Where single modes give way to a crowd depends on the decay time; give --absorption to estimate it.',
    `${n.integer(list.length)} modes up to ${n.hertz(toHz, 0)}. Real walls move modes by up to 5 or 6 % from the rigid box.`,
  ];
  const rows = list.map(({ order, kind, frequencyHz, decayTimeSeconds }) => [
    n.number(frequencyHz, 2),
    order.join(' '),
    `${modeKindMarks[kind]} ${speaker.term('modeKinds', kind)}`,
    n.seconds(decayTimeSeconds),
  ]);
  const columns = [
    { head: 'Hz', right: true },
    { head: speaker.label('order') },
    { head: speaker.label('kind') },
    ...(room.absorption ? [{ head: speaker.label('decayTime'), right: true }] : []),
  ];
  return `${head.map((line) => wrap(line)).join('\n')}\n\n${table(columns, rows)}`;
}
