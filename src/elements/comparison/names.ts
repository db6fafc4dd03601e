import { isThere, statesOf, type PairSide, type PairSnapshot } from '../../study/pair.js';
import type { SystemSnapshot } from '../../study/system-types.js';
import type { StudySnapshot } from '../../study/types.js';
import { pointName } from '../../sheet/point-name.js';
import type { Speaker } from '../../words/index.js';

/** What a stage or recording is called, without its seat. */
export function sideName(
  side: PairSide,
  { recordings }: StudySnapshot,
  { arrangement, stage, afterStage }: SystemSnapshot,
  speaker: Speaker,
): string {
  if (side.of === 'recording') {
    const label = recordings[side.index]?.label || speaker.view('this-recording');
    return speaker.view('compared-recording', { label });
  }
  const named = side.of === 'after' ? arrangement.stages[afterStage ?? 0] : arrangement.stages[stage];
  return speaker.view(`compared-${side.of}`, { stage: named || null });
}

/** The same with the seat that is shown, as a title. */
export function sideTitle(
  side: PairSide,
  pair: PairSnapshot,
  study: StudySnapshot,
  system: SystemSnapshot,
  speaker: Speaker,
): string {
  const name = sideName(side, study, system, speaker);
  if (side.of === 'recording' || pair.seat === null) return name;
  const seat = pointName(system.arrangement.seats[pair.seat], 'seat', speaker);
  return speaker.view('compared-at-seat', { stage: name, seat });
}

/** A side as an attribute says it: a stage's word, or the label of a recording. Null for what is not there. */
export function sideFromText(
  text: string | null,
  study: StudySnapshot,
  system: SystemSnapshot,
): PairSide | null {
  if (!text) return null;
  for (const of of ['before', 'designed', 'after'] as const)
    if (text === of && isThere({ of }, study, system)) return { of };
  const stages = system.arrangement.stages;
  if (statesOf(system).includes('before') && text === stages[system.stage]) return { of: 'before' };
  if (system.afterStage !== null && text === stages[system.afterStage]) return { of: 'after' };
  const index = study.recordings.findIndex(({ label }) => label === text);
  return index < 0 ? null : { of: 'recording', index };
}

/** Everything that can stand on a side. */
export const sidesOf = (study: StudySnapshot, system: SystemSnapshot): PairSide[] => [
  ...statesOf(system).map((of) => ({ of })),
  ...study.recordings.map((_, index) => ({ of: 'recording' as const, index })),
];

export const sameSide = (a: PairSide, b: PairSide): boolean => JSON.stringify(a) === JSON.stringify(b);
