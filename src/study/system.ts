import type { Progress, Recording } from '../signal/types.js';
import {
  arrangePoints,
  matchedBand,
  plainSetting,
  proposeCuts,
  repeatability,
  stageGrid,
  sumSources,
  levelsOf,
  type SourceSetting,
  type StageGrid,
  type TransferMatrix,
} from '../seats/index.js';
import { failureOf } from './failure.js';
import { createFollower } from './follower.js';
import { createFollowers } from './followers.js';
import { sharedPool, type Pool } from './pool.js';
import { createRound } from './round.js';
import { copiesOf, failuresOf, repeatedPairs, withoutProposal } from './system-grids.js';
import { defaultDesign, isPlain, settingsOf, weightsOf } from './system-design.js';
import { ridgesToCut } from './system-readings.js';
import { copyRequest, stateRequest, transferRequest } from './system-requests.js';
import type { System, SystemDesign, SystemPart, SystemSnapshot, SystemState } from './system-types.js';
import type { Study, StudySnapshot } from './types.js';

const emptyGrid: StageGrid = { sources: [], seats: [], incomplete: [], recordings: [] };

const emptySnapshot: SystemSnapshot = {
  progress: null,
  design: defaultDesign,
  arrangement: arrangePoints([]),
  stage: 0,
  afterStage: null,
  grid: emptyGrid,
  matrix: null,
  repeats: null,
  before: null,
  designed: null,
  after: null,
  afterMatrix: null,
  proposal: null,
  equaliser: null,
  proposing: null,
  failures: [],
};

/**
 * Sources and seats of a study: what its recordings are points of, their sums, and what a design would make of them. Parts
 * are computed only while somebody needs them, and again only where what they rest on has changed.
 */
export function createSystem(study: Study, options: { readonly pool?: Pool } = {}): System {
  const pool = (): Pool => options.pool ?? sharedPool();
  const listeners = new Set<(snapshot: SystemSnapshot) => void>();
  const waiting = new Set<(snapshot: SystemSnapshot) => void>();
  const needs = new Map<SystemPart, number>();
  let snapshot = emptySnapshot;
  let seen: readonly Recording[] | null = null;
  let disposed = false;
  let search: AbortController | null = null;

  const round = createRound(() => publish());
  const again = (): void => update();
  const copies = createFollowers<Recording>(round, again);
  const matrix = createFollower<TransferMatrix>(round, again);
  const afterMatrix = createFollower<TransferMatrix>(round, again);
  const repeats = createFollower<TransferMatrix>(round, again);
  const states = {
    before: createFollower<SystemState>(round, again),
    designed: createFollower<SystemState>(round, again),
    after: createFollower<SystemState>(round, again),
  };

  const wanted = (part: SystemPart): boolean => (needs.get(part) ?? 0) > 0;

  /** Points and stages of the recordings as they are now. */
  const arranged = (study: StudySnapshot, design: SystemDesign): Partial<SystemSnapshot> => {
    const arrangement = seen === study.recordings ? snapshot.arrangement : arrangePoints(study.recordings);
    seen = study.recordings;
    const named = design.stage === null ? -1 : arrangement.stages.indexOf(design.stage);
    const stage = Math.max(0, named);
    const afterStage = arrangement.stages.length > stage + 1 ? stage + 1 : null;
    const grid =
      arrangement === snapshot.arrangement && stage === snapshot.stage
        ? snapshot.grid
        : stageGrid(arrangement, stage);
    return { arrangement, stage, afterStage, grid };
  };

  const update = (change: Partial<SystemSnapshot> = {}): void => {
    if (disposed) return;
    const of = study.snapshot;
    const design = change.design ?? snapshot.design;
    const next: SystemSnapshot = { ...snapshot, ...change, ...arranged(of, design) };
    const { arrangement, grid, afterStage } = next;
    const sums = wanted('sums') || wanted('decays');
    const list = of.recordings;
    copies.follow(new Map(sums ? list.map((recording) => [recording, copyRequest(pool(), recording)]) : []));
    const made = copies.values(list);
    const rows = sums ? copiesOf(grid, list, made) : null;
    const laterGrid = afterStage === null ? emptyGrid : stageGrid(arrangement, afterStage);
    const later = sums ? copiesOf(laterGrid, list, made) : null;
    matrix.follow(rows && transferRequest(pool(), rows, design));
    afterMatrix.follow(later && transferRequest(pool(), later, design));
    const pairs = sums ? repeatedPairs(next, made) : null;
    repeats.follow(pairs && transferRequest(pool(), pairs, design));
    const settings = settingsOf(next);
    const decays = wanted('decays');
    states.before.follow(rows && decays ? stateRequest(pool(), rows, null, of) : null);
    states.designed.follow(
      rows && decays && !isPlain(settings) && settings.some(({ muted }) => !muted)
        ? stateRequest(pool(), rows, settings, of)
        : null,
    );
    states.after.follow(later && decays ? stateRequest(pool(), later, null, of) : null);
    const sameMatrix = matrix.value === next.matrix;
    publish({
      ...change,
      ...next,
      matrix: matrix.value,
      afterMatrix: afterMatrix.value,
      repeats: repeats.value ? repeatability(repeats.value) : null,
      before: states.before.value,
      designed: states.designed.value ?? (isPlain(settings) ? states.before.value : null),
      after: states.after.value,
      // A proposal is of the responses that it was found for.
      proposal: sameMatrix ? next.proposal : null,
      failures: [
        ...failuresOf(next, [matrix, afterMatrix, ...Object.values(states)]),
        ...list.flatMap((recording) => copies.failure(recording) ?? []),
      ],
    });
  };

  const publish = (change: Partial<SystemSnapshot> = {}): void => {
    snapshot = { ...snapshot, ...change, progress: round.progress };
    for (const listener of [...listeners]) listener(snapshot);
    if (round.progress !== null || search !== null) return;
    for (const resolve of waiting) resolve(snapshot);
    waiting.clear();
  };

  const setDesign = (change: Partial<SystemDesign>): void => {
    const design = { ...snapshot.design, ...change };
    if (JSON.stringify(design) !== JSON.stringify(snapshot.design)) update({ design });
  };

  const stopWatching = study.subscribe((now, before) => {
    const same = (['recordings', 'choices', 'room'] as const).every((name) => now[name] === before[name]);
    if (!same || seen !== now.recordings) update();
  });
  update();

  const setSource = (key: string, change: Partial<SourceSetting>): void => {
    const { settings } = snapshot.design;
    setDesign({ settings: { ...settings, [key]: { ...(settings[key] ?? plainSetting), ...change } } });
  };

  return {
    get snapshot() {
      return snapshot;
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    setDesign,
    setSource,
    setWeight: (key, weight) => setDesign({ weights: { ...snapshot.design.weights, [key]: weight } }),
    setBands: (bands) => setDesign({ bands }),
    reset: () => update({ design: { ...snapshot.design, settings: {}, bands: [] }, equaliser: null }),
    async propose(seed = 1) {
      const { matrix: from, grid, design } = snapshot;
      if (!from || disposed) return;
      search?.abort();
      const controller = (search = new AbortController());
      const { signal } = controller;
      const report = (low: number, high: number) => (progress: Progress) => {
        if (search !== controller) return;
        publish({ proposing: { stage: progress.stage, fraction: low + (high - low) * progress.fraction } });
      };
      publish({
        proposing: { stage: 'optimise', fraction: 0 },
        failures: withoutProposal(snapshot.failures),
      });
      try {
        const rows = copiesOf(grid, study.snapshot.recordings, copies.values(study.snapshot.recordings));
        const resonances = snapshot.before?.diagnosis.resonances.filter(
          ({ frequencyHz }) => frequencyHz >= design.fromHz && frequencyHz <= design.toHz,
        );
        const ridges =
          rows && resonances?.length
            ? await pool().run('residues', { grid: rows, resonances }, { signal, onProgress: report(0, 0.2) })
            : [];
        const optimise = { ridges, seed, bounds: design.bounds, weights: weightsOf(snapshot) };
        const proposal = await pool().run(
          'optimise',
          { matrix: from, optimise },
          { signal, onProgress: report(0.2, 1) },
        );
        if (search !== controller) return;
        search = null;
        publish({ proposal: snapshot.matrix === from ? proposal : null, proposing: null });
      } catch (thrown) {
        if (search !== controller) return;
        search = null;
        publish({ proposing: null, failures: [...snapshot.failures, failureOf(thrown)] });
      }
    },
    cancelProposal() {
      if (!search) return;
      search.abort();
      search = null;
      publish({ proposing: null });
    },
    applyProposal(tradePoint) {
      const { proposal, arrangement, grid } = snapshot;
      if (!proposal) return;
      const trims = tradePoint === undefined ? proposal.trims : proposal.tradeOff[tradePoint]?.trims;
      if (!trims) return;
      const settings = { ...snapshot.design.settings };
      grid.sources.forEach((source, k) => {
        const { key } = arrangement.sources[source];
        settings[key] = { ...(settings[key] ?? plainSetting), ...trims[k], muted: false };
      });
      setDesign({ settings });
    },
    proposeBands() {
      const { matrix: from, designed, before } = snapshot;
      const state = designed ?? before;
      if (!from || !state) return;
      const bare = settingsOf({ ...snapshot, design: { ...snapshot.design, bands: [] } });
      const levelsDb = levelsOf(sumSources(from, bare));
      const ridges = ridgesToCut((snapshot.before ?? state).diagnosis, snapshot.design);
      const equaliser = proposeCuts(ridges, {
        seatCount: snapshot.grid.seats.length,
        levels: { frequenciesHz: from.frequenciesHz, levelsDb },
        ...snapshot.design.limits,
      });
      const bands = equaliser.cuts.map(({ band, ridge }) => {
        const { frequencyHz, decayTimeSeconds } = ridges[ridge];
        return matchedBand({ frequencyHz, decayTimeSeconds, targetSeconds: band.targetSeconds });
      });
      // What was set freely stays; cuts matched before are those of another design.
      const free = snapshot.design.bands.filter(({ match }) => !match);
      update({ equaliser, design: { ...snapshot.design, bands: [...free, ...bands] } });
    },
    need(part) {
      needs.set(part, (needs.get(part) ?? 0) + 1);
      update();
      let held = true;
      return () => {
        if (!held) return;
        held = false;
        needs.set(part, needs.get(part)! - 1);
        update();
      };
    },
    settled: () =>
      (round.progress === null && search === null) || disposed
        ? Promise.resolve(snapshot)
        : new Promise((resolve) => waiting.add(resolve)),
    dispose() {
      if (disposed) return;
      stopWatching();
      search?.abort();
      copies.follow(new Map());
      for (const follower of [matrix, afterMatrix, repeats, ...Object.values(states)]) follower.follow(null);
      disposed = true;
      listeners.clear();
      for (const resolve of waiting) resolve(snapshot);
      waiting.clear();
    },
  };
}
