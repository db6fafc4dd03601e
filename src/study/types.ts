import type { FileBeside } from '../signal/open-job.js';
import type { Progress, Recording, ParamValue, PositionMetres } from '../signal/types.js';
import type { Examination } from '../decay/examine.js';
import type { Response } from '../decay/response.js';
import type { Smoothing } from '../decay/smoothing.js';
import type { Grid, GridMethod } from '../decay/types.js';
import type { RoomFit } from '../diagnosis/fit-room.js';
import type { RidgeFit } from '../diagnosis/ridge-fit.js';
import type { Diagnosis, LimitName } from '../diagnosis/types.js';
import type { PressureMap } from '../room/pressure.js';
import type { ResonanceFit } from '../resonance/types.js';
import type { ModeOrder, Room, RoomPrediction } from '../room/types.js';
import type { SheetTexts } from './sheet-texts.js';

/** What the page or the user says about one recording, beside its bytes. */
export interface RecordingOptions {
  readonly label?: string;
  /** 1-based; without it the only live channel or channel 1 is chosen, and said. */
  readonly channel?: number;
  /** Hz; of a text file that holds no times. */
  readonly sampleRate?: number;
  /** 1-based; of an AES69 (SOFA) file. */
  readonly measurement?: number;
  /** Text with the response of the microphone, which is taken off. */
  readonly microphone?: FileBeside;
  /** Sound pressure level of a sine that reaches full scale, dB re 20 µPa. */
  readonly fullScaleDb?: number;
  /** The sweep that was played, where the file is the recording of it. */
  readonly sweep?: FileBeside;
  readonly seat?: PositionMetres | null;
  readonly source?: PositionMetres | null;
  readonly stage?: string;
  /** What seat and source are called; recordings of one point share both. */
  readonly seatName?: string;
  readonly sourceName?: string;
  /** Of a recording close to its source, which is evidence and no seat: m. Null takes it back. */
  readonly nearFieldMetres?: number | null;
  /** `common` only where one clock timed this recording and the others. */
  readonly timeReference?: Recording['timeReference'];
}

/** What may be said anew of a recording that is read: where and when it was made. */
export type RecordingAbout = Pick<
  RecordingOptions,
  'label' | 'seat' | 'source' | 'stage' | 'seatName' | 'sourceName' | 'timeReference' | 'nearFieldMetres'
>;

/** Everything that decides the result and how all pictures show it, in trade units. */
export interface StudyChoices {
  readonly fromHz: number;
  readonly toHz: number;
  readonly method: GridMethod;
  readonly windowSeconds: number;
  readonly stepSeconds: number;
  readonly spanSeconds: number;
  readonly limit: LimitName;
  /** Level range of every picture, dB below its top. */
  readonly rangeDb: number;
  /** Scale of every frequency axis. */
  readonly axis: FrequencyAxis;
  /** Of the response; hides ridges, so `none` unless asked for. */
  readonly smoothing: Smoothing;
  /** Colours of level; decides no result. */
  readonly scale: ColourScale;
}

export type FrequencyAxis = 'log' | 'linear';

/** `auto` is what the page's look asks for; the others are scales by name. */
export type ColourScale = 'auto' | 'dusk' | 'dawn' | 'clear';

/** Results that only some views show: computed while somebody needs them. */
export type Part = 'responses' | 'ridgeFit' | 'prediction' | 'pressure';

/** A seat or a source by name. */
export interface StudyPlace {
  readonly kind: 'seat' | 'source';
  readonly name: string;
  readonly at: PositionMetres;
}

export interface Cursor {
  readonly frequencyHz: number;
  readonly timeSeconds: number;
}

export interface StudyFailure {
  readonly code: string;
  readonly params: Readonly<Record<string, ParamValue>>;
  /** Which recording, by label; null for the whole study. */
  readonly label: string | null;
}

export type StudyStatus = 'empty' | 'working' | 'ready' | 'error';

/** An immutable picture of one investigation; a new object on every change. */
export interface StudySnapshot {
  readonly status: StudyStatus;
  readonly progress: Progress | null;
  readonly recordings: readonly Recording[];
  /** What the samples of each say of it, in the order of `recordings`: there before any fit. */
  readonly examinations: readonly Examination[];
  /** Index of the recording that the pictures show. */
  readonly active: number;
  readonly room: Room | null;
  readonly choices: StudyChoices;
  /** Of the active recording. */
  readonly diagnosis: Diagnosis | null;
  /** While the first diagnosis of the active recording is under way: what its fit has found so far; refined by it. */
  readonly firstAnswer: ResonanceFit | null;
  readonly grid: Grid | null;
  readonly failures: readonly StudyFailure[];
  readonly cursor: Cursor | null;
  /** Index into `diagnosis.ridges`. */
  readonly selectedRidge: number | null;
  /** Index into `diagnosis.resonances`: that of the selected ridge, or one that is below the limit. */
  readonly selectedResonance: number | null;
  /** Of every recording, in their order; null while not computed or refused. Empty unless needed. */
  readonly responses: readonly (Response | null)[];
  /** Of the selected ridge or resonance, else of the worst ridge, else of the longest resonance. */
  readonly ridgeFit: RidgeFit | null;
  /** Seats and sources that have a name; those of recordings alone are not among them. */
  readonly places: readonly StudyPlace[];
  /** What people wrote on the printed sheet. */
  readonly sheet: SheetTexts;
  /** Modes of the room up to the highest frequency, with or without a recording; null unless needed. */
  readonly prediction: RoomPrediction | null;
  /** Which of them was chosen. */
  readonly selectedMode: ModeOrder | null;
  /** Of the chosen mode, else of the likeliest of the ridge in view, else of the lowest; null unless needed. */
  readonly pressure: PressureMap | null;
}

/** The owner of one investigation. DOM-free; elements only adapt it. Implemented by `createStudy()` in `study.ts`. */
export interface Study {
  readonly snapshot: StudySnapshot;
  /** Called after every change; returns the way out. */
  subscribe(listener: (snapshot: StudySnapshot, previous: StudySnapshot) => void): () => void;
  /** Reads, then recomputes. Resolves with a key to remove or replace it; a refused file becomes a failure, never a throw. */
  addRecording(bytes: ArrayBuffer, options: RecordingOptions): Promise<string>;
  /** Adds a recording that is read already: the low-frequency copy of a saved study. */
  addCopy(recording: Recording): Promise<string>;
  /** Says anew where and when a recording was made; its samples stay. */
  setRecording(index: number, about: RecordingAbout): void;
  removeRecording(key: string): void;
  clear(): void;
  setActive(index: number): void;
  setRoom(room: Room | null): void;
  setPlaces(places: readonly StudyPlace[]): void;
  /** Moves a seat or source, named or only said by recordings, and the recordings that were made there. */
  movePlace(place: StudyPlace, to: PositionMetres): void;
  /** Writes on the printed sheet. */
  setSheet(change: Partial<SheetTexts>): void;
  /** Chooses a mode to look at, by its order. */
  selectMode(order: ModeOrder | null): void;
  setChoices(choices: Partial<StudyChoices>): void;
  setCursor(cursor: Cursor | null): void;
  selectRidge(index: number | null): void;
  /** Selects by resonance, flagged or not. */
  selectResonance(index: number | null): void;
  /** Reads another channel (1-based) of a recording's file; a refusal leaves it as it is and becomes a failure. */
  setChannel(index: number, channel: number): void;
  /** Has a part computed until the returned function is called. */
  need(part: Part): () => void;
  /**
   * The sides of the room fitted to the resonances of what is shown; changes nothing.
   *
   * @throws RingdownError `fit-room-nothing` without a room or a diagnosis, and those of `fitRoom`
   */
  fitRoom(signal?: AbortSignal): Promise<RoomFit>;
  /** Resolves when nothing is under way. */
  settled(): Promise<StudySnapshot>;
  dispose(): void;
}
