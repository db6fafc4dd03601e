import type { Score, Trim } from './objective.js';

/** One combination that no other beats in both: less spread costs output. */
export interface TradePoint {
  readonly trims: readonly Trim[];
  readonly score: Score;
}

/** Of all combinations seen, those that none beats in both spread and output; by ascending output, at most twelve. */
export function frontOf(seen: readonly TradePoint[], most = 12): TradePoint[] {
  const byLevel = [...seen].sort((a, b) => b.score.meanOutputLevelDb - a.score.meanOutputLevelDb);
  const front: TradePoint[] = [];
  let least = Infinity;
  for (const point of byLevel) {
    if (point.score.meanSpatialVariance >= least) continue;
    least = point.score.meanSpatialVariance;
    front.push(point);
  }
  front.reverse();
  if (front.length <= most) return front;
  return Array.from({ length: most }, (_, k) => front[Math.round((k * (front.length - 1)) / (most - 1))]);
}
