import { describe, expect, it } from 'vitest';
import { clipping, examine } from '../../src/decay/index.js';
import { encodeWav, openRecording, quantisationOf, Rng } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';
import { addMode } from '../support/signals.js';

const rate = 48000;
const mode = addMode(new Float64Array(2 * rate), rate, 50, 0.5, 0.9, 0.1);
const opened = (samples: Float64Array, encoding: 'pcm-8' | 'pcm-16' | 'pcm-24' | 'float-32') =>
  openRecording(encodeWav({ channels: [samples], sampleRate: rate, encoding }));
const rangeAt50 = (recording: ReturnType<typeof opened>) =>
  drain(examine(recording)).ranges.find(({ centreHz }) => Math.round(centreHz) === 50)!.rangeDb;

describe('a file of coarse steps', () => {
  it('is known by its samples, whatever holds them', () => {
    for (const [encoding, bits] of [
      ['pcm-8', 8],
      ['pcm-16', 16],
      ['pcm-24', 24],
    ] as const)
      expect(quantisationOf(opened(mode, encoding).samples)).toEqual({ bits, step: 2 ** (1 - bits) });
    expect(quantisationOf(opened(mode, 'float-32').samples)).toBeNull();
  });

  it('has the range of half a step where no dither carries what lies below, and says so', () => {
    const recording = opened(mode, 'pcm-8');
    const { ranges, decays, notes } = drain(examine(recording));
    // The first peak, 108 steps of 1/128, is 47 dB above half a step; the loudest 50 ms of a filtered decay lie 3 to 12 dB below its peak.
    const at50 = ranges.find(({ centreHz }) => Math.round(centreHz) === 50)!.rangeDb;
    expect(at50).toBeGreaterThan(34);
    expect(at50).toBeLessThan(44);
    for (const { rangeDb } of [...ranges, ...decays]) expect(rangeDb).toBeLessThan(48);
    const note = notes.find(({ code }) => code === 'quantised')!;
    expect(note.params.bits).toBe(8);
    expect(note.params.rangeDb).toBeCloseTo(20 * Math.log10(108 / 0.5), 1);
    // 0.9 exp(-6.9078 t / 0.5) reaches 1/256 at 0.394 s.
    expect(Math.abs(Number(note.params.atSeconds) - 0.394)).toBeLessThan(0.02);
    expect(notes.map(({ code }) => code)).not.toContain('truncated');
    const { t20 } = decays.find(({ centreHz }) => Math.round(centreHz) === 50)!;
    expect(Math.abs(t20.seconds! / 0.5 - 1)).toBeLessThan(0.03);
  });

  it('is left alone where noise or dither goes on to the end, or its steps are fine enough', () => {
    const rng = new Rng(4);
    const noisy = mode.map((v) => v + 0.01 * rng.gaussian());
    for (const recording of [opened(noisy, 'pcm-8'), opened(mode, 'pcm-24'), opened(mode, 'float-32')])
      expect(drain(examine(recording)).notes.map(({ code }) => code)).not.toContain('quantised');
    expect(rangeAt50(opened(mode, 'pcm-24'))).toBeGreaterThan(120);
  });

  it('that is cut off loud is told as cut off, and not as coarse', () => {
    const cut = mode.map((v, i) => (i < 0.3 * rate ? v : 0));
    const codes = drain(examine(opened(cut, 'pcm-8'))).notes.map(({ code }) => code);
    expect(codes).toContain('truncated');
    expect(codes).not.toContain('quantised');
  });

  it('has slow tops of equal samples that are not taken for clipping, which is still found', () => {
    expect(clipping(opened(mode, 'pcm-8'))).toBeNull();
    expect(clipping(opened(mode, 'pcm-16'))).toBeNull();
    const clipped = mode.map((v) => Math.max(-0.5, Math.min(0.5, v)));
    for (const encoding of ['pcm-8', 'pcm-16', 'float-32'] as const)
      expect(clipping(opened(clipped, encoding))?.count, encoding).toBeGreaterThan(50);
  });
});

describe('a decay that the file cuts while it is loud', () => {
  it('is short and not noisy: no band of it has reached a noise', () => {
    for (const seconds of [0.3, 0.4, 0.6]) {
      const samples = addMode(new Float64Array(seconds * rate), rate, 30, 1.2);
      const codes = drain(examine({ samples, sampleRate: rate, onsetSeconds: 0 })).notes.map(
        ({ code }) => code,
      );
      expect(codes, `${seconds} s`).toEqual(['short']);
    }
  });
});
