import { describe, expect, it } from 'vitest';
import { fitResonances, type ResonanceFit } from '../../src/resonance/index.js';
import { boxModes } from '../../src/room/box.js';
import { boundOf } from '../benchmark/bound.mjs';
import { makeRoom } from '../benchmark/synth.mjs';
import { drain } from '../support/drain.js';
import { mode, noise, sumOf } from './support.js';

const right = { lengthMetres: 5.3, widthMetres: 4.1, heightMetres: 2.7 };
const wrong = [
  { lengthMetres: 4.6, widthMetres: 3.9, heightMetres: 2.5 },
  { lengthMetres: 7.1, widthMetres: 4.8, heightMetres: 3.1 },
];
const modesOf = (size: typeof right): number[] =>
  boxModes(size, 343, 200).map(({ frequencyHz }) => frequencyHz);

function fitted(samples: Float64Array, onsetSeconds: number, predictedHz?: readonly number[]): ResonanceFit {
  const params = { fromHz: 15, toHz: 205, volumeCubicMetres: 58.7, predictedHz };
  return drain(fitResonances([{ samples, sampleRate: 48000, onsetSeconds }], params));
}

describe('predicted modes', () => {
  it.each([11, 12, 13])('of wrong rooms make no mode that the data do not show, seed %d', (seed) => {
    const made = makeRoom(seed, { snr: 55 });
    const true_ = boundOf(made).filter(({ rho }) => rho > 10);
    const onset = made.arrivals[0] / 48000;
    const resolved = (fit: ResonanceFit) => fit.resonances.filter(({ kind }) => kind === 'resolved');
    const plain = fitted(made.irs[0], onset);
    for (const size of wrong) {
      const fit = fitted(made.irs[0], onset, modesOf(size));
      for (const { frequencyHz } of resolved(fit))
        expect(Math.min(...true_.map(({ f }) => Math.abs(f - frequencyHz)))).toBeLessThan(0.5);
      expect(fit.resonances.length).toBeLessThanOrEqual(plain.resonances.length + 3);
      for (const { frequencyHz, frequencySdHz } of resolved(plain))
        expect(
          fit.resonances.some((one) => Math.abs(one.frequencyHz - frequencyHz) < 2 * frequencySdHz),
          `${frequencyHz} Hz`,
        ).toBe(true);
    }
  });

  it('leave a lone mode alone, and noise what it is', () => {
    const predicted = modesOf(right);
    const lone = fitted(sumOf(mode(50.6, 0.5), noise(1e-3, 20, 200)), 0, predicted);
    expect(lone.resonances.map(({ frequencyHz }) => frequencyHz.toFixed(1))).toEqual(['50.6']);
    const nothing = fitted(noise(1e-3, 20, 200), 0, predicted);
    expect(nothing.resonances).toEqual([]);
  });

  it('of the right room lose none of the modes that are found without them', () => {
    const made = makeRoom(14, { snr: 55 });
    const onset = made.arrivals[0] / 48000;
    const plain = fitted(made.irs[0], onset).resonances.filter(({ kind }) => kind === 'resolved');
    const aided = fitted(made.irs[0], onset, modesOf(right)).resonances;
    expect(plain.length).toBeGreaterThan(3);
    for (const { frequencyHz, frequencySdHz } of plain)
      expect(aided.some((one) => Math.abs(one.frequencyHz - frequencyHz) < 2 * frequencySdHz)).toBe(true);
  });
});
