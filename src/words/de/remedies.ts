import type { NumberWords, Sentence, WordParams } from '../types.js';

const known = (p: WordParams, key: string): boolean => typeof p[key] === 'number' && Number.isFinite(p[key]);
const at = (p: WordParams, key: string): number => Number(p[key]);

/** The German of `en/remedies.ts`. */
export const remedies: Readonly<Record<string, Sentence>> = {
  'move-seat': (p, n) =>
    `${because(p)}Versuchen Sie${known(p, 'frequencyHz') ? ` für ${n.hertz(at(p, 'frequencyHz'))}` : ''} einen anderen Hörplatz: Eine Mode ist je nach Ort laut oder leise, klingt aber überall gleich lange nach.${moved(p, n)} Auch andere Moden ändern sich, und Plätze daneben hören, was dieser verlässt. Messen Sie dort, bevor Sie entscheiden.`,
  'move-source': (p, n) =>
    `${because(p)}Versuchen Sie einen anderen Ort für die Quelle${known(p, 'frequencyHz') ? ` (${n.hertz(at(p, 'frequencyHz'))})` : ''}: Näher an einem Druckknoten der Mode regt sie diese weniger an, und zwar an jedem Hörplatz.${moved(p, n)} Auch andere Moden ändern sich. Messen Sie nach jeder Verschiebung noch einmal.`,
  'add-source': (p, n) =>
    `${because(p)}Mehr als eine Bassquelle kann eine Mode weniger anregen: Zwei an gegenüberliegenden Wänden heben die Moden ungerader Ordnung zwischen ihnen auf.${
      known(p, 'x')
        ? ` Ist es die Mode (${n.text(p.order)}), so würde eine bei ${n.metres(at(p, 'x'))}; ${n.metres(at(p, 'y'))}; ${n.metres(at(p, 'z'))} sie im schallharten Quader um ${n.decibels(at(p, 'expectedDb'))} oder mehr ändern und Moden der anderen Parität entlang der ${axisName(p.axis)} um bis zu 6 dB anheben.`
        : ''
    } Pegel und Verzögerung müssen abgestimmt und alle Hörplätze noch einmal gemessen werden.`,
  absorb: (p, n) =>
    `${because(p)}Absorption verkürzt das Ausschwingen an jedem Hörplatz${known(p, 'frequencyHz') ? ` (${n.hertz(at(p, 'frequencyHz'))})` : ''}. ${known(p, 'quarterWaveMetres') ? `Poröses Material wirkt eine Viertelwellenlänge vor der Wand, hier ${n.metres(at(p, 'quarterWaveMetres'))}; üblich ist daher ein` : 'Üblich ist ein'} abgestimmter Platten- oder Helmholtz-Resonator an einer Wand oder in einer Ecke, wo der Druck hoch ist${known(p, 'panelMass') ? `: eine Platte von ${n.number(at(p, 'panelMass'), 0)} kg/m² vor ${n.metres(at(p, 'panelDepthMetres'))} Luft` : ''}.${
      known(p, 'areaSquareMetres')
        ? ` Ist es die Mode (${n.text(p.order)}), so würden ${n.number(at(p, 'areaSquareMetres'), 1)} m² mit einem Absorptionsgrad von ${n.number(at(p, 'coefficient'), 1)} unten in einer Ecke sie auf ${n.seconds(at(p, 'expectedSeconds'))} und ${n.decibels(at(p, 'expectedDb'), 1)} bringen; andere Moden fallen ebenfalls, jede nach ihrem eigenen Druck dort.`
        : ''
    } Weichschaum ist als brennbar zu behandeln, und schwere Platten brauchen zugelassene Befestigungen: Halten Sie die örtlichen Brandschutz- und Bauvorschriften ein, und fragen Sie eine Fachperson.`,
  cut: (p, n) =>
    `${because(p)}Eine abgestimmte Absenkung kann verkürzen, was zu hören ist${known(p, 'frequencyHz') ? `: ${n.hertz(at(p, 'frequencyHz'))}` : ''}${known(p, 'gainDb') ? `, ${n.decibels(at(p, 'gainDb'), 1)}` : ''}${known(p, 'q') ? `, Q ${n.number(at(p, 'q'), 1)}` : ''}${known(p, 'targetSeconds') ? `, auf etwa ${n.seconds(at(p, 'targetSeconds'))}` : ''}. Sie gilt für eine einzelne Mode, die allein nachklingt; der Raum selbst klingt weiter nach.${Number(p.otherSeats) > 0 ? ` ${Number(p.otherSeats) === 1 ? 'An einem Hörplatz ist' : `An ${n.integer(at(p, 'otherSeats'))} Hörplätzen ist`} hier kein Grat zu hören; dort bliebe ein Einbruch.` : ''}${known(p, 'gainDb') ? ` Die Quellen brauchen dort um so viel weniger; das ist Aussteuerungsreserve.` : ''} Messen Sie noch einmal. Nur absenken: Eine Anhebung kostet Leistung und Membranhub, und eine Auslöschung lässt sich nicht füllen.`,
  leave: () =>
    'Es kann bleiben, wie es ist: Es liegt nur wenig über der Grenze, oder dass man es hört, ist schwach belegt. Hören Sie hin, bevor Sie für Abhilfe bezahlen.',
  'measure-again': (p) => {
    const why: Record<string, string> = {
      hum: 'Brummen klingt nie ab und ist keine Raummode: Suchen Sie die Quelle, und messen Sie dann noch einmal.',
      noise:
        'Das Ausschwingen liegt zu nah am Rauschen, um sicher zu sein: Messen Sie noch einmal mit längerem Sweep oder weniger Störgeräusch.',
      source:
        'Das sieht nach dem Ausschwingen der Quelle selbst aus: Messen Sie dicht am Lautsprecher, und vergleichen Sie.',
      unexplained:
        'Dieses Band klingt nach, obwohl keine Resonanz es erklärt: Messen Sie noch einmal, auch an einem zweiten Hörplatz, bevor Sie danach handeln.',
      seats:
        'Ein einziger Hörplatz kann nicht zeigen, ob der ganze Raum hier nachklingt: Messen Sie mindestens einen weiteren.',
    };
    return (
      why[String(p.reason ?? p.why ?? '')] ??
      'Messen Sie noch einmal, auch an einem zweiten Hörplatz, bevor Sie danach handeln.'
    );
  },
};

/** What was seen that calls for it (common practice). */
function because(p: WordParams): string {
  const why: Record<string, string> = {
    everywhere: 'Es klingt an jedem Hörplatz nach. ',
    'some-seats': 'Es klingt nur an einigen Hörplätzen nach. ',
  };
  return why[String(p.why ?? '')] ?? '';
}

function moved(p: WordParams, n: NumberWords): string {
  if (!p.axis) return '';
  const named = p.order ? `die Mode (${n.text(p.order)})` : 'der zuerst genannte Kandidat';
  return known(p, 'moveMetres')
    ? ` Ist es ${named}, so ändern ${n.metres(Math.abs(at(p, 'moveMetres')))} entlang der ${axisName(p.axis)} ${at(p, 'moveMetres') < 0 ? 'auf die Ecke zu' : 'von der Ecke weg'}, von der aus Orte gezählt werden, ihren Pegel um ${n.decibels(at(p, 'expectedDb'))}.`
    : ` Ist es ${named}, so ändert eine Verschiebung entlang der ${axisName(p.axis)} am meisten.`;
}

function axisName(axis: unknown): string {
  return { x: 'Länge', y: 'Breite', z: 'Höhe' }[String(axis)] ?? String(axis);
}

export const cautions: Readonly<Record<string, string>> = {
  licensed:
    'Das sind Kandidaten aus einer Messung, keine Planung. Sie ersetzen weder das Urteil einer zugelassenen Fachperson noch örtliche Vorschriften.',
  levels:
    'Lauter Schall schadet dem Gehör: 85 dBA über 8 h am Tag sind ein empfohlener Grenzwert, und je 3 dB mehr halbieren die Zeit. Nationales Recht kann strenger sein.',
  boost:
    'Eine Anhebung um 6 dB braucht die vierfache Leistung und den doppelten Membranhub; bleiben Sie innerhalb der Grenzen des Lautsprecherherstellers.',
  sweep:
    'Abgespielt ist es ein lauter, langer, tiefer Ton. Beginnen Sie leise, und erhöhen Sie den Pegel in Stufen; verlassen Sie den Raum, oder bleiben Sie unter 85 dBA über 8 h (3 dB mehr halbieren die Zeit; nationales Recht kann strenger sein). Brechen Sie beim ersten Klappern oder Geruch ab: Unterhalb dessen, was ein Lautsprecher wiedergibt, bewegt ein Sweep nur noch seine Membran; bleiben Sie also innerhalb der Grenzen des Herstellers, und beginnen Sie bei kleinen oder belüfteten Gehäusen mit einer höheren Frequenz.',
  playback:
    'Diese Datei dient der Auswertung. Abgespielt ist sie ein lauter tieffrequenter Impuls: Beginnen Sie mit kleinem Pegel, und bleiben Sie innerhalb der Grenzen des Lautsprecherherstellers.',
  fire: 'Behandeln Sie Weichschaum als brennbar: Verwenden Sie eine thermische Schutzschicht, und halten Sie die örtlichen Brandschutzvorschriften ein.',
  panels:
    'Schwere Platten brauchen zugelassene Befestigungen, ausgewählt und angebracht von einer Fachperson.',
};
