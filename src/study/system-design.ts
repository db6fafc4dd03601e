import { defaultBounds, plainSetting, type SourceSetting } from '../seats/index.js';
import type { SystemDesign, SystemSnapshot } from './system-types.js';

/** A source as it was measured. */
export const plainSource: SourceSetting = plainSetting;

export const defaultDesign: SystemDesign = {
  stage: null,
  settings: {},
  bands: [],
  weights: {},
  fromHz: 20,
  toHz: 120,
  bounds: defaultBounds,
  limits: { mostBands: 5, lowestSeatDb: -6, deepestDb: -12 },
  sampleRate: 48000,
};

/** Settings of the grid's sources in their order, each with the filters over all of them behind its own. */
export function settingsOf({ design, arrangement, grid }: SystemSnapshot): SourceSetting[] {
  return grid.sources.map((source) => {
    const own = design.settings[arrangement.sources[source].key] ?? plainSetting;
    return { ...own, bands: [...own.bands, ...design.bands] };
  });
}

/** Weights of the grid's seats in their order. */
export const weightsOf = ({ design, arrangement, grid }: SystemSnapshot): Float64Array =>
  Float64Array.from(grid.seats, (seat) => design.weights[arrangement.seats[seat].key] ?? 1);

/** Whether the design changes anything of what was measured. */
export const isPlain = (settings: readonly SourceSetting[]): boolean =>
  settings.every((setting) => JSON.stringify(setting) === JSON.stringify(plainSetting));
