import { expect, it } from 'vitest';
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
