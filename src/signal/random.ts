import * as maths from './maths.js';

/**
 * Seeded random numbers: the same seed gives the same sequence on every machine with IEEE 754 arithmetic, so that
 * invented recordings, property tests and published examples can be repeated.
 *
 * Uniform: mulberry32, a public-domain 32-bit generator with full period 2^32. Normal: Box and Muller, "A note on the
 * generation of random normal deviates", Ann. Math. Stat. 29 (1958); one of its two values is used, so that the number
 * of draws never depends on history.
 */
export class Rng {
  private state: number;

  /** @param seed Taken modulo 2^32. */
  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** The next number of a uniform distribution on [0, 1), in steps of 2^-32. */
  uniform(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(this.state ^ (this.state >>> 15), this.state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  }

  /** The next number of a normal distribution of mean 0 and standard deviation 1; draws two uniform numbers. */
  gaussian(): number {
    const radius = Math.sqrt(-2 * maths.log(1 - this.uniform()));
    return radius * maths.cos(2 * Math.PI * this.uniform());
  }
}
