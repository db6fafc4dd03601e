/** Plain data shared by the whole engine. Units are in the names; frequencies in Hz, times in s, levels in dB. */

/** What a long computation yields between its slices. `stage` is a code, put into words by `words/`. */
export interface Progress {
  readonly stage: string;
  /** 0 to 1 within the whole job, never falling. */
  readonly fraction: number;
  /** A first answer of the job's own kind, where it has one long before its end; what follows refines it. */
  readonly draft?: unknown;
}

/** A computation that may take more than 20 ms. Drained alike by the worker, the command and the main thread. */
export type Job<T> = Generator<Progress, T, void>;

export type NoteCode =
  | 'short'
  | 'truncated'
  | 'noisy'
  | 'no-range'
  | 'clipped'
  | 'quantised'
  | 'hum'
  | 'late-energy'
  | 'two-slopes'
  | 'bent-decay'
  | 'rumble'
  | 'aligned'
  | 'channel-chosen'
  | 'rate-suspect'
  | 'not-finite'
  | 'silent'
  | 'dc'
  | 'size-guessed'
  | 'node'
  | 'boundary'
  | 'near-field'
  | 'other-room'
  | 'measurement-chosen'
  | 'positions'
  | 'swept'
  | 'microphone'
  | 'calibrated';

export type ParamValue = string | number | boolean | null;

/** Something the user must know before reading on. A code and numbers; `words/` makes the sentence. */
export interface Note {
  readonly code: NoteCode;
  readonly params: Readonly<Record<string, ParamValue>>;
}

/** The samples of a file as they are: no scaling, no resampling, no summing. Full scale of integer formats is 1. */
export interface DecodedAudio {
  readonly sampleRate: number;
  /** One array per channel, all of the same length. */
  readonly channels: readonly Float64Array[];
  /** For the reader's eye, for example `pcm-24`, `float-32`. */
  readonly encoding: string;
  /** Of the reader: `size-guessed` where the header's size was wrong or absent. */
  readonly notes: readonly Note[];
  /** 1-based; of a container that holds several. */
  readonly measurement?: number;
  /** Where each channel was measured, of a container that says so; null where it does not. */
  readonly places?: readonly (FilePlaces | null)[];
}

/** Places that a file itself gives: from a low corner of the room, or from an origin of the file's own. */
export interface FilePlaces {
  readonly origin: 'corner' | 'file';
  readonly seat: PositionMetres;
  readonly source: PositionMetres;
  /** Sides of the room that the file gives, where it does. */
  readonly roomMetres: PositionMetres | null;
}

export interface PositionMetres {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** One impulse response. Samples are never shifted to their onset. */
export interface Recording {
  /** The chosen channel at the file's own rate. */
  readonly samples: Float64Array;
  readonly sampleRate: number;
  /** 1-based, as people count. */
  readonly channel: number;
  readonly channelCount: number;
  /** 1-based; of a file that holds several measurements. */
  readonly measurement?: number;
  /** First arrival, by its rise above the noise; seconds from the first sample. */
  readonly onsetSeconds: number;
  /** Only recordings with a common time reference may be summed or aligned. */
  readonly timeReference: 'common' | 'none';
  readonly label: string;
  /** SHA-256 of the file's bytes, lower-case hex. */
  readonly hash: string;
  readonly stage: string;
  readonly seat: PositionMetres | null;
  readonly source: PositionMetres | null;
  /** The places that the file itself gives. */
  readonly filePlaces?: FilePlaces;
  /** What seat and source are called; recordings of one point share both. Absent where nobody named them. */
  readonly seatName?: string;
  readonly sourceName?: string;
  /**
   * Made so close to a source that its own sound drowns the room's: evidence of what the source does, and no seat. Distance to a
   * port or the middle of a cone, m; half the radius of a cone where that is more.
   */
  readonly nearFieldMetres?: number;
  /** Whose response was taken off the samples. */
  readonly microphone?: MicrophoneResponse;
  /** Sound pressure level that a sine reaching full scale stands for, dB re 20 µPa, by the user's calibration. */
  readonly fullScaleDb?: number;
  /** Of a response worked out of a recorded sweep: the file that was played. */
  readonly sweep?: { readonly label: string; readonly hash: string };
  /** Present where the samples are the low-frequency copy that a saved study holds, and not those of the file. */
  readonly reduced?: ReducedCopy;
  readonly notes: readonly Note[];
}

/** Level of a microphone over frequency, as its file gives it. */
export interface MicrophoneResponse {
  readonly label: string;
  /** SHA-256 of the file's bytes, lower-case hex. */
  readonly hash: string;
  /** Rising. */
  readonly frequenciesHz: readonly number[];
  /** dB re its level at the reference frequency of the file. */
  readonly levelsDb: readonly number[];
}

/** Of a low-frequency copy: the file it stands for. */
export interface ReducedCopy {
  /** Of the file, Hz. */
  readonly sampleRate: number;
  /** Of the file. */
  readonly seconds: number;
  /** Time of the copy's first sample on the file's clock; negative, since the filter rings before it too. */
  readonly startSeconds: number;
  /** The copy is exact up to here, Hz. */
  readonly toHz: number;
}
