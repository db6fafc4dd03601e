import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import * as maths from '../../src/signal/maths.js';
import { Rng } from '../../src/signal/random.js';
import { mathsSample } from '../support/maths-sample.js';

const count = 20_000;
const word = new Float64Array(1);
const bits = new BigInt64Array(word.buffer);
const bitsOf = (x: number): bigint => {
  word[0] = x;
  return bits[0];
};
/** How many numbers of double precision lie between two. */
const apart = (a: number, b: number): number =>
  Object.is(a, b) ? 0 : Math.abs(Number(bitsOf(a) - bitsOf(b)));

const rng = new Rng(5);
const any = (largest: number): number => (rng.uniform() - 0.5) * 2 * largest;
const wide = (decades: number): number => any(1) * 10 ** any(decades);

type Name = keyof typeof maths & keyof Math;
const theirsOf =
  (name: Name) =>
  (x: number): number =>
    (Math[name] as (this: void, x: number) => number)(x);
const oursOf = (name: Name) => maths[name] as (x: number) => number;

/** Arguments, and how many numbers away from those of this engine's own a result may be. */
const one: readonly (readonly [Name, () => number, number])[] = [
  ['sin', () => any(1e6), 1],
  ['cos', () => any(1e6), 1],
  ['tan', () => any(50), 3],
  ['exp', () => any(740), 1],
  ['expm1', () => wide(2), 4],
  ['log', () => Math.abs(wide(300)), 1],
  ['log2', () => Math.abs(wide(300)), 1],
  ['log10', () => Math.abs(wide(300)), 2],
  ['log1p', () => Math.abs(wide(15)), 3],
  ['atan', () => wide(5), 1],
  ['acos', () => any(1), 3],
  ['tanh', () => wide(1), 5],
  ['cbrt', () => wide(10), 2],
];

describe('the elementary functions', () => {
  it.each(one)('%s is that of the engine but for the last bits', (name, argument, most) => {
    const theirs = theirsOf(name);
    const ours = oursOf(name);
    for (let k = 0; k < count; k++) {
      const x = argument();
      expect(apart(ours(x), theirs(x)), `${name}(${x})`).toBeLessThanOrEqual(most);
    }
  });

  it('of two arguments are those of the engine but for the last bits', () => {
    for (let k = 0; k < count; k++) {
      const [x, y, p] = [wide(3), wide(3), any(20)];
      expect(apart(maths.atan2(y, x), Math.atan2(y, x)), `atan2(${y}, ${x})`).toBeLessThanOrEqual(2);
      expect(apart(maths.power(Math.abs(x), p), Math.abs(x) ** p), `${x} ** ${p}`).toBeLessThanOrEqual(3);
      expect(apart(maths.power(10, p), 10 ** p), `10 ** ${p}`).toBeLessThanOrEqual(3);
      const [a, b] = [wide(200), wide(200)];
      expect(apart(maths.hypot(a, b), Math.hypot(a, b)), `hypot(${a}, ${b})`).toBeLessThanOrEqual(2);
    }
  });

  it('are exact where a result is a whole number', () => {
    for (let k = -300; k < 300; k++) expect(maths.log10(Number(`1e${k}`))).toBe(k);
    for (let k = -1070; k < 1024; k++) {
      const two = 2 ** k;
      expect(maths.log2(two)).toBe(k);
      expect(maths.power(2, k)).toBe(two);
    }
    for (let k = -100; k <= 100; k++) expect(maths.cbrt(k * k * k)).toBe(k);
    expect(maths.power(3, 4)).toBe(81);
    expect(maths.power(-2, 3)).toBe(-8);
    expect(maths.hypot(3, 4)).toBe(5);
    expect(maths.square(7)).toBe(49);
    expect(maths.cube(-3)).toBe(-27);
  });

  it('agree with the definition at the edges of the numbers', () => {
    const edges = [0, -0, Infinity, -Infinity, NaN, 5e-324, 1e-310, 1.7e308, -1.7e308, 1, -1];
    for (const x of edges) {
      for (const [name] of one.filter(([name]) => !['sin', 'cos', 'tan'].includes(name))) {
        const theirs = theirsOf(name)(x);
        const ours = oursOf(name)(x);
        if (Number.isNaN(theirs)) expect(ours, `${name}(${x})`).toBeNaN();
        else expect(apart(ours, theirs), `${name}(${x}) is ${ours}`).toBeLessThanOrEqual(4);
      }
      for (const y of edges) {
        if (Number.isNaN(x) || Number.isNaN(y)) {
          expect(maths.atan2(y, x)).toBeNaN();
          continue;
        }
        expect(apart(maths.atan2(y, x), Math.atan2(y, x)), `atan2(${y}, ${x})`).toBeLessThanOrEqual(1);
        expect(apart(maths.hypot(x, y), Math.hypot(x, y)), `hypot(${x}, ${y})`).toBeLessThanOrEqual(1);
      }
    }
    for (const x of [0, -0, 5e-324, 1e-310]) expect(Object.is(maths.sin(x), x)).toBe(true);
    for (const x of [Infinity, NaN]) expect(maths.sin(x) + maths.cos(x)).toBeNaN();
    expect(maths.power(-8, 1 / 3)).toBeNaN();
    expect(maths.power(0, -1)).toBe(Infinity);
  });

  it('give the same bits on every machine', () => {
    const digest = createHash('sha256').update(new Uint8Array(mathsSample().buffer)).digest('hex');
    expect(digest).toBe('c90b92b6a43e563f1b4ad805aa430af5fbc1997ef903c14827314d30baf185dc');
  });
});
