import { assumedAbsorption, bassRootHz, listenLevels } from '../../study/listen.js';
import type { Listened, ListenPlan } from '../../study/listen.js';
import type { StudySnapshot } from '../../study/types.js';
import type { Speaker } from '../../words/index.js';

/** Why it is muted and limited, and what to take care of. */
export const whyLines = (plan: ListenPlan, speaker: Speaker): string[] => [
  speaker.view('listen-why-muted', listenLevels),
  speaker.view('listen-why-bass'),
  speaker.view('listen-why-small', { frequencyHz: plan.centreHz }),
];

/** What is played, and through what, as sentences. */
export function aboutSounds(
  plan: ListenPlan,
  listened: Listened | null,
  { recordings, active, room }: StudySnapshot,
  speaker: Speaker,
): string {
  const { material, centreHz, treatment, mode, response } = plan;
  const sentences: string[] = [];
  const say = (code: string, params = {}): void => void sentences.push(speaker.view(code, params));
  if (material === 'bass-line') say('listen-line', { rootHz: bassRootHz(centreHz), centreHz });
  else say(material === 'tone-walk' ? 'listen-walk' : 'listen-burst', { centreHz });
  if (response === null) say('listen-through-nothing');
  else if (response === 'predicted')
    say('listen-through-predicted', { assumed: !room?.absorption, absorption: assumedAbsorption });
  else if (listened?.responseSeconds)
    say('listen-through-measured', { label: recordings[active].label, seconds: listened.responseSeconds });
  if (listened?.toHz)
    say(recordings[active]?.reduced ? 'listen-through-reduced' : 'listen-through-low-rate', {
      toHz: listened.toHz,
    });
  if (response !== null && treatment) {
    const bands = treatment.bands.map(({ gainDb, frequencyHz, q }) =>
      speaker.view('listen-band', { gainDb, frequencyHz, q }),
    );
    say(`listen-treated-${treatment.origin}`, { count: bands.length, bands: bands.join('; ') });
  } else if (response !== null) say('listen-treated-nothing');
  if (mode) say('listen-mode', { ...mode });
  else say('listen-mode-nothing');
  say('listen-why-matched', listenLevels);
  say('listen-why-room');
  return sentences.join(' ');
}
