import { describe, expect, it } from 'vitest';
import { examine } from '../../src/decay/index.js';
import { expectedPrecision } from '../../src/resonance/index.js';
import { openRecording, recordingFromSamples } from '../../src/signal/index.js';
import { createSpeaker } from '../../src/words/index.js';
import { readTruth } from '../benchmark/score.mjs';
import { makeSet } from '../benchmark/synth.mjs';
import { drain } from '../support/drain.js';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';
import { mode, noise, sumOf } from './support.js';

const median = (values: number[]): number => [...values].sort((a, b) => a - b)[values.length >> 1];

describe('the precision to expect, before anything is fitted', () => {
  it('is the Cramer-Rao bound of a lone mode: 2 / sqrt(rho) of its decay time', () => {
    const recording = recordingFromSamples(sumOf(mode(50, 0.6), noise(0.01, 35, 71)), 48000);
    const { bands } = expectedPrecision(drain(examine(recording)).decays, 0);
    const band = bands.find(({ centreHz }) => Math.round(centreHz) === 50)!;
    // A sine of amplitude 1: A^2 / noise in the band x 2 B / (4 delta), delta = 6.908 / T.
    const width = 50 * (2 ** (1 / 6) - 2 ** (-1 / 6));
    const rho = (2 * width) / ((4 * 6.908) / 0.6) / ((0.01 ** 2 * width) / 36);
    expect(Math.abs(band.rhoDb - 10 * Math.log10(rho))).toBeLessThan(9);
    expect(band.decayShare).toBeCloseTo(2 / Math.sqrt(10 ** (band.rhoDb / 10)), 9);
    expect(band.frequencySdHz / (2.2 / 0.6)).toBeCloseTo(band.decayShare / 2, 2);
  });

  it('comes near to what the modes of a synthetic room hold, at two levels of noise', () => {
    const truth = readTruth();
    for (const set of ['R', 'V'])
      for (const snr of [40, 70]) {
        const off = [1, 2].map((seed) => {
          const recording = recordingFromSamples(makeSet(set, seed, snr).irs[0], 48000);
          const { bands } = expectedPrecision(drain(examine(recording)).decays, 58.7);
          const held = truth.get(`${set} ${snr} ${seed}`)!.filter(({ f }) => f > 22 && f < 200);
          return median(bands.map(({ rhoDb }) => rhoDb)) - median(held.map(({ rho }) => rho));
        });
        for (const one of off) expect(Math.abs(one), `${set} ${snr}`).toBeLessThan(10);
      }
  });

  it('says from which spacing on two modes are told apart, the finer the less noise there is', () => {
    const spacings = [40, 55, 70].map((snr) => {
      const recording = recordingFromSamples(makeSet('V', 2, snr).irs[0], 48000);
      return expectedPrecision(drain(examine(recording)).decays, 58.7);
    });
    expect(spacings[0].leastSpacingHz!).toBeGreaterThan(1.5 * spacings[1].leastSpacingHz!);
    expect(spacings[1].leastSpacingHz!).toBeGreaterThan(1.2 * spacings[2].leastSpacingHz!);
    const { leastSpacingHz: spacingHz, decayShare } = spacings[1];
    expect(createSpeaker('en', { space: ' ' }).caption('expected', { spacingHz, decayShare })).toMatch(
      /two modes closer than about 1\.\d Hz cannot be told apart, and the decay time of one by itself is known to some \d\.\d %/,
    );
  });
});

describeWithRecordings('of real recordings', () => {
  it('nothing is to be told apart in the clap', () => {
    const clap = openRecording(recordingBytes(recordingNames.clap));
    const { leastSpacingHz: spacingHz, decayShare } = expectedPrecision(drain(examine(clap)).decays);
    expect(spacingHz).toBeNull();
    expect(createSpeaker('en').caption('expected', { spacingHz, decayShare })).toMatch(/no two modes/);
  });
});
