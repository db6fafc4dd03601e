/** A peak or a dip of a curve that stands out from its surroundings. */
export interface Extreme {
  readonly index: number;
  readonly kind: 'peak' | 'dip';
  /** How far one must go down from a peak before one can go higher (or up from a dip), dB. */
  readonly prominenceDb: number;
}

/** Local maxima, the middle of a plateau; not the ends. */
function summits(values: ArrayLike<number>): number[] {
  const found: number[] = [];
  for (let k = 1; k < values.length - 1; k++) {
    if (!(values[k] > values[k - 1])) continue;
    let end = k;
    while (end + 1 < values.length && values[end + 1] === values[k]) end++;
    if (end + 1 < values.length && values[end + 1] < values[k]) found.push((k + end) >> 1);
    k = end;
  }
  return found;
}

function prominence(values: ArrayLike<number>, at: number): number {
  const lowestTowards = (step: 1 | -1): number => {
    let lowest = values[at];
    for (let k = at; k >= 0 && k < values.length && values[k] <= values[at]; k += step)
      lowest = Math.min(lowest, values[k]);
    return lowest;
  };
  return values[at] - Math.max(lowestTowards(-1), lowestTowards(1));
}

/**
 * Peaks and dips by their prominence, as it is defined for summits of mountains; the most prominent first.
 *
 * @param levelsDb Finite.
 */
export function peaksAndDips(levelsDb: ArrayLike<number>, leastProminenceDb = 6): Extreme[] {
  const turned = Float64Array.from(levelsDb, (level) => -level);
  return (['peak', 'dip'] as const)
    .flatMap((kind) => {
      const values = kind === 'peak' ? levelsDb : turned;
      return summits(values).map((index): Extreme => ({
        index,
        kind,
        prominenceDb: prominence(values, index),
      }));
    })
    .filter(({ prominenceDb }) => prominenceDb >= leastProminenceDb)
    .sort((a, b) => b.prominenceDb - a.prominenceDb);
}
