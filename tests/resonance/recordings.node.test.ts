import { expect, it } from 'vitest';
import { remake } from '../../src/diagnosis/residual.js';
import { ellipticHighPass, ellipticLowPass, reverseDecimate } from '../../src/signal/filters.js';
import { openRecording, type Recording } from '../../src/signal/index.js';
import { fitResonances } from '../../src/resonance/index.js';
import { scatterOf } from '../benchmark/scatter.mjs';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';
import { drain, within } from './support.js';

const open = (name: string): Recording => openRecording(recordingBytes(name));
const params = { fromHz: 20, toHz: 200, volumeCubicMetres: null };
const one = (name: string) => drain(fitResonances([open(name)], params));

describeWithRecordings('resonances of real recordings', () => {
  it('finds those of one corner source in the 9.7 x 5.5 x 2.7 m room, and claims nothing below 45 Hz', () => {
    const fit = one(recordingNames.corner1);
    expect(within(fit, 54, 57.5).length).toBeGreaterThan(0);
    expect(within(fit, 62, 65).length).toBeGreaterThan(0);
    expect(within(fit, 0, 45).filter(({ kind }) => kind === 'resolved')).toEqual([]);
  });

  it('finds those of all four corner sources together', () => {
    const fit = drain(fitResonances(recordingNames.corners.map(open), params));
    expect(within(fit, 53.5, 57.5).length).toBeGreaterThan(0);
    expect(within(fit, 62, 65).length).toBeGreaterThan(0);
    expect(within(fit, 0, 45).filter(({ kind }) => kind === 'resolved')).toEqual([]);
    for (const { levelsDb } of fit.resonances) expect(levelsDb).toHaveLength(4);
  });

  it('finds those of the example room near 48.0, 59 and 73.1 Hz', () => {
    const fit = one(recordingNames.frl);
    expect(within(fit, 47, 49).length).toBeGreaterThan(0);
    expect(within(fit, 56, 61).length).toBeGreaterThan(0);
    expect(within(fit, 72.1, 74.1).length).toBeGreaterThan(0);
  });

  it('accounts for the energy of the living room, whose modes overlap, as clusters and with its decay of 0.2 to 0.35 s', () => {
    const fit = one(recordingNames.livingRoom);
    expect(fit.explainedEnergy).toBeGreaterThan(0.9);
    const bass = within(fit, 40, 120).filter(({ kind }) => kind !== 'source');
    expect(bass.length).toBeGreaterThan(1);
    for (const { decayTimeSeconds } of bass) {
      expect(decayTimeSeconds).toBeGreaterThan(0.15);
      expect(decayTimeSeconds).toBeLessThan(0.4);
    }
  });

  it('explains at least 90 % of the energy from 40 to 120 Hz in the living room by its resonances', () => {
    const { samples, sampleRate, onsetSeconds } = open(recordingNames.livingRoom);
    const { resonances, fitFromSeconds } = one(recordingNames.livingRoom);
    const made = remake({ samples, sampleRate, onsetSeconds }, resonances, 0);
    const from = Math.ceil((onsetSeconds + fitFromSeconds) * sampleRate);
    // Backwards in time, as the fit filters: what lies before its start, and rumble, do not ring into the band.
    const step = Math.floor(sampleRate / 1000);
    const inBand = (x: Float64Array): number => {
      const low = reverseDecimate(x, from, step, ellipticLowPass('8-80', 120, sampleRate));
      const band = reverseDecimate(low, 0, 1, ellipticHighPass(40, sampleRate / step));
      return band.subarray(0, band.length - 150).reduce((sum, v) => sum + v * v, 0);
    };
    expect(inBand(samples.map((v, n) => v - made[n])) / inBand(samples)).toBeLessThan(0.1);
  });

  it('scatters, source by source, about the joint fit of the four within the stated uncertainties', () => {
    const room = { ...params, volumeCubicMetres: 9.7 * 5.5 * 2.7 };
    const fitOf = (names: readonly string[]) => drain(fitResonances(names.map(open), room)).resonances;
    const { corners } = recordingNames;
    const rows = scatterOf(
      fitOf(corners),
      corners.map((name) => fitOf([name])),
      40,
      120,
    );
    expect(rows.length).toBeGreaterThan(30);
    const share = (key: 'zFrequency' | 'zDecay') =>
      rows.filter((row) => Math.abs(row[key]) < 2).length / rows.length;
    expect(share('zFrequency')).toBeGreaterThan(0.9);
    expect(share('zDecay')).toBeGreaterThan(0.9);
  });

  it('refuses the clap, which stands too little above its own noise', () => {
    const fit = one(recordingNames.clap);
    expect(fit.resonances).toEqual([]);
    expect(fit.notes.map(({ code }) => code)).toEqual(['no-range']);
    const { rangeDb, neededDb, fromHz, toHz } = fit.notes[0].params;
    expect(rangeDb).toBeLessThan(neededDb as number);
    expect([fromHz, toHz]).toEqual([20, 200]);
  });
});
