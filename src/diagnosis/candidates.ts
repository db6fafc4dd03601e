import { roomModeCount, roomModeDensity, roomModes } from '../room/room.js';
import type { Mode, Room } from '../room/types.js';
import { assignmentMarginals, bestAssignment, type Pair } from './assign.js';
import {
  commonLevel,
  decayOdds,
  frequencyChance,
  levelOdds,
  shapeEvidence,
  wallCut,
  wallSpread,
} from './evidence.js';
import { excitation, type MeasuredShape, type Place } from './shapes.js';
import type { Candidate } from './types.js';
import * as maths from '../signal/maths.js';

/** What all modes share: the tape measure and the temperature. One standard deviation, and the steps it is tried in. */
const commonSpread = 0.02;
const commonSteps = Array.from({ length: 21 }, (_, i) => 1 + (i - 10) * 0.006);

/**
 * Resonances of no predicted mode, per one that is. One in nine is a panel, a neighbouring space or one mode told as two;
 * and walls, tape measure and temperature together move 8 % of the modes beyond the cut: (0.11 + 0.08) / 0.92.
 */
const strangers = 0.21;
/** Chance, before anything is looked at, that the room is not as given, so that every match is chance. */
const wrongRoomChance = 0.1;
/**
 * Power of the evidence for or against the room: resonances do not speak independently, and real ones come in pairs and
 * crowds that no model of ours makes. Half is an assumption; with more, a measured room whose sides are known was doubted.
 */
const trust = 0.5;
/** Most of the predicted modes that are ever found; where fewer resonances are seen than predicted, fewer. */
const mostFound = 0.9;
/** No mode is so certain to be found that its absence could prove anything. */
const surest = 0.95;
/** A mode this faint re the mean over all places is found half as often as others: 16 dB under it. */
const faint = 0.15;
/** Candidates of less weight than this are left out. */
const leastWeight = 0.005;
/** Expected levels are not believed further down than this: other modes and imperfect walls fill a node. */
const leastLevelDb = -20;

/** As far beyond the highest frequency as walls may pull a mode down into the range. */
export const topFactor = 1 + 2 * wallCut;

/** Modes up to a frequency and beyond it as far as walls may pull one down into the range. */
export const candidateModes = (room: Room, toHz: number): Mode[] => roomModes(room, toHz * topFactor);

/** What is matched: a resonance, or anything with a frequency. */
export interface Observation {
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
  readonly decayTimeSeconds?: number | null;
  readonly decayTimeSdSeconds?: number | null;
  /** rms over the recordings, dB re anything that all observations share; null where unknown. */
  readonly levelDb?: number | null;
  readonly shape?: MeasuredShape | null;
  /**
   * Stands for several modes that could not be parted. It takes no mode away from others, and says nothing about whether
   * the room is as given: some mode lies near every frequency there.
   */
  readonly cluster?: boolean;
}

export interface MatchParams {
  readonly room: Room;
  /** Ascending; reaching `wallCut` beyond the highest frequency. */
  readonly modes: readonly Mode[];
  /** Two modes closer than this cannot be told apart in this recording; null if unknown. */
  readonly resolvableSpacingHz: number | null;
  /** Of the recordings, in the order of the shapes' entries; none known if empty. */
  readonly places?: readonly Place[];
}

interface Near {
  readonly observation: number;
  readonly mode: number;
  readonly shapeMatch: number | null;
  /** Odds from shape and decay; frequency is left to the common scale. */
  readonly evidence: number;
}

interface Weighed {
  /** Per near pair. */
  readonly weights: Float64Array;
  readonly best: readonly boolean[];
}

/**
 * The predicted modes that each resonance may be, with weights, over all resonances at once.
 *
 * A mode spreads its chance as a normal distribution about its frequency (2.5 % for the walls, and the resonance's own
 * uncertainty), cut at 6 %, under a scale that all share (2 %). Its chance of being found follows from its level at the
 * places, where they are known; its level, its shape across three or more places, and its decay, where walls are known,
 * multiply it. Every mode makes at most one resonance, every resonance is of at most one mode or of none. The whole is
 * weighed against a room that is not as given, in which resonances lie as densely but anywhere. So a resonance near one
 * lonely mode gets a good weight, one among many gets many small ones, equal modes share, and none is always possible.
 *
 * @returns per observation, by descending weight; the weights of one add up to less than 1
 */
export function matchObservations(observations: readonly Observation[], params: MatchParams): Candidate[][] {
  const { room, modes, places = [] } = params;
  const near = nearPairs(observations, params);
  const expectedDb = modes.map((mode) =>
    Math.max(leastLevelDb, 20 * maths.log10(Math.max(excitation(mode, room, places), 1e-3))),
  );
  const first = weigh(observations, near, expectedDb, params);
  const hasLevels = places.some(({ seat, source }) => seat || source);
  const { weights, best } = hasLevels
    ? weigh(observations, withLevels(observations, near, first, expectedDb), expectedDb, params)
    : first;
  return observations.map((observation, index) => {
    const own = [...near.keys()].filter((k) => near[k].observation === index);
    const apart = Math.max(
      wallSpread * observation.frequencyHz,
      params.resolvableSpacingHz ?? 0,
      observation.frequencySdHz,
    );
    const groups = groupsOf(
      own.map((k) => modes[near[k].mode]),
      apart,
    );
    return own
      .map((k, i): Candidate => {
        const { order, kind, frequencyHz } = modes[near[k].mode];
        const deviation = observation.frequencyHz / frequencyHz - 1;
        const { shapeMatch } = near[k];
        return {
          order,
          kind,
          frequencyHz,
          deviation,
          weight: weights[k],
          shapeMatch,
          group: groups[i],
          best: best[k],
        };
      })
      .filter(({ weight }) => weight >= leastWeight)
      .sort((a, b) => b.weight - a.weight || a.frequencyHz - b.frequencyHz);
  });
}

/** `matchObservations` of one frequency alone. */
export const matchCandidates = (
  frequencyHz: number,
  frequencySdHz: number,
  params: MatchParams,
): Candidate[] => matchObservations([{ frequencyHz, frequencySdHz }], params)[0];

function nearPairs(observations: readonly Observation[], { room, modes, places = [] }: MatchParams): Near[] {
  return observations.flatMap((observation, index) => {
    const indices = [...modes.keys()].filter(
      (k) => Math.abs(observation.frequencyHz / modes[k].frequencyHz - 1) <= wallCut,
    );
    const nearModes = indices.map((k) => modes[k]);
    const shapes = shapeEvidence(observation, nearModes, modes, room, places);
    return indices.map((mode, i) => ({
      observation: index,
      mode,
      shapeMatch: shapes[i].match,
      evidence: shapes[i].odds * decayOdds(observation, modes[mode]),
    }));
  });
}

/** The pairs with the evidence of their levels, against the common level that the first weights let expect. */
function withLevels(
  observations: readonly Observation[],
  near: readonly Near[],
  { weights }: Weighed,
  expectedDb: readonly number[],
): Near[] {
  const surpluses = observations.map(({ frequencyHz, levelDb = null }, index) => {
    let [sum, weight] = [0, 0];
    near.forEach(({ observation, mode }, k) => {
      if (observation !== index || levelDb === null) return;
      sum += weights[k] * (levelDb - expectedDb[mode]);
      weight += weights[k];
    });
    return { frequencyHz, surplusDb: weight > 0 ? sum / weight : 0, weight };
  });
  const common = observations.map(({ frequencyHz }) => commonLevel(frequencyHz, surpluses));
  return near.map((pair) => {
    const { levelDb = null } = observations[pair.observation];
    if (levelDb === null) return pair;
    const odds = levelOdds(levelDb, expectedDb[pair.mode], common[pair.observation]);
    return { ...pair, evidence: pair.evidence * odds };
  });
}

function weigh(
  observations: readonly Observation[],
  near: readonly Near[],
  expectedDb: readonly number[],
  { room, modes }: MatchParams,
): Weighed {
  const density = observations.map(({ frequencyHz }) => roomModeDensity(room, frequencyHz));
  const single = observations.filter(({ cluster }) => !cluster).map(({ frequencyHz }) => frequencyHz);
  const heard = expectedDb.map((db) => {
    const level = maths.power(10, db / 10);
    return level / (level + maths.square(faint));
  });
  const meanHeard = heard.reduce((sum, value) => sum + value, 0) / Math.max(1, heard.length);
  const shareOf = (mode: number, foundHere: number): number =>
    Math.min(surest, (foundHere * heard[mode]) / meanHeard);
  const [lowest, highest] = [Math.min(...single), Math.max(...single)];
  const found = modes.map(({ frequencyHz }, k) =>
    frequencyHz < lowest || frequencyHz > highest ? null : shareOf(k, foundShare(frequencyHz, single, room)),
  );
  const foundAt = observations.map(({ frequencyHz }) => foundShare(frequencyHz, single, room));
  // Modes that nothing was found of speak against the room, as far as any are found there. In a room that is not as given
  // as many are found, anywhere: both are Poisson processes of the same total rate.
  const unseen = found.reduce<number>((sum, share) => sum + maths.log1p(-(share ?? 0)) + (share ?? 0), 0);
  const strange = single.length * maths.log(strangers / (1 + strangers));
  const priors = commonSteps.map((scale) => maths.exp(-0.5 * maths.square((scale - 1) / commonSpread)));
  const priorSum = priors.reduce((sum, value) => sum + value, 0);
  const trials = commonSteps.map((scale, step) => {
    const pairs = near.map(({ observation, mode, evidence }): Pair => {
      const share = found[mode] ?? shareOf(mode, foundAt[observation]);
      const chance = frequencyChance(observations[observation], modes[mode], scale) * evidence;
      const stranger = strangers * density[observation];
      const missed = found[mode] === null ? 1 : 1 - share;
      // Several modes that ring as one are found together: each is as likely as it is loud.
      if (observations[observation].cluster)
        return { observation, mode, odds: (heard[mode] * chance) / stranger };
      return { observation, mode, odds: (share * chance) / (missed * stranger * foundAt[observation]) };
    });
    const joint = pairs.filter(({ observation }) => !observations[observation].cluster);
    const { chances, logTotal } = assignmentMarginals(joint);
    return { pairs, chances, log: logTotal + unseen + strange + maths.log(priors[step] / priorSum) };
  });
  const most = Math.max(...trials.map(({ log }) => log));
  const asGiven = trials.reduce((sum, { log }) => sum + maths.exp(log - most), 0);
  const logOdds = maths.log((1 - wrongRoomChance) / wrongRoomChance) + trust * (most + maths.log(asGiven));
  const rightRoom = 1 / (1 + maths.exp(-logOdds));
  const weights = new Float64Array(near.length);
  for (const { pairs, chances, log } of trials) {
    const share = (rightRoom * maths.exp(log - most)) / asGiven;
    let next = 0;
    const totals = new Float64Array(observations.length).fill(1);
    for (const { observation, odds } of pairs) totals[observation] += odds;
    pairs.forEach(({ observation, odds }, k) => {
      const chance = observations[observation].cluster ? odds / totals[observation] : chances[next++];
      weights[k] += share * chance;
    });
  }
  const likeliest = trials.find(({ log }) => log === most)!;
  return { weights, best: bestAssignment(likeliest.pairs) };
}

/** Resolved resonances per predicted mode within half an octave to each side. */
function foundShare(frequencyHz: number, single: readonly number[], room: Room): number {
  const [from, to] = [frequencyHz / Math.SQRT2, frequencyHz * Math.SQRT2];
  const seen = single.filter((f) => f >= from && f <= to).length / (1 + strangers);
  const predicted = roomModeCount(room, to) - roomModeCount(room, from);
  return Math.min(mostFound, Math.max(0.05, seen / Math.max(1, predicted)));
}

/** Modes within `apartHz` of the first of their group are one group: their frequencies cannot tell them apart. */
function groupsOf(modes: readonly Mode[], apartHz: number): number[] {
  let group = -1;
  let first = -Infinity;
  return modes.map(({ frequencyHz }) => {
    if (frequencyHz - first > apartHz) {
      group++;
      first = frequencyHz;
    }
    return group;
  });
}

/** Chance that a ridge is one of its candidates. */
export const chanceOfAny = (candidates: readonly Candidate[]): number =>
  candidates.reduce((sum, { weight }) => sum + weight, 0);
