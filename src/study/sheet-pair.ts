import type { Grid } from '../decay/types.js';
import type { Diagnosis } from '../diagnosis/types.js';
import { stageGrid } from '../seats/index.js';
import type { Progress, Recording } from '../signal/types.js';
import { createFollower } from './follower.js';
import { sharedPool, type Pool } from './pool.js';
import { diagnosisRequest, gridRequest } from './requests.js';
import { createRound } from './round.js';
import { seatRidges } from './system-readings.js';
import type { System, SystemSnapshot, SystemState } from './system-types.js';
import type { Study, StudySnapshot } from './types.js';

/** How one side of a comparison came about: a recording as it is, all sources added up, or predicted through the design. */
export type SideKind = 'recording' | 'summed' | 'designed';

/** One side of the comparison on the sheet. */
export interface PairSide {
  readonly kind: SideKind;
  /** Name of its stage; may be empty. */
  readonly stage: string;
  readonly recording: Recording;
  /** Null while it is computed, or where it was refused. */
  readonly grid: Grid | null;
  readonly diagnosis: Diagnosis | null;
}

/** What the sheet shows at one seat: as measured first, and what it is held against where there is such. */
export interface SheetPair {
  readonly progress: Progress | null;
  /** Seats to choose from, by their key. */
  readonly seats: readonly { readonly key: string; readonly name: string }[];
  /** Which of them is shown; null where there is only the shown recording. */
  readonly seat: string | null;
  readonly before: PairSide | null;
  readonly after: PairSide | null;
}

export interface SheetPairOwner {
  readonly snapshot: SheetPair;
  subscribe(listener: () => void): () => void;
  /** Chooses the seat that is shown; null for the one where the worst ridge hangs longest. */
  setSeat(key: string | null): void;
  /** Resolves when nothing of it is under way. */
  settled(): Promise<SheetPair>;
  dispose(): void;
}

interface Side {
  readonly kind: SideKind;
  readonly stage: string;
  readonly recording: Recording;
  /** Known already; else it is fitted here. */
  readonly diagnosis: Diagnosis | null;
}

interface Chosen {
  readonly seats: SheetPair['seats'];
  readonly seat: string | null;
  readonly before: Side | null;
  readonly after: Side | null;
}

/** The seat at which some ridge hangs longest. */
export function worstSeat({ diagnosis }: SystemState): number {
  let [worst, longest] = [0, -Infinity];
  for (const { hangSeconds } of seatRidges(diagnosis))
    hangSeconds.forEach((seconds, seat) => {
      if (seconds !== null && seconds > longest) [worst, longest] = [seat, seconds];
    });
  return worst;
}

function summedSides(system: SystemSnapshot, wanted: string | null): Chosen | null {
  const { before, after, designed, grid, arrangement, afterStage } = system;
  if (!before) return null;
  const seats = grid.seats.map((seat) => arrangement.seats[seat]);
  const asked = seats.findIndex(({ key }) => key === wanted);
  const at = asked < 0 ? worstSeat(before) : asked;
  const side = (state: SystemState, kind: SideKind, stage: number, index: number): Side | null =>
    state.recordings[index]
      ? {
          ...{ kind, recording: state.recordings[index], diagnosis: state.diagnosis },
          stage: arrangement.stages[stage] ?? '',
        }
      : null;
  const kind = grid.sources.length > 1 ? 'summed' : 'recording';
  // Seats of the later stage stand in an order of their own.
  const later = afterStage === null ? -1 : stageGrid(arrangement, afterStage).seats.indexOf(grid.seats[at]);
  const changed = designed !== null && designed !== before;
  return {
    seats: seats.map(({ key, name }) => ({ key, name: name || key })),
    seat: seats[at]?.key ?? null,
    before: side(before, kind, system.stage, at),
    after:
      after && later >= 0
        ? side(after, kind, afterStage!, later)
        : changed && afterStage === null
          ? side(designed, 'designed', system.stage, at)
          : null,
  };
}

/** The shown recording, and that of the same point at another stage. */
function recordedSides({ recordings, active, diagnosis }: StudySnapshot, system: SystemSnapshot): Chosen {
  const side = (index: number | undefined): Side | null =>
    index === undefined || !recordings[index]
      ? null
      : {
          ...{ kind: 'recording', recording: recordings[index], stage: recordings[index].stage },
          diagnosis: index === active ? diagnosis : null,
        };
  const stages = system.arrangement.cells.map((rows) => rows.flat());
  const at = stages.findIndex((points) => points.some((indices) => indices.includes(active)));
  const point = stages[at]?.findIndex((indices) => indices.includes(active)) ?? -1;
  const others = stages.map((points) => points[point]?.[0]);
  const first = at > 0 ? others.findIndex((index) => index !== undefined) : at;
  const later = others.slice(Math.max(at, first + 1)).find((index) => index !== undefined);
  const before = first >= 0 && first < at ? others[first] : active;
  return {
    seats: [],
    seat: null,
    before: side(before),
    after: side(first >= 0 && first < at ? active : later === active ? undefined : later),
  };
}

const nothing: SheetPair = { progress: null, seats: [], seat: null, before: null, after: null };

/** Computes what the sheet compares, as long as it is not disposed of. */
export function createSheetPair(study: Study, system: System, options: { pool?: Pool } = {}): SheetPairOwner {
  const pool = (): Pool => options.pool ?? sharedPool();
  const listeners = new Set<() => void>();
  const waiting = new Set<(pair: SheetPair) => void>();
  let snapshot = nothing;
  let wanted: string | null = null;
  let letGo: (() => void) | null = null;
  let disposed = false;
  const round = createRound(() => publish());
  const again = (): void => update();
  const followers = {
    before: { grid: createFollower<Grid>(round, again), diagnosis: createFollower<Diagnosis>(round, again) },
    after: { grid: createFollower<Grid>(round, again), diagnosis: createFollower<Diagnosis>(round, again) },
  };

  const follow = (name: 'before' | 'after', side: Side | null): PairSide | null => {
    const { grid, diagnosis } = followers[name];
    const { choices, room, recordings, active } = study.snapshot;
    // The study computes those of the recording that it shows.
    const shown = side?.recording === recordings[active] ? study.snapshot : null;
    const fitted = side && !side.diagnosis && !shown;
    grid.follow(side && !shown?.grid ? gridRequest(pool(), side.recording, choices) : null);
    diagnosis.follow(fitted ? diagnosisRequest(pool(), side.recording, choices, room, recordings) : null);
    return (
      side && {
        ...side,
        grid: shown?.grid ?? grid.value,
        diagnosis: side.diagnosis ?? shown?.diagnosis ?? diagnosis.value,
      }
    );
  };

  const update = (): void => {
    if (disposed) return;
    const of = study.snapshot;
    // One recording alone needs no sums.
    if (of.recordings.length > 1 && !letGo) {
      // The need itself brings an update with it.
      letGo = () => undefined;
      letGo = system.need('decays');
    }
    const summed = of.recordings.length > 1 ? summedSides(system.snapshot, wanted) : null;
    // Sums that are still on their way are waited for: nothing is fitted that they would replace.
    const coming = of.recordings.length > 1 && !summed && system.snapshot.progress !== null;
    const { seats, seat, before, after } = summed ??
      (coming ? nothing : null) ?? { ...recordedSides(of, system.snapshot) };
    publish({ seats, seat, before: follow('before', before), after: follow('after', after) });
  };

  const publish = (change: Partial<SheetPair> = {}): void => {
    const { progress } = round;
    snapshot = { ...snapshot, ...change, progress };
    for (const listener of [...listeners]) listener();
    if (progress !== null) return;
    for (const resolve of waiting) resolve(snapshot);
    waiting.clear();
  };

  const stops = [study.subscribe(again), system.subscribe(again)];
  update();

  return {
    get snapshot() {
      return snapshot;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    setSeat(key) {
      if (wanted === key) return;
      wanted = key;
      update();
    },
    settled: () =>
      round.progress === null || disposed
        ? Promise.resolve(snapshot)
        : new Promise((resolve) => waiting.add(resolve)),
    dispose() {
      if (disposed) return;
      for (const stop of stops) stop();
      for (const side of [followers.before, followers.after]) {
        side.grid.follow(null);
        side.diagnosis.follow(null);
      }
      disposed = true;
      letGo?.();
      listeners.clear();
      for (const resolve of waiting) resolve(snapshot);
      waiting.clear();
    },
  };
}
