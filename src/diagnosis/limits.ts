import type { Room } from '../room/types.js';
import { roomVolume } from '../room/room.js';
import { curveAt, disagreesBelowHz, publishedThresholds } from './thresholds.js';
import type { Audible, LimitCurve, LimitName } from './types.js';
import * as maths from '../signal/maths.js';

/** A limit at one frequency: a band between two curves, or one value twice. */
export interface LimitBand {
  readonly lowerSeconds: number;
  readonly upperSeconds: number;
}

/** One of the resonances among which the neighbours are looked for. */
export interface DecayAt {
  readonly frequencyHz: number;
  readonly decayTimeSeconds: number;
}

/**
 * Band between the lowest and the highest published threshold (`thresholds.ts`); null outside 32 to 250 Hz, where none
 * was published. Below 63 Hz the band leaves out the one study that noticed nothing there.
 */
export function audibilityBand(frequencyHz: number): LimitBand | null {
  const values = publishedThresholds
    .map((curve) => curveAt(curve, frequencyHz))
    .filter((value) => value !== null);
  if (values.length === 0) return null;
  return { lowerSeconds: Math.min(...values), upperSeconds: Math.max(...values) };
}

/** What the published thresholds say of a decay. Shorter than all of them, or beyond their range: `unknown`. */
export function audibleAt(frequencyHz: number, decayTimeSeconds: number): Audible {
  const band = audibilityBand(frequencyHz);
  if (!band || decayTimeSeconds < band.lowerSeconds) return 'unknown';
  return decayTimeSeconds > band.upperSeconds ? 'yes' : 'possibly';
}

/**
 * Mid-band reverberation time of a listening room, 0.25 (V / 100 m3)^(1/3) s, kept within 0.2 to 0.4 s: EBU Tech 3276
 * (2nd ed. 1998), section 2.3, and ITU-R BS.1116-3 (quoted).
 */
export const targetMidTime = (volumeCubicMetres: number): number =>
  Math.min(0.4, Math.max(0.2, 0.25 * maths.cbrt(volumeCubicMetres / 100)));

/**
 * Tolerance about the target (values from memory): +-0.05 s from 200 Hz up; the upper limit rises on the logarithm of
 * frequency to +0.3 s at 63 Hz. Null outside 63 Hz to 4 kHz.
 */
export function targetBand(frequencyHz: number, volumeCubicMetres: number): LimitBand | null {
  if (frequencyHz < 63 || frequencyHz > 4000) return null;
  const middle = targetMidTime(volumeCubicMetres);
  const rise = Math.max(0, maths.log(200 / frequencyHz) / maths.log(200 / 63));
  return { lowerSeconds: middle - 0.05, upperSeconds: middle + 0.05 + 0.25 * rise };
}

/** Fewer neighbours than this have no median to speak of. */
const fewestNeighbours = 2;
const neighbourFactor = 1.5;

/** Median decay time of the other resonances within an octave; null where there are fewer than two. */
export function neighboursMedian(frequencyHz: number, others: readonly DecayAt[]): number | null {
  const near = others
    .filter((other) => other.frequencyHz >= frequencyHz / 2 && other.frequencyHz <= frequencyHz * 2)
    .map((other) => other.decayTimeSeconds)
    .sort((a, b) => a - b);
  if (near.length < fewestNeighbours) return null;
  const middle = near.length >> 1;
  return near.length % 2 ? near[middle] : (near[middle - 1] + near[middle]) / 2;
}

/** What a decay is held against, and whether it is above it. */
export interface Verdict {
  readonly limitName: LimitName;
  readonly limitSeconds: number | null;
  readonly above: boolean;
}

export interface Judged extends DecayAt {
  readonly decayTimeSdSeconds: number | null;
}

/**
 * Holds one decay against the chosen limit. `audibility` compares with the lowest published threshold: what exceeds
 * that one but not the highest is "possibly" audible (`audibleAt`). Where the chosen limit has no value (no curve at
 * this frequency, no room for the target), the neighbours decide, and the verdict says so: 1.5 times their median, and
 * more than two of the resonance's own standard deviations above it.
 */
export function judge(
  resonance: Judged,
  others: readonly DecayAt[],
  limit: LimitName,
  room: Room | null,
): Verdict {
  const { frequencyHz, decayTimeSeconds } = resonance;
  const limitSeconds =
    limit === 'audibility'
      ? (audibilityBand(frequencyHz)?.lowerSeconds ?? null)
      : limit === 'target' && room
        ? (targetBand(frequencyHz, roomVolume(room))?.upperSeconds ?? null)
        : null;
  if (limitSeconds !== null)
    return { limitName: limit, limitSeconds, above: decayTimeSeconds > limitSeconds };
  const median = neighboursMedian(frequencyHz, others);
  if (median === null) return { limitName: 'neighbours', limitSeconds: null, above: false };
  const beyondDoubt = decayTimeSeconds - median > 2 * (resonance.decayTimeSdSeconds ?? 0);
  return {
    limitName: 'neighbours',
    limitSeconds: neighbourFactor * median,
    above: decayTimeSeconds > neighbourFactor * median && beyondDoubt,
  };
}

/** Points per octave of a drawn limit: its corners at published frequencies show. */
const perOctave = 48;

/**
 * A limit over frequency, for drawing: NaN where it has no value. `neighbours` follows from `resonances`, and is NaN
 * without them, as `target` is without a room.
 *
 * @returns three arrays of the same length
 */
export function limitCurve(
  name: LimitName,
  room: Room | null,
  { fromHz = 20, toHz = 250, resonances = [] as readonly DecayAt[] } = {},
): LimitCurve {
  const count = Math.max(2, Math.round(maths.log2(toHz / fromHz) * perOctave) + 1);
  const frequenciesHz = Float64Array.from(
    { length: count },
    (_, i) => fromHz * maths.power(toHz / fromHz, i / (count - 1)),
  );
  const bands = Array.from(frequenciesHz, (f): LimitBand | null => {
    if (name === 'audibility') return audibilityBand(f);
    if (name === 'target') return room ? targetBand(f, roomVolume(room)) : null;
    const median = neighboursMedian(f, resonances);
    return median === null
      ? null
      : { lowerSeconds: neighbourFactor * median, upperSeconds: neighbourFactor * median };
  });
  return {
    name,
    frequenciesHz,
    lowerSeconds: Float64Array.from(bands, (band) => band?.lowerSeconds ?? NaN),
    upperSeconds: Float64Array.from(bands, (band) => band?.upperSeconds ?? NaN),
    disagreesBelowHz: name === 'audibility' ? disagreesBelowHz : null,
  };
}
