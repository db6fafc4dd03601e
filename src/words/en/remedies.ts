import type { Sentence, WordParams } from '../types.js';

const known = (p: WordParams, key: string): boolean => typeof p[key] === 'number' && Number.isFinite(p[key]);
const at = (p: WordParams, key: string): number => Number(p[key]);

/**
 * What might help. Each says what it rests on and where it ends: candidates are not certainties, a seat is not the
 * room, and what is heavy, flammable or loud is for people licensed to judge it.
 */
export const remedies: Readonly<Record<string, Sentence>> = {
  'move-seat': (p, n) =>
    `Try another seat${known(p, 'frequencyHz') ? ` for ${n.hertz(at(p, 'frequencyHz'))}` : ''}: a mode is loud or faint with place, though it rings as long everywhere.${p.axis ? ` If it is the candidate named first, moving along the ${axisName(p.axis)} changes it most.` : ''} Measure there before deciding.`,
  'move-source': (p, n) =>
    `Try another place for the source${known(p, 'frequencyHz') ? ` (${n.hertz(at(p, 'frequencyHz'))})` : ''}: one nearer to a pressure node of the mode excites it less.${p.axis ? ` If it is the candidate named first, moving along the ${axisName(p.axis)} changes it most.` : ''} Measure again after each move.`,
  'add-source': () =>
    'More than one bass source can excite a mode less: two at opposite walls cancel the modes of odd order between them. Level and delay must be matched, and every seat measured again.',
  absorb: (p, n) =>
    `Absorption shortens the decay at every seat${known(p, 'frequencyHz') ? ` (${n.hertz(at(p, 'frequencyHz'))})` : ''}. ${known(p, 'quarterWaveMetres') ? `Porous material works at a quarter wave from a wall, here ${n.metres(at(p, 'quarterWaveMetres'))}, so a` : 'A'} tuned panel or resonator at a wall or corner, where pressure is high, is the usual choice. Flexible foam is to be treated as combustible and heavy panels need rated fixings: keep to the local fire and building codes and ask a qualified person.`,
  cut: (p, n) =>
    `A matched cut may shorten what is heard${known(p, 'frequencyHz') ? `: ${n.hertz(at(p, 'frequencyHz'))}` : ''}${known(p, 'gainDb') ? `, ${n.decibels(at(p, 'gainDb'), 1)}` : ''}${known(p, 'q') ? `, Q ${n.number(at(p, 'q'), 1)}` : ''}${known(p, 'targetSeconds') ? `, towards ${n.seconds(at(p, 'targetSeconds'))}` : ''}. It holds for one mode that rings alone and for this seat; the room itself keeps ringing. Measure again. Cut only: a boost costs power and cone excursion, and a null cannot be filled.`,
  leave: () =>
    'It may be left as it is: it exceeds the limit by little, or the evidence that it is heard is weak. Listen before paying for a remedy.',
  'measure-again': (p) => {
    const why: Record<string, string> = {
      hum: 'Hum never decays and is no room mode: find its source, then measure again.',
      noise:
        'The decay is too near to the noise to be sure: measure again with a longer sweep or less noise.',
      source: 'This looks like the source’s own tail: measure it close to the loudspeaker and compare.',
      unexplained:
        'This band rings on although no resonance explains it: measure again, and at a second seat, before acting on it.',
      seats: 'One seat cannot show whether the whole room hangs here: measure at least one other seat.',
    };
    return (
      why[String(p.reason ?? p.why ?? '')] ?? 'Measure again, and at a second seat, before acting on this.'
    );
  },
};

function axisName(axis: unknown): string {
  return { x: 'length', y: 'width', z: 'height' }[String(axis)] ?? String(axis);
}

export const cautions: Readonly<Record<string, string>> = {
  licensed:
    'These are candidates from a measurement, not a design. They do not replace the judgement of a licensed practitioner or local codes.',
  levels:
    'Loud sound harms hearing: 85 dBA for 8 h a day is a recommended limit, and each 3 dB more halves the time. National law may be stricter.',
  boost:
    'A boost of 6 dB needs four times the power and twice the cone excursion; keep to the loudspeaker maker’s limits.',
  playback:
    'This file is for analysis. Played back it is a loud low-frequency impulse: start at a low level and keep to the loudspeaker maker’s limits.',
  fire: 'Treat flexible foam as combustible: use a thermal barrier and keep to the local fire code.',
  panels: 'Heavy panels need rated fixings, chosen and mounted by a qualified person.',
};
