import type { Sentence } from '../types.js';

const plural = (count: unknown, one: string, many: string): string => (Number(count) === 1 ? one : many);
const signed = (value: unknown, text: string): string => (Number(value) > 0 ? `+${text}` : text);

/** The German of `en/views-remedy.ts`. */
export const remedyViews: Readonly<Record<string, Sentence>> = {
  // Remedies.
  remedy: () => 'Abhilfe',
  'remedy-name': (p, n) =>
    `Pegel, Filter und Abklingzeiten ohne und mit den Filtern über alle Quellen: ${n.text(p.label)}`,
  'remedy-help': () =>
    'Oben die Pegel ohne und mit den Filtern; in der Mitte ihre Verstärkung mit einem Griff je Filter; unten die Abklingzeit jedes Grats. Pfeiltasten verschieben einen Griff um eine hundertstel Oktave und 0,1 dB, mit der Umschalttaste zehnmal so weit; Bild auf und Bild ab ändern sein Q. Die Tabelle darunter zeigt dasselbe in Zahlen.',
  'choose-mean': () => 'Mittel der Hörplätze',
  'gain-axis': () => 'Verstärkung der Filter, dB',
  'remedy-decay-axis': () => 'Abklingzeit der Grate, s',
  'remedy-before': () => 'ohne',
  'remedy-after': () => 'mit den Filtern',
  'key-remedy-before': () => 'ohne Filter; Abklingzeit wie gemessen',
  'key-remedy-after': () => 'mit den Filtern; Abklingzeit an die gefilterten Abtastwerte angepasst',
  'key-remedy-expected': () => 'Abklingzeit bisher nur erwartet',
  'key-remedy-limit': () => 'Grenze',
  'key-remedy-spread': () => 'vom leisesten zum lautesten Hörplatz, mit den Filtern',
  'remedy-caption': (p, n) =>
    `${n.text(p.where)}, ${n.hertz(p.fromHz, 0)} bis ${n.hertz(p.toHz, 0)}, nicht geglättet, gelesen je 1/24 Oktave, wobei eine schmale Überhöhung um 2 oder 3 dB verfehlt werden kann. Die Filter liegen über allen Quellen. Abklingzeiten mit den Filtern sind an die gefilterten Abtastwerte angepasst. Der Raum selbst klingt weiter nach: Ein Filter nimmt den Quellen nur, was ihn anregen würde.`,
  'remedy-readout': (p, n) =>
    `${n.hertz(p.frequencyHz)}: ${n.decibels(p.beforeDb, 1)} ohne, ${n.decibels(p.afterDb, 1)} mit; Filter ${n.decibels(p.gainDb, 1)}`,
  'remedy-bands': () => 'Filter über alle Quellen',
  'no-bands': () => 'Noch kein Filter.',
  'band-matched': () => 'abgestimmte Absenkung',
  'band-number': (p, n) => `Filter Nr. ${n.integer(p.number)}`,
  'kind-column': () => 'Art',
  'frequency-column': () => 'Frequenz, Hz',
  'band-gain-column': () => 'Verstärkung, dB',
  'q-column': () => 'Güte Q',
  'target-column': () => 'Gewünschte Abklingzeit, s',
  'cost-column': () => 'Klingt selbst nach; kostet',
  'band-field': (p, n) => `${n.text(p.what)} von Filter ${n.integer(p.number)}`,
  'band-kind-of': (p, n) => `Art von Filter ${n.integer(p.number)}`,
  'band-take-away': (p, n) => `Filter ${n.integer(p.number)} entfernen`,
  'band-handle': (p, n) =>
    `Griff von Filter ${n.integer(p.number)}, ${n.text(p.kind)}: ${n.hertz(p.frequencyHz)}, ${n.decibels(p.gainDb, 1)}, Q ${n.number(p.q, 1)}`,
  'band-rings': (p, n) => `klingt selbst ${n.seconds(p.seconds)} nach`,
  'band-costs': (p, n) =>
    `das ${n.number(p.power, 2)}-Fache der Leistung, das ${n.number(p.excursion, 2)}-Fache des Membranhubs`,
  'band-matches': (p, n) => `${n.hertz(p.frequencyHz)}, von ${n.seconds(p.decayTimeSeconds)}`,
  'add-band': () => 'Hinzufügen',
  'add-peaking': () => 'Glockenfilter',
  'add-low-shelf': () => 'Tiefen-Shelf',
  'add-high-shelf': () => 'Höhen-Shelf',
  'add-cut': () => 'Abgestimmte Absenkung von',
  'add-cut-button': () => 'Absenkung hinzufügen',
  'remove-bands': () => 'Alle Filter entfernen',
  'too-many-bands': (p, n) => `Mehr als ${n.integer(p.most)} Filter sind nicht möglich.`,
  'refused-boost-high': (p, n) =>
    `Eine Anhebung endet hier bei ${n.decibels(p.mostDb)}: Mehr kostet Leistung und Membranhub und klingt nach; halten Sie die Grenzen des Lautsprecherherstellers ein.`,
  'refused-boost-narrow': (p, n) =>
    `Eine Anhebung mit mehr als Q ${n.number(p.q, 1)} wird abgelehnt: Sie würde selbst nachklingen und nur an einem Ort passen.`,
  'refused-boost-null': (p, n) =>
    `Hier keine Anhebung: ${p.seats ? `${n.text(p.seats)} ${plural(p.count, 'hat', 'haben')} eine Auslöschung, und eine` : 'Ein Hörplatz hat eine Auslöschung, und eine'} Auslöschung lässt sich nicht füllen; sie schluckt die Leistung und bleibt.`,
  'refused-boost-sum': (p, n) =>
    `Zusammen würden die Filter um mehr als ${n.decibels(p.mostDb)} anheben: Genommen wurde, was davon übrig ist.`,
  'headroom-gained': (p, n) =>
    `Aussteuerungsreserve: Der höchste Punkt des mittleren Frequenzgangs sinkt um ${n.decibels(p.headroomDb, 1)}; um so viel mehr haben die Quellen bei gleichem Spitzenpegel übrig.`,
  'headroom-lost': (p, n) =>
    `Aussteuerungsreserve: Der höchste Punkt des mittleren Frequenzgangs steigt um ${n.decibels(p.headroomDb, 1)}; um so viel weniger haben die Quellen übrig.`,
  'headroom-none': () =>
    'Aussteuerungsreserve: Der höchste Punkt des mittleren Frequenzgangs bleibt, wo er ist.',

  'auto-heading': () => 'Vorgeschlagene Absenkungen für das, was die Hörplätze teilen',
  'auto-most': () => 'Höchstens so viele Filter',
  'auto-lowest': () => 'Kein Hörplatz weiter unter seinem Mittel als, dB',
  'auto-deepest': () => 'Keine Absenkung tiefer als, dB',
  'auto-button': () => 'Absenkungen vorschlagen',
  'auto-waiting': () => 'Die Grate der Hörplätze werden noch gesucht.',
  'auto-made': (p, n) =>
    `${n.hertz(p.frequencyHz)}: ${n.decibels(p.gainDb, 1)}, Q ${n.number(p.q, 1)}, von ${n.seconds(p.beforeSeconds)} auf ${n.seconds(p.targetSeconds)}${p.partial ? ', innerhalb der Schranken nur ein Teil des Wegs zur Grenze' : ''}`,
  'auto-nothing': () => 'Innerhalb dieser Schranken verträgt kein Grat eine Absenkung.',
  'auto-left': () => 'Was gelassen wurde, und warum',
  'skip-cut-band-limit': () => 'die Zahl der Filter ist ausgeschöpft',
  'skip-cut-seats': () => 'nur an einigen Hörplätzen zu hören: zuerst die Aufstellung',
  'skip-cut-not-single': () => 'dort liegen mehrere Moden: Ein Filter kann sie nicht nachbilden',
  'skip-cut-no-limit': () => 'innerhalb der Grenze, oder es gibt keine',
  'skip-cut-uncertain': () => 'die Abklingzeit ist nicht genau genug bekannt',
  'skip-cut-seat-dip': () => 'ein Hörplatz bliebe mit einem Einbruch',
  'auto-skipped': (p, n) => `${n.hertz(p.frequencyHz)}: ${n.text(p.why)}`,

  'remedy-ridges': () => 'Grate ohne und mit den Filtern',
  'remedy-working': (p, n) => `Abklingzeiten mit den Filtern: ${n.text(p.stage)}`,
  'no-ridges-here': () => 'In dem, was gelesen wurde, liegt kein Grat über seiner Grenze.',
  'before-column': () => 'Ohne',
  'remedy-expected': () => 'Erwartet',
  'fitted-column': () => 'Mit ihnen angepasst',
  'level-change-column': () => 'Pegel',
  'limit-column': () => 'Grenze',
  'change-column': () => 'Änderung',
  'sure-yes': () => 'größer als ihre Unsicherheit',
  'sure-no': () => 'innerhalb ihrer Unsicherheit',
  'sure-unknown': () => 'Unsicherheit nicht bekannt',
  'options-button': () => 'Was sich tun lässt',
  'options-of': (p, n) => `Was sich tun lässt: ${n.hertz(p.frequencyHz)}`,
  'hangs-by-seat': () =>
    'Wie lange jeder Grat an jedem Platz zu hören ist, bis er 30 dB unter dem lautesten dort liegt: ohne und mit den Filtern',
  'hang-change': (p, n) => `${n.seconds(p.before)} → ${n.seconds(p.after)}`,
  'fresh-ridge': (p, n) =>
    `${n.hertz(p.frequencyHz)} liegt mit den Filtern über der Grenze, bei ${n.seconds(p.decayTimeSeconds)}, und ohne sie nicht.`,
  'signed-decibels': (p, n) => signed(p.decibels, n.decibels(p.decibels, 1)),

  'options-heading': (p, n) =>
    `Was sich tun lässt: ${n.hertz(p.frequencyHz)}, ${n.seconds(p.decayTimeSeconds)}`,
  'option-absorb': () => 'Absorbieren',
  'option-cut': () => 'Abgestimmte Absenkung',
  'option-move-seat': () => 'Hörplatz verlegen',
  'option-move-source': () => 'Quelle verlegen',
  'option-add-source': () => 'Quelle hinzufügen',
  'option-leave': () => 'So lassen',
  'standing-first': () => 'passt am besten',
  'standing-fits': () => 'kann helfen',
  'standing-unlikely': () => 'nicht hierfür',
  'against-not-a-mode': () => 'Nichts hier ist eine Raummode; nur eine solche würde sich ändern.',
  'against-move-everywhere': () =>
    'Es klingt an jedem Hörplatz nach: Ein anderer Ort macht es lauter oder leiser, aber nicht kürzer.',
  'against-cut-not-single': () =>
    'Es ist keine Mode für sich allein: Kein einzelnes Filter bildet sie nach, also wird keine Abklingzeit versprochen.',
  'against-cut-no-peak': () => 'Es bildet keine Überhöhung, ein Filter nimmt also wenig davon.',
  'against-cut-no-limit': () => 'Es hat keine Grenze oder liegt innerhalb.',
  'against-leave-audible': (p, n) =>
    p.excess === null
      ? 'Nichts sagt, wie lange es nachklingen darf.'
      : `Es überschreitet seine Grenze um das ${n.number(p.excess, 1)}-Fache.`,
  'option-expected': (p, n) =>
    [
      p.seconds === null ? '' : n.seconds(p.seconds),
      p.decibels === null ? '' : signed(p.decibels, n.decibels(p.decibels, 1)),
    ]
      .filter(Boolean)
      .join(', ') || 'nichts, was sich versprechen ließe',
  'option-expected-head': () => 'Danach zu erwarten',
  'option-beside-head': () => 'Außerdem',
  'option-source': (p, n) => `Gerechnet für das Verlegen von ${n.text(p.name)} allein.`,
  'effect-ridge': (p, n) =>
    `${n.hertz(p.frequencyHz)}: ${signed(p.changeDb, n.decibels(p.changeDb, 1))}${p.seconds === null ? '' : `, ${n.seconds(p.seconds)}`}`,
  'effect-seat': (p, n) =>
    `${n.text(p.seat)}: ${signed(p.standingDb, n.decibels(p.standingDb, 1))} re Mittel des Platzes${p.heard ? '' : ', wo der Grat nicht zu hören ist'}`,
  'effect-more': (p, n) =>
    `${n.integer(p.count)} ${plural(p.count, 'weiterer Grat ändert', 'weitere Grate ändern')} sich weniger`,
  'option-add-cut': () => 'Diese Absenkung hinzufügen',
  'options-note': () =>
    'Verlegungen, Quellen und Absorber sind im schallharten Quader für die wahrscheinlichste Mode allein gerechnet; andere Grate ändern sich, wie es ihre eigenen wahrscheinlichsten Moden täten. Gemessen ist davon noch nichts.',
  'options-room': () =>
    'Geben Sie den Raum und seine Orte an, damit sich Wege, Absorberflächen und die Wirkung auf andere Grate rechnen lassen.',
  'cautions-heading': () => 'Vorsicht',

  'after-heading': () => 'Das Ausschwingen ohne und mit den Filtern',
  'after-name': (p, n) => `Ausschwingen ohne und mit den Filtern, Hörplatz ${n.text(p.seat)}`,
  'after-nothing': () =>
    'Fügen Sie ein Filter hinzu, um das Ausschwingen mit ihm neben dem ohne Filter zu sehen.',
  'choose-form': () => 'Gezeigt als',
  'form-spectrogram': () => 'Spektrogramm',
  'form-waterfall': () => 'Wasserfall',

  'export-heading': () => 'Die Filter mitnehmen',
  'export-rate': () => 'Für eine Abtastrate von, Hz',
  'export-json': () => 'Koeffizienten (JSON)',
  'export-biquads': () => 'Koeffizienten (CSV)',
  'export-bands': () => 'Frequenz, Verstärkung, Q (CSV)',
  'export-note': (p, n) =>
    `Koeffizienten gelten für ${n.integer(p.rate)} Hz und keine andere Rate; Vorzeichen und Reihenfolge stehen in den Dateien. Die einfache Tabelle enthält nur Glockenfilter${Number(p.left) > 0 ? `: ${n.integer(p.left)} ${plural(p.left, 'Shelf-Filter fehlt', 'Shelf-Filter fehlen')} darin` : ''}. Prozessoren definieren Q verschieden: Vergleichen Sie die Kurve, bevor Sie einem eingetippten Q trauen.`,
  'csv-remedy': () => 'Grate mit den Filtern',
  'csv-options': () => 'Was sich tun lässt',
  'remedy-table': () => 'Pegel und Verstärkung über der Frequenz',

  // Two stages.
  comparison: () => 'Gegenüberstellung',
  'comparison-name': (p, n) => `${n.text(p.label)}, auf einer Skala, mit ihrem Unterschied`,
  'comparison-help': () =>
    'Die beiden Bilder haben dieselben Achsen, Farben, dasselbe Fenster und Verfahren. Zeigen Sie in eines, um alle abzulesen. Die Regler darunter verschieben denselben Cursor.',
  'comparison-title': (p, n) => `${n.text(p.first)} und ${n.text(p.second)}`,
  'comparison-nothing': () =>
    'Eine Aufnahme allein lässt sich mit nichts vergleichen: Fügen Sie eine spätere hinzu, oder Filter, die sie ändern.',
  'choose-first': () => 'Erstes',
  'choose-second': () => 'Zweites',
  'choose-difference': () => 'Unterschied',
  'compared-recording': (p, n) => n.text(p.label),
  'compared-at-seat': (p, n) => `${n.text(p.stage)}, ${n.text(p.seat)}`,
  'compared-before': (p, n) => (p.stage ? n.text(p.stage) : 'wie gemessen'),
  'compared-designed': () => 'durch den Entwurf',
  'compared-after': (p, n) => (p.stage ? n.text(p.stage) : 'später gemessen'),
  'group-stages': () => 'Stände, alle Quellen',
  'group-recordings': () => 'Aufnahmen',
  'difference-title': () => 'Unterschied: Zweites weniger Erstes',
  'difference-axis': () => 'Unterschied, dB',
  'key-more': () => 'im Zweiten lauter',
  'key-less': () => 'im Zweiten leiser',
  'key-neither': () => 'keines zeigt dort etwas',
  'key-no-data': () => 'nach dem Ende einer Aufnahme oder nicht aufgelöst',
  'compare-same': () =>
    'Die Pegel stammen aus denselben Aufnahmen; ihr Unterschied ist also, was der Entwurf bewirkt.',
  'compare-calibrated': () => 'Beide sind kalibriert; die Pegel haben also einen gemeinsamen Bezug.',
  'compare-relative': () =>
    'Die Pegel sind relativ: Jeder bezieht sich auf seinen eigenen lautesten Punkt zu Beginn, denn Dateien können normalisiert sein. Ein gleichbleibender Unterschied bedeutet nichts; vergleichen Sie nur das Abklingen.',
  'difference-caption': (p, n) =>
    `Der Unterschied ist bei jedem Paar bis ${n.decibels(p.reachDb)} nach beiden Seiten gezeichnet; wo nur eines der beiden über seinem Rauschen und im gezeigten Bereich liegt, beträgt er mindestens, was gezeichnet ist.`,
  'comparison-both': () => 'Beide:',
  'comparison-second': () => 'Im Zweiten:',
  'comparison-readout': (p, n) =>
    `${n.hertz(p.frequencyHz)} bei ${n.seconds(p.timeSeconds)}: ${n.decibels(p.firstDb, 1)}, ${n.decibels(p.secondDb, 1)}; ${signed(p.changeDb, n.decibels(p.changeDb, 1))}`,
  'comparison-readout-neither': (p, n) =>
    `${n.hertz(p.frequencyHz)} bei ${n.seconds(p.timeSeconds)}: keines zeigt etwas`,
  'comparison-readout-past': (p, n) =>
    `${n.hertz(p.frequencyHz)} bei ${n.seconds(p.timeSeconds)}: nach dem Ende einer Aufnahme oder nicht aufgelöst`,
  'comparison-ridges': () => 'Jeder Grat in beiden',
  'first-column': () => 'Im Ersten',
  'second-column': () => 'Im Zweiten',
  'surely-column': () => 'Mehr als die Unsicherheit?',
  'yes-shorter': () => 'ja, kürzer',
  'yes-longer': () => 'ja, länger',
  'no-change': () => 'nein',
  'not-found': () => 'nicht gefunden',
  'below-limit': () => 'jetzt innerhalb der Grenze',
  'new-ridge': () => 'im Ersten nicht über der Grenze',
  'comparison-summary': (p, n) =>
    `Von ${n.integer(p.ridges)} ${plural(p.ridges, 'Grat', 'Graten')} im Ersten ${plural(p.shorter, 'ist', 'sind')} ${n.integer(p.shorter)} im Zweiten sicher kürzer und ${n.integer(p.within)} innerhalb der Grenze; ${n.integer(p.longer)} sicher länger, ${n.integer(p.unsure)} um nicht mehr als die Unsicherheit geändert${Number(p.gone) > 0 ? `, ${n.integer(p.gone)} nicht wiedergefunden` : ''}${Number(p.fresh) > 0 ? `; ${n.integer(p.fresh)} ${plural(p.fresh, 'ist', 'sind')} neu` : ''}.`,
  'comparison-none': () => 'In dem, was gelesen wurde, liegt in keinem ein Grat über seiner Grenze.',
  'comparison-unread': (p, n) =>
    `Von „${n.text(p.label)}“ wurde nichts gelesen; ein Grat, der dort fehlt, ist also nicht verschwunden:`,
  'comparison-pending': () => 'Die Grate werden noch gesucht.',
  'comparison-sure': () =>
    'Eine Änderung gilt als mehr als ihre Unsicherheit, wenn sie zwei ihrer Standardabweichungen übersteigt, aus beiden Anpassungen.',
  'comparison-table': () => 'Pegelunterschiede über Frequenz und Zeit',
  'at-time': (p, n) => n.seconds(p.seconds),
  'csv-difference': () => 'Unterschiede',
};
