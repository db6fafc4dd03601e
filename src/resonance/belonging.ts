import type { Job } from '../signal/types.js';
import { fitBand } from './band-fit.js';
import type { Band } from './bands.js';
import { alone, isLike, likeness, type Alone, type Likeness } from './likeness.js';
import { bandwidth } from './poles.js';
import * as maths from '../signal/maths.js';

/** What one recording of several is to the first of those that belong together. */
export interface Belonging {
  /** False where it shares too little with the others: another room, or another stage of the work. */
  readonly belongs: boolean;
  /** Its frequencies are those of the others times 1 + stretch: 1 K makes 0.17 %. */
  readonly stretch: number;
}

/**
 * Poles of one recording explain this share of another's decay, as a part of what its own explain, where both are of one
 * room. On synthetic rooms 0.8 and more, and at most 0.4 of another room; on measured ones at least 0.67 and at most 0.55.
 */
const leastShare = 0.6;
/** From the first number on a stretch is looked at closely; a smaller one (0.4 K) changes nothing, a larger is no weather. */
const suspectStretch = 8e-4;
const leastStretch = 7e-4;
const mostStretch = 0.009;
/** Other decay times must explain so much more, of what is left, to be looked at. */
const suspectGain = 0.05;
/** Of one room at another stage: decay times differ by this ratio on average (ln 1.35). */
const leastStageLog = 0.3;
/** Averages over poles are believed beyond this many of their standard errors, and with this many poles. */
const sureErrors = 4;
const leastPoles = 4;

/** A pole that a close look found. */
interface Pole {
  readonly frequencyHz: number;
  readonly logDecay: number;
  readonly frequencySd: number;
  readonly logDecaySd: number;
}

/** Poles of one recording of the lowest band, fitted by themselves, that are known well enough to be compared. */
function* closely({ band, whitened, poles }: Alone): Job<Pole[]> {
  const { stretches } = yield* fitBand(band, whitened, poles, [0]);
  return stretches.flatMap(({ state, deviations, ownFromHz, ownToHz }) =>
    Array.from(state.poles.frequencyHz, (frequencyHz, k) => ({
      frequencyHz,
      logDecay: state.poles.logDecay[k],
      frequencySd: deviations.frequencyHz[k],
      logDecaySd: deviations.logDecay[k],
    })).filter(
      ({ frequencyHz, logDecay, frequencySd, logDecaySd }) =>
        frequencyHz >= Math.max(ownFromHz, 18) &&
        frequencyHz < ownToHz &&
        logDecay > maths.log(0.12) &&
        frequencySd < 0.3 &&
        logDecaySd < 0.2,
    ),
  );
}

interface Average {
  readonly mean: number;
  readonly error: number;
  readonly count: number;
}

/** Weighted mean of values, with its error from their scatter; those far out are left out. */
function average(values: readonly number[], deviations: readonly number[]): Average {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted[sorted.length >> 1];
  const off = values.map((v) => Math.abs(v - middle)).sort((a, b) => a - b);
  const limit = 3 * 1.48 * off[off.length >> 1] + 1e-12;
  let weight = 0;
  let sum = 0;
  const kept = [...values.keys()].filter((k) => Math.abs(values[k] - middle) <= limit);
  const weights = kept.map((k) => 1 / (maths.square(deviations[k]) + maths.square(0.5 * limit)));
  kept.forEach((k, i) => {
    weight += weights[i];
    sum += weights[i] * values[k];
  });
  const mean = sum / weight;
  const scatter = kept.reduce((all, k, i) => all + maths.square(weights[i] * (values[k] - mean)), 0);
  return { mean, error: Math.sqrt(scatter) / weight, count: kept.length };
}

/** Mean ratios (natural logarithms) of the frequencies and decay times of poles that two recordings share. */
function compared(
  these: readonly Pole[],
  those: readonly Pole[],
): { frequency: Average; decay: Average } | null {
  const nearest = (to: Pole, among: readonly Pole[]): Pole | undefined =>
    [...among].sort(
      (a, b) => Math.abs(a.frequencyHz - to.frequencyHz) - Math.abs(b.frequencyHz - to.frequencyHz),
    )[0];
  const pairs = these.flatMap((one): [Pole, Pole][] => {
    const other = nearest(one, those);
    if (!other || nearest(other, these) !== one) return [];
    const width = Math.min(bandwidth(one.logDecay), bandwidth(other.logDecay));
    const near = mostStretch * one.frequencyHz + 0.25 * width;
    return Math.abs(one.frequencyHz - other.frequencyHz) < near ? [[one, other]] : [];
  });
  if (pairs.length < leastPoles) return null;
  return {
    frequency: average(
      pairs.map(([a, b]) => maths.log(a.frequencyHz / b.frequencyHz)),
      pairs.map(([a, b]) => maths.hypot(a.frequencySd, b.frequencySd) / a.frequencyHz),
    ),
    decay: average(
      pairs.map(([a, b]) => a.logDecay - b.logDecay),
      pairs.map(([a, b]) => maths.hypot(a.logDecaySd, b.logDecaySd)),
    ),
  };
}

const sure = ({ mean, error, count }: Average, least: number): boolean =>
  count >= leastPoles && Math.abs(mean) > Math.max(least, sureErrors * error);

const suspectScale = (there: Likeness, back: Likeness): boolean =>
  there.stretch * back.stretch < 0 && Math.abs(there.stretch - back.stretch) > 2 * suspectStretch;

const suspectStage = (there: Likeness, back: Likeness): boolean =>
  (there.ratio - 1) * (back.ratio - 1) < 0 && Math.max(there.gain, back.gain) > suspectGain;

/**
 * Which of several recordings belong together, and how their time scales differ: where the air was warmer by a kelvin all
 * frequencies are 0.17 % higher. The poles of each recording are held against the others'; those that explain one another
 * form groups, and the largest, or of equals the first's, is the room. What then looks stretched, or as if all decays had
 * changed, is fitted by itself and compared pole by pole.
 *
 * @param band The lowest, of all recordings.
 * @returns Per recording; stretches relative to the first that belongs.
 */
export function* belongingOf(band: Band): Job<Belonging[]> {
  const each: Alone[] = [];
  for (const c of band.signals.keys()) each.push(yield* alone(band, c));
  // Two are alike where either explains the other: a seat on a node hears a part of the modes only.
  const group = each.map((_, c) => c);
  const rootOf = (c: number): number => (group[c] === c ? c : rootOf(group[c]));
  for (let a = 0; a < each.length; a++)
    for (let b = 0; b < a; b++) {
      if (rootOf(a) === rootOf(b)) continue;
      if (isLike(each[a], each[b], leastShare) || isLike(each[b], each[a], leastShare))
        group[rootOf(a)] = rootOf(b);
      yield { stage: 'fit', fraction: 0 };
    }
  const sizes = each.map((_, c) => each.filter((__, d) => rootOf(d) === rootOf(c)).length);
  const first = sizes.indexOf(Math.max(...sizes));
  let reference: Pole[] | null = null;
  const found: Belonging[] = [];
  for (const [c, one] of each.entries()) {
    const belongs = rootOf(c) === rootOf(first);
    found.push({ belongs, stretch: 0 });
    if (!belongs || c === first) continue;
    const there = likeness(one, each[first]);
    const back = likeness(each[first], one);
    if (!suspectScale(there, back) && !suspectStage(there, back)) continue;
    reference ??= yield* closely(each[first]);
    const ratios = compared(yield* closely(one), reference);
    if (!ratios) continue;
    const { frequency, decay } = ratios;
    const stage = sure(decay, leastStageLog);
    const stretch = sure(frequency, leastStretch) && Math.abs(frequency.mean) < mostStretch;
    found[c] = { belongs: !stage, stretch: stretch && !stage ? maths.expm1(frequency.mean) : 0 };
  }
  return found;
}
