import { aboveWindowDb, sinkTimes } from '../decay/index.js';
import { limitCurve } from '../diagnosis/index.js';
import type { LimitCurve } from '../diagnosis/index.js';
import type { StudySnapshot } from './types.js';
import * as maths from '../signal/maths.js';

export { aboveWindowDb };

/** A curve over frequency, read between its points; NaN where it has no value. */
function valueAt(curve: LimitCurve, values: Float64Array, frequencyHz: number): number {
  const { frequenciesHz } = curve;
  const last = frequenciesHz.length - 1;
  const at =
    (maths.log(frequencyHz / frequenciesHz[0]) / maths.log(frequenciesHz[last] / frequenciesHz[0])) * last;
  const low = Math.min(last - 1, Math.max(0, Math.floor(at)));
  const part = Math.min(1, Math.max(0, at - low));
  return values[low] + (values[low + 1] - values[low]) * part;
}

/** When a decay at the chosen limit would have sunk, per frequency of the grid; the limit that flags a ridge first. */
export interface SinkLimit {
  readonly at: Float32Array;
  /** By the upper end of the audibility band: what stands longer is audible by every published threshold. */
  readonly further: Float32Array | null;
}

/** Null where the chosen limit has no value in this picture: no room for a target, no neighbours. */
export function sinkLimit(
  { grid, diagnosis, choices, room }: StudySnapshot,
  floorDb: ArrayLike<number>,
): SinkLimit | null {
  if (!grid || !diagnosis) return null;
  const resonances = diagnosis.resonances.flatMap(({ frequencyHz, decayTimeSeconds }) =>
    decayTimeSeconds === null ? [] : [{ frequencyHz, decayTimeSeconds }],
  );
  const [fromHz, toHz] = [grid.frequenciesHz[0], grid.frequenciesHz[grid.frequenciesHz.length - 1]];
  const curve = limitCurve(choices.limit, room, { fromHz, toHz, resonances });
  const times = (values: Float64Array): Float32Array =>
    sinkTimes(
      grid,
      Float64Array.from(grid.frequenciesHz, (f) => valueAt(curve, values, f)),
      floorDb,
    );
  const banded = choices.limit === 'audibility';
  const at = times(banded ? curve.lowerSeconds : curve.upperSeconds);
  if (at.every((time) => Number.isNaN(time))) return null;
  return { at, further: banded ? times(curve.upperSeconds) : null };
}
