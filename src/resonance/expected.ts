import type { BandDecay } from '../decay/index.js';
import { defaultVolumeCubicMetres, modalDensity } from './density.js';
import { resolvableBandwidths } from './resolution.js';
import * as maths from '../signal/maths.js';

/** What a fit can know at best in one third-octave, from its range, decay time and the number of modes expected there. */
export interface ExpectedBand {
  readonly centreHz: number;
  /** Of one mode with an even share of the band's energy: energy over noise variance per sample, dB. */
  readonly rhoDb: number;
  /** Standard deviation of its decay time over the decay time, and of its frequency. */
  readonly decayShare: number;
  readonly frequencySdHz: number;
  /** Two such modes closer than this cannot be told apart; null where no spacing suffices. */
  readonly leastSpacingHz: number | null;
}

export interface ExpectedPrecision {
  /** Those where a decay time was read. */
  readonly bands: readonly ExpectedBand[];
  /** Medians over the bands; null where no band could be read, or none resolves anything. */
  readonly leastSpacingHz: number | null;
  readonly decayShare: number | null;
}

/** Third-octave bands of noise: share of the centre frequency that is their width. */
const bandShare = maths.power(2, 1 / 6) - maths.power(2, -1 / 6);
/**
 * What no mode explains, diffuse decay above all, hides modes as noise does: a range beyond this one adds nothing. dB.
 */
const mostRangeDb = 45;
/** Nepers of power in 60 dB. */
const decayNepers = 2 * maths.log(1000);

function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1];
}

/**
 * The precision to expect of a recording before anything is fitted. A decay of power P and decay time T over noise of power
 * N in a band of width B holds rho = 2 B (P / N) T / 13.8 of energy over noise variance per sample; the modes expected in the
 * band share it. For one mode by itself the Cramer-Rao bound is then 2 / sqrt(rho) of the decay time and
 * bandwidth / sqrt(rho) of the frequency; how near two may lie is the resolution law's.
 *
 * @param bands As `examine` reads them.
 * @param volumeCubicMetres For the number of modes; 60 m3 where null.
 */
export function expectedPrecision(
  bands: readonly BandDecay[],
  volumeCubicMetres: number | null = null,
): ExpectedPrecision {
  const volume = volumeCubicMetres ?? defaultVolumeCubicMetres;
  const expected = bands.flatMap(({ centreHz, rangeDb, edt, t20, t30 }): ExpectedBand[] => {
    const decaySeconds = t20.seconds ?? t30.seconds ?? edt.seconds;
    if (decaySeconds === null || !Number.isFinite(rangeDb)) return [];
    const width = bandShare * centreHz;
    const modes = Math.max(1, modalDensity(centreHz, volume) * width);
    const rho =
      (2 * width * maths.power(10, Math.min(rangeDb, mostRangeDb) / 10) * decaySeconds) / decayNepers / modes;
    const rhoDb = 10 * maths.log10(Math.max(rho, 1e-9));
    const halfPower = decayNepers / (2 * Math.PI * decaySeconds);
    const widths = resolvableBandwidths(rhoDb);
    return [
      {
        centreHz,
        rhoDb,
        decayShare: 2 / Math.sqrt(rho),
        frequencySdHz: halfPower / Math.sqrt(rho),
        leastSpacingHz: widths === null ? null : widths * halfPower,
      },
    ];
  });
  return {
    bands: expected,
    leastSpacingHz: median(expected.flatMap(({ leastSpacingHz: f }) => (f === null ? [] : [f]))),
    decayShare: median(expected.map(({ decayShare }) => decayShare)),
  };
}
