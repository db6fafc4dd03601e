import { meanOf } from '../signal/level.js';
import { decimate } from '../signal/decimate.js';
import { withoutOffset } from '../signal/dc.js';
import { complexFft, inverseFft, nextPowerOfTwo } from '../signal/fft.js';
import { thirdOctaves, type ThirdOctave } from './frequencies.js';
import type { GridSource } from './grid.js';
import { hiddenPower } from './quantised.js';
import type { BandRange } from './types.js';
import * as maths from '../signal/maths.js';

/** Highest range that is told, dB: a noise-free response has no floor, and the number must stay finite. */
const mostRangeDb = 200;
/** Share of the response, at its end, whose mean is taken for noise (Lundeby et al., Acustica 81:344, 1995). */
const noiseShare = 0.1;
/** Band filters ring for about this many times the reciprocal of their width. */
const ringing = 1;

/**
 * Gaussian response, -3 dB at the band's edges of IEC 61260-1. Of all shapes of this width it rings shortest and without
 * side lobes: edges that are steeper ring so long in the bass that they hide how far the response itself has fallen.
 * Three widths from the centre it is 50 dB down.
 */
function bandGain(frequencyHz: number, { centreHz, fromHz, toHz }: ThirdOctave): number {
  const outside = (frequencyHz - centreHz) / ((toHz - fromHz) / 2);
  return maths.exp((-Math.LN2 / 2) * outside * outside);
}

/** Squared envelopes of the third-octave bands of one recording, at a common reduced rate. */
export interface BandEnvelopes {
  readonly sampleRate: number;
  /** Index of the onset; the envelope before it is the filter's ringing and the noise. */
  readonly onsetIndex: number;
  /** Squared envelope below which the samples hold nothing; 0 where they do. */
  readonly hiddenPower: number;
  readonly bands: readonly { readonly band: ThirdOctave; readonly power: Float64Array }[];
}

/**
 * Squared analytic envelope per band, zero-phase. Each band is an inverse FFT of the positive frequencies it passes.
 *
 * @param power One array per band, of the length of the recording at the reduced rate.
 */
export function bandEnvelopes(source: GridSource, fromHz = 25, toHz = 250): BandEnvelopes {
  const bands = thirdOctaves(fromHz, toHz).filter(({ toHz: edge }) => edge * 1.5 < source.sampleRate / 2);
  const top = (bands[bands.length - 1]?.toHz ?? 100) * 1.5;
  const reduced = decimate(withoutOffset(source.samples, source.sampleRate), source.sampleRate, top);
  const skip = -reduced.firstIndex;
  const length = Math.floor(source.samples.length / reduced.factor);
  const rate = reduced.sampleRate;
  // Zeros behind the samples hold the ringing of the lowest band, which would else wrap to the start.
  const size = nextPowerOfTwo(reduced.samples.length + Math.round(rate * 0.5));
  const signal = new Float64Array(2 * size);
  for (let i = 0; i < reduced.samples.length; i++) signal[2 * i] = reduced.samples[i];
  const bins = new Float64Array(2 * size);
  complexFft(signal, bins);
  const picked = new Float64Array(2 * size);
  const analytic = new Float64Array(2 * size);
  return {
    sampleRate: rate,
    onsetIndex: Math.round(source.onsetSeconds * rate),
    // The square of an envelope is twice the mean square.
    hiddenPower: 2 * hiddenPower(source),
    bands: bands.map((band) => {
      picked.fill(0);
      for (let k = 1; k < size / 2; k++) {
        const gain = 2 * bandGain((k * rate) / size, band);
        if (gain < 1e-9) continue;
        picked[2 * k] = gain * bins[2 * k];
        picked[2 * k + 1] = gain * bins[2 * k + 1];
      }
      inverseFft(picked, analytic);
      const power = new Float64Array(length);
      for (let i = 0; i < length; i++) {
        const at = 2 * (i + skip);
        power[i] = maths.square(analytic[at]) + maths.square(analytic[at + 1]);
      }
      return { band, power };
    }),
  };
}

/**
 * Usable decay range per third-octave: the loudest 50 ms after the onset over the mean of the last tenth of the file,
 * each in its own band, for noise differs by band. Where the response is still decaying at the end the true range is
 * larger.
 */
export function bandRanges(source: GridSource, fromHz = 25, toHz = 250): BandRange[] {
  return rangesOf(bandEnvelopes(source, fromHz, toHz));
}

/** The same from envelopes that are there already. */
export function rangesOf({ sampleRate, onsetIndex, bands, ...envelopes }: BandEnvelopes): BandRange[] {
  return bands.map(({ band, power }) => {
    const block = Math.max(1, Math.round(0.05 * sampleRate));
    let peak = 0;
    // A band's own rise lies before the onset too, since the filter is zero-phase.
    for (let i = Math.max(0, onsetIndex - block); i + block <= power.length; i += Math.max(1, block >> 2))
      peak = Math.max(peak, meanOf(power, i, i + block));
    const after = power.length - onsetIndex;
    // The filter smears the abrupt end of the file over its own length; what it touches is no noise.
    const ring = Math.round((ringing / (band.toHz - band.fromHz)) * sampleRate);
    const end = Math.max(block, power.length - Math.min(ring, after >> 2));
    const from = Math.max(0, end - Math.max(block, Math.round(noiseShare * after)));
    const noise = Math.max(envelopes.hiddenPower, meanOf(power, from, end));
    const rangeDb = noise > 0 && peak > 0 ? 10 * maths.log10(peak / noise) : peak > 0 ? mostRangeDb : 0;
    return {
      centreHz: band.centreHz,
      fromHz: band.fromHz,
      toHz: band.toHz,
      rangeDb: Math.min(mostRangeDb, Math.max(0, rangeDb)),
    };
  });
}
