/**
 * Sine, cosine and their inverses from arithmetic alone, which IEEE 754 fixes to the bit. Polynomials and reductions are
 * those of FDLIBM (Sun Microsystems, 1993; freely granted), from memory and checked against `Math`.
 */

/** A quarter turn in three parts; the first two have 33 bits, so that they times a whole number are exact. */
const first = 1.57079632673412561417;
const second = 6.0771005063039659766e-11;
const third = 2.02226624879595063154e-21;
const perQuarter = 6.36619772367581382433e-1;
/** Quarter turns up to which their number times a part is exact. */
const manyQuarters = 524288;
/** Beyond, an angle has too few bits left to be one, rad. */
const largestAngle = 1e12;

/** What is left of the angle of the last call, in two parts. */
const rest = new Float64Array(2);

/** Takes whole quarter turns off; gives how many, of four, and leaves the angle in `rest`. */
function reduce(x: number): number {
  if (!(Math.abs(x) < largestAngle)) x %= 4 * (first + second);
  let quarters = Math.round(x * perQuarter);
  const quarter = quarters & 3;
  let late = 0;
  if (Math.abs(quarters) > manyQuarters) {
    const bulk = Math.floor(quarters / manyQuarters) * manyQuarters;
    x -= bulk * first;
    late = bulk * third;
    const taken = bulk * second;
    const less = x - taken;
    late += less - x + taken;
    x = less;
    quarters -= bulk;
  }
  const begun = x - quarters * first;
  const taken = quarters * second;
  const less = begun - taken;
  const small = quarters * third - (begun - less - taken) + late;
  const high = less - small;
  rest[0] = high;
  rest[1] = less - high - small;
  return quarter;
}

function sineNearZero(x: number, low: number): number {
  const z = x * x;
  const v = z * x;
  const r =
    8.33333333332248946124e-3 +
    z *
      (-1.98412698298579493134e-4 +
        z * (2.75573137070700676789e-6 + z * (-2.50507602534068634195e-8 + z * 1.58969099521155010221e-10)));
  return x - (z * (0.5 * low - v * r) - low + v * 1.66666666666666324348e-1);
}

function cosineNearZero(x: number, low: number): number {
  const z = x * x;
  const w = z * z;
  const r =
    z * (4.16666666666666019037e-2 + z * (-1.38888888888741095749e-3 + z * 2.48015872894767294178e-5)) +
    w * w * (-2.75573143513906633035e-7 + z * (2.0875723212981748279e-9 + z * -1.13596475577881948265e-11));
  const half = 0.5 * z;
  const less = 1 - half;
  return less + (1 - less - half + (z * r - x * low));
}

/** An angle within an eighth of a turn. */
const smallAngle = 0.785398163397448;

/** Sine of an angle, rad. */
export function sin(x: number): number {
  if (Math.abs(x) < smallAngle) return Math.abs(x) < 7e-9 ? x : sineNearZero(x, 0);
  const quarter = reduce(x);
  const size = quarter & 1 ? cosineNearZero(rest[0], rest[1]) : sineNearZero(rest[0], rest[1]);
  return quarter & 2 ? -size : size;
}

/** Cosine of an angle, rad. */
export function cos(x: number): number {
  if (Math.abs(x) < smallAngle) return cosineNearZero(x, 0);
  const quarter = reduce(x);
  const size = quarter & 1 ? sineNearZero(rest[0], rest[1]) : cosineNearZero(rest[0], rest[1]);
  return quarter === 1 || quarter === 2 ? -size : size;
}

/** Tangent of an angle, rad. */
export const tan = (x: number): number => sin(x) / cos(x);

const knots = [
  4.63647609000806093515e-1, 7.85398163397448278999e-1, 9.82793723247329054082e-1, 1.570796326794896558,
];
const knotRests = [
  2.26987774529616870924e-17, 3.06161699786838301793e-17, 1.39033110312309984516e-17,
  6.12323399573676603587e-17,
];

/** Angle of a tangent, rad. */
export function atan(x: number): number {
  const size = Math.abs(x);
  if (!(size < 7e19)) return size > 0 ? Math.sign(x) * knots[3] : x;
  if (size < 7e-9) return x;
  let knot = -1;
  let t = size;
  if (size >= 0.4375) {
    if (size < 0.6875) [knot, t] = [0, (2 * size - 1) / (2 + size)];
    else if (size < 1.1875) [knot, t] = [1, (size - 1) / (size + 1)];
    else if (size < 2.4375) [knot, t] = [2, (size - 1.5) / (1 + 1.5 * size)];
    else [knot, t] = [3, -1 / size];
  }
  const z = t * t;
  const w = z * z;
  const odd =
    z *
    (3.33333333333329318027e-1 +
      w *
        (1.42857142725034663711e-1 +
          w *
            (9.09088713343650656196e-2 +
              w *
                (6.66107313738753120669e-2 +
                  w * (4.97687799461593236017e-2 + w * 1.62858201153657823623e-2)))));
  const even =
    w *
    (-1.99999999998764832476e-1 +
      w *
        (-1.1111110405462355788e-1 +
          w *
            (-7.69187620504482999495e-2 + w * (-5.83357013379057348645e-2 + w * -3.6531572744216915527e-2))));
  const angle = knot < 0 ? t - t * (odd + even) : knots[knot] - (t * (odd + even) - knotRests[knot] - t);
  return x < 0 ? -angle : angle;
}

const halfTurnRest = 1.2246467991473532e-16;

/** Direction of a point, rad, from -pi to pi; y first, as `Math.atan2` has it. */
export function atan2(y: number, x: number): number {
  // What lies on an axis, at no place, or nowhere is exact by definition.
  if (x === 0 || y === 0 || !Number.isFinite(x) || !Number.isFinite(y)) return Math.atan2(y, x);
  const angle = atan(Math.abs(y / x));
  const turned = x > 0 ? angle : Math.PI - (angle - halfTurnRest);
  return y < 0 ? -turned : turned;
}

/** Angle of a cosine, rad. */
export const acos = (x: number): number => atan2(Math.sqrt((1 - x) * (1 + x)), x);
