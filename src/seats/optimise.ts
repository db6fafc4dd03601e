import { defaultBounds, type OptimiseBounds } from './optimise-bounds.js';
import { RingdownError } from '../signal/errors.js';
import { Rng } from '../signal/random.js';
import type { Job } from '../signal/types.js';
import { Objective, type Score, type Trim } from './objective.js';
import { frontOf, type TradePoint } from './trade-off.js';
import { hangSeconds, type SharedRidge } from './ridge-levels.js';
import { equalWeights } from './spread.js';
import type { TransferMatrix } from './types.js';
import * as maths from '../signal/maths.js';

export interface OptimiseParams {
  readonly bounds?: Partial<OptimiseBounds>;
  /** One per seat; equal where not given. */
  readonly weights?: Float64Array;
  readonly ridges?: readonly SharedRidge[];
  /** Share of the worst ridge's hang against the spread in what is made small; 0 where there are no ridges. */
  readonly ridgeShare?: number;
  readonly seed?: number;
  /** Starting points of the search beside the fixed ones. */
  readonly starts?: number;
}

export interface Proposal {
  readonly trims: readonly Trim[];
  readonly score: Score;
  /** All sources alike: 0 dB, no delay, no inversion. */
  readonly alike: Score;
  /** Output level against spread: what less of the one would cost of the other, by ascending level. */
  readonly tradeOff: readonly TradePoint[];
  readonly bounds: OptimiseBounds;
  readonly seed: number;
  readonly evaluations: number;
}

/** Steps of processors in the trade: settings are proposed, and judged, as they can be typed in. */
const gainStepDb = 0.1;
const delayStepSeconds = 0.00005;

const plain: Trim = { gainDb: 0, delaySeconds: 0, inverted: false };

const rounded = (value: number, step: number): number => Math.round(value / step) * step;

/** The first sweep tries so many gains and delays of each source. */
const sweepGains = 5;
const sweepDelays = 25;
const sweeps = 4;
/** Seeded steps of the search about its best point, per source. */
const stepsPerSource = 260;

/** @throws RingdownError `optimise-bounds` */
function checkedBounds(given: Partial<OptimiseBounds> = {}): OptimiseBounds {
  const bounds = { ...defaultBounds, ...given };
  const { lowestGainDb, longestDelaySeconds, leastLevelDb } = bounds;
  for (const [name, value, from, to] of [
    ['lowestGainDb', lowestGainDb, -40, 0],
    ['longestDelaySeconds', longestDelaySeconds, 0, 0.1],
    ['leastLevelDb', leastLevelDb, -40, 0],
  ] as const)
    if (!(value >= from && value <= to))
      throw new RingdownError('optimise-bounds', { name, value, from, to });
  return bounds;
}

/** Brings trims within bounds: the loudest to 0 dB, the earliest to no delay, both on the steps of a processor. */
function normalised(trims: readonly Trim[], bounds: OptimiseBounds): Trim[] {
  const loudest = Math.max(...trims.map(({ gainDb }) => gainDb));
  const earliest = Math.min(...trims.map(({ delaySeconds }) => delaySeconds));
  // All turned over is none turned over.
  const over = trims[0].inverted;
  return trims.map(({ gainDb, delaySeconds, inverted }) => ({
    gainDb: Math.max(bounds.lowestGainDb, rounded(gainDb - loudest, gainStepDb)) + 0,
    delaySeconds: Math.min(
      bounds.longestDelaySeconds,
      Math.max(0, rounded(delaySeconds - earliest, delayStepSeconds)),
    ),
    inverted: inverted !== over,
  }));
}

/** What is made small: spread and hang re all alike, with a steep price on output below its bound. */
function costOf(score: Score, alike: Score, bounds: OptimiseBounds, ridgeShare: number): number {
  const spread = score.meanSpatialVariance / Math.max(1e-9, alike.meanSpatialVariance);
  const hang = alike.worstHangSeconds > 0 ? score.worstHangSeconds / alike.worstHangSeconds : 0;
  const short = Math.max(0, alike.meanOutputLevelDb + bounds.leastLevelDb - score.meanOutputLevelDb);
  // More hang than before is no proposal: nobody would take it for less spread.
  return spread + ridgeShare * hang + 10 * Math.max(0, hang - 1) + short * (1 + short);
}

/**
 * Proposes gains, delays and polarities that make the seats alike and let the worst ridge hang for less: sweeps over one
 * source at a time from several starts (all alike, and seeded ones), then seeded steps about the best of them. The same
 * seed gives the same proposal. Never worse than all sources alike, neither in spread nor in hang: where nothing better
 * is found within the bounds, that is the proposal.
 *
 * @throws RingdownError `optimise-bounds`, `optimise-sources` with `count` where there is but one source, `weights-empty`
 */
export function* optimiseSources(matrix: TransferMatrix, params: OptimiseParams = {}): Job<Proposal> {
  const { sourceCount, seatCount } = matrix;
  const bounds = checkedBounds(params.bounds);
  const { weights = equalWeights(seatCount), ridges = [], seed = 1, starts = 6 } = params;
  const ridgeShare = ridges.length > 0 ? (params.ridgeShare ?? 0.3) : 0;
  if (sourceCount < 2) throw new RingdownError('optimise-sources', { count: sourceCount });
  if (!weights.some((weight) => weight > 0)) throw new RingdownError('weights-empty');
  const objective = new Objective(matrix, weights, longestHanging(matrix, ridges));
  const rng = new Rng(seed);
  const allAlike = Array.from({ length: sourceCount }, () => plain);
  const alike = objective.score(allAlike);
  const seen: { trims: readonly Trim[]; score: Score }[] = [{ trims: allAlike, score: alike }];
  const judge = (trims: readonly Trim[]): { cost: number; score: Score } => {
    const score = objective.score(trims);
    return { cost: costOf(score, alike, bounds, ridgeShare), score };
  };
  let best = {
    trims: allAlike as readonly Trim[],
    cost: costOf(alike, alike, bounds, ridgeShare),
    score: alike,
  };
  const keep = (trims: readonly Trim[]): void => {
    const settled = normalised(trims, bounds);
    const { cost, score } = judge(settled);
    seen.push({ trims: settled, score });
    const sound =
      score.meanSpatialVariance <= alike.meanSpatialVariance &&
      score.worstHangSeconds <= alike.worstHangSeconds + 1e-12;
    if (sound && cost < best.cost) best = { trims: settled, cost, score };
  };

  const work = starts + 1;
  for (let start = 0; start <= starts; start++) {
    let trims = start === 0 ? allAlike : randomTrims(sourceCount, bounds, rng);
    for (let sweep = 0; sweep < sweeps; sweep++) {
      const before = judge(trims).cost;
      for (let source = 0; source < sourceCount; source++) {
        trims = sweepSource(objective, trims, source, bounds, 1 / (1 + sweep), (score) =>
          costOf(score, alike, bounds, ridgeShare),
        );
        yield {
          stage: 'optimise',
          fraction: (0.8 * (start + (sweep + (source + 1) / sourceCount) / sweeps)) / work,
        };
      }
      keep(trims);
      if (judge(trims).cost > before * 0.995) break;
    }
  }

  // Steps of shrinking size about the best point found; a step taken makes the next ones longer again.
  let current = best.trims;
  let currentCost = best.cost;
  let size = 1;
  const steps = stepsPerSource * sourceCount;
  for (let step = 0; step < steps; step++) {
    const tried = stepped(current, size, bounds, rng);
    const { cost } = judge(tried);
    if (cost < currentCost) {
      current = tried;
      currentCost = cost;
      size = Math.min(1, size * 1.5);
      keep(current);
    } else size = Math.max(0.02, size * 0.985);
    if (step % 16 === 15) yield { stage: 'optimise', fraction: 0.8 + (0.2 * (step + 1)) / steps };
  }
  keep(current);
  return {
    trims: best.trims,
    score: best.score,
    alike,
    tradeOff: frontOf(seen),
    bounds,
    seed,
    evaluations: objective.evaluations,
  };
}

/** Ridges that may come to be the worst: those that would hang longest if every source added up. */
function longestHanging(matrix: TransferMatrix, ridges: readonly SharedRidge[], most = 12): SharedRidge[] {
  const power =
    matrix.re.reduce((sum, value, k) => sum + value * value + maths.square(matrix.im[k]), 0) /
    matrix.re.length;
  const meanDb = 10 * maths.log10(Math.max(1e-30, power));
  const potential = (ridge: SharedRidge): number => {
    let sum = 0;
    ridge.re.forEach((value, k) => (sum += maths.hypot(value, ridge.im[k]) / ridge.seatCount));
    return hangSeconds(ridge.decayTimeSeconds, 20 * maths.log10(Math.max(1e-15, sum)), meanDb);
  };
  return [...ridges].sort((a, b) => potential(b) - potential(a)).slice(0, most);
}

function randomTrims(count: number, bounds: OptimiseBounds, rng: Rng): Trim[] {
  return Array.from({ length: count }, () => ({
    gainDb: bounds.lowestGainDb * maths.square(rng.uniform()),
    delaySeconds: bounds.longestDelaySeconds * maths.square(rng.uniform()),
    inverted: bounds.polarity && rng.uniform() < 0.4,
  }));
}

/** One source or several moved a little; now and then one turned over. */
function stepped(trims: readonly Trim[], size: number, bounds: OptimiseBounds, rng: Rng): Trim[] {
  const only = rng.uniform() < 0.5 ? Math.floor(rng.uniform() * trims.length) : -1;
  return trims.map((trim, source) => {
    const [a, b, c] = [rng.gaussian(), rng.gaussian(), rng.uniform()];
    if (only >= 0 && only !== source) return trim;
    const gainDb = trim.gainDb + 2 * size * a;
    const delaySeconds = trim.delaySeconds + 0.003 * size * b;
    return {
      gainDb: Math.min(0, Math.max(bounds.lowestGainDb, gainDb)),
      delaySeconds: Math.min(bounds.longestDelaySeconds, Math.max(0, delaySeconds)),
      inverted: trim.inverted !== (bounds.polarity && c < 0.02),
    };
  });
}

/** The best gain, delay and polarity of one source with the others held; finer about where it stands in later sweeps. */
function sweepSource(
  objective: Objective,
  trims: readonly Trim[],
  source: number,
  bounds: OptimiseBounds,
  width: number,
  costOfScore: (score: Score) => number,
): Trim[] {
  const rest = { re: new Float64Array(objective.points), im: new Float64Array(objective.points) };
  trims.forEach((trim, other) => {
    if (other !== source) objective.add(other, trim, rest.re, rest.im);
  });
  const sum = { re: new Float64Array(objective.points), im: new Float64Array(objective.points) };
  const now = trims[source];
  let best = now;
  let least = Infinity;
  const attempt = (trim: Trim): void => {
    sum.re.set(rest.re);
    sum.im.set(rest.im);
    objective.add(source, trim, sum.re, sum.im);
    const cost = costOfScore(objective.scoreOf(sum.re, sum.im));
    if (cost < least) [best, least] = [trim, cost];
  };
  attempt(now);
  const spaced = (from: number, to: number, about: number, count: number): number[] => {
    const half = ((to - from) * width) / 2;
    const low = Math.max(from, Math.min(about - half, to - 2 * half));
    const high = Math.min(to, low + 2 * half);
    return Array.from({ length: count }, (_, k) => low + ((high - low) * k) / Math.max(1, count - 1));
  };
  const delays = spaced(0, bounds.longestDelaySeconds, now.delaySeconds, sweepDelays);
  const gains = spaced(bounds.lowestGainDb, 0, now.gainDb, bounds.lowestGainDb < 0 ? sweepGains : 1);
  for (const delaySeconds of delays)
    for (const gainDb of gains)
      for (const inverted of bounds.polarity ? [false, true] : [false])
        attempt({ gainDb, delaySeconds, inverted });
  return trims.map((trim, other) => (other === source ? best : trim));
}
