import type { NumberWords, Sentence, WordParams } from '../types.js';

const known = (p: WordParams, key: string): boolean => typeof p[key] === 'number' && Number.isFinite(p[key]);
const at = (p: WordParams, key: string): number => Number(p[key]);

/**
 * What might help. Each says what it rests on and where it ends: candidates are not certainties, a seat is not the
 * room, and what is heavy, flammable or loud is for people licensed to judge it.
 */
export const remedies: Readonly<Record<string, Sentence>> = {
  'move-seat': (p, n) =>
    `${because(p)}Try another seat${known(p, 'frequencyHz') ? ` for ${n.hertz(at(p, 'frequencyHz'))}` : ''}: a mode is loud or faint with place, though it rings as long everywhere.${moved(p, n)} Other modes change too, and seats beside it hear what this one leaves. Measure there before deciding.`,
  'move-source': (p, n) =>
    `${because(p)}Try another place for the source${known(p, 'frequencyHz') ? ` (${n.hertz(at(p, 'frequencyHz'))})` : ''}: one nearer to a pressure node of the mode excites it less, at every seat.${moved(p, n)} Other modes change too. Measure again after each move.`,
  'add-source': (p, n) =>
    `${because(p)}More than one bass source can excite a mode less: two at opposite walls cancel the modes of odd order between them.${
      known(p, 'x')
        ? ` If it is the mode (${n.text(p.order)}), one at ${n.metres(at(p, 'x'))}, ${n.metres(at(p, 'y'))}, ${n.metres(at(p, 'z'))} would change it by ${n.decibels(at(p, 'expectedDb'))} or more in the rigid box, and raise modes of the other parity along the ${axisName(p.axis)} by up to 6 dB.`
        : ''
    } Level and delay must be matched, and every seat measured again.`,
  absorb: (p, n) =>
    `${because(p)}Absorption shortens the decay at every seat${known(p, 'frequencyHz') ? ` (${n.hertz(at(p, 'frequencyHz'))})` : ''}. ${known(p, 'quarterWaveMetres') ? `Porous material works at a quarter wave from a wall, here ${n.metres(at(p, 'quarterWaveMetres'))}, so a` : 'A'} tuned panel or resonator at a wall or corner, where pressure is high, is the usual choice${known(p, 'panelMass') ? `: a panel of ${n.number(at(p, 'panelMass'), 0)} kg/m² over ${n.metres(at(p, 'panelDepthMetres'))} of air` : ''}.${
      known(p, 'areaSquareMetres')
        ? ` If it is the mode (${n.text(p.order)}), ${n.number(at(p, 'areaSquareMetres'), 1)} m² with a coefficient of ${n.number(at(p, 'coefficient'), 1)} low in a corner would bring it to ${n.seconds(at(p, 'expectedSeconds'))} and ${n.decibels(at(p, 'expectedDb'), 1)}; other modes fall too, each by its own pressure there.`
        : ''
    } Flexible foam is to be treated as combustible and heavy panels need rated fixings: keep to the local fire and building codes and ask a qualified person.`,
  cut: (p, n) =>
    `${because(p)}A matched cut may shorten what is heard${known(p, 'frequencyHz') ? `: ${n.hertz(at(p, 'frequencyHz'))}` : ''}${known(p, 'gainDb') ? `, ${n.decibels(at(p, 'gainDb'), 1)}` : ''}${known(p, 'q') ? `, Q ${n.number(at(p, 'q'), 1)}` : ''}${known(p, 'targetSeconds') ? `, towards ${n.seconds(at(p, 'targetSeconds'))}` : ''}. It holds for one mode that rings alone; the room itself keeps ringing.${Number(p.otherSeats) > 0 ? ` ${Number(p.otherSeats) === 1 ? 'One seat hears' : `${n.integer(at(p, 'otherSeats'))} seats hear`} no ridge here and would be left with a dip.` : ''}${known(p, 'gainDb') ? ` The sources need that much less there, which is headroom.` : ''} Measure again. Cut only: a boost costs power and cone excursion, and a null cannot be filled.`,
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

/** What was seen that calls for it (common practice). */
function because(p: WordParams): string {
  const why: Record<string, string> = {
    everywhere: 'It hangs at every seat. ',
    'some-seats': 'It hangs at some seats only. ',
  };
  return why[String(p.why ?? '')] ?? '';
}

function moved(p: WordParams, n: NumberWords): string {
  if (!p.axis) return '';
  const named = p.order ? `the mode (${n.text(p.order)})` : 'the candidate named first';
  return known(p, 'moveMetres')
    ? ` If it is ${named}, ${n.metres(Math.abs(at(p, 'moveMetres')))} along the ${axisName(p.axis)} ${at(p, 'moveMetres') < 0 ? 'towards' : 'away from'} the corner that places are counted from changes it by ${n.decibels(at(p, 'expectedDb'))}.`
    : ` If it is ${named}, moving along the ${axisName(p.axis)} changes it most.`;
}

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
  sweep:
    'Played back it is a loud, long low tone. Begin quietly and raise the level by steps; leave the room, or keep within 85 dBA over 8 h (3 dB more halves the time; national law may be stricter). Stop at the first rattle or smell: below what a loudspeaker plays, a sweep only moves its cone, so keep to the maker’s limits and begin at a higher frequency for small or vented boxes.',
  playback:
    'This file is for analysis. Played back it is a loud low-frequency impulse: start at a low level and keep to the loudspeaker maker’s limits.',
  fire: 'Treat flexible foam as combustible: use a thermal barrier and keep to the local fire code.',
  panels: 'Heavy panels need rated fixings, chosen and mounted by a qualified person.',
};
