import type { Deviations } from './fisher.js';
import type { Model, State } from './model.js';
import { bandwidth, pick, polesOf, type Poles } from './poles.js';
import { resolvableBandwidths } from './resolution.js';
import type { Signal } from './varpro.js';
import * as maths from '../signal/maths.js';

/** Poles that the fit needs but cannot tell apart, told as one. */
export interface Effective {
  readonly state: State;
  readonly deviations: Deviations;
  /** Per pole: stands for several. */
  readonly joined: readonly boolean[];
}

/** Closer than this many of their own standard deviations, two poles are not told apart. */
const apart = 2;
/**
 * Nor are they closer than this share of what the resolution law asks of the weaker, in bandwidths: real decays and real
 * noise do not keep to the model as closely as the deviations claim. At most the second share of a bandwidth.
 */
const lawShare = 0.5;
const mostShare = 0.6;
/** Where both are known to these deviations (Hz, and of ln T), their distance in deviations decides alone. */
const sureHz = 0.2;
const sureLog = 0.08;
/** Decay times further apart than this ratio are two slopes, not twins. */
const slopesRatio = 1.8;
/** However little noise there is, poles closer than this, in Hz and in bandwidths, are one mode that is not quite a sine. */
const leastApartHz = 0.1;
const leastApartShare = 0.05;

/** Least distance in bandwidths at which poles of this energy over noise are told apart. */
const leastBandwidths = (rho: number): number => {
  const law = resolvableBandwidths(10 * maths.log10(Math.max(rho, 1e-30)));
  return law === null ? mostShare : Math.min(mostShare, lawShare * law);
};

/** The pair with the least distance in units of what could part it, if below the limit. */
function closestPair(
  { poles }: State,
  { frequencyHz: sf, logDecay: su, rho }: Deviations,
): [number, number] | null {
  const { frequencyHz: f, logDecay: u } = poles;
  let best: [number, number] | null = null;
  let least = apart;
  for (let i = 0; i < f.length; i++)
    for (let j = 0; j < i; j++) {
      if (Math.abs(u[i] - u[j]) > maths.log(slopesRatio)) continue;
      const deviations = maths.hypot(
        (f[i] - f[j]) / maths.hypot(sf[i], sf[j]),
        (u[i] - u[j]) / maths.hypot(su[i], su[j]),
      );
      const width = 0.5 * (bandwidth(u[i]) + bandwidth(u[j]));
      const needed = leastBandwidths(Math.min(rho[i], rho[j])) * width;
      const sure = Math.max(sf[i], sf[j]) < sureHz && Math.max(su[i], su[j]) < sureLog;
      const spacing = Math.abs(f[i] - f[j]);
      const one = spacing < Math.max(leastApartHz, leastApartShare * width);
      const lawful = sure ? deviations : Math.min(deviations, (apart * spacing) / needed);
      const distance = one ? Math.min(lawful, spacing / width) : lawful;
      if (distance < least) {
        least = distance;
        best = [i, j];
      }
    }
  return best;
}

/** One pole in place of two: the one that comes nearest to their sum under the model's weights. */
function joinPair(model: Model, state: State, pair: readonly [number, number]): State {
  const { data, projection, minimiser } = model;
  const sum = data.channels.map((): Signal => ({
    re: new Float64Array(data.count),
    im: new Float64Array(data.count),
  }));
  model.put(sum, state, pair, 1);
  const mean = (x: Float64Array) => 0.5 * (x[pair[0]] + x[pair[1]]);
  const start = polesOf([mean(state.poles.frequencyHz)], [mean(state.poles.logDecay)]);
  const one = minimiser.minimise(projection.target(sum), start, 12);
  const m = state.poles.frequencyHz.length;
  const kept = [...Array(m).keys()].filter((k) => k !== pair[0] && k !== pair[1]);
  const rest = pick(state.poles, kept);
  const poles: Poles = {
    frequencyHz: Float64Array.from([...rest.frequencyHz, one.poles.frequencyHz[0]]),
    logDecay: Float64Array.from([...rest.logDecay, one.poles.logDecay[0]]),
  };
  const amplitudes = data.channels.flatMap((_, c) => [
    ...kept.flatMap((k) => [state.amplitudes[2 * (c * m + k)], state.amplitudes[2 * (c * m + k) + 1]]),
    one.amplitudes[2 * c],
    one.amplitudes[2 * c + 1],
  ]);
  return { poles, amplitudes: Float64Array.from(amplitudes), cost: state.cost };
}

/** Joins pairs until all poles that are left can be told apart. Their uncertainty is the smaller of the two and half their distance. */
export function joinTwins(model: Model, state: State, deviations: Deviations): Effective {
  const channels = model.data.channels.length;
  let joined: boolean[] = Array.from(state.poles.frequencyHz, () => false);
  for (;;) {
    const pair = closestPair(state, deviations);
    if (!pair) return { state, deviations, joined };
    const [i, j] = pair;
    const m = state.poles.frequencyHz.length;
    const kept = [...Array(m).keys()].filter((k) => k !== i && k !== j);
    const half = (x: Float64Array) => 0.5 * Math.abs(x[i] - x[j]);
    const both = (x: Float64Array, own: number) =>
      Float64Array.from([...kept.map((k) => x[k]), maths.hypot(Math.min(x[i], x[j]), own)]);
    const perChannel = (x: Float64Array) =>
      Float64Array.from(
        Array.from({ length: channels }, (_, c) => [
          ...kept.map((k) => x[c * m + k]),
          Math.min(x[c * m + i], x[c * m + j]),
        ]).flat(),
      );
    const rho = Float64Array.from([
      ...kept.map((k) => deviations.rho[k]),
      Math.max(deviations.rho[i], deviations.rho[j]),
    ]);
    const next: Deviations = {
      frequencyHz: both(deviations.frequencyHz, half(state.poles.frequencyHz)),
      logDecay: both(deviations.logDecay, half(state.poles.logDecay)),
      logAmplitude: perChannel(deviations.logAmplitude),
      phase: perChannel(deviations.phase),
      rho,
    };
    state = joinPair(model, state, pair);
    deviations = next;
    joined = [...kept.map((k) => joined[k]), true];
  }
}
