import { describe, expect, it } from 'vitest';
import { logFrequencies } from '../../src/decay/index.js';
import { alignSource, phaseBetween, sharedBand, transferMatrix } from '../../src/seats/index.js';
import { recordingFromSamples, Rng } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';

const rate = 8000;

/** A band-limited click: 4th-order corners, at a place that need not fall on a sample. */
function click(atSeconds: number, gain: number, fromHz: number, toHz: number): Float64Array {
  const samples = new Float64Array(rate);
  for (let n = 0; n < samples.length; n++) {
    const t = n / rate - atSeconds;
    const window = Math.abs(t) < 0.12 ? Math.cos((Math.PI / 2) * (t / 0.12)) ** 2 : 0;
    let sum = 0;
    for (let f = fromHz; f <= toHz; f += 2) sum += Math.cos(2 * Math.PI * f * t);
    samples[n] = (gain * window * sum) / 100;
  }
  return samples;
}

const matrixOf = (grid: Float64Array[][]) =>
  drain(
    transferMatrix(
      grid.map((list) =>
        list.map((samples) => recordingFromSamples(samples, rate, { timeReference: 'common' })),
      ),
      logFrequencies(20, 200, 24),
    ),
  );

describe('phase matching', () => {
  it('finds delay and polarity of a source that only arrives later and turned over', () => {
    const rng = new Rng(5);
    for (let k = 0; k < 10; k++) {
      const late = 0.02 * (rng.uniform() - 0.5);
      const inverted = rng.uniform() < 0.5;
      const matrix = matrixOf([
        [click(0.3, 1, 25, 110)],
        [click(0.3 + late, inverted ? -0.6 : 0.6, 25, 110)],
      ]);
      const band = sharedBand(matrix)!;
      const found = alignSource(matrix, 0, 1, [0], band);
      expect(found.delaySeconds).toBeCloseTo(-late, 4);
      expect(found.inverted).toBe(inverted);
      expect(found.match).toBeGreaterThan(0.999);
      expect(found.matchOther).toBeLessThan(found.match);
    }
  });

  it('matches the phase, not the peak of the impulse, where a filter holds back the lowest bass', () => {
    // A second-order all-pass turns the phase about 40 Hz and moves no level.
    const plain = click(0.3, 1, 25, 110);
    const matrix = matrixOf([[plain], [plain]]);
    const band = sharedBand(matrix)!;
    const { frequenciesHz } = matrix;
    const columns = frequenciesHz.length;
    const turned = { re: matrix.re.slice(), im: matrix.im.slice() };
    for (let f = 0; f < columns; f++) {
      const angle = -2 * Math.atan2(frequenciesHz[f] / 40, 1 - (frequenciesHz[f] / 40) ** 2);
      const [a, b] = [matrix.re[columns + f], matrix.im[columns + f]];
      turned.re[columns + f] = a * Math.cos(angle) - b * Math.sin(angle);
      turned.im[columns + f] = a * Math.sin(angle) + b * Math.cos(angle);
    }
    const { match, matchNow } = alignSource({ ...matrix, ...turned }, 0, 1, [0], band);
    expect(match).toBeGreaterThan(matchNow);
    expect(match).toBeLessThan(1);
  });

  it('looks only where both play', () => {
    const matrix = matrixOf([[click(0.3, 1, 20, 80)], [click(0.3, 1, 45, 200)]]);
    const band = sharedBand(matrix)!;
    expect(band.fromHz).toBeGreaterThan(38);
    expect(band.fromHz).toBeLessThan(48);
    expect(band.toHz).toBeGreaterThan(75);
    expect(band.toHz).toBeLessThan(95);
  });

  it('gives the phase between two sources per frequency', () => {
    const matrix = matrixOf([[click(0.3, 1, 25, 110)], [click(0.305, 1, 25, 110)]]);
    const f = matrix.frequenciesHz.findIndex((value) => value > 50);
    const expected = -2 * Math.PI * matrix.frequenciesHz[f] * 0.005;
    expect(phaseBetween(matrix, 0, 1, 0)[f]).toBeCloseTo(expected, 2);
  });
});
