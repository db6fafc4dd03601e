import { expect, it } from 'vitest';
import { chainResponse, filterSamples, sectionsOf, type Band } from '../../src/seats/index.js';
import { describeWithScipy, runPython } from '../support/python.js';

interface Reference {
  frequencies: number[];
  re: number[];
  im: number[];
  click: number[];
}

const bands: (Band & { sampleRate: number })[] = [
  { kind: 'peaking', frequencyHz: 50.006, gainDb: -8.943, q: 19.025, sampleRate: 48000 },
  { kind: 'peaking', frequencyHz: 31, gainDb: 3, q: 0.7, sampleRate: 44100 },
  { kind: 'low-shelf', frequencyHz: 60, gainDb: 4, q: 0.7071, sampleRate: 48000 },
  { kind: 'low-shelf', frequencyHz: 90, gainDb: -6, q: 0.5, sampleRate: 96000 },
  { kind: 'high-shelf', frequencyHz: 120, gainDb: -3, q: 0.7071, sampleRate: 48000 },
  { kind: 'all-pass', frequencyHz: 70, gainDb: 0, q: 1.2, sampleRate: 8000 },
];

describeWithScipy('the filters of the Audio EQ Cookbook', () => {
  it('have the response and the samples that SciPy makes of the analogue prototypes', () => {
    const references = runPython('biquads.py', JSON.stringify(bands)) as Reference[];
    bands.forEach((band, k) => {
      const { frequencies, re, im, click } = references[k];
      const sections = sectionsOf([band], band.sampleRate);
      frequencies.forEach((frequency, f) => {
        const [hr, hi] = chainResponse(sections, frequency, band.sampleRate);
        expect(Math.hypot(hr - re[f], hi - im[f]), `${band.kind} at ${frequency} Hz`).toBeLessThan(1e-6);
      });
      const impulse = new Float64Array(click.length);
      impulse[0] = 1;
      filterSamples(impulse, sections).forEach((value, n) => expect(value).toBeCloseTo(click[n], 8));
    });
  });
});
