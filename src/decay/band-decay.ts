import { withoutOffset } from '../signal/dc.js';
import { decimate } from '../signal/decimate.js';
import type { Job } from '../signal/types.js';
import { butterworthBandPass, filtered } from './band-pass.js';
import { decayCurve, regression, twoSlopes, type DecayCurve, type TwoSlopes } from './decay-curve.js';
import { thirdOctaves, type ThirdOctave } from './frequencies.js';
import { inDb, lowestDb } from './grid-levels.js';
import type { GridSource } from './grid.js';
import { truncation } from './lundeby.js';
import { hiddenPower } from './quantised.js';
import * as maths from '../signal/maths.js';

/**
 * Why a decay time is not given: `range`, the band lies too little above its noise; `end`, the file ends before the decay
 * has fallen so far; `filter`, shorter than the filter's own ringing.
 */
export type DecayRefusal = 'range' | 'end' | 'filter';

export interface DecayReading {
  readonly seconds: number | null;
  readonly refused: DecayRefusal | null;
}

export interface BandDecay extends ThirdOctave {
  /** Loudest block over the noise of the band. */
  readonly rangeDb: number;
  /** Of one real sample's square re full scale; -300 for digital silence. */
  readonly noiseDbFs: number;
  /** From the onset to where the decay meets the noise, or the end of the file. */
  readonly usableSeconds: number;
  /** Shortest decay the filter lets through: BT > 4 reversed, > 16 forward. */
  readonly shortestSeconds: number;
  /** 0 to -10 dB; -5 to -25; -5 to -35 on the backward-integrated curve (ISO 3382, value from memory). */
  readonly edt: DecayReading;
  readonly t20: DecayReading;
  readonly t30: DecayReading;
  readonly twoSlopes: TwoSlopes | null;
}

export interface BandDecayParams {
  readonly fromHz: number;
  readonly toHz: number;
  /** `reversed` believes decays four times shorter than `forward` (Jacobsen 1987; Jacobsen and Rindel 1987). */
  readonly direction: 'forward' | 'reversed';
}

const defaults: BandDecayParams = { fromHz: 25, toHz: 250, direction: 'reversed' };

/** Smallest product of bandwidth and decay time (value from memory). */
const leastProduct = { forward: 16, reversed: 4 } as const;

/** Upper and lower end of the reading, and the range it needs: its lower end and 10 dB (ISO 3382, from memory). */
const readings = { edt: [0, -10, 20], t20: [-5, -25, 35], t30: [-5, -35, 45] } as const;

/** Range that each reading needs, dB. */
export const neededRangesDb = { edt: readings.edt[2], t20: readings.t20[2], t30: readings.t30[2] } as const;

/** Shortest believable decay in one band: BT = 4 or 16. */
export const shortestDecay = (band: ThirdOctave, direction: BandDecayParams['direction']): number =>
  leastProduct[direction] / (band.toHz - band.fromHz);

/**
 * The reduced rate is some four times this times the highest edge: at less the bilinear transform narrows the upper bands,
 * and the onset falls between samples, which moves decays of a quarter of a second by 3 %.
 */
const rateShare = 4;

/**
 * Decay times per third-octave of one recording, each cut off at its own noise. A reading without the range it needs,
 * or shorter than its filter can show, is refused with the reason.
 */
export function* bandDecays(source: GridSource, params: Partial<BandDecayParams> = {}): Job<BandDecay[]> {
  const { fromHz, toHz, direction } = { ...defaults, ...params };
  const bands = thirdOctaves(fromHz, toHz).filter((band) => band.toHz < source.sampleRate * 0.4);
  const top = bands[bands.length - 1]?.toHz ?? 100;
  const reduced = decimate(
    withoutOffset(source.samples, source.sampleRate),
    source.sampleRate,
    rateShare * top,
  );
  const rate = reduced.sampleRate;
  const lead = -reduced.firstIndex;
  // The decimation filter's ringing before the first sample belongs to a sound that begins there.
  const length = lead + Math.floor(source.samples.length / reduced.factor);
  const onset = Math.min(length, lead + Math.round(source.onsetSeconds * rate));
  const { samples, usable } = fadedOut(reduced.samples.slice(0, length), onset);
  const hidden = hiddenPower(source);
  const results: BandDecay[] = [];
  for (const band of bands) {
    const signal = filtered(
      samples,
      butterworthBandPass(band.fromHz, band.toHz, rate),
      direction === 'reversed',
    );
    const power = signal.subarray(0, usable).map((value) => value * value);
    results.push(readBand(band, power, onset, rate, direction, hidden));
    yield { stage: 'bands', fraction: results.length / bands.length };
  }
  return results;
}

/** Share of the response that fades out at its end. */
const fadeShare = 0.1;

/**
 * A file that ends abruptly, on a slow drift say, starts the reversed filter with a step that rings over all the rest:
 * the end fades out, and is not read. `usable` is where the fade begins.
 */
function fadedOut(samples: Float64Array, onset: number): { samples: Float64Array; usable: number } {
  const fade = Math.round(fadeShare * (samples.length - onset));
  const usable = samples.length - fade;
  for (let i = 0; i < fade; i++)
    samples[usable + i] *= maths.square(maths.cos((Math.PI / 2) * ((i + 0.5) / fade)));
  return { samples, usable };
}

function readBand(
  band: ThirdOctave,
  power: Float64Array,
  onset: number,
  rate: number,
  direction: BandDecayParams['direction'],
  hidden: number,
): BandDecay {
  const shortestSeconds = shortestDecay(band, direction);
  const cut = truncation(power, onset, rate, rate / (2 * band.centreHz), hidden);
  const none: DecayReading = { seconds: null, refused: 'range' };
  if (!cut)
    return {
      ...band,
      rangeDb: 0,
      noiseDbFs: lowestDb,
      usableSeconds: 0,
      shortestSeconds,
      edt: none,
      t20: none,
      t30: none,
      twoSlopes: null,
    };
  const curve = decayCurve(power, onset, cut, rate);
  const read = ([fromDb, toDb, neededDb]: readonly [number, number, number]): DecayReading => {
    // What was added beyond the end must lie 10 dB below the reading, as noise must.
    if (cut.rangeDb < neededDb) return none;
    const fit = curve.addedDb <= toDb - 10 ? regression(curve, fromDb, toDb) : null;
    if (!fit) return { seconds: null, refused: 'end' };
    return fit.seconds < shortestSeconds
      ? { seconds: null, refused: 'filter' }
      : { seconds: fit.seconds, refused: null };
  };
  return {
    ...band,
    rangeDb: cut.rangeDb,
    noiseDbFs: inDb(cut.noisePower),
    usableSeconds: (cut.endIndex - onset) / rate,
    shortestSeconds,
    edt: read(readings.edt),
    t20: read(readings.t20),
    t30: read(readings.t30),
    twoSlopes: bendOf(curve, cut.rangeDb, shortestSeconds),
  };
}

/** Less range than this holds no two slopes, dB. */
const bendRangeDb = 30;

/** Two slopes where the range holds both and the early one is not the filter's own ringing. */
function bendOf(curve: DecayCurve, rangeDb: number, shortestSeconds: number): TwoSlopes | null {
  if (rangeDb < bendRangeDb) return null;
  const found = twoSlopes(curve, -Math.min(rangeDb - 10, 60, -curve.addedDb - 5));
  return found && found.earlySeconds >= shortestSeconds ? found : null;
}
