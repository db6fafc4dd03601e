import type { Job, Note } from '../signal/types.js';
import { tellResonances } from './classify.js';
import { defaultVolumeCubicMetres } from './density.js';
import { deviationsOf } from './fisher.js';
import { Model, subtractPole, type State } from './model.js';
import { fitNoise, type NoiseModel } from './noise-model.js';
import { mergeCandidates, searchOrder } from './order.js';
import { bandwidth, join, ln1000, pick, polesOf, type Poles } from './poles.js';
import { colouredDb, prepare, whiten, type Prepared, type Whitened } from './prepare.js';
import { decayRangeDb, neededRangeDb } from './range.js';
import { resolvableBandwidths } from './resolution.js';
import type { FitRecording } from './reverse-decimation.js';
import type { FitParams, Resonance, ResonanceFit } from './types.js';
import { bandMedians, hannPower, tiltOf, type BandLevels } from './spectrum.js';
import { exponentialWeights, flatWeights } from './weights.js';
import { unwhiten, whitenerOf, type Whitener } from './whitening.js';
import { zoomEsprit } from './zoom-esprit.js';

/** What a pole must be worth, in nats, round by round: high at first, so that diffuse decay is not fitted as modes. */
const penalties = [60, 25, 14] as const;
/** The fit always covers this band; only what lies within the asked range is told. Hz. */
const bandFromHz = 16;
const bandToHz = 200;
/** Fewer decimated samples than this hold no decay. */
const fewestSamples = 32;

function emptyFit(prepared: Prepared, notes: readonly Note[]): ResonanceFit {
  return {
    resonances: [],
    fitFromSeconds: Math.max(...prepared.decimated.map((d) => d.leadSeconds)),
    fitToSeconds: prepared.decimated[0].leadSeconds + prepared.window.count / prepared.sampleRate,
    explainedEnergy: 0,
    noiseSd: noiseSdOf(prepared, 1),
    resolvableSpacingHz: null,
    notes,
  };
}

const noiseSdOf = ({ decimated, floors }: Prepared, scale: number): number[] =>
  decimated.map((d, c) => d.peak * Math.sqrt(floors[c] * scale * d.step));

/** Start values with the hum lines as undamped poles in place of what lies on them. */
function startOf(candidates: readonly (readonly [number, number])[], humHz: readonly number[]): Poles {
  const merged = mergeCandidates(candidates);
  const free = [...merged.frequencyHz.keys()].filter(
    (k) =>
      !humHz.some(
        (f) => Math.abs(f - merged.frequencyHz[k]) < 0.4 && ln1000 / Math.exp(merged.logDecay[k]) < 2,
      ),
  );
  return join(
    pick(merged, free),
    polesOf(
      humHz,
      humHz.map(() => Math.log(1e4)),
    ),
  );
}

function spacingOf(resonances: readonly Resonance[]): number | null {
  const rooms = resonances.filter(({ kind }) => kind !== 'hum' && kind !== 'source');
  if (rooms.length === 0) return null;
  const median = (values: number[]) => values.sort((a, b) => a - b)[values.length >> 1];
  const widths = resolvableBandwidths(median(rooms.map(({ rhoDb }) => rhoDb)));
  const decay = median(rooms.map(({ decayTimeSeconds }) => decayTimeSeconds ?? 0));
  return widths === null ? null : widths * bandwidth(Math.log(decay));
}

/**
 * A whitener for what the fit leaves, its level evened out over time, so that a band whose diffuse decay is weak is not
 * judged by the noise of a loud one. Null where the residual is white enough.
 */
function whitenerOfResidual(
  { decimated, sampleRate }: Prepared,
  { scales, whitener, data }: Whitened,
  { poles, amplitudes }: State,
  { variance }: NoiseModel,
): Whitener | null {
  const m = poles.frequencyHz.length;
  const all = decimated.map(({ samples }, c): BandLevels => {
    const y = samples.slice(0, data.count);
    for (let k = 0; k < m; k++) {
      const at = c * 2 * m + 2 * k;
      const f = poles.frequencyHz[k];
      const u = poles.logDecay[k];
      const [a, b] = unwhiten(
        whitener,
        sampleRate,
        f,
        u,
        amplitudes[at] * scales[c],
        amplitudes[at + 1] * scales[c],
      );
      subtractPole(y, sampleRate, f, u, a, b);
    }
    for (let n = 0; n < y.length; n++) y[n] /= scales[c] * Math.sqrt(variance[n]);
    return bandMedians(hannPower(y, sampleRate));
  });
  const bands: BandLevels = {
    ...all[0],
    levels: all[0].levels.map((_, k) => all.reduce((sum, { levels }) => sum + levels[k], 0) / all.length),
  };
  return whitener.length > 1 || tiltOf(bands) > colouredDb ? whitenerOf(bands, sampleRate) : null;
}

/**
 * Fits decaying sines to the bass of one recording, or of several of one room with poles in common and amplitudes apart.
 * Recordings must hold finite samples. Where none stands far enough above its own noise the fit is refused: no
 * resonances, and the note `no-range`.
 *
 * @param recordings At least one; peak level, rate (1 to 384 kHz) and length of each are its own.
 */
export function* fitResonances(recordings: readonly FitRecording[], params: FitParams): Job<ResonanceFit> {
  yield { stage: 'decimate', fraction: 0 };
  const prepared = prepare(recordings);
  const { sampleRate, window } = prepared;
  yield { stage: 'floor', fraction: 0.05 };
  const fromHz = Math.max(params.fromHz, bandFromHz);
  const toHz = Math.min(params.toHz, bandToHz);
  if (prepared.decimated.every(({ samples }) => samples.every((value) => value === 0)))
    return emptyFit(prepared, []);
  if (window.count < fewestSamples)
    return emptyFit(prepared, [{ code: 'short', params: { seconds: window.count / sampleRate } }]);
  const rangeDb = Math.max(
    ...prepared.decimated.map(({ samples }) => decayRangeDb(samples, sampleRate, fromHz, toHz)),
  );
  if (rangeDb < neededRangeDb)
    return emptyFit(prepared, [
      { code: 'no-range', params: { rangeDb, neededDb: neededRangeDb, fromHz, toHz } },
    ]);
  let whitened = whiten(prepared, prepared.whitener);
  const candidates = yield* within(zoomEsprit(whitened.data, window.decaySeconds), 0.05, 0.2);
  let model = new Model(whitened.data, flatWeights(whitened.data.count));
  let poles = startOf(candidates, prepared.humHz);
  let state: State;
  let floorScale = 1;
  for (let round = 0; round < penalties.length; round++) {
    const from = 0.2 + 0.25 * round;
    state = yield* within(searchOrder(model, poles, penalties[round], round > 0), from, from + 0.25);
    let noise = fitNoise(model, state, whitened.noiseGain);
    const whitener = whitenerOfResidual(prepared, whitened, state, noise);
    if (whitener) {
      whitened = whiten(prepared, whitener);
      model = new Model(whitened.data, flatWeights(whitened.data.count));
      noise = fitNoise(model, model.at(state.poles), whitened.noiseGain);
    }
    floorScale = noise.floor;
    model = new Model(whitened.data, exponentialWeights(noise.variance, sampleRate, noise.decaySeconds));
    poles = state.poles;
  }
  state = yield* within(searchOrder(model, poles, penalties[penalties.length - 1], false), 0.95, 1);
  const { scales, whitener } = whitened;
  const leads = prepared.decimated.map(({ leadSeconds }) => leadSeconds);
  const told = {
    state,
    deviations: deviationsOf(model, state, Math.max(...leads)),
    decimated: prepared.decimated,
    scales,
    undoWhitening: (f: number, u: number, a: number, b: number) => unwhiten(whitener, sampleRate, f, u, a, b),
    volumeCubicMetres: params.volumeCubicMetres ?? defaultVolumeCubicMetres,
    fitFromSeconds: Math.max(...leads),
    fitToSeconds: leads[0] + whitened.data.count / sampleRate,
    humHz: prepared.humHz,
  };
  const resonances = state.poles.frequencyHz.length === 0 ? [] : tellResonances(told);
  const inRange = resonances.filter(({ frequencyHz: f }) => f >= params.fromHz && f <= params.toHz);
  const notes: Note[] = inRange
    .filter(({ kind }) => kind === 'hum')
    .map(({ frequencyHz }) => ({ code: 'hum', params: { frequencyHz } }));
  return {
    resonances: inRange,
    fitFromSeconds: told.fitFromSeconds,
    fitToSeconds: told.fitToSeconds,
    explainedEnergy: Math.min(1, Math.max(0, 1 - state.cost / model.whole.energy)),
    noiseSd: noiseSdOf(prepared, floorScale),
    resolvableSpacingHz: spacingOf(inRange),
    notes,
  };
}

/** Runs one part of the job and reports its steps between `from` and `to`, ever more slowly as their number is open. */
function* within<T>(job: Job<T>, from: number, to: number): Job<T> {
  let left = 1;
  for (;;) {
    const next = job.next();
    if (next.done) return next.value;
    left *= 0.97;
    yield { stage: next.value.stage, fraction: to - (to - from) * left };
  }
}
