import type { Mode, Room } from '../room/types.js';
import type { Observation } from './candidates.js';
import { shapeMatch, shapeOdds, type Place } from './shapes.js';
import * as maths from '../signal/maths.js';

/**
 * How far real walls move a mode from that of the rigid box: one standard deviation, as a fraction of its frequency,
 * and the shift beyond which none is believed: in measured rooms walls shift modes by up to 5 or 6 %. What the tape
 * measure and the temperature add, 2 %, has to fit inside.
 */
export const wallSpread = 0.025;
export const wallCut = 0.06;
/** A few modes are moved further, by a door, a window or a wall that swings: one in ten, by twice as much. */
const movedShare = 0.1;
const movedSpread = 0.05;

/** Sd of the logarithm of a decay time predicted from wall absorption, and of decay times in general. */
const decaySpread = 0.35;
const decayRange = 0.7;

/** Sd in dB of a level at a seat about the expected one, and of that of a resonance that no mode made; its mean. */
const levelSd = 5;
const strangerLevelSd = 9;
const strangerLevelMean = -5;
/** A level never speaks more strongly than this. */
const mostLevelOdds = 10;
/** Fewer neighbours than this give no common level to compare with. */
const fewestNeighbours = 4;
/** Neighbours of a resonance: what lies within this ratio of its frequency. */
const neighbourRatio = 1.6;

const normal = (value: number, sd: number): number =>
  maths.exp(-0.5 * maths.square(value / sd)) / (Math.sqrt(2 * Math.PI) * sd);

/** Chance per hertz of finding a mode at the frequency of an observation, under a scale that all modes share. */
export function frequencyChance(
  { frequencyHz, frequencySdHz }: Observation,
  mode: Mode,
  scale: number,
): number {
  const centre = mode.frequencyHz * scale;
  const off = frequencyHz - centre;
  const sd = (spread: number): number => maths.hypot(spread * centre, frequencySdHz);
  return (1 - movedShare) * normal(off, sd(wallSpread)) + movedShare * normal(off, sd(movedSpread));
}

/** Odds that a decay time is that of a mode, against any decay time; 1 where either is unknown. */
export function decayOdds({ decayTimeSeconds, decayTimeSdSeconds }: Observation, mode: Mode): number {
  if (!decayTimeSeconds || !mode.decayTimeSeconds) return 1;
  const sd = maths.hypot(decaySpread, (decayTimeSdSeconds ?? 0) / decayTimeSeconds);
  const z = maths.log(decayTimeSeconds / mode.decayTimeSeconds) / sd;
  return (maths.hypot(decayRange, sd) / sd) * maths.exp(-0.5 * z * z);
}

/** Match and odds of the shapes of some modes for one observation; modes far from it in frequency show what is chance. */
export function shapeEvidence(
  { shape = null, frequencyHz, cluster = false }: Observation,
  near: readonly Mode[],
  modes: readonly Mode[],
  room: Room,
  places: readonly Place[],
): { match: number | null; odds: number }[] {
  const silent = { match: null, odds: 1 };
  if (!shape) return near.map(() => silent);
  const chance = modes
    .filter((mode) => Math.abs(frequencyHz / mode.frequencyHz - 1) > wallCut)
    .map((mode) => shapeMatch(shape, mode, room, places));
  if (chance.length < fewestNeighbours) return near.map(() => silent);
  return near.map((mode) => {
    const match = shapeMatch(shape, mode, room, places);
    return { match, odds: shapeOdds(match, { certainty: shape.certainty, chance, cluster }) };
  });
}

/** A level less what its candidates let expect, with the weight that it is one of them. */
export interface LevelSurplus {
  readonly frequencyHz: number;
  readonly surplusDb: number;
  readonly weight: number;
}

/**
 * What a source plays near a frequency, in the same unknown unit as the levels: the mean surplus of the neighbours.
 *
 * @returns null where there are too few
 */
export function commonLevel(frequencyHz: number, surpluses: readonly LevelSurplus[]): number | null {
  let [sum, total, count] = [0, 0, 0];
  for (const { frequencyHz: other, surplusDb, weight } of surpluses) {
    const ratio = other > frequencyHz ? other / frequencyHz : frequencyHz / other;
    if (ratio > neighbourRatio || other === frequencyHz || !(weight > 0)) continue;
    sum += weight * surplusDb;
    total += weight;
    count++;
  }
  return count >= fewestNeighbours && total > 1 ? sum / total : null;
}

/** Odds that a level is that of a mode of this expected level, against that of something else; 1 where unknown. */
export function levelOdds(levelDb: number, expectedDb: number, commonDb: number | null): number {
  if (commonDb === null) return 1;
  const ofMode = normal(levelDb - commonDb - expectedDb, levelSd);
  const ofStranger = normal(levelDb - commonDb - strangerLevelMean, strangerLevelSd);
  return Math.min(mostLevelOdds, Math.max(1 / mostLevelOdds, ofMode / Math.max(ofStranger, 1e-9)));
}
