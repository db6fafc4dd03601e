import { describe, expect, it } from 'vitest';
import { assignmentMarginals, bestAssignment, type Pair } from '../../src/diagnosis/assign.js';
import { Rng } from '../../src/signal/index.js';

/** All one-to-one assignments, one by one. */
function byHand(pairs: readonly Pair[]) {
  const chances = new Float64Array(pairs.length);
  let total = 0;
  let best = { product: 0, chosen: [] as number[] };
  const walk = (observation: number, product: number, chosen: number[], taken: Set<number>): void => {
    if (observation > Math.max(...pairs.map((pair) => pair.observation))) {
      total += product;
      for (const k of chosen) chances[k] += product;
      if (product > best.product) best = { product, chosen };
      return;
    }
    walk(observation + 1, product, chosen, taken);
    pairs.forEach((pair, k) => {
      if (pair.observation === observation && !taken.has(pair.mode))
        walk(observation + 1, product * pair.odds, [...chosen, k], new Set([...taken, pair.mode]));
    });
  };
  walk(0, 1, [], new Set());
  return { chances: chances.map((value) => value / total), logTotal: Math.log(total), best: best.chosen };
}

const someRoom = (seed: number): Pair[] => {
  const rng = new Rng(seed);
  const pairs: Pair[] = [];
  for (let observation = 0; observation < 5; observation++)
    for (let mode = 0; mode < 6; mode++)
      if (rng.uniform() < 0.45) pairs.push({ observation, mode, odds: Math.exp(1.5 * rng.gaussian()) });
  return pairs;
};

describe('one-to-one assignment', () => {
  it('has the chances of a count over all assignments within 0.06, and its total within 5 %', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const pairs = someRoom(seed);
      const { chances, logTotal } = assignmentMarginals(pairs);
      const exact = byHand(pairs);
      chances.forEach((value, k) => expect(Math.abs(value - exact.chances[k])).toBeLessThan(0.06));
      expect(Math.abs(logTotal - exact.logTotal)).toBeLessThan(0.05 * Math.max(1, exact.logTotal));
    }
  });

  it('is exact where no mode is asked for twice', () => {
    const { chances, logTotal } = assignmentMarginals([
      { observation: 0, mode: 0, odds: 3 },
      { observation: 0, mode: 1, odds: 1 },
      { observation: 1, mode: 2, odds: 4 },
    ]);
    [3 / 5, 1 / 5, 4 / 5].forEach((value, k) => expect(chances[k]).toBeCloseTo(value, 12));
    expect(logTotal).toBeCloseTo(Math.log(5 * 5), 12);
  });

  it('finds the best single assignment, in which none is allowed', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const pairs = someRoom(seed);
      const chosen = bestAssignment(pairs).flatMap((is, k) => (is ? [k] : []));
      expect(chosen).toEqual(byHand(pairs).best.sort((a, b) => a - b));
    }
    expect(bestAssignment([{ observation: 0, mode: 0, odds: 0.4 }])).toEqual([false]);
    expect(bestAssignment([])).toEqual([]);
  });
});
