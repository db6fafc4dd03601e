/**
 * Labels in rows along one edge of a picture, each with a leader to its own point on it. They keep the order of those
 * points in every row, and a leader from an upper row has a lane of its own between the labels below it: no two leaders
 * cross, and none passes behind a label that is not its own.
 */

export interface RowSpan {
  /** Where its leader ends, pixels. */
  readonly at: number;
  readonly width: number;
  /** The lighter ones are left out first where not all can stand. */
  readonly weight: number;
}

export interface RowPlace {
  /** Centre of the label, pixels. */
  readonly at: number;
  /** 0 is the row nearest to the picture. */
  readonly row: number;
  /** Where its leader passes the rows below it, nearest row first. */
  readonly lanes: readonly number[];
}

/** Pixels that a passing leader keeps free. */
const LANE = 7;

interface Item {
  readonly index: number;
  readonly at: number;
  readonly width: number;
}

/**
 * Items in the order given, each as near to its wish as is free, by least squares: pooling of adjacent violators
 * (Ayer et al. 1955). Null where they are wider than the bounds together.
 */
export function spreadOut(
  items: readonly { readonly at: number; readonly width: number }[],
  bounds: readonly [number, number],
  gap: number,
): number[] | null {
  if (items.length === 0) return [];
  const offsets = [0];
  for (let k = 1; k < items.length; k += 1)
    offsets.push(offsets[k - 1] + (items[k - 1].width + items[k].width) / 2 + gap);
  const last = items.length - 1;
  const lowest = bounds[0] + items[0].width / 2;
  const highest = bounds[1] - items[last].width / 2 - offsets[last];
  if (lowest > highest) return null;
  const pools: { sum: number; count: number }[] = [];
  items.forEach(({ at }, k) => {
    let pool = { sum: at - offsets[k], count: 1 };
    for (
      let before = pools[pools.length - 1];
      before && before.sum / before.count >= pool.sum / pool.count;
      before = pools[pools.length - 1]
    ) {
      pool = { sum: before.sum + pool.sum, count: before.count + pool.count };
      pools.pop();
    }
    pools.push(pool);
  });
  const means = pools.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count));
  return means.map((mean, k) => Math.min(highest, Math.max(lowest, mean)) + offsets[k]);
}

function tryRows(
  items: readonly Item[],
  bounds: readonly [number, number],
  rows: number,
  gap: number,
): Map<number, RowPlace> | null {
  const found = new Map<number, RowPlace>();
  const lanes = new Map<number, number[]>(items.map(({ index }) => [index, []]));
  let left = items.map((item, k) => ({ ...item, row: k % rows }));
  for (let row = 0; row < rows; row += 1) {
    const spans = left.map((item) => ({ at: item.at, width: item.row === row ? item.width : LANE }));
    const places = spreadOut(spans, bounds, gap);
    if (!places) return null;
    left.forEach((item, k) => {
      if (item.row === row) found.set(item.index, { at: places[k], row, lanes: lanes.get(item.index)! });
      else lanes.get(item.index)!.push(places[k]);
    });
    left = left.flatMap((item, k) => (item.row === row ? [] : [{ ...item, at: places[k] }]));
  }
  return found;
}

/** Pixels by which labels may stand beside their points, on average, before one more row is worth its height. */
const COMFORT = 26;

/** Places for labels in as few rows as are comfortable; null for the lightest where not all can stand. */
export function placeInRows(
  spans: readonly RowSpan[],
  bounds: readonly [number, number],
  mostRows: number,
  gap: number,
): (RowPlace | null)[] {
  let items = spans
    .map(({ at, width }, index): Item => ({ index, at: Math.min(bounds[1], Math.max(bounds[0], at)), width }))
    .filter(({ width }) => width <= bounds[1] - bounds[0])
    .sort((a, b) => a.at - b.at);
  while (items.length > 0) {
    let best: Map<number, RowPlace> | null = null;
    for (let rows = 1; rows <= mostRows; rows += 1) {
      const places = tryRows(items, bounds, rows, gap);
      if (!places) continue;
      best = places;
      const strain = items.reduce((sum, { index, at }) => sum + Math.abs(places.get(index)!.at - at), 0);
      if (strain <= COMFORT * items.length) break;
    }
    if (best) return spans.map((_, index) => best.get(index) ?? null);
    const lightest = items.reduce((a, b) => (spans[b.index].weight < spans[a.index].weight ? b : a));
    items = items.filter((item) => item !== lightest);
  }
  return spans.map(() => null);
}
