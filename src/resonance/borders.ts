import type { StretchFit } from './band-fit.js';
import { bandwidth } from './poles.js';
import * as maths from '../signal/maths.js';

/** Within this distance of the border of two bands a pole may have been found by either, or by both. Hz. */
const zoneHz = 3;

/**
 * Which poles of each band are told: those of its own range, and at its borders one of each pair that two bands found
 * together, the one that is known better, on whichever side it lies.
 *
 * @returns Per band, indices of its poles.
 */
export function borderTwins(fits: readonly StretchFit[]): number[][] {
  const kept = fits.map(({ ownFromHz, ownToHz, state }) => {
    const { frequencyHz } = state.poles;
    return new Set(
      [...frequencyHz.keys()].filter((k) => frequencyHz[k] >= ownFromHz && frequencyHz[k] < ownToHz),
    );
  });
  for (let b = 0; b + 1 < fits.length; b++) {
    const border = fits[b].ownToHz;
    const zone = (fit: StretchFit) =>
      [...fit.state.poles.frequencyHz.keys()].filter(
        (k) => Math.abs(fit.state.poles.frequencyHz[k] - border) < zoneHz,
      );
    const free = new Set(zone(fits[b + 1]));
    for (const k of zone(fits[b])) {
      const f = fits[b].state.poles.frequencyHz[k];
      const u = fits[b].state.poles.logDecay[k];
      let twin = -1;
      let nearest = 1;
      for (const j of free) {
        const g = fits[b + 1].state.poles.frequencyHz[j];
        const v = fits[b + 1].state.poles.logDecay[j];
        const spread = Math.max(
          0.3 * bandwidth(Math.min(u, v)),
          2 * fits[b].deviations.frequencyHz[k],
          2 * fits[b + 1].deviations.frequencyHz[j],
        );
        const distance = maths.hypot((f - g) / spread, (u - v) / 1.2);
        if (distance < nearest) {
          nearest = distance;
          twin = j;
        }
      }
      if (twin < 0) continue;
      free.delete(twin);
      const better = fits[b].deviations.logDecay[k] <= fits[b + 1].deviations.logDecay[twin];
      if (better) {
        kept[b].add(k);
        kept[b + 1].delete(twin);
      } else {
        kept[b].delete(k);
        kept[b + 1].add(twin);
      }
    }
  }
  return kept.map((set) => [...set]);
}
