import type { Job } from '../signal/types.js';
import {
  highestNoiseHz as highestOwnHz,
  lowestNoiseHz as lowestOwnHz,
  noiseRange,
  plain,
  whiten,
  type Band,
  type Whitened,
} from './bands.js';
import { tailLevels } from './colour.js';
import { deviationsOf, type Deviations } from './fisher.js';
import { Model, type State } from './model.js';
import { fitNoise, type NoiseModel, type NoiseRange } from './noise-model.js';
import { addBest, priceOf, searchOrder, type Reach } from './order.js';
import { join, pick, reachHz, type Poles } from './poles.js';
import { bandMedians, complexHannPower, powersBetween, tiltOf, whitenessOf } from './spectrum.js';
import { joinTwins } from './twins.js';
import type { Signal } from './varpro.js';
import { flatWeights, noiseWeights } from './weights.js';
import { noWhitener, whitenerOf, type Whitener } from './whitening.js';

/** What a pole must be worth, in nats, round by round: high at first, so that diffuse decay is not fitted as modes. */
const penalties = [60, 25] as const;
const lastPenalty = 12;
/** Noise coloured by more than this is whitened: that of the tail before the fit, else what the fit leaves. dB. */
const colouredTailDb = 18;
const colouredDb = 16;
/** The last rounds work on stretches of about this width, and on poles up to the margin beside them. Hz. */
const stretchHz = 36;
const marginHz = 18;

/** Poles that are tried against the noise, and failures after which it is left at that. */
const mostTrials = 6;
/** They may lie this far outside the stretch that is told. Hz. */
const trialMarginHz = 4;
const mostFailures = 3;

/** The fit of one stretch of a band, under the noise of that stretch. */
export interface StretchFit {
  readonly band: Band;
  readonly ownFromHz: number;
  readonly ownToHz: number;
  readonly whitened: Whitened;
  readonly state: State;
  readonly deviations: Deviations;
  readonly noise: NoiseModel;
  /** Of what the fit leaves within the stretch, evened out over time by the noise's own decay: 1 is white. */
  readonly whiteness: number;
  /** Per pole: stands for several that cannot be told apart. */
  readonly joined: readonly boolean[];
}

/** The fit of one band. */
export interface BandFit {
  readonly stretches: readonly StretchFit[];
  /** Weighted energy of the samples, and what the fit leaves of it. */
  readonly energy: number;
  readonly left: number;
}

/** Whiteners for coloured noise in the tails; null where all are white enough. */
function whitenersOfTails(band: Band, humHz: readonly number[]): Whitener[] | null {
  const lines = humHz.map((f) => f - band.centreHz);
  const whiteners = band.signals.map((signal) => {
    const levels = tailLevels(signal, band.sampleRate, noiseRange(band.centreHz), lines);
    return levels && tiltOf(levels) > colouredTailDb ? whitenerOf(levels, band.sampleRate) : noWhitener;
  });
  return whiteners.some((whitener) => whitener !== noWhitener) ? whiteners : null;
}

/** Residuals of a state, their level evened out over time by the model's noise. */
const evenResiduals = (model: Model, state: State): Signal[] => {
  const { squares } = model.weights;
  const even = (x: Float64Array) => x.map((value, n) => value * Math.sqrt(squares[n]));
  return model.residualOfAll(state).map(({ re, im }) => ({ re: even(re), im: even(im) }));
};

/** Whiteness of what a state leaves between two offsets from the band's centre: the mean over its recordings. */
export function residualWhiteness(model: Model, state: State, [fromHz, toHz]: NoiseRange): number {
  const each = evenResiduals(model, state).map((signal) =>
    whitenessOf(powersBetween(complexHannPower(signal, model.data.sampleRate), fromHz, toHz)),
  );
  return each.reduce((sum, value) => sum + value, 0) / each.length;
}

/**
 * Whiteners for what the fit leaves, its level evened out over time. Null where it is white enough. Running them
 * backwards in time keeps every exponential exact.
 */
function whitenersOfResidual(band: Band, model: Model, state: State): Whitener[] | null {
  const whiteners = evenResiduals(model, state).map((signal) => {
    const spectrum = complexHannPower(signal, band.sampleRate);
    const levels = bandMedians(spectrum, ...noiseRange(band.centreHz));
    return tiltOf(levels) > colouredDb ? whitenerOf(levels, band.sampleRate) : noWhitener;
  });
  return whiteners.some((whitener) => whitener !== noWhitener) ? whiteners : null;
}

export const weigh = ({ data }: Whitened, { floor, diffuse, decaySeconds }: NoiseModel): Model =>
  new Model(data, noiseWeights(floor, diffuse, decaySeconds, data.count, data.sampleRate));

export const flat = ({ data }: Whitened): Model => new Model(data, flatWeights(data.count));

/** The samples that the start values and the first round of a band's fit rest on: their tails whitened. */
export const whitenTails = (band: Band, humHz: readonly number[]): Whitened =>
  whiten(band, whitenersOfTails(band, humHz) ?? plain(band));

/** Share of the energy of the samples that a fit leaves, above which more poles are tried. */
const unexplainedShare = 0.005;

/** Share of the unweighted energy that a fit leaves. */
function leftShare(model: Model, state: State): number {
  const energyOf = (signals: readonly Signal[]): number =>
    signals.reduce((sum, { re, im }) => {
      for (let n = 0; n < model.data.count; n++) sum += re[n] * re[n] + im[n] * im[n];
      return sum;
    }, 0);
  return energyOf(model.residualOfAll(state)) / energyOf(model.data.channels);
}

/** Poles of a band under one noise for all of it: the penalty falls, poles are added in the second round. */
function* search(band: Band, first: Whitened, start: Poles): Job<Found> {
  const all: NoiseRange = noiseRange(band.centreHz);
  const reach: Reach = [band.centreHz - reachHz, band.centreHz + reachHz];
  let whitened = first;
  let model = flat(whitened);
  let poles = start;
  let noise: NoiseModel | null = null;
  for (const [round, penalty] of penalties.entries()) {
    const found = yield* searchOrder(model, poles, penalty, round > 0 ? reach : null);
    poles = found.poles;
    noise = fitNoise(model, found, all);
    model = weigh(whitened, noise);
    if (whitened.whiteners.some((whitener) => whitener !== noWhitener)) continue;
    const whiteners = whitenersOfResidual(band, model, model.at(poles));
    if (!whiteners) continue;
    whitened = whiten(band, whiteners);
    model = flat(whitened);
    noise = fitNoise(model, model.at(poles), all);
    model = weigh(whitened, noise);
  }
  const state = model.at(poles);
  if (!noise || leftShare(model, state) < unexplainedShare) return { whitened, model, noise, state };
  const judge = (one: Model, at: State): NoiseModel => fitNoise(one, at, all);
  const tried = yield* tryAgainstNoise(whitened, { model, noise, state }, reach, judge, penalties[1], 2);
  return { whitened, ...tried };
}

interface Found {
  readonly whitened: Whitened;
  readonly model: Model;
  readonly noise: NoiseModel | null;
  readonly state: State;
}

/** Borders of stretches of equal width. */
function stretchesOf({ ownFromHz, ownToHz }: Band): [number, number][] {
  const from = Math.max(ownFromHz, lowestOwnHz);
  const to = Math.min(ownToHz, highestOwnHz);
  const count = Math.max(1, Math.round((to - from) / stretchHz));
  const border = (k: number) => from + ((to - from) * k) / count;
  return Array.from({ length: count }, (_, k) => [
    k === 0 ? ownFromHz : border(k),
    k === count - 1 ? ownToHz : border(k + 1),
  ]);
}

interface Tried {
  readonly model: Model;
  readonly noise: NoiseModel;
  readonly state: State;
}

/**
 * A mode that was missed passes for diffuse decay, and under so much noise it is not worth its price. So what the residual
 * holds most of is tried once more, and judged by how likely the residual is under the noise that it would leave.
 */
function* tryAgainstNoise(
  whitened: Whitened,
  start: Tried,
  reach: Reach,
  judge: (model: Model, state: State) => NoiseModel,
  penalty: number,
  share = 1,
): Job<Tried> {
  const price = priceOf(penalty, whitened.data.channels.length);
  const barred: number[] = [];
  let best = start;
  for (let k = 0; k < share * mostTrials && barred.length < mostFailures; k++) {
    const { model, state, noise } = best;
    const more = addBest(model, state, reach, barred);
    yield { stage: 'fit', fraction: 0 };
    if (!more) break;
    const other = judge(model, more.state);
    if (noise.cost - other.cost > price) {
      const next = weigh(whitened, other);
      best = { model: next, noise: other, state: next.at(more.state.poles) };
    } else barred.push(more.frequencyHz);
  }
  return best;
}

/**
 * The poles in one stretch of a band under the noise there: what is far weaker or stronger elsewhere in the band, diffuse
 * decay above all, does not count. Poles beyond the margin are held.
 */
function* settle(
  band: Band,
  { whitened, model, noise: wide, state }: Found,
  [fromHz, toHz]: readonly [number, number],
  leadSeconds: readonly number[],
): Job<{ fit: StretchFit; poles: Poles }> {
  const { data } = whitened;
  const { centreHz } = data;
  const range: NoiseRange = [
    Math.max(fromHz, lowestOwnHz) - centreHz,
    Math.min(toHz, highestOwnHz) - centreHz,
  ];
  const reach: Reach = [
    Math.max(fromHz - marginHz, centreHz - reachHz),
    Math.min(toHz + marginHz, centreHz + reachHz),
  ];
  const near: number[] = [];
  const far: number[] = [];
  state.poles.frequencyHz.forEach((f, k) => (f > reach[0] && f < reach[1] ? near : far).push(k));
  const local: Whitened = { ...whitened, data: { ...data, channels: model.without(state, near) } };
  const start = pick(state.poles, near);
  let within = weigh(local, fitNoise(model, state, range, wide));
  const found = yield* searchOrder(within, start, lastPenalty, reach);
  const judge = (model: Model, state: State): NoiseModel => fitNoise(model, state, range, wide);
  let noise = judge(within, found);
  within = weigh(local, noise);
  let poles = found.poles;
  const tried = yield* tryAgainstNoise(
    local,
    { model: within, noise, state: within.at(poles) },
    [Math.max(fromHz - trialMarginHz, reach[0]), Math.min(toHz + trialMarginHz, reach[1])],
    judge,
    lastPenalty,
  );
  within = tried.model;
  poles = tried.state.poles;
  const pruned = yield* searchOrder(within, poles, lastPenalty, null);
  noise = judge(within, pruned);
  within = weigh(local, noise);
  yield { stage: 'fit', fraction: 0 };
  const last = within.minimiser.minimise(within.whole, pruned.poles, 3);
  const deviations = deviationsOf(within, last, leadSeconds);
  const fit = {
    band,
    ownFromHz: fromHz,
    ownToHz: toHz,
    whitened: local,
    ...joinTwins(within, last, deviations),
    noise,
    whiteness: residualWhiteness(within, last, range),
  };
  return { fit, poles: join(pick(state.poles, far), last.poles) };
}

/**
 * Poles, amplitudes and noise of one band from start values.
 *
 * @param first From `whitenTails`.
 */
export function* fitBand(
  band: Band,
  first: Whitened,
  start: Poles,
  leadSeconds: readonly number[],
): Job<BandFit> {
  const { whitened, model, noise, state: begin } = yield* search(band, first, start);
  let state = begin;
  const stretches: StretchFit[] = [];
  for (const stretch of stretchesOf(band)) {
    const settled = yield* settle(band, { whitened, model, noise, state }, stretch, leadSeconds);
    stretches.push(settled.fit);
    state = model.at(settled.poles);
  }
  return { stretches, energy: model.whole.energy, left: state.cost };
}
