import { describe, expect, it } from 'vitest';
import { bandRanges, thirdOctaves } from '../../src/decay/index.js';
import { openRecording, Rng } from '../../src/signal/index.js';
import { describeWithRecordings, recordingBytes, recordingNames } from '../support/shared-data.js';
import { addMode } from '../support/signals.js';

describe('third-octaves', () => {
  it('have the centres and edges of IEC 61260-1:2014', () => {
    const centres = [25.119, 31.623, 39.811, 50.119, 63.096, 79.433, 100, 125.893, 158.489, 199.526, 251.189];
    const bands = thirdOctaves(25, 250);
    expect(bands.map(({ centreHz }) => Number(centreHz.toFixed(3)))).toEqual(centres);
    expect(bands[3].fromHz).toBeCloseTo(44.668, 3);
    expect(bands[3].toHz).toBeCloseTo(56.234, 3);
  });
});

describe('the usable range per band', () => {
  it('falls as the noise rises, dB for dB, and lies 3 to 12 dB below the ratio of peak and noise', () => {
    const ranges = [60, 45, 30].map((below) => {
      const rng = new Rng(3);
      const samples = addMode(new Float64Array(96000), 48000, 50.119, 0.4);
      // White noise whose rms in the band of 11.57 Hz lies `below` dB under the mode's peak.
      const sd = 10 ** (-below / 20) / Math.sqrt((2 * 11.566) / 48000);
      for (let i = 0; i < samples.length; i++) samples[i] += sd * rng.gaussian();
      const bands = bandRanges({ samples, sampleRate: 48000, onsetSeconds: 0 });
      const { rangeDb } = bands.find((band) => Math.round(band.centreHz) === 50)!;
      // The loudest 50 ms of the filtered decay lie below its peak, and an envelope's noise 3 dB above its rms.
      expect(below - rangeDb, `${below} dB`).toBeGreaterThan(3);
      expect(below - rangeDb, `${below} dB`).toBeLessThan(12);
      return rangeDb;
    });
    expect(Math.abs(ranges[0] - ranges[1] - 15)).toBeLessThan(1);
    expect(Math.abs(ranges[1] - ranges[2] - 15)).toBeLessThan(1);
  });

  it('stays finite for a click without any noise', () => {
    const samples = new Float64Array(48000);
    samples[480] = 1;
    const ranges = bandRanges({ samples, sampleRate: 48000, onsetSeconds: 0.01 });
    expect(ranges).toHaveLength(11);
    expect(ranges.every(({ rangeDb }) => Number.isFinite(rangeDb))).toBe(true);
  });
});

describeWithRecordings('the range of real recordings', () => {
  const ranges = (name: string) =>
    new Map(bandRanges(openRecording(recordingBytes(name))).map((b) => [Math.round(b.centreHz), b.rangeDb]));

  it('is too small in the clap for any band below 200 Hz to be read', () => {
    const clap = ranges(recordingNames.clap);
    for (const [centre, range] of clap) if (centre < 150) expect(range, `${centre} Hz`).toBeLessThan(17);
  });

  it('is at least 55 dB in the low band of the living room, although its broadband tail is noise', () => {
    const room = ranges(recordingNames.livingRoom);
    for (const centre of [63, 79, 100, 126]) expect(room.get(centre), `${centre} Hz`).toBeGreaterThan(55);
  });
});
