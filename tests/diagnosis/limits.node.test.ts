import { describe, expect, it } from 'vitest';
import {
  audibilityBand,
  audibleAt,
  judge,
  limitCurve,
  neighboursMedian,
  targetBand,
  targetMidTime,
} from '../../src/diagnosis/index.js';
import { createRoom } from '../../src/room/index.js';

const room = createRoom({ size: { lengthMetres: 5, widthMetres: 5, heightMetres: 4 } });

describe('the audibility band', () => {
  it('passes through the published points it is made of', () => {
    // Stephenson, PhD thesis, Salford 2012: 0.85 s at 32 Hz and 0.2 s at 100 Hz. Avis et al. 2007: 1.1 s at 32 Hz.
    expect(audibilityBand(32)).toEqual({ lowerSeconds: 0.85, upperSeconds: 1.1 });
    expect(audibilityBand(100)!.lowerSeconds).toBeCloseTo(0.2, 9);
    // Karjalainen et al. 2004: 0.3 to 0.4 s down to 100 Hz. Fazenda et al. 2015 (from memory): 0.12 s at 250 Hz.
    expect(audibilityBand(100)!.upperSeconds).toBeCloseTo(0.4, 9);
    expect(audibilityBand(250)).toEqual({ lowerSeconds: 0.12, upperSeconds: 0.4 });
    // Stephenson halfway between 32 and 100 Hz on a logarithmic axis.
    expect(audibilityBand(Math.sqrt(3200))!.lowerSeconds).toBeCloseTo((0.85 + 0.2) / 2, 9);
  });

  it('is not extended below 32 nor above 250 Hz', () => {
    for (const f of [20, 31.9, 250.1, 400]) expect(audibilityBand(f), `${f}`).toBeNull();
  });

  it('says yes above every curve, possibly between them, and nothing below them or where there is none', () => {
    expect(audibleAt(50, 1.4)).toBe('yes');
    expect(audibleAt(50, 0.65)).toBe('possibly');
    expect(audibleAt(50, 0.3)).toBe('unknown');
    expect(audibleAt(25, 3)).toBe('unknown');
  });

  it('carries the disagreement below 63 Hz as data', () => {
    const curve = limitCurve('audibility', null);
    expect(curve.disagreesBelowHz).toBe(63);
    expect(limitCurve('target', room).disagreesBelowHz).toBeNull();
    curve.frequenciesHz.forEach((f, i) => {
      expect(Number.isNaN(curve.lowerSeconds[i]), `${f}`).toBe(f < 32 || f > 250);
      if (f >= 32 && f <= 250) expect(curve.lowerSeconds[i]).toBeLessThanOrEqual(curve.upperSeconds[i]);
    });
  });
});

describe('the target of a listening room', () => {
  it('is 0.25 s at 100 m3 and kept within 0.2 to 0.4 s (EBU Tech 3276, section 2.3)', () => {
    expect(targetMidTime(100)).toBeCloseTo(0.25, 12);
    expect(targetMidTime(20)).toBe(0.2);
    expect(targetMidTime(1000)).toBe(0.4);
  });

  it('allows 0.05 s from 200 Hz up and 0.3 s at 63 Hz, nothing below (values from memory)', () => {
    expect(targetBand(200, 100)!.upperSeconds).toBeCloseTo(0.3, 9);
    expect(targetBand(63, 100)!.upperSeconds).toBeCloseTo(0.55, 9);
    expect(targetBand(Math.sqrt(63 * 200), 100)!.upperSeconds).toBeCloseTo(0.425, 9);
    expect(targetBand(50, 100)).toBeNull();
  });
});

describe('a decay against its limit', () => {
  const others = [0.3, 0.32, 0.28, 0.31].map((decayTimeSeconds, i) => ({
    frequencyHz: 22 + 2 * i,
    decayTimeSeconds,
  }));
  const at = (frequencyHz: number, decayTimeSeconds: number, decayTimeSdSeconds = 0.01) => ({
    frequencyHz,
    decayTimeSeconds,
    decayTimeSdSeconds,
  });

  it('is held against the neighbours where no curve exists', () => {
    const verdict = judge(at(25, 0.7), others, 'audibility', null);
    expect(verdict.limitName).toBe('neighbours');
    expect(verdict.limitSeconds).toBeCloseTo(1.5 * 0.305, 9);
    expect(verdict.above).toBe(true);
    expect(judge(at(25, 0.4), others, 'audibility', null).above).toBe(false);
  });

  it('is not above its neighbours where its own uncertainty reaches them', () => {
    expect(judge(at(25, 0.6, 0.2), others, 'neighbours', null).above).toBe(false);
    expect(judge(at(25, 0.6, 0.1), others, 'neighbours', null).above).toBe(true);
  });

  it('has no verdict among fewer than two neighbours', () => {
    expect(neighboursMedian(25, others.slice(0, 1))).toBeNull();
    const verdict = judge(at(25, 9), others.slice(0, 1), 'audibility', null);
    expect(verdict).toEqual({ limitName: 'neighbours', limitSeconds: null, above: false });
  });

  it('takes the neighbours for a target where no room is known, and says so', () => {
    expect(judge(at(100, 0.6), others, 'target', null).limitName).toBe('neighbours');
    expect(judge(at(100, 0.6), others, 'target', room).limitName).toBe('target');
  });
});
