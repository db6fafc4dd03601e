/**
 * Exponential, logarithms and powers from arithmetic alone, which IEEE 754 fixes to the bit. Polynomials and reductions
 * are those of FDLIBM (Sun Microsystems, 1993; freely granted), from memory and checked against `Math`.
 */

const ln2High = 6.9314718036912381649e-1; // its last 32 bits are zero: times an exponent it is exact
const ln2Low = 1.90821492927058770002e-10;
const perLn2 = 1.442695040888963387;

/** Powers of two from -1022 to 1023, by doubling, which is exact. */
const powersOfTwo = new Float64Array(2046);
powersOfTwo[1022] = 1;
for (let k = 1023; k < 2046; k++) powersOfTwo[k] = 2 * powersOfTwo[k - 1];
for (let k = 1021; k >= 0; k--) powersOfTwo[k] = powersOfTwo[k + 1] / 2;

/** Value times a power of two, down to the smallest numbers. */
function scaled(value: number, power: number): number {
  if (power > 1023) return value * 2 * powersOfTwo[1022 + power - 1];
  if (power >= -1022) return value * powersOfTwo[1022 + power];
  return value * powersOfTwo[1022 + power + 1000] * powersOfTwo[22];
}

/** e to the power of x. */
export function exp(x: number): number {
  if (!(x >= -745.2)) return x < 0 ? 0 : NaN;
  if (x > 709.79) return Infinity;
  const k = Math.round(x * perLn2);
  const high = x - k * ln2High;
  const low = k * ln2Low;
  const r = high - low;
  const t = r * r;
  const c =
    r -
    t *
      (1.66666666666666019037e-1 +
        t *
          (-2.7777777777015593384e-3 +
            t *
              (6.61375632143793436117e-5 + t * (-1.6533902205465251539e-6 + t * 4.13813679705723846039e-8))));
  return scaled(1 - (low - (r * c) / (2 - c) - high), k);
}

const word = new Float64Array(1);
/** The words of the number, the low one first: every machine that runs JavaScript today is little-endian. */
const words = new Uint32Array(word.buffer);

/** The number without its last 32 bits, so that a product of two such is exact. */
function head(x: number): number {
  word[0] = x;
  words[0] = 0;
  return word[0];
}

/** The f of the last call. */
const fraction = new Float64Array(1);

/** x = 2^k (1 + f), with f between sqrt(1/2) - 1 and sqrt(2) - 1. Gives k, and leaves f in `fraction`. */
function takeApart(x: number): number {
  let k = -1023;
  if (x < 2.2250738585072014e-308) {
    x *= 18014398509481984;
    k -= 54;
  }
  word[0] = x;
  const above = words[1];
  const mantissa = above & 0xfffff;
  const carry = (mantissa + 0x95f64) & 0x100000;
  words[1] = mantissa | (carry ^ 0x3ff00000);
  fraction[0] = word[0] - 1;
  return k + (above >>> 20) + (carry >>> 20);
}

/** log(1 + f) - f + f²/2. */
function beyondSquare(f: number): number {
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const even = w * (3.999999999940941908e-1 + w * (2.222219843214978396e-1 + w * 1.531383769920937332e-1));
  const odd =
    z *
    (6.66666666666673513e-1 +
      w * (2.857142874366239149e-1 + w * (1.818357216161805012e-1 + w * 1.479819860511658591e-1)));
  return s * (0.5 * f * f + even + odd);
}

/** What logarithms of no number, or of none at all, are; undefined for all others. */
function edge(x: number): number | undefined {
  if (x > 0 && x < Infinity) return undefined;
  return x === 0 ? -Infinity : x > 0 ? x : NaN;
}

/** Natural logarithm. */
export function log(x: number): number {
  const known = edge(x);
  if (known !== undefined) return known;
  const k = takeApart(x);
  const f = fraction[0];
  const half = 0.5 * f * f;
  return k * ln2High - (half - (beyondSquare(f) + k * ln2Low) - f);
}

/** Logarithm to the base ten; of a power of ten its exponent. */
export function log10(x: number): number {
  const known = edge(x);
  if (known !== undefined) return known;
  const k = takeApart(x);
  const f = fraction[0];
  const half = 0.5 * f * f;
  const high = head(f - half);
  const low = f - high - half + beyondSquare(f);
  const ten = 4.3429448187816888094e-1;
  const whole = k * 3.01029995663611771306e-1;
  const first = high * ten;
  const sum = whole + first;
  const rest = k * 3.69423907715893078616e-13 + (low + high) * 2.50829467116452752298e-11 + low * ten;
  return rest + (whole - sum + first) + sum;
}

/** Logarithm to the base two; of a power of two its exponent. */
export function log2(x: number): number {
  const known = edge(x);
  if (known !== undefined) return known;
  const k = takeApart(x);
  const f = fraction[0];
  const half = 0.5 * f * f;
  const high = head(f - half);
  const low = f - high - half + beyondSquare(f);
  const two = 1.44269504072144627571;
  const first = high * two;
  const sum = k + first;
  return (low + high) * 1.67517131648865118353e-10 + low * two + (k - sum + first) + sum;
}

/** log(1 + x), also of an x that 1 would swallow. */
export function log1p(x: number): number {
  const sum = 1 + x;
  if (sum === 1 || sum === Infinity) return x;
  return log(sum) * (x / (sum - 1));
}

/** exp(x) - 1, also near zero. */
export function expm1(x: number): number {
  const whole = exp(x);
  if (whole === 1) return x;
  const less = whole - 1;
  if (less === -1 || whole === Infinity) return less;
  return (less * x) / log(whole);
}

export function tanh(x: number): number {
  if (x === 0) return x;
  const grown = expm1(2 * Math.abs(x));
  const size = grown === Infinity ? 1 : grown / (grown + 2);
  return x < 0 ? -size : size;
}

export const square = (x: number): number => x * x;
export const cube = (x: number): number => x * x * x;

/** Whole powers up to this are made of products. */
const mostProducts = 64;

/** x to the power of y. */
export function power(x: number, y: number): number {
  if (y === 0 || !Number.isFinite(x) || !Number.isFinite(y) || x === 0) return Math.pow(x, y); // exact by definition
  const whole = Number.isInteger(y);
  if (x === 2 && whole && y > -1070 && y < 1024) return scaled(1, y);
  if (whole && Math.abs(y) <= mostProducts) {
    let [product, base] = [1, x];
    for (let n = Math.abs(y); n > 0; n = Math.floor(n / 2)) {
      if (n % 2 === 1) product *= base;
      base *= base;
    }
    return y < 0 ? 1 / product : product;
  }
  if (x < 0) return whole ? (y % 2 === 0 ? 1 : -1) * power(-x, y) : NaN;
  // The logarithm in two parts, since its error is multiplied by y.
  const k = takeApart(x);
  const f = fraction[0];
  const half = 0.5 * f * f;
  const first = head(f - half);
  const second = f - first - half + beyondSquare(f) + k * ln2Low;
  const many = k * ln2High;
  const sum = many + first;
  const late = many - sum + first + second;
  const sumHead = head(sum + late);
  const sumRest = sum - sumHead + late;
  const yHead = head(y);
  const product = yHead * sumHead;
  const rest = (y - yHead) * sumHead + y * sumRest;
  const exponent = product + rest;
  const result = exp(exponent);
  return result === 0 || result === Infinity ? result : result + result * (product - exponent + rest);
}

/** Cube root. */
export function cbrt(x: number): number {
  if (x === 0 || !Number.isFinite(x)) return x;
  const size = Math.abs(x);
  const near = exp(log(size) / 3);
  const root = near - (near - size / (near * near)) / 3;
  return x < 0 ? -root : root;
}
