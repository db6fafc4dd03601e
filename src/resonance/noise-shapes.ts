import { ln1000 } from './poles.js';
import * as maths from '../signal/maths.js';

/** Noise of one diffuse level and decay, re its floor: the variance per block, and its logarithm. */
export interface NoiseShape {
  readonly diffuse: number;
  readonly variances: Float64Array;
  readonly logs: Float64Array;
}

/** Tables that are kept: of as many lengths and rates. One has at most 450 shapes, of some 250 blocks 1.8 MB. */
const mostKept = 4;
const kept = new Map<string, Map<string, NoiseShape>>();

/**
 * Shapes of noise over blocks of samples. They are the same for every fit of one length and rate, and a fit asks for each
 * dozens of times: worked out anew, their logarithms took a tenth of it.
 *
 * @returns By decay time (s) and the natural logarithm of the diffuse level re the floor.
 */
export function noiseShapes(
  blocks: number,
  secondsPerBlock: number,
): (decaySeconds: number, logDiffuse: number) => NoiseShape {
  const key = `${blocks} ${secondsPerBlock}`;
  const table = kept.get(key) ?? new Map<string, NoiseShape>();
  kept.delete(key);
  kept.set(key, table);
  if (kept.size > mostKept) kept.delete(kept.keys().next().value!);
  return (decaySeconds, logDiffuse) => {
    const name = `${decaySeconds} ${logDiffuse}`;
    const known = table.get(name);
    if (known) return known;
    const diffuse = maths.exp(logDiffuse);
    const variances = Float64Array.from(
      { length: blocks },
      (_, b) => 1 + diffuse * maths.exp((-2 * ln1000 * (secondsPerBlock * (b + 0.5))) / decaySeconds),
    );
    const shape = { diffuse, variances, logs: variances.map(maths.log) };
    table.set(name, shape);
    return shape;
  };
}
