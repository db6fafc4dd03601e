import { describe, expect, it } from 'vitest';
import { logFrequencies } from '../../src/decay/index.js';
import {
  allowedBand,
  chainGainDb,
  changedBand,
  deepestMatchDb,
  matchedBand,
  matchedCut,
  sectionsOf,
  type Band,
} from '../../src/seats/index.js';

const frequenciesHz = logFrequencies(20, 200, 24);
const levelsOf = (...seats: ((f: number) => number)[]) => ({
  frequenciesHz,
  levelsDb: Float64Array.from(seats.flatMap((level) => [...frequenciesHz].map(level))),
});
const dip = (at: number, depth: number) => (f: number) =>
  -depth * Math.exp(-0.5 * (Math.log2(f / at) / 0.08) ** 2);
const flat = levelsOf(() => 0);
const free: Band = { kind: 'peaking', frequencyHz: 60, gainDb: -3, q: 1 };

describe('a band that is edited', () => {
  it('is the exact cut of 50 Hz from 1.4 s to 0.5 s: -8.943 dB, Q 19.025 (W3C Audio EQ Cookbook)', () => {
    const band = matchedBand({ frequencyHz: 50, decayTimeSeconds: 1.4, targetSeconds: 0.5 });
    expect(band.gainDb).toBeCloseTo(-8.943, 3);
    expect(band.q).toBeCloseTo(19.025, 3);
    expect(band.frequencyHz).toBeCloseTo(50.006, 3);
  });

  it('stays matched where its gain or its target is changed: the other and its Q follow', () => {
    const band = matchedBand({ frequencyHz: 50, decayTimeSeconds: 1.4, targetSeconds: 0.5 });
    const shorter = changedBand(band, { targetSeconds: 0.35 });
    const { gainDb, q, frequencyHz } = matchedCut(50, 1.4, 0.35);
    expect(shorter).toMatchObject({ gainDb, q, frequencyHz });
    const byGain = changedBand(band, { gainDb: -6 });
    expect(byGain.match!.targetSeconds).toBeCloseTo(1.4 * 10 ** (-6 / 20), 12);
    expect(byGain.gainDb).toBeCloseTo(-6, 12);
    expect(changedBand(band, { gainDb: 3 }).gainDb, 'never a boost').toBeCloseTo(0, 12);
    expect(changedBand(band, { targetSeconds: 0.01 }).gainDb).toBeCloseTo(deepestMatchDb, 9);
    expect(changedBand(band, { q: 5 }).match).toBeUndefined();
    expect(changedBand(band, { frequencyHz: 52 }).match).toBeUndefined();
  });

  it('comes back from beyond its bounds as the bound, and a shelf never overshoots', () => {
    expect(changedBand(free, { frequencyHz: 5000, gainDb: undefined }).frequencyHz).toBe(1000);
    expect(changedBand(free, { gainDb: -80 }).gainDb).toBe(-24);
    const shelf = changedBand({ ...free, q: 8 }, { kind: 'low-shelf' });
    expect(shelf.q).toBe(1);
    const gain = chainGainDb(sectionsOf([{ ...shelf, gainDb: -10 }], 48000), frequenciesHz, 48000);
    expect(Math.max(...gain)).toBeLessThan(0.7);
    expect(changedBand(free, { kind: 'all-pass' }).gainDb).toBe(0);
  });
});

describe('what a band may become', () => {
  it('is a boost of 3 dB at most, said as such', () => {
    const { band, refused, mostDb } = allowedBand(free, { ...free, gainDb: 6 }, [], flat);
    expect(refused).toBe('boost-high');
    expect(mostDb).toBe(3);
    expect(band.gainDb).toBe(3);
    expect(allowedBand(free, { ...free, gainDb: 2 }, [], flat)).toMatchObject({ refused: null });
  });

  it('is no narrow boost: turned up it stays at 0 dB, narrowed it stays broad', () => {
    const narrow = { ...free, q: 6 };
    expect(allowedBand(narrow, { ...narrow, gainDb: 2 }, [], flat)).toMatchObject({
      refused: 'boost-narrow',
      band: { gainDb: 0, q: 6 },
    });
    const broad = { ...free, gainDb: 2 };
    expect(allowedBand(broad, { ...broad, q: 6 }, [], flat)).toMatchObject({
      refused: 'boost-narrow',
      band: { gainDb: 2, q: 1.5 },
    });
  });

  it('is no boost of a null of any seat, neither by a peaking band nor by a shelf over it', () => {
    const dipped = levelsOf(() => 0, dip(60, 14));
    expect(allowedBand(free, { ...free, gainDb: 2 }, [], dipped)).toMatchObject({
      refused: 'boost-null',
      band: { gainDb: 0 },
      nullSeats: [1],
    });
    const shelf: Band = { kind: 'low-shelf', frequencyHz: 110, gainDb: 0, q: 0.7 };
    const { refused, band } = allowedBand(shelf, { ...shelf, gainDb: 3 }, [], dipped);
    expect(refused).toBe('boost-null');
    expect(band.gainDb).toBeLessThan(1.3);
  });

  it('is held to the sum: two boosts of 3 dB at one place are refused, the second gets what is left', () => {
    const first = { ...free, gainDb: 2 };
    const { refused, band } = allowedBand(free, { ...free, gainDb: 3 }, [first], flat);
    expect(refused).toBe('boost-sum');
    expect(band.gainDb).toBe(1);
    const gain = chainGainDb(sectionsOf([first, band], 48000), frequenciesHz, 48000);
    expect(Math.max(...gain)).toBeLessThanOrEqual(3.001);
  });

  it('may cut whatever it likes', () => {
    const deep = { ...free, gainDb: -20, q: 9 };
    expect(
      allowedBand(
        free,
        deep,
        [{ ...free, gainDb: 3 }],
        levelsOf(() => 0, dip(60, 14)),
      ),
    ).toMatchObject({
      refused: null,
      band: deep,
    });
  });
});
