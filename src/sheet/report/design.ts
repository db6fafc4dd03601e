import { isPlain } from '../../study/system-design.js';
import type { SystemDesign } from '../../study/system-types.js';
import { plainSource } from '../../study/system-design.js';
import type { Speaker } from '../../words/index.js';
import { pointName } from '../point-name.js';
import type { Subject } from './subject.js';

export type SystemDesignBand = SystemDesign['bands'][number];
type Setting = SystemDesign['settings'][string];

export interface SystemSettings {
  readonly name: string;
  readonly setting: Setting;
  /** As it was measured. */
  readonly plain: boolean;
  readonly boosts: boolean;
}

/** Settings of every source of the designed stage, with its name. */
export function settingsShown({ system }: Subject, speaker: Speaker): SystemSettings[] {
  const { arrangement, grid, design } = system;
  return grid.sources.map((source) => {
    const point = arrangement.sources[source];
    const setting = design.settings[point.key] ?? plainSource;
    const bands = [...setting.bands, ...design.bands];
    return {
      ...{ name: pointName(point, 'source', speaker), setting },
      plain: isPlain([setting]) && design.bands.length === 0,
      boosts: bands.some(({ gainDb }) => gainDb > 0) || setting.gainDb > 0,
    };
  });
}
