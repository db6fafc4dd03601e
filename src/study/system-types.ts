import type { Diagnosis } from '../diagnosis/types.js';
import type {
  Arrangement,
  Band,
  EqualiserProposal,
  OptimiseBounds,
  Proposal,
  Repeatability,
  SourceSetting,
  StageGrid,
  TransferMatrix,
} from '../seats/index.js';
import type { Progress, Recording } from '../signal/types.js';
import type { Failure } from './failure.js';

/** Limits of proposed bands. */
export interface BandLimits {
  readonly mostBands: number;
  /** At no single seat may a cut leave the level about it further below that seat's mean, dB (negative). */
  readonly lowestSeatDb: number;
  /** No band cuts deeper, dB (negative). */
  readonly deepestDb: number;
}

/** What the user decides about sources and seats; part of the saved study. */
export interface SystemDesign {
  /** The measured stage that is designed on; null for the first. */
  readonly stage: string | null;
  /** By the key of the source; a source without an entry is as measured. */
  readonly settings: Readonly<Record<string, SourceSetting>>;
  /** Filters over all sources. */
  readonly bands: readonly Band[];
  /** By the key of the seat; 1 without an entry. */
  readonly weights: Readonly<Record<string, number>>;
  /** Band over which spread and level are told. */
  readonly fromHz: number;
  readonly toHz: number;
  readonly bounds: OptimiseBounds;
  /** What the automatic proposal of bands may do. */
  readonly limits: BandLimits;
  /** Of exported filters, Hz. */
  readonly sampleRate: number;
}

/** The seats with all sources playing: at one measured stage, or as the design would make them. */
export interface SystemState {
  /** One per seat of the grid, by superposition. */
  readonly recordings: readonly Recording[];
  /** Of all of them together. */
  readonly diagnosis: Diagnosis;
}

/** Results about sources and seats that only some views need. */
export type SystemPart = 'sums' | 'decays';

/** An immutable picture of sources and seats; a new object on every change. */
export interface SystemSnapshot {
  readonly progress: Progress | null;
  readonly design: SystemDesign;
  readonly arrangement: Arrangement;
  /** The stage that is designed on, by index; and the one it is compared with, null where there is none. */
  readonly stage: number;
  readonly afterStage: number | null;
  /** Of the stage that is designed on. */
  readonly grid: StageGrid;
  readonly matrix: TransferMatrix | null;
  readonly repeats: Repeatability | null;
  /** As measured, all sources alike. */
  readonly before: SystemState | null;
  /** Through the design; the same as `before` where it changes nothing. */
  readonly designed: SystemState | null;
  /** A later stage as measured. */
  readonly after: SystemState | null;
  /** Responses of the later stage, over its own grid. */
  readonly afterMatrix: TransferMatrix | null;
  readonly proposal: Proposal | null;
  readonly equaliser: EqualiserProposal | null;
  /** Progress of the search for a proposal; null while none is under way. */
  readonly proposing: Progress | null;
  readonly failures: readonly Failure[];
}

/** The owner of sources and seats of one study. DOM-free. Implemented by `createSystem()` in `system.ts`. */
export interface System {
  readonly snapshot: SystemSnapshot;
  subscribe(listener: (snapshot: SystemSnapshot) => void): () => void;
  setDesign(change: Partial<SystemDesign>): void;
  setSource(key: string, change: Partial<SourceSetting>): void;
  setWeight(key: string, weight: number): void;
  setBands(bands: readonly Band[]): void;
  /** All sources alike and no filters. */
  reset(): void;
  /** Looks for better settings of the sources; resolves when found, cancelled or refused. */
  propose(seed?: number): Promise<void>;
  cancelProposal(): void;
  /** Takes the settings of the proposal, or of one point of its trade-off. */
  applyProposal(tradePoint?: number): void;
  /** Proposes matched cuts for the ridges that the designed seats share, within the limits of the design. */
  proposeBands(): void;
  need(part: SystemPart): () => void;
  /** Resolves when nothing is under way. */
  settled(): Promise<SystemSnapshot>;
  dispose(): void;
}
