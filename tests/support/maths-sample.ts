import * as maths from '../../src/signal/maths.js';
import { Rng } from '../../src/signal/random.js';

const count = 5000;

/** What the elementary functions give of fixed arguments, one after the other. */
export function mathsSample(): Float64Array {
  const rng = new Rng(77);
  const { sin, cos, tan, exp, expm1, log, log2, log10, log1p, atan, acos, tanh, cbrt } = maths;
  const values = Array.from({ length: count }, () => {
    const [a, b] = [(rng.uniform() - 0.5) * 100, rng.uniform() * 100];
    return [
      ...[sin(a), cos(a), tan(a), exp(a), expm1(a / 50), log(b), log2(b), log10(b), log1p(b)],
      ...[atan(a), acos(a / 50), tanh(a / 10), cbrt(a), maths.power(b, a / 10)],
      maths.atan2(a, b) + maths.hypot(a, b),
    ];
  });
  return Float64Array.from(values.flat());
}
