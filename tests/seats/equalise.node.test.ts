import { describe, expect, it } from 'vitest';
import { logFrequencies } from '../../src/decay/index.js';
import {
  bandCsv,
  biquadCsv,
  biquadDocument,
  chainGainDb,
  headroomGained,
  judgeBoost,
  matchedCut,
  nullSeatsAt,
  proposeCuts,
  rollOffHz,
  sectionsOf,
  type Band,
  type RidgeToCut,
} from '../../src/seats/index.js';

const frequenciesHz = logFrequencies(20, 200, 24);
/** Levels of seats given by a formula. */
const levelsOf = (...seats: ((f: number) => number)[]) => ({
  frequenciesHz,
  levelsDb: Float64Array.from(seats.flatMap((level) => [...frequenciesHz].map(level))),
});
const bump = (at: number, height: number, octaves: number) => (f: number) =>
  height * Math.exp(-0.5 * (Math.log2(f / at) / octaves) ** 2);

const ridge = (frequencyHz: number, decayTimeSeconds: number, seats: number[], more = {}): RidgeToCut => ({
  ...{ frequencyHz, decayTimeSeconds, decayTimeSdSeconds: 0.01, limitSeconds: 0.5, single: true, seats },
  ...more,
});
const everywhere = [0, 1, 2];

describe('boosts', () => {
  const falling = levelsOf((f) => (f < 32 ? -24 * Math.log2(32 / f) : 0));

  it('may be broad and 3 dB, 4 dB at the natural roll-off, and cost power and excursion', () => {
    const shelf: Band = { kind: 'low-shelf', frequencyHz: 28, gainDb: 4, q: 0.7 };
    expect(rollOffHz(falling)).toBeGreaterThan(22);
    expect(rollOffHz(falling)).toBeLessThan(32);
    expect(judgeBoost(shelf, falling)).toMatchObject({ refused: null, mostDb: 4 });
    expect(judgeBoost({ ...shelf, frequencyHz: 90 }, falling)).toMatchObject({
      refused: 'boost-high',
      mostDb: 3,
    });
    expect(judgeBoost({ ...shelf, gainDb: 6 }, falling).refused).toBe('boost-high');
    const { powerTimes, excursionTimes } = judgeBoost({ ...shelf, gainDb: 6.0206 }, falling);
    expect(powerTimes).toBeCloseTo(4, 4);
    expect(excursionTimes).toBeCloseTo(2, 4);
  });

  it('never go into a null of any seat, nor are they narrow', () => {
    const dipped = levelsOf(() => 0, bump(70, -14, 0.08));
    const boost: Band = { kind: 'peaking', frequencyHz: 70, gainDb: 2, q: 1 };
    expect(nullSeatsAt(dipped, 70)).toEqual([1]);
    expect(judgeBoost(boost, dipped)).toMatchObject({ refused: 'boost-null', nullSeats: [1] });
    expect(judgeBoost({ ...boost, frequencyHz: 120 }, dipped).refused).toBeNull();
    expect(judgeBoost({ ...boost, frequencyHz: 120, q: 4 }, dipped).refused).toBe('boost-narrow');
  });

  it('leave cuts alone, however deep', () => {
    expect(judgeBoost({ kind: 'peaking', frequencyHz: 70, gainDb: -12, q: 9 }, falling).refused).toBeNull();
  });
});

describe('the automatic proposal', () => {
  it('cuts what all seats share, worst first, and says why the rest is left', () => {
    const ridges = [
      ridge(41, 1.2, everywhere),
      ridge(58, 0.9, [2]),
      ridge(70, 0.8, everywhere, { single: false }),
      ridge(80, 0.8, everywhere, { decayTimeSdSeconds: 0.3 }),
      ridge(90, 0.7, everywhere),
      ridge(110, 0.65, everywhere),
      ridge(130, 0.51, everywhere),
    ];
    const { cuts, skipped } = proposeCuts(ridges, { seatCount: 3, levels: null, mostBands: 2 });
    expect(cuts.map((cut) => cut.ridge)).toEqual([0, 4]);
    const exact = matchedCut(41, 1.2, 0.5);
    for (const name of ['frequencyHz', 'gainDb', 'q', 'targetSeconds'] as const)
      expect(cuts[0].band[name]).toBeCloseTo(exact[name], 9);
    expect(skipped.map(({ ridge: k, code }) => [k, code])).toEqual([
      [1, 'cut-seats'],
      [2, 'cut-not-single'],
      [3, 'cut-uncertain'],
      [5, 'cut-band-limit'],
      [6, 'cut-no-limit'],
    ]);
  });

  it('cuts no deeper than allowed, and less where a single seat would be left with a dip', () => {
    const high = levelsOf(bump(41, 12, 0.3), bump(41, 12, 0.3));
    const one = [ridge(41, 3, everywhere, { limitSeconds: 0.3 })];
    const deep = proposeCuts(one, { seatCount: 2, levels: high });
    expect(deep.cuts[0].band.gainDb).toBeCloseTo(-12, 9);
    expect(deep.cuts[0].partial).toBe(true);
    const uneven = levelsOf(bump(41, 12, 0.3), bump(41, -4.5, 0.3));
    const shallow = proposeCuts(one, { seatCount: 2, levels: uneven, lowestSeatDb: -6 });
    expect(shallow.cuts[0].band.gainDb).toBeGreaterThan(-12);
    const dip = levelsOf(bump(41, 12, 0.3), bump(41, -9, 0.3));
    expect(proposeCuts(one, { seatCount: 2, levels: dip }).skipped).toEqual([
      { ridge: 0, code: 'cut-seat-dip' },
    ]);
  });

  it('never boosts', () => {
    const { cuts } = proposeCuts([ridge(41, 1.2, everywhere), ridge(66, 0.9, everywhere)], {
      seatCount: 3,
      levels: null,
    });
    for (const { band } of cuts) {
      expect(band.gainDb).toBeLessThan(0);
      const gain = chainGainDb(sectionsOf([band], 48000), frequenciesHz, 48000);
      expect(Math.max(...gain)).toBeLessThan(1e-6);
    }
  });

  it('gains the headroom by which the highest peak of the mean comes down', () => {
    const meanDb = Float64Array.from(frequenciesHz, bump(50, 9, 0.15));
    const bands: Band[] = [{ kind: 'peaking', frequencyHz: 50, gainDb: -9, q: 4 }];
    const gained = headroomGained(meanDb, frequenciesHz, bands);
    expect(gained).toBeGreaterThan(6);
    expect(gained).toBeLessThanOrEqual(9);
    expect(headroomGained(meanDb, frequenciesHz, [])).toBe(0);
  });
});

describe('the filters as files', () => {
  const bands: Band[] = [
    matchedCut(50, 1.4, 0.5),
    { kind: 'low-shelf', frequencyHz: 30, gainDb: 3, q: 0.7071 },
  ];

  it('hold the coefficients, exactly, with their rate', () => {
    const document = biquadDocument(bands, 48000);
    const sections = sectionsOf(bands, 48000);
    expect(document.sample_rate_hz).toBe(48000);
    expect([...document.bands[0].b, ...document.bands[0].a.slice(1)]).toEqual([...sections.subarray(0, 5)]);
    const [head, first, second, end] = biquadCsv(bands, 48000).split('\n');
    expect(head).toBe('kind,frequency_hz,gain_db,q,b0,b1,b2,a1,a2,sample_rate_hz');
    expect(first.split(',').slice(4, 9).map(Number)).toEqual([...sections.subarray(0, 5)]);
    expect(second.startsWith('low-shelf,30,3,0.7071,')).toBe(true);
    expect(first.endsWith(',48000')).toBe(true);
    expect(end).toBe('');
  });

  it('hold peaking bands as a plain table for processors set by hand', () => {
    expect(bandCsv(bands, 44100)).toBe(
      '# sample_rate_hz=44100\nfrequency_hz,gain_db,q\n50.006,-8.943,19.025\n',
    );
  });
});
