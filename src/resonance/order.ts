import type { Job } from '../signal/types.js';
import type { Model, State } from './model.js';
import { bandwidth, join, ln1000, pick, polesOf, type Poles } from './poles.js';
import { ResidualScan } from './residual-scan.js';
import * as maths from '../signal/maths.js';

/** A local refit takes in the poles within this distance. Hz. */
const neighbourhoodHz = 12;
const mostAdditions = 25;
const scanFromHz = 10;

/** Chi-squared that a pole must be worth: its penalty, and two more amplitudes for every further channel. */
export const priceOf = (penalty: number, channels: number): number => 2 * penalty + 4 * (channels - 1);

/** Poles nearer than the neighbourhood to `centreHz`, and the others; `left out` is in neither. */
function split(poles: Poles, centreHz: number, leftOut = -1): { near: number[]; far: number[] } {
  const near: number[] = [];
  const far: number[] = [];
  poles.frequencyHz.forEach((f, k) => {
    if (k !== leftOut) (Math.abs(f - centreHz) < neighbourhoodHz ? near : far).push(k);
  });
  return { near, far };
}

/** Drops poles that are worth less than the threshold, the weakest first, several at once where they lie apart. */
export function prune(model: Model, start: Poles, limit: number): Poles {
  let poles = start;
  while (poles.frequencyHz.length > 0) {
    const costs = model.dropCosts(model.at(poles));
    let weakest = 0;
    costs.forEach((cost, k) => {
      if (cost < costs[weakest]) weakest = k;
    });
    if (costs[weakest] >= limit) break;
    const dropped = new Set([weakest]);
    costs.forEach((cost, k) => {
      const apart = [...dropped].every((d) => Math.abs(poles.frequencyHz[d] - poles.frequencyHz[k]) > 6);
      if (cost < 0.7 * limit && apart) dropped.add(k);
    });
    poles = pick(
      poles,
      [...poles.frequencyHz.keys()].filter((k) => !dropped.has(k)),
    );
  }
  return poles;
}

/** Refines all poles: sweeps of overlapping local fits first where there are many, then steps on all at once. */
function* refineAll(model: Model, start: Poles, iterations: number): Job<State> {
  let state = model.at(start);
  if (start.frequencyHz.length > 14) {
    for (let sweep = 0; sweep < 2; sweep++) {
      const lowest = Math.min(...state.poles.frequencyHz);
      const highest = Math.max(...state.poles.frequencyHz);
      const rest = model.without(state, []);
      for (let centre = lowest + 6; centre < highest + 8; centre += 16) {
        const { poles, amplitudes } = state;
        const m = poles.frequencyHz.length;
        const near = [...poles.frequencyHz.keys()].filter(
          (k) => Math.abs(poles.frequencyHz[k] - centre) < 16,
        );
        if (near.length === 0) continue;
        model.put(rest, state, near, 1);
        const target = near.length === m ? model.whole : model.local(rest);
        const local = model.minimiser.minimise(target, pick(poles, near), 4);
        near.forEach((k, i) => {
          poles.frequencyHz[k] = local.poles.frequencyHz[i];
          poles.logDecay[k] = local.poles.logDecay[i];
          for (let c = 0; c < model.projection.channels; c++)
            for (let part = 0; part < 2; part++)
              amplitudes[2 * (c * m + k) + part] = local.amplitudes[2 * (c * near.length + i) + part];
        });
        model.put(rest, state, near, -1);
        yield { stage: 'fit', fraction: 0 };
      }
      state = model.at(state.poles);
    }
    return model.minimiser.minimise(model.whole, state.poles, 2);
  }
  return model.minimiser.minimise(model.whole, start, iterations);
}

/** Removes what a refit of the neighbours can do without: close or weak poles, the weakest first. */
function* removeAndRefit(model: Model, start: State, limit: number): Job<State> {
  let state = start;
  const kept = new Set<number>();
  for (let changed = true; changed;) {
    changed = false;
    const costs = model.dropCosts(state);
    const { frequencyHz, logDecay } = state.poles;
    const doubtful = [...frequencyHz.keys()].filter((k) => {
      let nearest = Infinity;
      for (let j = 0; j < frequencyHz.length; j++) {
        if (j === k) continue;
        const width = 0.5 * (bandwidth(logDecay[j]) + bandwidth(logDecay[k]));
        nearest = Math.min(nearest, Math.abs(frequencyHz[j] - frequencyHz[k]) / width);
      }
      return nearest < 0.8 || costs[k] < 3 * limit;
    });
    doubtful.sort((a, b) => costs[a] - costs[b]);
    for (const k of doubtful) {
      if (kept.has(frequencyHz[k])) continue;
      const { near, far } = split(state.poles, frequencyHz[k], k);
      if (near.length === 0) continue;
      const target = model.around(state, [...near, k]);
      const local = model.minimiser.minimise(target, pick(state.poles, near), 8);
      yield { stage: 'fit', fraction: 0 };
      if (local.cost - state.cost < limit) {
        state = model.at(join(pick(state.poles, far), local.poles));
        changed = true;
        break;
      }
      kept.add(frequencyHz[k]);
    }
  }
  return state;
}

/** The state with one more pole where the residual asks for it most; null where it asks for none. */
export function addBest(
  model: Model,
  state: State,
  reach: Reach,
  barred: readonly number[],
): { frequencyHz: number; state: State } | null {
  const scan = new ResidualScan(model, Math.max(scanFromHz, reach[0]), reach[1]);
  const find = scan.best(model.residualOfAll(state), barred);
  if (!(find.gain > 0)) return null;
  const { near, far } = split(state.poles, find.frequencyHz);
  const added = polesOf([find.frequencyHz], [maths.log(find.decaySeconds)]);
  const start = join(pick(state.poles, near), added);
  const local = model.minimiser.minimise(model.around(state, near), start, 15);
  return { frequencyHz: find.frequencyHz, state: model.at(join(pick(state.poles, far), local.poles)) };
}

/** Adds poles where the residual asks for them and the refit pays for it. */
function* addWhereItPays(model: Model, start: State, limit: number, reach: Reach): Job<State> {
  let state = start;
  const barred: number[] = [];
  const scan = new ResidualScan(model, Math.max(scanFromHz, reach[0]), reach[1]);
  for (let round = 0; round < mostAdditions; round++) {
    const find = scan.best(model.residualOfAll(state), barred);
    if (find.gain < 0.6 * limit) break;
    const { near, far } = split(state.poles, find.frequencyHz);
    const added = polesOf([find.frequencyHz], [maths.log(find.decaySeconds)]);
    const local = model.minimiser.minimise(
      model.around(state, near),
      join(pick(state.poles, near), added),
      15,
    );
    yield { stage: 'fit', fraction: 0 };
    if (state.cost - local.cost > limit) state = model.at(join(pick(state.poles, far), local.poles));
    else barred.push(find.frequencyHz);
  }
  return state;
}

/** Frequencies between which poles are added. Hz. */
export type Reach = readonly [fromHz: number, toHz: number];

/**
 * Poles by penalised likelihood under one noise model: prune, refine, remove what neighbours can carry, and, where
 * `adding` names a range, add what the residual still holds there.
 *
 * @param penalty In nats per pole.
 */
export function* searchOrder(model: Model, start: Poles, penalty: number, adding: Reach | null): Job<State> {
  const limit = priceOf(penalty, model.projection.channels);
  let poles = prune(model, start, limit);
  let state = yield* refineAll(model, poles, 6);
  poles = prune(model, state.poles, limit);
  state = yield* refineAll(model, poles, 10);
  state = yield* removeAndRefit(model, state, limit);
  state = yield* refineAll(model, state.poles, 6);
  if (!adding) return state;
  state = yield* addWhereItPays(model, state, limit, adding);
  state = yield* refineAll(model, state.poles, 10);
  state = yield* removeAndRefit(model, state, limit);
  return yield* refineAll(model, state.poles, 6);
}

/** Starting poles from scattered candidates: those of one place in frequency and decay are one. */
export function mergeCandidates(candidates: readonly (readonly [number, number])[]): Poles {
  const kept: [number, number][] = [];
  for (const [f, rate] of [...candidates].sort((a, b) => a[0] - b[0])) {
    const near = kept.some(
      ([g, other]) =>
        Math.abs(g - f) < Math.max((0.15 * rate) / Math.PI, 0.12) && Math.abs(maths.log(other / rate)) < 0.35,
    );
    if (!near) kept.push([f, rate]);
  }
  return polesOf(
    kept.map(([f]) => f),
    kept.map(([, rate]) => maths.log(ln1000 / rate)),
  );
}
