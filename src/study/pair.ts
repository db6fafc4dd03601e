/** Two stages beside each other: as measured, through the design, or single recordings; each with its grid and ridges. */
import type { Grid } from '../decay/types.js';
import type { Diagnosis } from '../diagnosis/types.js';
import type { Progress, Recording } from '../signal/types.js';
import { plainSetting, stageGrid, type SourceSetting, type StageGrid } from '../seats/index.js';
import { gridParamsOf } from './choices.js';
import type { Failure } from './failure.js';
import { createFollower, type FollowerRequest } from './follower.js';
import { sharedPool, type Pool } from './pool.js';
import { diagnosisRequest, gridRequest } from './requests.js';
import { createRound } from './round.js';
import { isPlain, settingsOf } from './system-design.js';
import { copyRequest } from './system-requests.js';
import type { System, SystemSnapshot } from './system-types.js';
import type { Study, StudySnapshot } from './types.js';

/** What stands on one side: all sources at a seat, at a measured stage or through the design; or one recording. */
export type PairSide =
  { readonly of: 'before' | 'designed' | 'after' } | { readonly of: 'recording'; readonly index: number };

export interface PairChoice {
  readonly first: PairSide;
  readonly second: PairSide;
}

export interface PairStage {
  readonly side: PairSide;
  readonly recording: Recording | null;
  readonly grid: Grid | null;
  /** Over all seats of the stage, or of the one recording. */
  readonly diagnosis: Diagnosis | null;
  /** SHA-256 of every file that it rests on, for the origin of a picture. */
  readonly hashes: readonly string[];
}

/**
 * Whether levels may be compared: `same`, the same files through filters; `calibrated`, both with a calibration; else
 * `relative`: files may be normalised, and only decays compare.
 */
export type LevelsCompare = 'same' | 'calibrated' | 'relative';

export interface PairSnapshot {
  /** Null where there are no two stages to compare. */
  readonly choice: PairChoice | null;
  /** Index into the arrangement's seats; null where a side is a single recording. */
  readonly seat: number | null;
  /** Seats that both sides have. */
  readonly seats: readonly number[];
  readonly first: PairStage | null;
  readonly second: PairStage | null;
  readonly levels: LevelsCompare;
  readonly progress: Progress | null;
  readonly failures: readonly Failure[];
}

export interface PairWish {
  readonly first?: PairSide | null;
  readonly second?: PairSide | null;
  /** Index into the arrangement's seats. */
  readonly seat?: number | null;
}

export interface Pair {
  readonly snapshot: PairSnapshot;
  /** What is wished for; what there is not gives way to the default. */
  choose(wish: PairWish): void;
  dispose(): void;
}

interface Made {
  readonly recording: Recording;
  readonly grid: Grid;
}

/** Share of the time, re the reading of a file. */
const stageWeight = 2;

const emptyPair: PairSnapshot = {
  ...{ choice: null, seat: null, seats: [], first: null, second: null },
  ...{ levels: 'relative', progress: null, failures: [] },
};

/** Stages that a system can show, in the order of the work. */
export function statesOf(system: SystemSnapshot): ('before' | 'designed' | 'after')[] {
  if (system.grid.seats.length === 0 || clockless(system)) return [];
  const designed = !isPlain(settingsOf(system)) && settingsOf(system).some(({ muted }) => !muted);
  return [
    'before',
    ...(designed ? (['designed'] as const) : []),
    ...(system.afterStage === null ? [] : (['after'] as const)),
  ];
}

/** Several sources that no common clock timed cannot be added up: only their recordings compare. */
const clockless = ({ failures }: SystemSnapshot): boolean =>
  failures.some(({ code }) => code === 'time-reference' || code === 'rates-differ');

/** Whether a side can be shown now. */
export function isThere(side: PairSide, study: StudySnapshot, system: SystemSnapshot): boolean {
  return side.of === 'recording'
    ? study.recordings[side.index] !== undefined
    : statesOf(system).includes(side.of);
}

/** What is compared where nobody chose: later with earlier, else designed with measured, else two recordings. */
export function defaultPair(study: StudySnapshot, system: SystemSnapshot): PairChoice | null {
  const states = statesOf(system);
  if (states.includes('after')) return { first: { of: 'before' }, second: { of: 'after' } };
  if (states.includes('designed')) return { first: { of: 'before' }, second: { of: 'designed' } };
  const { recordings, active } = study;
  // What was recorded close to a source is no stage of a seat.
  const seats = [...recordings.keys()].filter((k) => recordings[k].nearFieldMetres === undefined);
  if (seats.length < 2) return null;
  const here = recordings[seats.includes(active) ? active : seats[0]];
  const pointOf = ({ seat, seatName, source, sourceName }: Recording): string =>
    JSON.stringify([seatName ?? seat, sourceName ?? source]);
  const other = recordings.findIndex(
    (one, k) => seats.includes(k) && one.stage !== here.stage && pointOf(one) === pointOf(here),
  );
  const [first, second] =
    other < 0
      ? seats
      : [recordings.indexOf(here), other].sort((a, b) => stageOrder(system, recordings, a, b));
  return { first: { of: 'recording', index: first }, second: { of: 'recording', index: second } };
}

const stageOrder = (
  { arrangement }: SystemSnapshot,
  recordings: readonly Recording[],
  a: number,
  b: number,
): number =>
  arrangement.stages.indexOf(recordings[a].stage) - arrangement.stages.indexOf(recordings[b].stage);

/** Owned by one element: follows a study and its system while it is there. */
export function createPair(
  study: Study,
  system: System,
  onChange: () => void,
  options: { readonly pool?: Pool } = {},
): Pair {
  const pool = (): Pool => options.pool ?? sharedPool();
  let wish: PairWish = {};
  let snapshot = emptyPair;
  let disposed = false;
  const round = createRound(() => publish({}));
  const again = (): void => update();
  const stages = [createFollower<Made>(round, again), createFollower<Made>(round, again)] as const;
  const diagnoses = [
    createFollower<Diagnosis>(round, again),
    createFollower<Diagnosis>(round, again),
  ] as const;

  const publish = (change: Partial<PairSnapshot>): void => {
    if (disposed) return;
    const next = { ...snapshot, ...change, progress: round.progress };
    const same = (Object.keys(next) as (keyof PairSnapshot)[]).every((key) => next[key] === snapshot[key]);
    if (same) return;
    snapshot = next;
    onChange();
  };

  const update = (): void => {
    if (disposed) return;
    const [of, made] = [study.snapshot, system.snapshot];
    const standard = defaultPair(of, made);
    const side = (wished: PairSide | null | undefined, other: PairSide): PairSide =>
      wished && isThere(wished, of, made) ? wished : other;
    const choice = standard && {
      first: side(wish.first, standard.first),
      second: side(wish.second, standard.second),
    };
    if (!choice) {
      for (const follower of [...stages, ...diagnoses]) follower.follow(null);
      publish({ ...emptyPair, progress: null });
      return;
    }
    const sides = [choice.first, choice.second];
    const grids = sides.map((one) => gridOf(one, made));
    const seats = seatsOfBoth(grids);
    const wanted = wish.seat ?? null;
    const seat = seats.length === 0 ? null : wanted !== null && seats.includes(wanted) ? wanted : seats[0];
    const shown = sides.map((one, k): PairStage => {
      stages[k].follow(stageRequest(pool(), one, grids[k], seat, of, made));
      const recording = one.of === 'recording' ? of.recordings[one.index] : null;
      diagnoses[k].follow(
        recording && diagnosisRequest(pool(), recording, of.choices, of.room, of.recordings),
      );
      return {
        side: one,
        recording: stages[k].value?.recording ?? recording,
        grid: stages[k].value?.grid ?? null,
        diagnosis: one.of === 'recording' ? diagnoses[k].value : (made[one.of]?.diagnosis ?? null),
        hashes: hashesOf(one, grids[k], of),
      };
    });
    publish({
      choice: sameChoice(snapshot.choice, choice) ? snapshot.choice : choice,
      seat,
      seats: String(seats) === String(snapshot.seats) ? snapshot.seats : seats,
      first: sameStage(snapshot.first, shown[0]),
      second: sameStage(snapshot.second, shown[1]),
      levels: levelsCompare(sides, shown),
      failures: sameFailures(
        snapshot.failures,
        [...stages, ...diagnoses].flatMap(({ failure }) => failure ?? []),
      ),
    });
  };

  const letGo = [study.subscribe(again), system.subscribe(again)];
  update();
  return {
    get snapshot() {
      return snapshot;
    },
    choose(next) {
      wish = { ...wish, ...next };
      update();
    },
    dispose() {
      if (disposed) return;
      for (const stop of letGo) stop();
      for (const follower of [...stages, ...diagnoses]) follower.follow(null);
      disposed = true;
    },
  };
}

function gridOf(side: PairSide, { arrangement, grid, afterStage }: SystemSnapshot): StageGrid | null {
  if (side.of === 'recording') return null;
  return side.of === 'after' ? stageGrid(arrangement, afterStage ?? 0) : grid;
}

/** Seats that stand on every side that has any. */
function seatsOfBoth(grids: readonly (StageGrid | null)[]): number[] {
  const there = grids.flatMap((grid) => (grid ? [grid.seats] : []));
  return there.length === 0 ? [] : there[0].filter((seat) => there.every((list) => list.includes(seat)));
}

/** All sources at one seat through their settings, then its grid; of a recording, its grid alone. */
function stageRequest(
  pool: Pool,
  side: PairSide,
  grid: StageGrid | null,
  seat: number | null,
  { recordings, choices }: StudySnapshot,
  system: SystemSnapshot,
): FollowerRequest<Made> | null {
  if (side.of === 'recording') {
    const recording = recordings[side.index];
    const request = gridRequest(pool, recording, choices);
    return {
      ...request,
      key: `${side.index} ${request.key}`,
      known: request.known && { recording, grid: request.known },
      run: async (signal, onProgress) => ({ recording, grid: await request.run(signal, onProgress) }),
    };
  }
  const at = seat === null ? -1 : grid!.seats.indexOf(seat);
  if (at < 0) return null;
  const list = grid!.recordings.map((row) => recordings[row[at]]);
  if (list.some((one) => !one)) return null;
  const settings: readonly SourceSetting[] =
    side.of === 'designed' ? settingsOf(system) : list.map(() => plainSetting);
  const gridParams = gridParamsOf(choices);
  const ids = list.map(({ hash, channel, timeReference }) => [hash, channel, timeReference]);
  const key = JSON.stringify([
    ids,
    settings,
    { ...gridParams, frequenciesHz: [choices.fromHz, choices.toHz] },
  ]);
  return {
    key,
    stage: 'combine',
    weight: stageWeight,
    known: undefined,
    run: async (signal, onProgress) => {
      const copies = await Promise.all(
        list.map(async (one) => {
          const copy = copyRequest(pool, one);
          return copy.known ?? (await copy.run(signal, () => undefined));
        }),
      );
      const named = copies.map((copy, k) => ({ ...copy, timeReference: list[k].timeReference }));
      const [recording] = await pool.run(
        'combine',
        { grid: named.map((copy) => [copy]), settings },
        { signal, onProgress },
      );
      const made = await pool.run('grid', { recording, grid: gridParams }, { key, signal, onProgress });
      return { recording, grid: made };
    },
  };
}

function hashesOf(side: PairSide, grid: StageGrid | null, { recordings }: StudySnapshot): string[] {
  const indices = side.of === 'recording' ? [side.index] : (grid?.recordings.flat() ?? []);
  return indices.flatMap((index) => recordings[index]?.hash ?? []);
}

function levelsCompare(sides: readonly PairSide[], shown: readonly PairStage[]): LevelsCompare {
  const measured = sides.map(({ of }) => (of === 'designed' ? 'before' : of));
  if (measured[0] === measured[1] && measured[0] !== 'recording') return 'same';
  return shown.every(({ recording }) => recording?.fullScaleDb !== undefined) ? 'calibrated' : 'relative';
}

const sameChoice = (a: PairChoice | null, b: PairChoice | null): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

const sameFailures = (a: readonly Failure[], b: readonly Failure[]): readonly Failure[] =>
  JSON.stringify(a) === JSON.stringify(b) ? a : b;

function sameStage(before: PairStage | null, now: PairStage): PairStage {
  const same =
    before !== null &&
    before.grid === now.grid &&
    before.diagnosis === now.diagnosis &&
    before.recording === now.recording &&
    String(before.hashes) === String(now.hashes) &&
    JSON.stringify(before.side) === JSON.stringify(now.side);
  return same ? before : now;
}
