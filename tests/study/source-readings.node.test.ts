import { describe, expect, it } from 'vitest';
import { settingResponse, type TransferMatrix } from '../../src/seats/index.js';
import {
  alignedSettings,
  designedMatrix,
  levelsAtSeat,
  phasesAtSeat,
  plainSetting,
  sourcePhases,
} from '../../src/study/source-readings.js';
import { defaultDesign } from '../../src/study/system-design.js';
import { systemFrequencies } from '../../src/study/system-requests.js';
import type { SystemSnapshot } from '../../src/study/system-types.js';

const frequenciesHz = systemFrequencies(20, 120);
const columns = frequenciesHz.length;

/** Two flat sources at two seats, the second later by so many seconds at each. */
function matrixOf(later: readonly [number, number], sign = 1): TransferMatrix {
  const re = new Float64Array(4 * columns);
  const im = new Float64Array(4 * columns);
  for (let seat = 0; seat < 2; seat++)
    frequenciesHz.forEach((f, k) => {
      re[seat * columns + k] = 1;
      const angle = -2 * Math.PI * f * later[seat];
      re[(2 + seat) * columns + k] = sign * Math.cos(angle);
      im[(2 + seat) * columns + k] = sign * Math.sin(angle);
    });
  return { frequenciesHz, sourceCount: 2, seatCount: 2, re, im };
}

const snapshotOf = (
  matrix: TransferMatrix,
  settings: SystemSnapshot['design']['settings'] = {},
): SystemSnapshot =>
  ({
    matrix,
    design: { ...defaultDesign, settings },
    arrangement: { sources: [{ key: 'a' }, { key: 'b' }], seats: [{ key: '1' }, { key: '2' }] },
    grid: { sources: [0, 1], seats: [0, 1], incomplete: [], recordings: [] },
  }) as unknown as SystemSnapshot;

describe('sources at a seat', () => {
  it('add up by amplitude: 6 dB for two alike, nothing for two opposed', () => {
    const alike = levelsAtSeat(matrixOf([0, 0]), 0);
    const opposed = levelsAtSeat(matrixOf([0, 0], -1), 1);
    for (let f = 0; f < columns; f++) {
      expect(alike.sum[f]).toBeCloseTo(20 * Math.log10(2), 9);
      expect(alike.sources[1][f]).toBeCloseTo(0, 9);
      expect(opposed.sum[f]).toBeLessThan(-200);
    }
  });

  it('lag by 360 degrees per period of their delay', () => {
    const [reference, later] = phasesAtSeat(matrixOf([0.002, 0]), 0, 0);
    frequenciesHz.forEach((f, k) => {
      expect(reference[k]).toBeCloseTo(0, 9);
      expect(later[k]).toBeCloseTo(-360 * f * 0.002, 6);
    });
  });

  it('are heard through their settings, as the live sum is', () => {
    const setting = { ...plainSetting, gainDb: -3, delaySeconds: 0.004, inverted: true };
    const made = designedMatrix(snapshotOf(matrixOf([0, 0]), { b: setting }))!;
    const { re, im } = settingResponse(setting, frequenciesHz);
    for (let f = 0; f < columns; f++) {
      expect(made.re[3 * columns + f]).toBeCloseTo(re[f], 12);
      expect(made.im[2 * columns + f]).toBeCloseTo(im[f], 12);
      expect(made.re[f]).toBe(1);
    }
  });

  it('come into phase: the earlier waits, whichever is held against, and polarity is found', () => {
    const { alignment, band } = sourcePhases(matrixOf([0.003, 0.003], -1), 0, [0, 1])[1];
    expect(band).toMatchObject({ fromHz: frequenciesHz[0], toHz: frequenciesHz[columns - 1] });
    expect(alignment!.delaySeconds).toBeCloseTo(-0.003, 5);
    expect(alignment!.inverted).toBe(true);
    expect(alignment!.match).toBeCloseTo(1, 4);
    const settings = alignedSettings(snapshotOf(matrixOf([0.003, 0.003], -1)), 0);
    expect(settings.a).toMatchObject({ delaySeconds: 0.003, inverted: false });
    expect(settings.b).toMatchObject({ delaySeconds: 0, inverted: true });
    const again = sourcePhases(
      designedMatrix(snapshotOf(matrixOf([0.003, 0.003], -1), settings))!,
      0,
      [0, 1],
    );
    expect(again[1].alignment!.matchNow).toBeCloseTo(1, 4);
  });
});
