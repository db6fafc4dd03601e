import { refusal } from './error-codes.js';
import * as maths from './maths.js';

/** An exponential sine sweep (ISO 18233; Mueller and Massarani 2001, Farina 2000). */
export interface SweepParams {
  readonly fromHz: number;
  readonly toHz: number;
  readonly seconds: number;
  readonly sampleRate: number;
  /** Peak, dB re full scale. */
  readonly levelDbFs: number;
}

/** Low enough for the lowest bass source, and no lower: below what it plays, a sweep only moves the cone. */
export const defaultSweep: SweepParams = {
  fromHz: 15,
  toHz: 400,
  seconds: 10,
  sampleRate: 48000,
  levelDbFs: -12,
};

/** Fades at both ends, as shares of the sweep: without them its edges ripple. */
const fadeIn = 0.03;
const fadeOut = 0.01;

/** @throws RingdownError `sweep-bounds` with `name`, `value`, `from`, `to` */
function check({ fromHz, toHz, seconds, sampleRate, levelDbFs }: SweepParams): void {
  const bounds: [string, number, number, number][] = [
    ['rate', sampleRate, 4000, 384000],
    ['from', fromHz, 2, toHz / 1.5],
    ['to', toHz, fromHz * 1.5, sampleRate * 0.45],
    ['seconds', seconds, 0.5, 120],
    // Never louder than 3 dB below full scale: a sweep at full scale is hard on ears and on cones.
    ['level', levelDbFs, -60, -3],
  ];
  for (const [name, value, from, to] of bounds)
    if (!(value >= from && value <= to)) throw refusal('sweep-bounds', { name, value, from, to });
}

/** Time constant of the exponential sweep, s: by this the frequency grows e-fold. */
export const sweepConstant = ({ fromHz, toHz, seconds }: SweepParams): number =>
  seconds / maths.log(toHz / fromHz);

/**
 * The sweep's samples. It begins and ends at zero, with faded ends.
 *
 * @throws RingdownError `sweep-bounds`
 */
export function makeSweep(params: SweepParams): Float64Array {
  check(params);
  const { fromHz, seconds, sampleRate, levelDbFs } = params;
  const constant = sweepConstant(params);
  const length = Math.round(seconds * sampleRate);
  const peak = maths.power(10, levelDbFs / 20);
  return Float64Array.from({ length }, (_, n) => {
    const t = n / sampleRate;
    const share = n / length;
    const rise = Math.min(1, share / fadeIn);
    const fall = Math.min(1, (1 - share) / fadeOut);
    const fade =
      maths.square(maths.sin((Math.PI / 2) * rise)) * maths.square(maths.sin((Math.PI / 2) * fall));
    return peak * fade * maths.sin(2 * Math.PI * fromHz * constant * (maths.exp(t / constant) - 1));
  });
}
