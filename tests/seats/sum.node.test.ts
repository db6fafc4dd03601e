import { describe, expect, it } from 'vitest';
import { logFrequencies } from '../../src/decay/index.js';
import { createRoom, synthesise } from '../../src/room/index.js';
import {
  filterSamples,
  levelsOf,
  plainSetting,
  sectionsOf,
  seatSpread,
  spreadOfLevels,
  sumSources,
  transferMatrix,
  type SourceSetting,
} from '../../src/seats/index.js';
import { recordingFromSamples, type Recording } from '../../src/signal/index.js';
import { drain } from '../support/drain.js';

const room = createRoom({ size: { lengthMetres: 6, widthMetres: 4.5, heightMetres: 2.6 }, absorption: 0.12 });
const sources = [
  { x: 0.3, y: 0.3, z: 0.3 },
  { x: 5.7, y: 0.3, z: 0.3 },
  { x: 3, y: 4.2, z: 0.3 },
];
const seats = [
  { x: 3, y: 1.4, z: 1.2 },
  { x: 4, y: 2.2, z: 1.2 },
];

function recordingOf(samples: Float64Array, rate: number, label = ''): Recording {
  return recordingFromSamples(samples, rate, { timeReference: 'common', label });
}

describe('the sum of sources', () => {
  const settings: SourceSetting[] = [
    plainSetting,
    { ...plainSetting, gainDb: -4, delaySeconds: 0.0075, inverted: true },
    {
      ...plainSetting,
      gainDb: -1.5,
      delaySeconds: 0.003,
      bands: [
        { kind: 'all-pass', frequencyHz: 60, gainDb: 0, q: 1.1 },
        { kind: 'peaking', frequencyHz: 45, gainDb: -6, q: 5 },
      ],
    },
  ];

  it.each([48000, 8000])(
    'of their recordings equals the response with all playing, within 0.1 dB down to 20 dB below its maximum (%i Hz)',
    (rate) => {
      const irs = sources.map((source) =>
        seats.map((seat) => synthesise({ room, source, seat, sampleRate: rate, seconds: 1.6 }).samples),
      );
      const frequenciesHz = logFrequencies(20, 200, 24);
      const grid = irs.map((list) => list.map((samples) => recordingOf(samples, rate)));
      const sum = sumSources(drain(transferMatrix(grid, frequenciesHz)), settings, rate);
      // All at once: the samples themselves, turned down, held back, turned over and filtered, then added.
      const together = seats.map((_, seat) => {
        const all = new Float64Array(irs[0][seat].length);
        settings.forEach(({ gainDb, delaySeconds, inverted, bands }, source) => {
          const heard = filterSamples(irs[source][seat], sectionsOf(bands, rate));
          const gain = (inverted ? -1 : 1) * 10 ** (gainDb / 20);
          const late = Math.round(delaySeconds * rate);
          for (let n = late; n < all.length; n++) all[n] += gain * heard[n - late];
        });
        return recordingOf(all, rate);
      });
      const whole = levelsOf(
        sumSources(drain(transferMatrix([together], frequenciesHz)), [plainSetting], rate),
      );
      const ours = levelsOf(sum);
      const top = Math.max(...whole);
      let compared = 0;
      whole.forEach((level, k) => {
        if (level < top - 20) return;
        compared++;
        expect(Math.abs(ours[k] - level)).toBeLessThan(0.1);
      });
      expect(compared).toBeGreaterThan(60);
    },
  );

  it('does not depend on the sample rate of the recordings', () => {
    const frequenciesHz = logFrequencies(20, 120, 12);
    const levels = [8000, 44100, 48000].map((rate) => {
      const { samples } = synthesise({
        room,
        source: sources[0],
        seat: seats[0],
        sampleRate: rate,
        seconds: 1.6,
      });
      // A digital impulse response: the synthesiser's pressure per unit sample already is one.
      return levelsOf(
        sumSources(drain(transferMatrix([[recordingOf(samples, rate)]], frequenciesHz)), [plainSetting]),
      );
    });
    levels[0].forEach((level, k) => {
      expect(Math.abs(levels[1][k] - levels[2][k])).toBeLessThan(0.05);
      expect(Math.abs(level - levels[2][k])).toBeLessThan(0.3);
    });
  });

  it('is refused without a common time reference, and where points are missing', () => {
    const { samples } = synthesise({
      room,
      source: sources[0],
      seat: seats[0],
      sampleRate: 2000,
      seconds: 1,
    });
    const known = recordingOf(samples, 2000);
    const stranger = recordingFromSamples(samples, 2000, { label: 'left' });
    const at = Float64Array.of(30, 40);
    expect(() => drain(transferMatrix([[known], [stranger]], at))).toThrow(
      expect.objectContaining({ code: 'time-reference', params: { label: 'left' } }),
    );
    expect(() => drain(transferMatrix([[known], [null]], at))).toThrow(
      expect.objectContaining({ code: 'points-missing', params: { missing: 1, points: 2 } }),
    );
  });
});

describe('the spread over the seats', () => {
  it('is the mean over frequency of the variance over seats, divided by the sum of weights', () => {
    // Two frequencies, three seats: variances 8/3 and 0.
    const levels = Float64Array.of(0, 5, 2, 5, 4, 5);
    const spread = spreadOfLevels(levels, 2, Float64Array.of(1, 1, 1));
    expect(spread.meanSpatialVariance).toBeCloseTo(8 / 3 / 2, 12);
    expect(spread.meanOutputLevelDb).toBeCloseTo(3.5, 12);
    expect([...spread.meanDb]).toEqual([2, 5]);
    expect([spread.lowestDb[0], spread.highestDb[0]]).toEqual([0, 4]);
    expect(spread.within3Db).toBeCloseTo(1, 12);
  });

  it('leaves out a seat of weight 0 and counts one of weight 2 twice', () => {
    const levels = Float64Array.of(0, 3, 40);
    expect(spreadOfLevels(levels, 1, Float64Array.of(2, 1, 0)).meanSpatialVariance).toBeCloseTo(2, 12);
    expect(spreadOfLevels(levels, 1, Float64Array.of(2, 1, 0)).highestDb[0]).toBe(3);
  });

  it('is nothing where all seats hear the same', () => {
    const spectra = {
      frequenciesHz: Float64Array.of(20, 30),
      seatCount: 2,
      re: Float64Array.of(1, 2, 1, 2),
      im: new Float64Array(4),
    };
    expect(seatSpread(spectra).meanSpatialVariance).toBe(0);
  });
});
