import type { Sentence } from '../types.js';

/** The German of `en/errors-seats.ts`. */
export const seatErrors: Readonly<Record<string, Sentence>> = {
  'band-value': (p, n) => {
    const names: Record<string, string> = {
      frequencyHz: 'Die Frequenz',
      gainDb: 'Die Verstärkung',
      q: 'Die Güte Q',
    };
    const units: Record<string, string> = { frequencyHz: ' Hz', gainDb: ' dB', q: '' };
    const unit = units[n.text(p.name)] ?? '';
    return `${names[n.text(p.name)] ?? n.text(p.name)} eines Filters von ${n.significant(p.value, 4)}${unit} liegt außerhalb von ${n.significant(p.from, 4)} bis ${n.significant(p.to, 4)}${unit}.`;
  },
  'points-missing': (p, n) =>
    `Von ${n.integer(p.points)} Punkten aus Quelle und Hörplatz ${Number(p.missing) === 1 ? 'hat' : 'haben'} ${n.integer(p.missing)} keine Aufnahme. Die Summe der Quellen braucht jede Quelle an jedem Hörplatz: Messen Sie nach, was fehlt, oder lassen Sie diesen Platz oder diese Quelle weg.`,
  'time-reference': (p, n) =>
    `Von ${p.label ? `„${n.text(p.label)}“` : 'einer Aufnahme'} ist nicht bekannt, ob sie ihre Zeitnull mit den anderen teilt; sie lässt sich daher weder mit ihnen summieren noch zeitlich ausrichten. Sagen Sie nur dann, dass die Aufnahmen einen gemeinsamen Zeitbezug haben, wenn ein Takt (ein Loopback oder ein Gerät) alle bestimmt hat.`,
  'rates-differ': (p, n) =>
    `${p.label ? `„${n.text(p.label)}“` : 'Eine Aufnahme'} hat eine Abtastrate von ${n.significant(p.rate, 6)} Hz, die anderen haben ${n.significant(p.expected, 6)} Hz; Aufnahmen verschiedener Raten werden nicht summiert. Exportieren Sie sie mit einer Rate.`,
  'all-muted': () =>
    'Alle Quellen sind stummgeschaltet, es ist also nichts zu hören. Lassen Sie mindestens eine spielen.',
  'optimise-bounds': (p, n) => {
    const names: Record<string, string> = {
      lowestGainDb: 'die kleinste Verstärkung',
      longestDelaySeconds: 'die längste Verzögerung',
      leastLevelDb: 'den kleinsten Ausgangspegel',
    };
    return `Die Schranke für ${names[n.text(p.name)] ?? n.text(p.name)} ist ${n.significant(p.value, 4)} und liegt außerhalb von ${n.significant(p.from, 4)} bis ${n.significant(p.to, 4)}.`;
  },
  'optimise-sources': (p, n) =>
    `Einstellungen werden für zwei oder mehr Quellen vorgeschlagen; hier ${Number(p.count) === 1 ? 'ist es eine' : `sind es ${n.integer(p.count)}`}.`,
  'weights-empty': () =>
    'Jeder Hörplatz hat das Gewicht 0, es kann also nichts besser werden. Geben Sie mindestens einem ein Gewicht.',
};
