import { describe, expect, it } from 'vitest';
import * as engine from '../../src/engine.js';
import { optimiseSources, plainSetting, seatSpread, sumSources, type Trim } from '../../src/seats/index.js';
import { drain } from '../support/drain.js';
import { sourceMatrix, sourceRoom } from '../support/source-rooms.mjs';

const frequenciesHz = engine.logFrequencies(20, 120, 24);
const made = (seed: number, sources: number, seats: number) =>
  sourceMatrix(engine, sourceRoom(engine, seed, sources, seats), frequenciesHz);

const spreadOf = (matrix: engine.TransferMatrix, trims: readonly Trim[]) =>
  seatSpread(
    sumSources(
      matrix,
      trims.map((trim) => ({ ...plainSetting, ...trim })),
    ),
  );

describe('the optimiser', () => {
  it('is never worse than all sources alike, and says what the engine then computes', () => {
    for (const seed of [1, 2, 3]) {
      const { matrix, ridges } = made(seed, 4, 9);
      const proposal = drain(optimiseSources(matrix, { ridges, seed, starts: 2 }));
      const { score, alike, trims, bounds } = proposal;
      expect(score.meanSpatialVariance).toBeLessThan(alike.meanSpatialVariance);
      expect(score.worstHangSeconds).toBeLessThanOrEqual(alike.worstHangSeconds);
      const spread = spreadOf(matrix, trims);
      expect(spread.meanSpatialVariance).toBeCloseTo(score.meanSpatialVariance, 6);
      expect(spread.meanOutputLevelDb).toBeCloseTo(score.meanOutputLevelDb, 6);
      expect(score.meanOutputLevelDb).toBeGreaterThan(alike.meanOutputLevelDb + bounds.leastLevelDb - 0.5);
      expect(Math.max(...trims.map(({ gainDb }) => gainDb))).toBe(0);
      expect(Math.min(...trims.map(({ delaySeconds }) => delaySeconds))).toBe(0);
      for (const { gainDb, delaySeconds } of trims) {
        expect(gainDb).toBeGreaterThanOrEqual(bounds.lowestGainDb);
        expect(delaySeconds).toBeLessThanOrEqual(bounds.longestDelaySeconds);
      }
    }
  });

  it('keeps within narrower bounds: no polarity, 3 dB, 5 ms', () => {
    const { matrix } = made(4, 3, 4);
    const bounds = { polarity: false, lowestGainDb: -3, longestDelaySeconds: 0.005 };
    const { trims } = drain(optimiseSources(matrix, { bounds, starts: 2 }));
    for (const trim of trims) {
      expect(trim.inverted).toBe(false);
      expect(trim.gainDb).toBeGreaterThanOrEqual(-3);
      expect(trim.delaySeconds).toBeLessThanOrEqual(0.005);
    }
  });

  it('gives the same proposal for the same seed, and shows progress that never falls', () => {
    const { matrix } = made(5, 3, 4);
    const run = () => {
      const fractions: number[] = [];
      const job = optimiseSources(matrix, { seed: 9, starts: 2 });
      for (;;) {
        const step = job.next();
        if (step.done) return { trims: step.value.trims, fractions };
        fractions.push(step.value.fraction);
      }
    };
    const [a, b] = [run(), run()];
    expect(a.trims).toEqual(b.trims);
    a.fractions.forEach((value, k) => expect(value).toBeGreaterThanOrEqual(a.fractions[k - 1] ?? 0));
  });

  it('comes within 5 % of an exhaustive grid search for two sources', () => {
    for (const seed of [1, 2, 3]) {
      const { matrix } = made(seed, 2, 9);
      const { score } = drain(optimiseSources(matrix, { seed, bounds: { leastLevelDb: -40 } }));
      let least = Infinity;
      for (const inverted of [false, true])
        for (let delay = -0.02; delay <= 0.02; delay += 0.0004)
          for (let gain = -6; gain <= 6; gain += 1) {
            const first = { gainDb: Math.min(0, gain), delaySeconds: Math.max(0, delay), inverted: false };
            const second = { gainDb: Math.min(0, -gain), delaySeconds: Math.max(0, -delay), inverted };
            least = Math.min(least, spreadOf(matrix, [first, second]).meanSpatialVariance);
          }
      expect(score.meanSpatialVariance / least).toBeLessThan(1.05);
    }
  });

  it('weighs the seats: a seat of weight 0 changes nothing', () => {
    const { matrix } = made(6, 2, 4);
    const { score } = drain(optimiseSources(matrix, { weights: Float64Array.of(1, 1, 0, 0), starts: 1 }));
    const { score: all } = drain(optimiseSources(matrix, { starts: 1 }));
    expect(score.meanSpatialVariance).toBeLessThan(all.meanSpatialVariance);
  });

  it('offers a trade-off in which less spread always costs output', () => {
    const { matrix } = made(7, 3, 4);
    const { tradeOff } = drain(optimiseSources(matrix, { starts: 2 }));
    expect(tradeOff.length).toBeGreaterThan(1);
    for (let k = 1; k < tradeOff.length; k++) {
      expect(tradeOff[k].score.meanOutputLevelDb).toBeGreaterThanOrEqual(
        tradeOff[k - 1].score.meanOutputLevelDb,
      );
      expect(tradeOff[k].score.meanSpatialVariance).toBeGreaterThan(
        tradeOff[k - 1].score.meanSpatialVariance,
      );
    }
  });

  it('refuses one source, bounds that make no sense, and weights of nothing', () => {
    const { matrix } = made(8, 2, 2);
    const refusal = (run: () => unknown) => expect(run);
    refusal(() => drain(optimiseSources({ ...matrix, sourceCount: 1 }))).toThrow(
      expect.objectContaining({ code: 'optimise-sources' }),
    );
    refusal(() => drain(optimiseSources(matrix, { bounds: { lowestGainDb: 3 } }))).toThrow(
      expect.objectContaining({ code: 'optimise-bounds' }),
    );
    refusal(() => drain(optimiseSources(matrix, { weights: new Float64Array(2) }))).toThrow(
      expect.objectContaining({ code: 'weights-empty' }),
    );
  });
});
