import {
  diagnose as diagnoseJob,
  fitRoom,
  heardResonances,
  type Diagnosis,
  type DiagnosisParams,
  type LimitName,
} from '../diagnosis/index.js';
import type { Room } from '../room/index.js';
import { openFile, RingdownError, type PositionMetres, type Recording } from '../signal/index.js';
import { drain } from '../signal/drain.js';
import type { CommandSpeaker } from '../words/command.js';
import { readBand } from './band.js';
import { diagnosisText } from './diagnosis-text.js';
import { refuse, someFiles } from './files.js';
import { exitStatus, type CommandIo } from './io.js';
import { diagnosisDocument, noRangeDocument, refusalDocument } from './json.js';
import { nearFieldSpecs, openNearFields } from './near-field.js';
import type { OptionSpecs, Words } from './options.js';
import { filesBeside, readingOptions, readingSpecs } from './reading.js';
import { roomFitDocument, roomFitText, type RoomFitOutcome } from './room-fit.js';
import { readPlace, readRoom, roomOptions } from './room-words.js';

export const diagnoseOptions: OptionSpecs = {
  ...roomOptions,
  ...readingSpecs,
  ...{
    from: {},
    to: {},
    limit: {},
    seat: { many: true },
    source: { many: true },
  },
  ...nearFieldSpecs,
  together: { flag: true },
  'fit-room': { flag: true },
  json: { flag: true },
};

const limits: readonly LimitName[] = ['audibility', 'target', 'neighbours'];

interface Call {
  readonly files: readonly string[];
  readonly params: DiagnosisParams;
  readonly words: Words;
  readonly seats: readonly PositionMetres[];
  readonly sources: readonly PositionMetres[];
  /** Made close to a source: evidence beside every file. */
  readonly near: readonly Recording[];
  readonly json: boolean;
  readonly io: CommandIo;
  readonly speaker: CommandSpeaker;
}

/** The places of an option: none, one for all files, or one per file. */
function placesOf(words: Words, name: string, room: Room | null): PositionMetres[] {
  const places = words.texts(name).map((text) => readPlace(text, room));
  const files = words.files.length;
  if (places.length > 1 && places.length !== files)
    throw new RingdownError('option-count', { name, count: places.length, files });
  return places;
}

/** `ringdown diagnose`: each file on its own or all together; a refused one does not stop the others. */
export async function diagnose(words: Words, io: CommandIo, speaker: CommandSpeaker): Promise<number> {
  const files = someFiles(words);
  const room = readRoom(words);
  const limit = words.choice('limit', limits) ?? 'audibility';
  if (limit === 'target' && !room)
    throw new RingdownError('option-needs', { name: 'limit target', other: 'room' });
  if (words.has('fit-room') && !room)
    throw new RingdownError('option-needs', { name: 'fit-room', other: 'room' });
  let status: number = exitStatus.done;
  const near = await openNearFields(words, room, io, (file, thrown) => {
    sayRefused(file, thrown, { io, speaker, json: words.has('json') });
    status = exitStatus.refused;
  });
  const call: Call = {
    files,
    params: { ...readBand(words), limit, room },
    words,
    seats: placesOf(words, 'seat', room),
    sources: placesOf(words, 'source', room),
    near,
    json: words.has('json'),
    io,
    speaker,
  };
  // Places that differ are places of one room.
  if (words.has('together') || call.seats.length > 1 || call.sources.length > 1)
    return Math.max(status, await diagnoseRoom(call));
  for (let index = 0; index < files.length; index++) {
    if (index > 0 && !call.json) io.out('\n');
    const recording = await open(index, call);
    status = Math.max(status, recording ? tell([recording], call) : exitStatus.refused);
  }
  return status;
}

async function diagnoseRoom(call: Call): Promise<number> {
  const recordings: Recording[] = [];
  for (let index = 0; index < call.files.length; index++) {
    const recording = await open(index, call);
    if (recording) recordings.push(recording);
  }
  const status = recordings.length < call.files.length ? exitStatus.refused : exitStatus.done;
  return recordings.length > 0 ? Math.max(status, tell(recordings, call)) : status;
}

/** Null where the file is refused, which is then said. */
async function open(index: number, call: Call): Promise<Recording | null> {
  const { files, words, seats, sources, io } = call;
  const file = files[index];
  try {
    return await openFile(await io.readFile(file), {
      label: file,
      ...readingOptions(words),
      ...(await filesBeside(words, index, io)),
      seat: seats[index] ?? seats[0] ?? null,
      source: sources[index] ?? sources[0] ?? null,
    });
  } catch (thrown) {
    return sayRefused(file, thrown, call);
  }
}

/** Computes and prints one diagnosis. */
function tell(recordings: readonly Recording[], call: Call): number {
  const { params, json, io, speaker } = call;
  const name = recordings.map(({ label }) => label).join(', ');
  try {
    const result = drain(diagnoseJob([...recordings, ...call.near], params));
    const noRange = result.fit.notes.find(({ code }) => code === 'no-range');
    if (noRange) io.err(`${name}: ${speaker.note(noRange)}\n`);
    const fit = call.words.has('fit-room') && !noRange ? fitOf(result, call) : null;
    if (!json) io.out(`${diagnosisText(result, speaker)}\n${fit ? `\n${roomFitText(fit, speaker)}\n` : ''}`);
    else
      print(
        io,
        noRange
          ? noRangeDocument(name, noRange, result, speaker)
          : { ...diagnosisDocument(result, speaker), ...(fit && { roomFit: roomFitDocument(fit) }) },
      );
    return noRange ? exitStatus.refused : exitStatus.done;
  } catch (thrown) {
    sayRefused(name, thrown, call);
    return exitStatus.refused;
  }
}

/** The sides fitted to what was found, or why they were not. */
function fitOf({ resonances }: Diagnosis, { params, speaker }: Call): RoomFitOutcome {
  try {
    return { fit: drain(fitRoom(params.room!, heardResonances(resonances))) };
  } catch (thrown) {
    if (!(thrown instanceof RingdownError)) throw thrown;
    return { code: thrown.code, message: speaker.error(thrown) };
  }
}

const print = (io: CommandIo, document: object): void => io.out(`${JSON.stringify(document)}\n`);

function sayRefused(
  file: string,
  thrown: unknown,
  { io, speaker, json }: Pick<Call, 'io' | 'speaker' | 'json'>,
): null {
  const { code, message } = refuse(file, thrown, io, speaker);
  if (json) print(io, refusalDocument(file, code, message));
  return null;
}
