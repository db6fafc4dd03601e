import type { Speaker } from '../words/index.js';
import { orderText } from './ridges.js';
import type { Ridge } from './ridges.js';

/** From this chance on the heaviest candidate is named on the picture, with its chance; below, there are several. */
const namedFrom = 0.8;

/**
 * What a ridge may be, short enough for its label: a cause that is no mode, the best candidate with its chance where it
 * stands out, else that there are several. Null where nothing is known.
 */
export function ridgeName({ cause, candidates }: Ridge, speaker: Speaker): string | null {
  if (cause !== 'room-mode' && cause !== 'unknown') return speaker.term('causes', cause);
  if (candidates.length === 0) return null;
  const best = candidates.reduce((a, b) => (b.weight > a.weight ? b : a));
  const twins = candidates.filter(({ group }) => group === best.group).length;
  if (best.weight < namedFrom || twins > 1) return speaker.view('several');
  return speaker.view('best-candidate', { order: orderText(best.order), weight: best.weight });
}
