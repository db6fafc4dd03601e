import type { Examination } from '../decay/index.js';
import { RingdownError } from '../signal/errors.js';
import { mostRecordings, mostStudySamples } from '../signal/limits.js';
import type { Progress, Recording } from '../signal/index.js';
import { decodeApart, type PageDecoder } from './decode.js';
import { failureOf } from './failure.js';
import type { Pool } from './pool.js';
import { examineRecording } from './requests.js';
import type { Round } from './round.js';
import type { RecordingOptions, Study, StudyFailure } from './types.js';

/** One recording of a study, while it is read and after. */
export interface Entry {
  readonly key: string;
  readonly label: string;
  recording: Recording | null;
  examination: Examination | null;
  /** What its reading was told. */
  given: RecordingOptions;
  /** The file's bytes, where it has other channels that may be asked for. */
  bytes: Uint8Array | null;
  failure: StudyFailure | null;
  /** Stops its reading; null once read or refused. */
  stop: (() => void) | null;
}

export type ReadEntry = Entry & { recording: Recording; examination: Examination };

/** Share of its reading in the work of one recording; see `requests.ts` for the others. */
const openWeight = 1;
/** Share of the reading in that: the examination takes the rest. */
const readShare = 0.5;

type Running = (
  from: number,
  to: number,
) => { signal: AbortSignal; onProgress: (progress: Progress) => void };
type Reading = Pick<ReadEntry, 'recording' | 'examination'> & Pick<Entry, 'bytes'>;

export interface EntriesOptions {
  readonly pool: () => Pool;
  readonly round: Round;
  /** Of the page, for files that browsers decode and the engine does not. */
  readonly decoder?: PageDecoder;
  /** Results must follow what was read. */
  readonly onRead: () => void;
  /** A reading began or came to rest. */
  readonly onChange: () => void;
}

/** The recordings of a study: how each is read, examined and told apart from the others. */
export function createEntries({ pool, round, decoder, onRead, onChange }: EntriesOptions) {
  const entries: Entry[] = [];
  let made = 0;

  const readable = (): ReadEntry[] =>
    entries.filter((entry): entry is ReadEntry => entry.recording !== null && entry.examination !== null);

  /** @throws RingdownError `study-memory` */
  const requireRoom = ({ samples, hash, channel }: Recording): void => {
    // Another channel of a file takes the place of the one that was read.
    const others = readable().filter(({ recording: of }) => of.hash !== hash || of.channel === channel);
    const sum = others.reduce((all, { recording: of }) => all + of.samples.length, samples.length);
    const megabytes = (count: number): number => (8 * count) / 1e6;
    if (sum > mostStudySamples)
      throw new RingdownError('study-memory', {
        megabytes: megabytes(sum),
        most: megabytes(mostStudySamples),
      });
  };

  /** Whether it is fit to be read is known before any of its pictures. */
  const examined = async (recording: Recording, running: Running): Promise<Reading> => ({
    recording,
    examination: await examineRecording(pool(), recording, running(readShare, 1)),
    bytes: null,
  });

  const opened =
    ({ given, label }: Entry, bytes: Uint8Array) =>
    async (running: Running): Promise<Reading> => {
      const { measurement } = given;
      const reading = running(0, readShare);
      const audio = await decodeApart(bytes, { measurement, decoder, signal: reading.signal });
      const { sweep } = given;
      const played = sweep && (await decodeApart(sweep.bytes, { decoder, signal: reading.signal }));
      const options = { ...given, label, ...(sweep && { sweep: { ...sweep, audio: played } }) };
      const recording = await pool().run('open', { bytes, audio, options }, reading);
      requireRoom(recording);
      // Other channels may be asked for later.
      return { ...(await examined(recording, running)), bytes: recording.channelCount > 1 ? bytes : null };
    };

  const read = async (entry: Entry, make: (running: Running) => Promise<Reading>): Promise<void> => {
    entry.stop?.();
    const controller = new AbortController();
    const piece = round.begin('open', openWeight);
    entry.stop = () => {
      controller.abort();
      piece.end();
    };
    entry.failure = null;
    onChange();
    try {
      const { signal } = controller;
      const reading = await make((from, to) => ({
        signal,
        onProgress: ({ stage, fraction }) => piece.report({ stage, fraction: from + (to - from) * fraction }),
      }));
      if (!signal.aborted) Object.assign(entry, reading);
    } catch (thrown) {
      if (!controller.signal.aborted) entry.failure = { ...failureOf(thrown), label: entry.label };
    }
    if (controller.signal.aborted) return;
    entry.stop = null;
    // The next pieces begin before this one ends, so that the round does not come to rest between them.
    onRead();
    piece.end();
    onChange();
  };

  const nextKey = (): string => `recording-${++made}`;

  const add = (label: string, given: RecordingOptions): Entry => {
    const nothing = { recording: null, examination: null, bytes: null, failure: null, stop: null };
    const entry: Entry = { key: nextKey(), label, given, ...nothing };
    entries.push(entry);
    return entry;
  };

  /** One more than a study holds is not read, and says so. */
  const refusedAsFull = (entry: Entry): boolean => {
    if (entries.length <= mostRecordings) return false;
    const params = { count: entries.length, most: mostRecordings };
    entry.failure = { code: 'study-full', params, label: entry.label };
    onRead();
    onChange();
    return true;
  };

  return {
    get all(): readonly Entry[] {
      return entries;
    },
    readable,
    /** A key of a recording that is not there. */
    nextKey,

    /** The entry that the pictures show; null while an earlier one, which would be shown instead, is still read. */
    active(chosen: string | null): ReadEntry | null {
      const list = readable();
      const wanted = list.find(({ key }) => key === chosen);
      if (wanted) return wanted;
      const there = entries.filter(({ recording, stop }) => recording !== null || stop !== null);
      // What was recorded close to a source is shown only where it is chosen, or where there is nothing else.
      const first = there.find(({ given }) => typeof given.nearFieldMetres !== 'number') ?? there[0];
      return list.find(({ key }) => key === first?.key) ?? null;
    },

    async addFile(bytes: Uint8Array, given: RecordingOptions): Promise<string> {
      const entry = add(given.label ?? '', given);
      if (!refusedAsFull(entry)) await read(entry, opened(entry, bytes));
      return entry.key;
    },

    async addCopy(recording: Recording): Promise<string> {
      const { nearFieldMetres } = recording;
      const entry = add(recording.label, { nearFieldMetres });
      if (!refusedAsFull(entry)) await read(entry, (running) => examined(recording, running));
      return entry.key;
    },

    /** What is said about one changes nothing that was read of it. */
    describe(index: number, about: Parameters<Study['setRecording']>[1]): boolean {
      const entry = readable()[index];
      if (!entry) return false;
      const { seatName, sourceName, nearFieldMetres, ...rest } = about;
      entry.given = { ...entry.given, ...about };
      entry.recording = {
        ...entry.recording,
        ...rest,
        ...(seatName !== undefined && { seatName }),
        ...(sourceName !== undefined && { sourceName }),
        ...(nearFieldMetres !== undefined && { nearFieldMetres: nearFieldMetres ?? undefined }),
      };
      return true;
    },

    readChannel(index: number, channel: number): void {
      const entry = readable()[index];
      if (!entry?.bytes || entry.recording.channel === channel) return;
      entry.given = { ...entry.given, channel };
      void read(entry, opened(entry, entry.bytes));
    },

    remove(gone: (entry: Entry) => boolean): void {
      for (const entry of entries.filter(gone)) {
        entry.stop?.();
        entries.splice(entries.indexOf(entry), 1);
      }
    },

    stop(): void {
      for (const { stop } of entries) stop?.();
    },
  };
}
