import { describe, expect, it } from 'vitest';
import { recordingFromSamples, Rng } from '../../src/signal/index.js';
import { fitResonances } from '../../src/resonance/index.js';
import { drain } from '../support/drain.js';
import { fdEigenvalues, type FdRoom } from '../support/fd-eigenvalues.js';
import { fdtd } from '../support/fdtd.js';

/** A room that knows nothing of decaying sines: 3.9 x 2.8 x 2.3 m of cells, its floor harder than its other walls. */
const hard = 0.012;
const soft = 0.022;
const room = (cell: number): FdRoom => ({
  size: [3.9, 2.8, 2.3],
  speed: 343.2,
  cell,
  admittances: [soft, soft, soft, soft, hard, soft],
});

function recorded(made: FdRoom, seed: number) {
  const { samples, sampleRate } = fdtd({
    ...made,
    seconds: 1.6,
    admittance: soft,
    patches: [{ wall: 4, from: [0, 0], to: [9, 9], admittance: hard }],
    source: [0.25, 0.3, 0.25],
    receiver: [3.6, 2.5, 2.1],
  });
  const rng = new Rng(seed);
  const silence = Math.round(0.02 * sampleRate);
  const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  const whole = Float64Array.from(
    { length: samples.length + silence },
    (_, n) => (n < silence ? 0 : samples[n - silence]) + 1e-6 * peak * rng.gaussian(),
  );
  return recordingFromSamples(whole, sampleRate);
}

describe('a room of finite differences', () => {
  it('has eigenvalues that settle as its cells shrink', () => {
    const [coarse, fine, finest] = [0.2, 0.1, 0.05].map((cell) => fdEigenvalues(room(cell), 100));
    expect(coarse.length).toBeGreaterThan(6);
    finest.forEach((mode, k) => {
      const errors = [coarse, fine].map((of) => Math.abs(of[k].frequencyHz / mode.frequencyHz - 1));
      expect(fine[k].order).toEqual(mode.order);
      expect(errors[1], mode.order.join()).toBeLessThan(Math.max(0.6 * errors[0], 4e-4));
      expect(errors[1]).toBeLessThan(0.003);
      expect(Math.abs(fine[k].decaySeconds / mode.decaySeconds - 1), mode.order.join()).toBeLessThan(0.03);
    });
  });

  it('gives the fit its own eigenvalues: frequencies within 0.5 %, decay times within 10 %', () => {
    const made = room(0.15);
    const truth = fdEigenvalues(made, 118);
    const { resonances } = drain(
      fitResonances([recorded(made, 5)], { fromHz: 20, toHz: 200, volumeCubicMetres: 25.1 }),
    );
    const told = resonances.filter(({ kind }) => kind !== 'source');
    expect(truth.length).toBeGreaterThan(8);
    for (const { order, frequencyHz, decaySeconds } of truth) {
      const [found] = [...told].sort(
        (a, b) => Math.abs(a.frequencyHz - frequencyHz) - Math.abs(b.frequencyHz - frequencyHz),
      );
      const name = `${order.join()} at ${frequencyHz.toFixed(2)} Hz`;
      expect(Math.abs(found.frequencyHz / frequencyHz - 1), name).toBeLessThan(0.005);
      expect(Math.abs(found.decayTimeSeconds! / decaySeconds - 1), name).toBeLessThan(0.1);
    }
    // And nothing beside them.
    expect(told.filter(({ frequencyHz }) => frequencyHz < 118)).toHaveLength(truth.length);
  });
});
