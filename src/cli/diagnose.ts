import { diagnose as diagnoseJob, type DiagnosisParams, type LimitName } from '../diagnosis/index.js';
import type { Room } from '../room/index.js';
import { openRecording, RingdownError, type PositionMetres } from '../signal/index.js';
import { drain } from '../study/drain.js';
import type { Speaker } from '../words/index.js';
import { readBand } from './band.js';
import { diagnosisText } from './diagnosis-text.js';
import { refuse, someFiles } from './files.js';
import { exitStatus, type CommandIo } from './io.js';
import { diagnosisDocument, noRangeDocument, refusalDocument } from './json.js';
import type { OptionSpecs, Words } from './options.js';
import { readPlace, readRoom, roomOptions } from './room-words.js';

export const diagnoseOptions: OptionSpecs = {
  ...roomOptions,
  ...{ channel: {}, from: {}, to: {}, limit: {}, seat: { many: true }, source: { many: true } },
  json: { flag: true },
};

const limits: readonly LimitName[] = ['audibility', 'target', 'neighbours'];

interface Call {
  readonly params: DiagnosisParams;
  readonly channel: number | undefined;
  readonly seats: readonly PositionMetres[];
  readonly sources: readonly PositionMetres[];
  readonly json: boolean;
}

/** The places of an option: none, one for all files, or one per file. */
function placesOf(words: Words, name: string, room: Room | null): PositionMetres[] {
  const places = words.texts(name).map((text) => readPlace(text, room));
  const files = words.files.length;
  if (places.length > 1 && places.length !== files)
    throw new RingdownError('option-count', { name, count: places.length, files });
  return places;
}

/** `ringdown diagnose`: each file on its own, a refused one beside the others. */
export async function diagnose(words: Words, io: CommandIo, speaker: Speaker): Promise<number> {
  const files = someFiles(words);
  const room = readRoom(words);
  const limit = words.choice('limit', limits) ?? 'audibility';
  if (limit === 'target' && !room)
    throw new RingdownError('option-needs', { name: 'limit target', other: 'room' });
  const call: Call = {
    params: { ...readBand(words), limit, room },
    channel: words.integer('channel', 1, 1024) ?? undefined,
    seats: placesOf(words, 'seat', room),
    sources: placesOf(words, 'source', room),
    json: words.has('json'),
  };
  let status: number = exitStatus.done;
  for (let index = 0; index < files.length; index++) {
    if (index > 0 && !call.json) io.out('\n');
    status = Math.max(status, await diagnoseFile(files[index], index, call, io, speaker));
  }
  return status;
}

async function diagnoseFile(
  file: string,
  index: number,
  { params, channel, seats, sources, json }: Call,
  io: CommandIo,
  speaker: Speaker,
): Promise<number> {
  const print = (document: object): void => io.out(`${JSON.stringify(document)}\n`);
  try {
    const recording = openRecording(await io.readFile(file), {
      label: file,
      channel,
      seat: seats[index] ?? seats[0] ?? null,
      source: sources[index] ?? sources[0] ?? null,
    });
    const result = drain(diagnoseJob([recording], params));
    const noRange = result.fit.notes.find(({ code }) => code === 'no-range');
    if (noRange) io.err(`${file}: ${speaker.note(noRange)}\n`);
    if (!json) io.out(`${diagnosisText(result, speaker)}\n`);
    else
      print(noRange ? noRangeDocument(file, noRange, result, speaker) : diagnosisDocument(result, speaker));
    return noRange ? exitStatus.refused : exitStatus.done;
  } catch (thrown) {
    const { code, message } = refuse(file, thrown, io, speaker);
    if (json) print(refusalDocument(file, code, message));
    return exitStatus.refused;
  }
}
