import { nodeNotes } from '../diagnosis/index.js';
import {
  modeLevels,
  nodeAt,
  planArea,
  predictRoom,
  transitionBand,
  type Mode,
  type PositionMetres,
  type Room,
  type RoomPrediction,
} from '../room/index.js';
import type { Note } from '../signal/index.js';
import type { CommandSpeaker } from '../words/command.js';
import { noFile } from './files.js';
import { exitStatus, type CommandIo } from './io.js';
import { levelFields, roomDocument } from './json.js';
import type { OptionSpecs, Words } from './options.js';
import { readPlace, requireRoom, roomOptions } from './room-words.js';
import { modeKindMarks } from './say-room.js';
import { table, wrap } from './table.js';

export const modesOptions: OptionSpecs = {
  ...roomOptions,
  ...{ absorption: {}, walls: {}, to: {}, json: { flag: true } },
  ...{ seat: { many: true }, source: { many: true } },
};

/** Every mode has its greatest pressure in a corner of the floor: a source there leaves none out. */
const cornerOf = ({ plan }: Room): PositionMetres => ({ ...(plan?.corners[0] ?? { x: 0, y: 0 }), z: 0 });

/** `ringdown modes`: the standing waves of a room, and how loud each is at its seats. */
export function modes(words: Words, io: CommandIo, speaker: CommandSpeaker): number {
  noFile(words);
  const room = requireRoom(words);
  const toHz = words.number('to', 5, 1000) ?? 200;
  const seats = words.texts('seat').map((text) => readPlace(text, room));
  const given = words.texts('source').map((text) => readPlace(text, room));
  const sources = given.length > 0 || seats.length === 0 ? given : [cornerOf(room)];
  const prediction = predictRoom(room, { toHz });
  const notes = [
    ...seats.flatMap((seat, i) => numbered(nodeNotes(room, prediction.modes, { seat, source: null }), i)),
    ...sources.flatMap((source, i) => numbered(nodeNotes(room, prediction.modes, { seat: null, source }), i)),
  ];
  io.out(
    words.has('json')
      ? `${JSON.stringify({ ...roomDocument(prediction), ...levelFields(prediction, seats, sources, notes, speaker) })}\n`
      : `${modesText({ prediction, toHz, seats, sources, notes }, speaker)}\n`,
  );
  return exitStatus.done;
}

const numbered = (notes: readonly Note[], index: number): Note[] =>
  notes.map(({ code, params }) => ({ code, params: { ...params, number: index + 1 } }));

interface Told {
  readonly prediction: RoomPrediction;
  readonly toHz: number;
  readonly seats: readonly PositionMetres[];
  readonly sources: readonly PositionMetres[];
  readonly notes: readonly Note[];
}

function headLines({ prediction, toHz, seats, sources }: Told, speaker: CommandSpeaker): string[] {
  const {
    room,
    volumeCubicMetres: volume,
    transitionFrequencyHz,
    modes: list,
    meshError = null,
  } = prediction;
  const { lengthMetres: l, widthMetres: w, heightMetres: h } = room.size;
  const { plan, speedOfSoundMetresPerSecond: speed } = room;
  const sides = [l, w, h].map((side) => speaker.n.significant(side, 4)).join(' x ');
  const shape = plan
    ? speaker.command('plan', { corners: plan.corners.length, area: planArea(plan), height: h })
    : speaker.command('box', { sides });
  const band = transitionFrequencyHz === null ? null : transitionBand(transitionFrequencyHz);
  return [
    speaker.command('room', { shape, volume, speed }),
    band
      ? speaker.command('crowd', { ...band, frequencyHz: transitionFrequencyHz })
      : speaker.command('crowd-unknown'),
    speaker.command(plan ? 'modes-plan' : 'modes-box', { count: list.length, toHz }),
    ...(meshError === null ? [] : [speaker.command('mesh', { meshError })]),
    ...(room.absorptionBands ? [speaker.command('walls-memory')] : []),
    ...(seats.length > 0
      ? [
          speaker.command(room.absorption ? 'levels-known' : 'levels-relative', {
            sources: sources.length,
          }),
        ]
      : []),
  ];
}

function modesText(told: Told, speaker: CommandSpeaker): string {
  const { prediction, seats, sources, notes } = told;
  const { n } = speaker;
  const { room, modes: list } = prediction;
  const rows = list.map((mode) => [
    n.number(mode.frequencyHz, 2),
    orderCell(mode, room),
    `${modeKindMarks[mode.kind]} ${speaker.term('modeKinds', mode.kind)}`,
    ...(room.absorption ? [n.seconds(mode.decayTimeSeconds)] : []),
    ...modeLevels(mode, room, sources, seats).map(({ source, seat, levelDb, shapeDb }) =>
      nodeAt(mode, room, sources[source]) || nodeAt(mode, room, seats[seat])
        ? speaker.command('node')
        : n.number(levelDb ?? shapeDb, 0),
    ),
  ]);
  const pairs = sources.flatMap((_, source) =>
    seats.map((_, seat) =>
      sources.length > 1 ? `${source + 1}>${seat + 1}` : speaker.command('head-seat', { number: seat + 1 }),
    ),
  );
  const columns = [
    { head: 'Hz', right: true },
    { head: room.plan ? speaker.label('planOrder') : speaker.label('order') },
    { head: speaker.label('kind') },
    ...(room.absorption ? [{ head: speaker.label('decayTime'), right: true }] : []),
    ...pairs.map((head) => ({ head, right: true })),
  ];
  const lines = [
    ...headLines(told, speaker).map((line) => wrap(line)),
    '',
    table(columns, rows),
    ...(notes.length > 0 ? ['', ...notes.map((note) => wrap(speaker.note(note)))] : []),
  ];
  return lines.join('\n');
}

/** Of a plan: the number of its wave, and the order in height. */
const orderCell = ({ order: [p, q, r] }: Mode, { plan }: Room): string =>
  plan ? `${p} + ${r}` : `${p} ${q} ${r}`;
