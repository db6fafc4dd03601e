/**
 * The elementary functions of the engine. ECMAScript leaves the last bits of `Math.sin` and its like to whoever makes the
 * engine, and a fit of thirty close resonances makes millionths of them; these give the same bits everywhere.
 */
export { acos, atan, atan2, cos, sin, tan } from './maths/circular.js';
export { cbrt, cube, exp, expm1, log, log10, log1p, log2, power, square, tanh } from './maths/exponential.js';
export { phasors, powers } from './maths/phasors.js';

/** Below and above, squares lose bits or overflow. */
const [least, most] = [1e-280, 1e280];

/** Length of a vector. */
export function hypot(...sides: readonly number[]): number {
  let sum = 0;
  for (const side of sides) sum += side * side;
  if (sum > least && sum < most) return Math.sqrt(sum);
  let largest = 0;
  for (const side of sides) largest = Math.max(largest, Math.abs(side));
  if (largest === 0 || !Number.isFinite(largest)) return largest;
  sum = 0;
  for (const side of sides) sum += (side / largest) * (side / largest);
  return largest * Math.sqrt(sum);
}
