import { boxModes, sidesOf } from '../room/box.js';
import { roomModeCount, roomModeDensity } from '../room/room.js';
import type { ModeOrder, Room, RoomSize } from '../room/types.js';
import { RingdownError } from '../signal/errors.js';
import { Rng } from '../signal/random.js';
import type { Job } from '../signal/types.js';
import type { HeardResonance } from './heard.js';
import { ownSpread, RoomScore, type Heard, type Match, type Stretch } from './room-score.js';
import * as maths from '../signal/maths.js';

/** Share by which a side may differ from the one typed: tape measure and walls that are not rigid. */
export const sideTolerance = 0.05;
/** The air may be so much warmer or colder than said. K. */
export const airTolerance = 5;
/** Fewer resonances than this say nothing on three sides. */
export const fewestHeard = 4;
/** Sets of random resonances that are fitted with the same freedom. */
const defaultTrials = 99;
/** Steps of the first search, per axis. */
const steps = 7;
/** The best of them that are refined. */
const starts = 3;
/** Another fit as good as the best, within this many nats, whose sides differ by this share, is told. */
const rivalNats = 1;
const rivalShare = 0.015;
/** A side is called known where the resonances narrow it to this share of what was expected before. */
const knownShare = 0.7;
const celsiusOf = (speed: number): number => 293.15 * maths.square(speed / 343.2) - 273.15;

export interface FittedSide {
  /** At the room's speed of sound. */
  readonly metres: number;
  /** Null where no matched resonance depends on this side. */
  readonly sdMetres: number | null;
  readonly typedMetres: number;
  /** The side stands at the end of what it may differ by. */
  readonly atBound: boolean;
}

/** A resonance with the mode that the fitted box has for it. */
export interface FittedResonance {
  readonly frequencyHz: number;
  readonly frequencySdHz: number;
  /** Null where no mode lies near. */
  readonly order: ModeOrder | null;
  readonly fittedHz: number | null;
  /** The same mode in the room as typed. */
  readonly typedHz: number | null;
}

export interface RoomFit {
  /** As typed, and with the fitted sides; of one speed of sound. */
  readonly typed: Room;
  readonly fitted: Room;
  readonly sides: readonly [FittedSide, FittedSide, FittedSide];
  /**
   * What all sides share: frequencies higher by this share. Warmer air does just the same, so that the recording cannot tell
   * which it is; `airCelsius` would account for it with the sides as typed but for their own changes.
   */
  readonly commonShare: number;
  readonly airCelsius: number;
  /** Whether such air lies within what it may differ by; null where a speed of sound was given in its place. */
  readonly airWithin: boolean | null;
  readonly resonances: readonly FittedResonance[];
  /** How many have a mode within two standard deviations, with the sides as fitted and as typed. */
  readonly explained: number;
  readonly explainedAsTyped: number;
  /** Rms distance of the matched from their modes, as a fraction; null where none is. */
  readonly rmsShare: number | null;
  readonly rmsShareAsTyped: number | null;
  /** Share of sets of random resonances, as many and as dense, that are fitted as well; at least 1 / (trials + 1). */
  readonly chance: number;
  readonly trials: number;
  /** Sides of another fit that is as good, m; null where there is none. */
  readonly rival: RoomSize | null;
  /** Above this modes lie so close that any resonance has one; and how many resonances lie there. Hz. */
  readonly toHz: number;
  readonly above: number;
  /** Share that a side, and K that the air, may differ by. */
  readonly sideTolerance: number;
  readonly airTolerance: number;
}

export interface RoomFitParams {
  readonly trials?: number;
  readonly seed?: number;
}

/** Frequency above which the modes within one standard deviation to each side are more than one. */
function highestHz(room: Room): number {
  for (let f = 40; f < 300; f += 1) if (roomModeDensity(room, f) * 2 * ownSpread * f > 1) return f;
  return 300;
}

interface Found {
  readonly score: number;
  readonly stretch: Stretch;
}

/** Gauss and Newton's steps on the matches, which are found anew after each; within the bounds. */
function refine(score: RoomScore, from: Stretch, bound: number): Found {
  let best: Found = { score: score.of(from), stretch: from };
  let stretch = from;
  for (let round = 0; round < 10; round++) {
    const { matrix, right } = normalEquations(score, stretch);
    const step = solve3(matrix, right);
    const next = stretch.map((value, axis) =>
      Math.min(bound, Math.max(-bound, value + step[axis])),
    ) as unknown as Stretch;
    const value = score.of(next);
    if (value > best.score) best = { score: value, stretch: next };
    const moved = Math.max(...next.map((v, axis) => Math.abs(v - stretch[axis])));
    stretch = next;
    if (moved < 1e-5) break;
  }
  return best;
}

/** Of the weighted distances of matches and of the stretches from nothing; symmetric 3 x 3, row-major. */
function normalEquations(score: RoomScore, stretch: Stretch): { matrix: number[]; right: number[] } {
  const matches: Match[] = [];
  score.of(stretch, matches);
  const precision = 1 / maths.square(score.expectedSd);
  const matrix = [precision, 0, 0, 0, precision, 0, 0, 0, precision];
  const right = stretch.map((value) => -precision * value);
  for (const [h, mode] of matches) {
    const { log, sd } = score.heard[h];
    const slopes = [0, 1, 2].map((axis) => score.slope(mode, axis, stretch));
    for (let a = 0; a < 3; a++) {
      right[a] += (slopes[a] * (log - score.logOf(mode))) / maths.square(sd);
      for (let b = 0; b < 3; b++) matrix[3 * a + b] += (slopes[a] * slopes[b]) / maths.square(sd);
    }
  }
  return { matrix, right };
}

/** Inverse of a symmetric, positive 3 x 3 matrix. */
function inverse3([a, b, c, , d, e, , , f]: readonly number[]): number[] {
  const [x, y, z] = [d * f - e * e, c * e - b * f, b * e - c * d];
  const det = a * x + b * y + c * z;
  const upper = [x, y, z, a * f - c * c, b * c - a * e, a * d - b * b].map((value) => value / det);
  return [upper[0], upper[1], upper[2], upper[1], upper[3], upper[4], upper[2], upper[4], upper[5]];
}

const solve3 = (matrix: readonly number[], right: readonly number[]): number[] => {
  const inverse = inverse3(matrix);
  return [0, 1, 2].map((a) => right.reduce((sum, value, b) => sum + inverse[3 * a + b] * value, 0));
};

/** The best fits, the best first: a coarse search over all three axes, its best refined. */
function search(score: RoomScore, bound: number): Found[] {
  const at = Array.from({ length: steps }, (_, k) => bound * ((2 * k) / (steps - 1) - 1));
  const coarse: Found[] = [];
  for (const a of at)
    for (const b of at)
      for (const c of at) {
        const stretch: Stretch = [a, b, c];
        coarse.push({ score: score.of(stretch), stretch });
      }
  coarse.sort((p, q) => q.score - p.score);
  const chosen: Found[] = [];
  for (const one of [{ score: score.of([0, 0, 0]), stretch: [0, 0, 0] as Stretch }, ...coarse]) {
    const step = (2 * bound) / (steps - 1);
    const near = chosen.some(({ stretch }) => stretch.every((v, k) => Math.abs(v - one.stretch[k]) <= step));
    if (!near) chosen.push(one);
    if (chosen.length > starts) break;
  }
  return chosen.map(({ stretch }) => refine(score, stretch, bound)).sort((p, q) => q.score - p.score);
}

/** As many resonances as were heard, in the same band, as dense as modes are there but anywhere. */
function randomHeard(heard: readonly Heard[], room: Room, rng: Rng): Heard[] {
  const [from, to] = [maths.exp(heard[0].log), maths.exp(heard[heard.length - 1].log)];
  const [low, high] = [roomModeCount(room, from), roomModeCount(room, to)];
  const logs = heard.map(() => {
    const count = low + (high - low) * rng.uniform();
    let [a, b] = [from, to];
    for (let k = 0; k < 30; k++) {
      const middle = 0.5 * (a + b);
      if (roomModeCount(room, middle) < count) a = middle;
      else b = middle;
    }
    return maths.log(0.5 * (a + b));
  });
  logs.sort((a, b) => a - b);
  return heard.map(({ sd }, k) => ({ log: logs[k], sd }));
}

const withSides = (room: Room, stretch: Stretch): Room => {
  const [lengthMetres, widthMetres, heightMetres] = sidesOf(room.size).map(
    (side, axis) => side * maths.exp(-stretch[axis]),
  );
  return { ...room, size: { lengthMetres, widthMetres, heightMetres } };
};

/**
 * Fits the three sides of a box to resonances: the walls are not rigid and the tape measure is not perfect. Only speed of
 * sound over side is measured, so that a change of all sides and one of the air cannot be told apart. The same search on
 * random resonances says how much of the score is chance.
 *
 * @param resonances As `heardResonances` picks them; those above the frequency at which any resonance has a mode are left out.
 * @throws RingdownError `fit-room-plan`; `fit-room-few` with `count`, `needed`, `toHz`
 */
export function* fitRoom(
  room: Room,
  resonances: readonly HeardResonance[],
  { trials = defaultTrials, seed = 1 }: RoomFitParams = {},
): Job<RoomFit> {
  if (room.plan) throw new RingdownError('fit-room-plan', {});
  const toHz = highestHz(room);
  const used = resonances
    .filter(({ frequencyHz }) => frequencyHz <= toHz)
    .sort((a, b) => a.frequencyHz - b.frequencyHz);
  if (used.length < fewestHeard)
    throw new RingdownError('fit-room-few', { count: used.length, needed: fewestHeard, toHz });
  const heard = used.map(({ frequencyHz, frequencySdHz }): Heard => ({
    log: maths.log(frequencyHz),
    sd: maths.hypot(ownSpread, frequencySdHz / frequencyHz),
  }));
  const bound = -maths.log1p(-sideTolerance) + maths.log1p(airTolerance / 293.15) / 2;
  const speed = room.speedOfSoundMetresPerSecond;
  const sides = sidesOf(room.size);
  const axial = sides.map((side) => speed / 2 / side) as unknown as [number, number, number];
  const reach = toHz * maths.exp(bound + 2 * ownSpread);
  const modes = boxModes(room.size, speed, reach).map(({ order }) => order);
  const scoreOf = (of: readonly Heard[]): RoomScore => new RoomScore(of, modes, axial, bound / 2);
  const score = scoreOf(heard);
  const found = search(score, bound);
  const [best] = found;
  let asGood = 0;
  const rng = new Rng(seed);
  for (let trial = 0; trial < trials; trial++) {
    yield { stage: 'fit', fraction: trial / trials };
    if (search(scoreOf(randomHeard(heard, room, rng)), bound)[0].score >= best.score) asGood++;
  }
  const asTyped: Match[] = [];
  score.of([0, 0, 0], asTyped);
  const rmsOf = (matches: readonly Match[]): number | null =>
    matches.length === 0
      ? null
      : Math.sqrt(
          matches.reduce((sum, [h, m]) => sum + maths.square(heard[h].log - score.logOf(m)), 0) /
            matches.length,
        );
  const rmsShareAsTyped = rmsOf(asTyped);
  const typedLogs = modes.map((_, k) => score.logOf(k));
  const matches: Match[] = [];
  const { matrix } = normalEquations(score, best.stretch);
  score.of(best.stretch, matches);
  const rmsShare = rmsOf(matches);
  const covariance = inverse3(matrix);
  const fitted = withSides(room, best.stretch);
  const common = best.stretch.reduce((sum, value) => sum + value, 0) / 3;
  const airCelsius = celsiusOf(speed * maths.exp(common));
  const modeOf = new Map(matches);
  const differs = ({ stretch }: Found): boolean =>
    stretch.some((value, axis) => Math.abs(value - best.stretch[axis]) > rivalShare);
  const rival = found.find((one) => one.score > best.score - rivalNats && differs(one));
  return {
    typed: room,
    fitted,
    sides: sides.map((typedMetres, axis): FittedSide => {
      const sd = Math.sqrt(covariance[4 * axis]);
      const metres = typedMetres * maths.exp(-best.stretch[axis]);
      return {
        metres,
        sdMetres: sd < (knownShare * bound) / 2 ? metres * sd : null,
        typedMetres,
        atBound: Math.abs(best.stretch[axis]) > 0.999 * bound,
      };
    }) as unknown as RoomFit['sides'],
    commonShare: maths.expm1(common),
    airCelsius,
    airWithin:
      room.temperatureCelsius === null ? null : Math.abs(airCelsius - celsiusOf(speed)) <= airTolerance,
    resonances: used.map(({ frequencyHz, frequencySdHz }, h): FittedResonance => {
      const mode = modeOf.get(h);
      return {
        frequencyHz,
        frequencySdHz,
        order: mode === undefined ? null : modes[mode],
        fittedHz: mode === undefined ? null : maths.exp(score.logOf(mode)),
        typedHz: mode === undefined ? null : maths.exp(typedLogs[mode]),
      };
    }),
    explained: matches.length,
    explainedAsTyped: asTyped.length,
    rmsShare,
    rmsShareAsTyped,
    chance: (1 + asGood) / (1 + trials),
    trials,
    rival: rival ? withSides(room, rival.stretch).size : null,
    toHz,
    above: resonances.length - used.length,
    sideTolerance,
    airTolerance,
  };
}
