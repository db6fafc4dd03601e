import type { Job } from '../signal/types.js';
import { whiten, type Band, type Whitened } from './bands.js';
import { deviationsOf, type Deviations } from './fisher.js';
import { Model, type State } from './model.js';
import { fitNoise, type NoiseModel } from './noise-model.js';
import { searchOrder } from './order.js';
import type { Poles } from './poles.js';
import { bandMedians, complexHannPower, tiltOf, type BandLevels } from './spectrum.js';
import { joinTwins } from './twins.js';
import type { Signal } from './varpro.js';
import { exponentialWeights, flatWeights } from './weights.js';
import { noWhitener, whitenerOf, type Whitener } from './whitening.js';

/** What a pole must be worth, in nats, round by round: high at first, so that diffuse decay is not fitted as modes. */
const penalties = [60, 25, 14] as const;
/** A residual coloured by more than this is whitened. dB. */
const colouredDb = 8;
const whitenedHz = 45;

/** The fit of one band. */
export interface BandFit {
  readonly band: Band;
  readonly whitened: Whitened;
  readonly state: State;
  readonly deviations: Deviations;
  readonly noise: NoiseModel;
  /** Weighted energy of the samples; `state.cost` is what is left of it. */
  readonly energy: number;
  /** Per pole: stands for several that cannot be told apart. */
  readonly joined: readonly boolean[];
  /** Minus twice the log likelihood with the penalty of the poles: the lower, the better explained. */
  readonly score: number;
}

/**
 * A whitener for what the fit leaves, its level evened out over time. Null where the residual is white enough. Running it
 * backwards in time keeps every exponential exact.
 */
function whitenerOfResidual(band: Band, whitened: Whitened, model: Model, state: State): Whitener | null {
  const residuals = model.residualOfAll(state);
  const { squares } = model.weights;
  const levels = residuals.map(({ re, im }): BandLevels => {
    const even = (x: Float64Array) => x.map((value, n) => value * Math.sqrt(squares[n]));
    const spectrum = complexHannPower({ re: even(re), im: even(im) }, band.sampleRate);
    return bandMedians(spectrum, -whitenedHz, whitenedHz);
  });
  const mean: BandLevels = {
    ...levels[0],
    levels: levels[0].levels.map(
      (_, k) => levels.reduce((sum, one) => sum + one.levels[k], 0) / levels.length,
    ),
  };
  if (whitened.whitener !== noWhitener || tiltOf(mean) < colouredDb) return null;
  return whitenerOf(mean, band.sampleRate);
}

/** Share of the energy of the samples that the fit leaves, above which it is tried anew with more poles at first. */
const unexplainedShare = 0.005;

const energyOf = (signals: readonly Signal[], count: number): number =>
  signals.reduce((sum, { re, im }) => {
    for (let n = 0; n < count; n++) sum += re[n] * re[n] + im[n] * im[n];
    return sum;
  }, 0);

/** One way through the rounds; `eager` adds poles from the first round on, under flat weights. */
function* attempt(band: Band, start: Poles, leadSeconds: readonly number[], eager: boolean): Job<BandFit> {
  let whitened = whiten(band, noWhitener);
  let model = new Model(whitened.data, flatWeights(whitened.data.count));
  let poles = start;
  const weigh = (state: State): NoiseModel => {
    const noise = fitNoise(model, state, whitened.noiseGain);
    model = new Model(whitened.data, exponentialWeights(noise.variance, band.sampleRate, noise.decaySeconds));
    return noise;
  };
  for (const [round, penalty] of penalties.entries()) {
    const found = yield* searchOrder(model, poles, penalty, eager || round > 0);
    poles = found.poles;
    weigh(found);
    const whitener = whitenerOfResidual(band, whitened, model, model.at(poles));
    if (!whitener) continue;
    whitened = whiten(band, whitener);
    model = new Model(whitened.data, flatWeights(whitened.data.count));
    weigh(model.at(poles));
  }
  const last = penalties[penalties.length - 1];
  const state = yield* searchOrder(model, poles, last, false);
  const { count, channels } = whitened.data;
  const noise = fitNoise(model, state, whitened.noiseGain);
  const price = 2 * last + 4 * (channels.length - 1);
  let score = state.cost + price * state.poles.frequencyHz.length;
  for (const scale of whitened.scales)
    for (let n = 0; n < count; n++)
      score += 2 * Math.min(1, band.noiseGain) * Math.log(scale * scale * (1 / model.weights.squares[n]));
  const deviations = deviationsOf(model, state, leadSeconds);
  const joined = joinTwins(model, state, deviations);
  return { band, whitened, ...joined, noise, energy: model.whole.energy, score };
}

/** Share of the unweighted energy that a fit leaves; of the joined poles' fit, which is what is told. */
function leftShare({ whitened, state }: BandFit): number {
  const { data } = whitened;
  const model = new Model(data, flatWeights(data.count));
  return energyOf(model.residualOfAll(state), data.count) / energyOf(data.channels, data.count);
}

/**
 * Poles, amplitudes and noise of one band from start values. Where much is left, diffuse decay and crowded modes cannot be
 * told apart in one go: a second attempt takes all it can for modes at first, and the likelihood decides.
 */
export function* fitBand(band: Band, start: Poles, leadSeconds: readonly number[]): Job<BandFit> {
  const calm = yield* attempt(band, start, leadSeconds, false);
  if (leftShare(calm) < unexplainedShare) return calm;
  const eager = yield* attempt(band, start, leadSeconds, true);
  return eager.score < calm.score ? eager : calm;
}
