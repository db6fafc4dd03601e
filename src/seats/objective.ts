import { ln1000 } from '../resonance/poles.js';
import { goneDb, type SharedRidge } from './ridge-levels.js';
import type { TransferMatrix } from './types.js';
import * as maths from '../signal/maths.js';

/** What the optimiser looks at, for one combination of settings. */
export interface Score {
  /** dB^2. */
  readonly meanSpatialVariance: number;
  /** dB. */
  readonly meanOutputLevelDb: number;
  /** Weighted mean over the seats of the time the worst ridge hangs, s; 0 without ridges. */
  readonly worstHangSeconds: number;
}

/** One source's part as the search changes it. */
export interface Trim {
  readonly gainDb: number;
  readonly delaySeconds: number;
  readonly inverted: boolean;
}

const perDecibel = 10 / Math.LN10;

/**
 * Sum, spread and hang of many combinations, fast: nothing is allocated per evaluation. The ridges follow the rows of the
 * frequencies as further complex amplitudes, each with its own decay.
 */
export class Objective {
  readonly #matrix: TransferMatrix;
  readonly #weights: Float64Array;
  readonly #ridges: readonly SharedRidge[];
  /** Sum of the sources: (seat, frequency), then (ridge, seat). */
  readonly #re: Float64Array;
  readonly #im: Float64Array;
  readonly #level: Float64Array;
  readonly #seatLevel: Float64Array;
  evaluations = 0;

  constructor(matrix: TransferMatrix, weights: Float64Array, ridges: readonly SharedRidge[]) {
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    this.#matrix = matrix;
    this.#weights = weights.map((weight) => weight / total);
    this.#ridges = ridges;
    const points = matrix.seatCount * (matrix.frequenciesHz.length + ridges.length);
    this.#re = new Float64Array(points);
    this.#im = new Float64Array(points);
    this.#level = new Float64Array(matrix.seatCount);
    this.#seatLevel = new Float64Array(matrix.seatCount);
  }

  get points(): number {
    return this.#re.length;
  }

  /** Adds one source through its trim to a sum. */
  add(source: number, trim: Trim, re: Float64Array, im: Float64Array): void {
    const { frequenciesHz, seatCount } = this.#matrix;
    const [hr, hi] = [this.#matrix.re, this.#matrix.im];
    const columns = frequenciesHz.length;
    const gain = maths.power(10, trim.gainDb / 20) * (trim.inverted ? -1 : 1);
    const base = source * seatCount * columns;
    for (let f = 0; f < columns; f++) {
      const angle = -2 * Math.PI * frequenciesHz[f] * trim.delaySeconds;
      const c = gain * maths.cos(angle);
      const s = gain * maths.sin(angle);
      for (let k = f; k < seatCount * columns; k += columns) {
        re[k] += hr[base + k] * c - hi[base + k] * s;
        im[k] += hr[base + k] * s + hi[base + k] * c;
      }
    }
    let at = seatCount * columns;
    for (const ridge of this.#ridges) {
      const size = gain * maths.exp((ln1000 / ridge.decayTimeSeconds) * trim.delaySeconds);
      const angle = -2 * Math.PI * ridge.frequencyHz * trim.delaySeconds;
      const c = size * maths.cos(angle);
      const s = size * maths.sin(angle);
      for (let seat = 0; seat < seatCount; seat++, at++) {
        const k = source * seatCount + seat;
        re[at] += ridge.re[k] * c - ridge.im[k] * s;
        im[at] += ridge.re[k] * s + ridge.im[k] * c;
      }
    }
  }

  score(trims: readonly Trim[]): Score {
    this.#re.fill(0);
    this.#im.fill(0);
    trims.forEach((trim, source) => this.add(source, trim, this.#re, this.#im));
    return this.scoreOf(this.#re, this.#im);
  }

  /** The score of a sum made by `add`. */
  scoreOf(re: Float64Array, im: Float64Array): Score {
    this.evaluations++;
    const { frequenciesHz, seatCount } = this.#matrix;
    const columns = frequenciesHz.length;
    const weights = this.#weights;
    const level = this.#level;
    const seatLevel = this.#seatLevel.fill(0);
    let variance = 0;
    let output = 0;
    for (let f = 0; f < columns; f++) {
      let [mean, square] = [0, 0];
      for (let seat = 0, k = f; seat < seatCount; seat++, k += columns) {
        const value = perDecibel * maths.log(re[k] * re[k] + im[k] * im[k] + 1e-30);
        level[seat] = value;
        seatLevel[seat] += value;
        mean += weights[seat] * value;
      }
      for (let seat = 0; seat < seatCount; seat++) square += weights[seat] * maths.square(level[seat] - mean);
      variance += square;
      output += mean;
    }
    let worst = 0;
    let at = seatCount * columns;
    for (const { decayTimeSeconds } of this.#ridges) {
      let hang = 0;
      for (let seat = 0; seat < seatCount; seat++, at++) {
        const over =
          perDecibel * maths.log(re[at] * re[at] + im[at] * im[at] + 1e-30) -
          seatLevel[seat] / columns +
          goneDb;
        if (over > 0) hang += (weights[seat] * over * decayTimeSeconds) / 60;
      }
      worst = Math.max(worst, hang);
    }
    return {
      meanSpatialVariance: variance / columns,
      meanOutputLevelDb: output / columns,
      worstHangSeconds: worst,
    };
  }
}
