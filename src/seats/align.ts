import type { TransferMatrix } from './types.js';
import * as maths from '../signal/maths.js';

/** How one source stands to another at one seat, over the band that both play. */
export interface Alignment {
  /** Delay to add to the source so that its phase fits the reference best, s; negative: the reference would wait. */
  readonly delaySeconds: number;
  readonly inverted: boolean;
  /** How much of the two amplitudes then adds up in phase, -1 to 1: 1 is in phase at every frequency. */
  readonly match: number;
  /** The same with nothing changed. */
  readonly matchNow: number;
  /** The best of the other polarity: close to `match` where the band is too narrow to tell. */
  readonly matchOther: number;
}

export interface SharedBand {
  readonly fromHz: number;
  readonly toHz: number;
}

/** Below its loudest by more than this a source is not said to play there. dB. */
const playsDb = 12;

/** Mean level of one source over the seats, dB, per frequency, smoothed over a third of an octave. */
function sourceLevel(matrix: TransferMatrix, source: number): Float64Array {
  const { frequenciesHz, seatCount, re, im } = matrix;
  const columns = frequenciesHz.length;
  const power = new Float64Array(columns);
  for (let seat = 0; seat < seatCount; seat++) {
    const at = (source * seatCount + seat) * columns;
    for (let f = 0; f < columns; f++)
      power[f] += (maths.square(re[at + f]) + maths.square(im[at + f])) / seatCount;
  }
  const reach = maths.power(2, 1 / 6);
  return Float64Array.from(frequenciesHz, (centre) => {
    let [sum, count] = [0, 0];
    for (let f = 0; f < columns; f++) {
      if (frequenciesHz[f] < centre / reach || frequenciesHz[f] > centre * reach) continue;
      sum += power[f];
      count++;
    }
    return 10 * maths.log10(Math.max(1e-30, sum / count));
  });
}

/** Longest run of frequencies at which every one of the sources plays within 12 dB of its loudest; null where there is none. */
export function sharedBand(
  matrix: TransferMatrix,
  sources = Array.from({ length: matrix.sourceCount }, (_, s) => s),
): SharedBand | null {
  const { frequenciesHz } = matrix;
  const levels = sources.map((source) => sourceLevel(matrix, source));
  const loudest = levels.map((level) => Math.max(...level));
  const plays = Array.from(frequenciesHz, (_, f) =>
    levels.every((level, s) => level[f] > loudest[s] - playsDb),
  );
  let [best, from] = [[0, -1], 0];
  plays.forEach((on, f) => {
    if (!on) from = f + 1;
    else if (f - from > best[1] - best[0]) best = [from, f];
  });
  if (best[1] <= best[0]) return null;
  return { fromHz: frequenciesHz[best[0]], toHz: frequenciesHz[best[1]] };
}

/** Longest difference of arrival looked for: 20 m of path. s. */
const longestSeconds = 0.06;
const stepSeconds = 0.0005;

interface Products {
  readonly frequenciesHz: number[];
  /** Conjugate of the reference times the source, and the product of their magnitudes, seats one after the other. */
  readonly re: number[];
  readonly im: number[];
  readonly size: number;
}

function productsOf(
  matrix: TransferMatrix,
  reference: number,
  source: number,
  seats: readonly number[],
  { fromHz, toHz }: SharedBand,
): Products {
  const { frequenciesHz, seatCount, re, im } = matrix;
  const columns = frequenciesHz.length;
  const out = { frequenciesHz: [] as number[], re: [] as number[], im: [] as number[], size: 0 };
  for (const seat of seats) {
    const a = (reference * seatCount + seat) * columns;
    const b = (source * seatCount + seat) * columns;
    for (let f = 0; f < columns; f++) {
      if (frequenciesHz[f] < fromHz || frequenciesHz[f] > toHz) continue;
      out.frequenciesHz.push(frequenciesHz[f]);
      out.re.push(re[a + f] * re[b + f] + im[a + f] * im[b + f]);
      out.im.push(re[a + f] * im[b + f] - im[a + f] * re[b + f]);
      out.size += maths.hypot(re[a + f], im[a + f]) * maths.hypot(re[b + f], im[b + f]);
    }
  }
  return out;
}

/** Share of the two amplitudes that adds in phase with the source delayed so much. */
function matchAt({ frequenciesHz, re, im, size }: Products, delaySeconds: number): number {
  let sum = 0;
  for (let k = 0; k < re.length; k++) {
    const angle = 2 * Math.PI * frequenciesHz[k] * delaySeconds;
    sum += re[k] * maths.cos(angle) + im[k] * maths.sin(angle);
  }
  return size > 0 ? sum / size : 0;
}

/** The delay near `about` at which `sign` times the match is largest: golden section. */
function refined(products: Products, about: number, sign: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [about - stepSeconds, about + stepSeconds];
  for (let k = 0; k < 30; k++) {
    const a = high - share * (high - low);
    const b = low + share * (high - low);
    if (sign * matchAt(products, a) > sign * matchAt(products, b)) high = b;
    else low = a;
  }
  return (low + high) / 2;
}

/**
 * Delay and polarity that bring one source into phase with another over the band they share: the largest real part of
 * their cross-spectrum over the seats. Not by the peaks of the impulses: the highest bass may lead the lowest by 10 to
 * 20 ms, so a peak says nothing of the phase.
 *
 * @param seats Seats that count; one for the phase there, all for the best compromise.
 */
export function alignSource(
  matrix: TransferMatrix,
  reference: number,
  source: number,
  seats: readonly number[],
  band: SharedBand,
): Alignment {
  const products = productsOf(matrix, reference, source, seats, band);
  const best = [1, -1].map((sign) => {
    let [at, most] = [0, -Infinity];
    const steps = Math.round(longestSeconds / stepSeconds);
    for (let k = -steps; k <= steps; k++) {
      const value = sign * matchAt(products, k * stepSeconds);
      if (value > most) [at, most] = [k * stepSeconds, value];
    }
    const delaySeconds = refined(products, at, sign);
    return { delaySeconds, match: sign * matchAt(products, delaySeconds) };
  });
  const inverted = best[1].match > best[0].match;
  const chosen = best[inverted ? 1 : 0];
  return {
    delaySeconds: chosen.delaySeconds,
    inverted,
    match: chosen.match,
    matchNow: matchAt(products, 0),
    matchOther: best[inverted ? 0 : 1].match,
  };
}

/** Phase of a source against another at one seat, radians from -pi to pi per frequency; NaN where either is silent. */
export function phaseBetween(
  matrix: TransferMatrix,
  reference: number,
  source: number,
  seat: number,
): Float64Array {
  const { frequenciesHz, seatCount, re, im } = matrix;
  const columns = frequenciesHz.length;
  const a = (reference * seatCount + seat) * columns;
  const b = (source * seatCount + seat) * columns;
  return Float64Array.from(frequenciesHz, (_, f) => {
    const real = re[a + f] * re[b + f] + im[a + f] * im[b + f];
    const imaginary = re[a + f] * im[b + f] - im[a + f] * re[b + f];
    return real === 0 && imaginary === 0 ? NaN : maths.atan2(imaginary, real);
  });
}
