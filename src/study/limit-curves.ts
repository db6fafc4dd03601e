import { limitCurve, type LimitCurve, type LimitName } from '../diagnosis/index.js';
import type { StudySnapshot } from './types.js';

export type { LimitCurve, LimitName };

/**
 * The limits that can be drawn over the frequencies shown: audibility always, the target where there is a room, the
 * neighbours where they are the chosen limit. None without any value there.
 */
export function limitCurvesOf({ choices, room, diagnosis }: StudySnapshot): LimitCurve[] {
  const { fromHz, toHz, limit } = choices;
  const resonances = (diagnosis?.resonances ?? []).flatMap(({ frequencyHz, decayTimeSeconds }) =>
    decayTimeSeconds === null ? [] : [{ frequencyHz, decayTimeSeconds }],
  );
  const names: LimitName[] = ['audibility', 'target', ...(limit === 'neighbours' ? [limit] : [])];
  return names
    .map((name) => limitCurve(name, room, { fromHz, toHz, resonances }))
    .filter(({ upperSeconds }) => upperSeconds.some((value) => Number.isFinite(value)));
}
