import { chainResponse, sectionsOf } from './biquad.js';
import type { SeatSpectra, SourceSetting, TransferMatrix } from './types.js';
import * as maths from '../signal/maths.js';

/** Rate at which filters of a live sum are computed, Hz: that of most processors; the bass does not depend on it. */
export const filterSampleRate = 48000;

/**
 * Complex response of a setting over a list of frequencies.
 *
 * @throws RingdownError `band-value`
 */
export function settingResponse(
  setting: SourceSetting,
  frequenciesHz: Float64Array,
  sampleRate = filterSampleRate,
): { re: Float64Array; im: Float64Array } {
  const re = new Float64Array(frequenciesHz.length);
  const im = new Float64Array(frequenciesHz.length);
  if (setting.muted) return { re, im };
  const gain = maths.power(10, setting.gainDb / 20) * (setting.inverted ? -1 : 1);
  const sections = sectionsOf(setting.bands, sampleRate);
  frequenciesHz.forEach((frequency, f) => {
    const angle = -2 * Math.PI * frequency * setting.delaySeconds;
    const [hr, hi] = chainResponse(sections, frequency, sampleRate);
    const [c, s] = [gain * maths.cos(angle), gain * maths.sin(angle)];
    re[f] = hr * c - hi * s;
    im[f] = hr * s + hi * c;
  });
  return { re, im };
}

/**
 * The complex sum of all sources at each seat, each through its setting: what is heard when they play together, by
 * superposition.
 *
 * @param settings One per source.
 */
export function sumSources(
  matrix: TransferMatrix,
  settings: readonly SourceSetting[],
  sampleRate = filterSampleRate,
): SeatSpectra {
  const { frequenciesHz, seatCount, sourceCount } = matrix;
  const columns = frequenciesHz.length;
  const re = new Float64Array(seatCount * columns);
  const im = new Float64Array(seatCount * columns);
  for (let source = 0; source < sourceCount; source++) {
    const through = settingResponse(settings[source], frequenciesHz, sampleRate);
    for (let seat = 0; seat < seatCount; seat++) {
      const at = (source * seatCount + seat) * columns;
      for (let f = 0; f < columns; f++) {
        const [hr, hi] = [matrix.re[at + f], matrix.im[at + f]];
        re[seat * columns + f] += hr * through.re[f] - hi * through.im[f];
        im[seat * columns + f] += hr * through.im[f] + hi * through.re[f];
      }
    }
  }
  return { frequenciesHz, seatCount, re, im };
}

/** Levels, dB re 1 (a digital impulse response of one unit sample is 0 dB). */
export function levelsOf({ re, im }: SeatSpectra): Float64Array {
  return Float64Array.from(
    re,
    (value, k) => 10 * maths.log10(Math.max(1e-30, value * value + im[k] * im[k])),
  );
}
