import type { Note, Recording } from '../signal/types.js';
import type { BandDecay } from '../decay/band-decay.js';
import type { BandRange } from '../decay/types.js';
import type { Resonance, ResonanceFit } from '../resonance/types.js';
import type { NearField } from './near-field.js';
import type { ModeKind, ModeOrder, Room, RoomPrediction } from '../room/types.js';

export type LimitName = 'audibility' | 'target' | 'neighbours';
export type Audible = 'yes' | 'possibly' | 'unknown';
export type Cause = 'room-mode' | 'boundary' | 'hum' | 'source' | 'equaliser' | 'coupled' | 'unknown';

/** A predicted mode that a ridge may be. Weights of one ridge add up to at most 1; the rest is the chance of none. */
export interface Candidate {
  readonly order: ModeOrder;
  readonly kind: ModeKind;
  readonly frequencyHz: number;
  /** (measured - predicted) / predicted. */
  readonly deviation: number;
  readonly weight: number;
  readonly shapeMatch: number | null;
  /** Candidates with the same number cannot be told apart by frequency in this recording. */
  readonly group: number;
  /** In the best one-to-one assignment of all resonances to modes. */
  readonly best: boolean;
}

/**
 * What might help, as a code and numbers. Among the numbers, where they are known: `why` (a code), `expectedSeconds` and
 * `expectedDb` (decay time and change of level of the ridge after it, as predicted and not yet measured).
 */
export interface Remedy {
  readonly kind: 'move-seat' | 'move-source' | 'add-source' | 'absorb' | 'cut' | 'leave' | 'measure-again';
  readonly params: Readonly<Record<string, string | number | boolean | null>>;
}

/** What a cause rests on, in numbers. */
export interface Evidence {
  readonly kind: 'hum' | 'alone' | 'two-slopes' | 'modes' | 'one-shape' | 'near-field' | 'not-near-field';
  readonly params: Readonly<Record<string, number | null>>;
}

export interface Ridge {
  /** Index into the resonances; null for a band that hangs although no resonance explains it. */
  readonly resonance: number | null;
  readonly frequencyHz: number;
  readonly decayTimeSeconds: number | null;
  readonly decayTimeSdSeconds: number | null;
  readonly limitSeconds: number | null;
  /** decayTime / limit. */
  readonly excess: number | null;
  readonly limitName: LimitName;
  readonly audible: Audible;
  readonly cause: Cause;
  /** Null or absent where nothing is known but that no mode explains it. */
  readonly evidence?: Evidence | null;
  /** Indices of the recordings it is heard in. */
  readonly seats: readonly number[];
  readonly candidates: readonly Candidate[];
  readonly remedies: readonly Remedy[];
}

/** Limits over frequency for drawing: a band between two published curves, NaN where none exists. */
export interface LimitCurve {
  readonly name: LimitName;
  readonly frequenciesHz: Float64Array;
  readonly lowerSeconds: Float64Array;
  readonly upperSeconds: Float64Array;
  /** Below this frequency the published evidence contradicts itself; null where that is not so. */
  readonly disagreesBelowHz: number | null;
}

export interface FileFacts {
  readonly label: string;
  readonly hash: string;
  readonly sampleRate: number;
  readonly channelCount: number;
  readonly channel: number;
  readonly durationSeconds: number;
  readonly onsetSeconds: number;
  /** What was given beside the file; see `Recording`. */
  readonly microphone?: Recording['microphone'];
  readonly fullScaleDb?: Recording['fullScaleDb'];
  readonly sweep?: Recording['sweep'];
  readonly range: readonly BandRange[];
  /** Decay times per third-octave, with what refuses them. */
  readonly bands: readonly BandDecay[];
  /** From the onset to where the last third-octave meets its noise, or the end of the file. */
  readonly usableSeconds: number;
  readonly notes: readonly Note[];
}

export interface Diagnosis {
  readonly files: readonly FileFacts[];
  readonly fit: ResonanceFit;
  readonly resonances: readonly Resonance[];
  /** Sorted by excess, worst first; only those above the chosen limit. */
  readonly ridges: readonly Ridge[];
  readonly limit: LimitName;
  readonly room: RoomPrediction | null;
  /** Recordings close to a source that were taken as evidence; none of them is a seat. Absent where there are none. */
  readonly nearFields?: readonly NearField[];
}

export interface DiagnosisParams {
  readonly fromHz: number;
  readonly toHz: number;
  readonly limit: LimitName;
  readonly room: Room | null;
}
