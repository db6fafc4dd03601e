import { RingdownError } from '../signal/errors.js';
import type { Job, MicrophoneResponse, Note, PositionMetres, Recording } from '../signal/types.js';
import { reducedCopy } from '../seats/reduce.js';
import type { Room } from '../room/types.js';
import { encodeSamples } from './base64.js';
import { readDocument } from './document-read.js';
import type { SheetTexts } from './sheet-texts.js';
import type { SystemDesign, SystemSnapshot } from './system-types.js';
import type { StudyChoices, StudyPlace, StudySnapshot } from './types.js';
import { documentVersion, engineVersion } from './version.js';

/** One recording: what is known of its file, and its bass. */
export interface RecordingDocument {
  readonly label: string;
  /** SHA-256 of the file. */
  readonly hash: string;
  readonly channel: number;
  readonly channelCount: number;
  readonly stage: string;
  readonly seat: PositionMetres | null;
  readonly source: PositionMetres | null;
  readonly seatName: string | null;
  readonly sourceName: string | null;
  /** Of a recording close to its source, m; null for one at a seat. */
  readonly nearFieldMetres: number | null;
  readonly timeReference: 'common' | 'none';
  /** Of the file, Hz and s. */
  readonly sampleRate: number;
  readonly seconds: number;
  /** From the file's first sample. */
  readonly onsetSeconds: number;
  readonly notes: readonly Note[];
  /** What was taken off, and what full scale stands for, dB re 20 µPa; null where nothing was given. */
  readonly microphone: MicrophoneResponse | null;
  readonly fullScaleDb: number | null;
  /** Where the response was worked out of a recorded sweep. */
  readonly sweep: { readonly label: string; readonly hash: string } | null;
  readonly low: {
    /** Hz. */
    readonly sampleRate: number;
    /** Of the first sample, on the file's clock. */
    readonly startSeconds: number;
    /** Exact up to here. */
    readonly toHz: number;
    /** 32-bit floats, little-endian, base64. */
    readonly samples: string;
  };
}

/** One result as it stood when it was saved, for who reads the file without the program; computed anew on opening. */
export interface ResultDocument {
  readonly of: 'recording' | 'before' | 'designed' | 'after';
  readonly label: string;
  readonly hashes: readonly string[];
  readonly limit: string;
  readonly ridges: readonly {
    readonly frequencyHz: number;
    readonly decayTimeSeconds: number | null;
    readonly decayTimeSdSeconds: number | null;
    readonly limitSeconds: number | null;
    readonly cause: string;
  }[];
}

/** A whole study in one file. */
export interface StudyDocument {
  readonly format: 'ringdown-study';
  readonly version: number;
  /** Version of the engine that saved it. */
  readonly engine: string;
  readonly choices: StudyChoices;
  readonly room: Room | null;
  /** Seats and sources by name, also those without a recording. */
  readonly places: readonly StudyPlace[];
  readonly active: number;
  readonly design: SystemDesign | null;
  /** What people wrote on the printed sheet. */
  readonly sheet: SheetTexts;
  readonly recordings: readonly RecordingDocument[];
  readonly results: readonly ResultDocument[];
}

interface LowCopy {
  readonly copy: Recording;
  /** Its samples as text. */
  readonly text: string;
}

const copies = new WeakMap<Float64Array, LowCopy>();

/** The low-frequency copy, made once for the same samples, whatever is said of them. */
function copyOf(recording: Recording): LowCopy {
  const known = copies.get(recording.samples);
  if (known) return known;
  const copy = reducedCopy(recording);
  const made = { copy, text: encodeSamples(copy.samples) };
  copies.set(recording.samples, made);
  return made;
}

/** The long part of a document, recording by recording, so that a page goes on meanwhile; then it is made at once. */
export function* lowCopies(recordings: readonly Recording[]): Job<null> {
  for (const [k, recording] of recordings.entries()) {
    copyOf(recording);
    yield { stage: 'reduce', fraction: (k + 1) / recordings.length };
  }
  return null;
}

function recordingDocument(recording: Recording): RecordingDocument {
  const { copy, text } = copyOf(recording);
  const reduced = copy.reduced ?? {
    sampleRate: copy.sampleRate,
    seconds: copy.samples.length / copy.sampleRate,
    startSeconds: 0,
    toHz: copy.sampleRate / 2.5,
  };
  const { label, hash, channel, channelCount, stage, seat, source, timeReference, notes } = recording;
  return {
    ...{ label, hash, channel, channelCount, stage, seat, source },
    seatName: recording.seatName ?? null,
    sourceName: recording.sourceName ?? null,
    nearFieldMetres: recording.nearFieldMetres ?? null,
    timeReference,
    sampleRate: reduced.sampleRate,
    seconds: reduced.seconds,
    onsetSeconds: copy.onsetSeconds + reduced.startSeconds,
    notes,
    microphone: recording.microphone ?? null,
    fullScaleDb: recording.fullScaleDb ?? null,
    sweep: recording.sweep ?? null,
    low: {
      sampleRate: copy.sampleRate,
      startSeconds: reduced.startSeconds,
      toHz: reduced.toHz,
      samples: text,
    },
  };
}

/**
 * A study as one plain document: recordings with their bass, room, choices, design, and the ridges as they stand. The same
 * study gives the same document: nothing of the hour or the machine is in it.
 *
 * @param results Those that are to be told, from `resultDocument`.
 */
export function studyDocument(
  { recordings, choices, room, places, active, sheet }: StudySnapshot,
  design: SystemDesign | null,
  results: readonly ResultDocument[] = [],
): StudyDocument {
  return {
    format: 'ringdown-study',
    version: documentVersion,
    engine: engineVersion,
    choices,
    room,
    places,
    active,
    design,
    sheet,
    recordings: recordings.map(recordingDocument),
    results,
  };
}

/** Ridges of a diagnosis as the document tells them. */
export function resultDocument(
  of: ResultDocument['of'],
  label: string,
  diagnosis: NonNullable<StudySnapshot['diagnosis']>,
): ResultDocument {
  return {
    ...{ of, label, hashes: diagnosis.files.map(({ hash }) => hash), limit: diagnosis.limit },
    ridges: diagnosis.ridges.map(
      ({ frequencyHz, decayTimeSeconds, decayTimeSdSeconds, limitSeconds, cause }) => ({
        ...{ frequencyHz, decayTimeSeconds, decayTimeSdSeconds, limitSeconds, cause },
      }),
    ),
  };
}

/** Every ridge that stands in the study, with those of sources and seats where they were looked at. */
export function resultsOf(
  { recordings, active, diagnosis }: StudySnapshot,
  system: Pick<SystemSnapshot, 'before' | 'designed' | 'after'> | null,
): ResultDocument[] {
  const of = (name: ResultDocument['of'], state: SystemSnapshot['before']): ResultDocument[] =>
    state ? [resultDocument(name, '', state.diagnosis)] : [];
  const label = recordings[active]?.label ?? '';
  return [
    ...(diagnosis ? [resultDocument('recording', label, diagnosis)] : []),
    ...of('before', system?.before ?? null),
    ...(system?.designed !== system?.before ? of('designed', system?.designed ?? null) : []),
    ...of('after', system?.after ?? null),
  ];
}

/** As text, one field a line: two documents can be compared by any tool. */
export const documentText = (document: StudyDocument): string => `${JSON.stringify(document, null, 1)}\n`;

/** What a document holds, ready for a study. */
export interface OpenedStudy {
  readonly recordings: readonly Recording[];
  readonly room: Room | null;
  readonly places: readonly StudyPlace[];
  readonly choices: StudyChoices;
  readonly active: number;
  readonly design: SystemDesign | null;
  readonly sheet: SheetTexts;
}

/** Studies begin with a brace, before or behind blanks; no recording that can be read does. */
export const isStudyFile = (bytes: ArrayBuffer | Uint8Array): boolean =>
  /^\s*\{/.test(new TextDecoder().decode(bytes.slice(0, 64)));

/** More than a thousand recordings make. */
const mostBytes = 64 * 2 ** 20;

/**
 * Opens the text of a saved study.
 *
 * @throws RingdownError `study-not-json`, `study-not-ours`, `study-newer` with `version` and `known`, `study-broken` with
 *   `where`, `study-too-large`
 */
export function openStudyText(text: string): OpenedStudy {
  if (text.length > mostBytes)
    throw new RingdownError('study-too-large', { megabytes: text.length / 2 ** 20 });
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    throw new RingdownError('study-not-json');
  }
  return readDocument(data);
}
